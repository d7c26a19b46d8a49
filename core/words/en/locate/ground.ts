import type { Figures, Phrase, ThingRef } from '../../types.ts';

/** Why something buried is no longer where an edit leaves the drawing. */
const howGone = {
  deleted: 'goes from the drawing',
  overhead: 'is drawn above ground from now on',
  planned: 'counts as planned from now on',
};

type How = { readonly how: keyof typeof howGone };
/** What is recorded of a crossing. */
type Recorded = {
  readonly isBuilt: boolean;
  /** When it was built; null: nobody noted it. */
  readonly built: string | null;
  readonly points: number;
  readonly depths: number;
  readonly photos: number;
};
/** What was built, and when. */
type Built = { readonly built: string | null };
type PointOf = { readonly point: Phrase; readonly gateway: string | null };
type Taped = { readonly post: Phrase; readonly points: readonly PointOf[]; readonly more: number };
/** What a point was measured by. */
type Measured = { readonly tapes: number; readonly offset: boolean; readonly receiver: boolean };

function builtWords(built: string | null): string {
  return built === null ? 'built' : `built ${built}`;
}

function recordedWords({ isBuilt, built, points, depths, photos }: Recorded, f: Figures): string {
  const count = (number: number, one: string, other: string) =>
    number === 0 ? [] : [`${f.number(number)} ${f.plural(number, { one, other })}`];
  return [
    isBuilt ? builtWords(built) : 'recorded',
    ...count(points, 'point measured', 'points measured'),
    ...count(depths, 'depth', 'depths'),
    ...count(photos, 'photo', 'photos'),
  ].join(', ');
}

function gatewayWords(gateway: string | null): string {
  return gateway ?? 'a gateway that is gone';
}

function tapedWords({ points, more }: Taped, f: Figures): string {
  const said = points.map(({ point, gateway }) => `${f.say(point)} of ${gatewayWords(gateway)}`);
  return `From it was taped: ${said.join(', ')}${more > 0 ? ` and ${more} more` : ''}.`;
}

function stakesOf(energiser: string | null): string {
  return energiser === null ? 'The earth stakes' : `The earth stakes of ${energiser}`;
}

function measuredWords({ tapes, offset, receiver }: Measured, f: Figures): string {
  const how = [
    ...(tapes > 0 ? [`${f.number(tapes)} ${f.plural(tapes, { one: 'tape', other: 'tapes' })}`] : []),
    ...(offset ? ['an offset'] : []),
    ...(receiver ? ['a receiver’s position'] : []),
  ];
  return how.length > 0 ? ` (${how.join(', ')})` : '';
}

/** The one question before an edit that touches what is built, recorded or taped from. */
export const ground = {
  title: {
    buried: ({ count }: { count: number }) =>
      count === 1 ? 'This is in the ground' : `${count} of these things are in the ground`,
    leftRecord: 'This record is of something in the ground',
    dug: 'This trench is dug already',
    tapedFrom: 'Tapes were held to this post',
    built: ({ count }: { count: number }, f: Figures) =>
      f.plural(count, { one: 'This is built', other: 'These things are built' }),
    measured: 'This was measured in the trench',
    several: 'This is built or recorded',
  },
  ask: {
    ground: 'What is true on the ground?',
    post: 'Was the post really moved?',
    trench: 'How does the trench run?',
    record: 'Which of the two is right?',
    deleteRecord: 'Delete what was measured?',
    deletePost: 'Delete the post?',
    deleteBuilt: 'Delete what is built?',
  },
  /** Each answer, and what will then be so in the file. */
  answers: {
    stays: {
      label: 'It stays in the ground',
      means:
        'It is kept as it was recorded, apart from the drawing. Find, the dig check and the sheets go on showing it, as cable that may be live.',
    },
    staysWhereItIs: {
      label: 'It stays in the ground where it is',
      means: 'It is kept where it lies, as cable that may be live. What is drawn anew counts as planned.',
    },
    crossingStays: {
      label: 'It stays in the ground where it is',
      means: 'Only the gate or the fence was really moved. The cable is found where it was recorded, and still serves.',
    },
    dead: {
      label: 'It stays in the ground, cut off at both ends',
      means: 'It is kept where it lies, as dead and left in the ground. What is still drawn counts as planned.',
    },
    takenOut: {
      label: 'It has been taken out of the ground',
      means: 'Its record is kept, but the dig check no longer warns of it.',
    },
    corrected: {
      label: 'Nothing was moved: the drawing is being put right',
      means: 'What was recorded and taped from here moves along with the drawing.',
    },
    mistake: {
      label: 'It was never there: the record is a mistake',
      means: 'The record goes, and nothing in this file will warn of it.',
    },
    recordKept: { label: 'It is still in the ground', means: 'The record stays.' },
    postMoved: {
      label: 'Yes: the post was moved',
      means: 'What was taped from it stays where it is: the tapes count from where the post stood.',
    },
    postCorrected: {
      label: 'No: the drawing is being put right',
      means: 'What was taped from it moves along with it.',
    },
    asItWas: { label: 'As it was', means: 'The trench stays as it was dug.' },
    asDrawn: { label: 'As it is drawn now', means: 'The new curve counts as the real one.' },
    recordedHere: {
      label: 'What is recorded here',
      means: 'The records of what lies there stay as they are; the rest is taken over.',
    },
    comesIn: {
      label: 'What comes in now',
      means: 'What comes in replaces the records here, or is added to them.',
    },
    recordGoes: {
      label: 'Delete it',
      means: 'The place is then known only from what is left. Undo brings it back.',
    },
    postGoes: {
      label: 'Delete it',
      means: 'The tapes go on counting from where it stood, but nobody can hold a tape to it any more.',
    },
    builtGoes: { label: 'Delete', means: 'It goes from the drawing. Undo brings it back.' },
  },
  /** What is touched, and how. */
  touched: {
    crossingGone: ({ gateway, how, ...recorded }: Recorded & How & { gateway: string }, f: Figures) =>
      `The crossing under ${gateway} (${recordedWords(recorded, f)}) ${howGone[how]}.`,
    crossingMoved: ({ gateway, movedM, ...recorded }: Recorded & { gateway: string; movedM: number }, f: Figures) =>
      `The crossing under ${gateway} (${recordedWords(recorded, f)}): a post of the gate moves ${f.tape(movedM)}.`,
    bowChanged: ({ gateway, ...recorded }: Recorded & { gateway: string }, f: Figures) =>
      `The trench under ${gateway} (${recordedWords(recorded, f)}) is given another curve.`,
    leadOutGone: ({ name, built, how }: Built & How & { name: string }) =>
      `The buried lead-out ${name} (${builtWords(built)}) ${howGone[how]}.`,
    leadOutMoved: ({ name, built, movedM }: Built & { name: string; movedM: number }, f: Figures) =>
      `The buried lead-out ${name} (${builtWords(built)}) moves by up to ${f.tape(movedM)}.`,
    earthFieldGone: ({ energiser, built, how }: Built & How & { energiser: string | null }) =>
      `${stakesOf(energiser)} (${builtWords(built)}) ${howGone[how]}.`,
    earthFieldMoved: ({ energiser, built, movedM }: Built & { energiser: string | null; movedM: number }, f: Figures) =>
      `${stakesOf(energiser)} (${builtWords(built)}) move ${f.tape(movedM)}.`,
    markMoved: ({ movedM, ...taped }: Taped & { movedM: number }, f: Figures) =>
      `${f.say(taped.post)} moves ${f.tape(movedM)}. ${tapedWords(taped, f)}`,
    markGone: (taped: Taped, f: Figures) => `${f.say(taped.post)} goes. ${tapedWords(taped, f)}`,
    post: ({ name }: { name: string }) => `Post ${name}`,
    gatePost: ({ post }: { post: Phrase }, f: Figures) => `The ${f.say(post)}`,
    recordChanged: ({ record }: { record: Phrase }, f: Figures) => `${f.say(record)} is changed.`,
    recordAdded: ({ record }: { record: Phrase }, f: Figures) =>
      `${f.say(record)} is added to what was measured there.`,
    recordGone: ({ record }: { record: Phrase }, f: Figures) => `${f.say(record)} is deleted.`,
    inGroundGone: ({ name, fate }: { name: string; fate: Phrase }, f: Figures) =>
      `The record of the ${name} (${f.say(fate)}) is deleted.`,
    builtGone: ({ thing }: { thing: ThingRef }, f: Figures) =>
      `The ${thing.name === '' ? f.kind(thing.kind) : f.thing(thing)} is built and goes from the drawing.`,
    recordOfLeft: ({ name }: { name: string }) => `The record of the ${name}`,
    recordOfCrossing: ({ gateway }: { gateway: string | null }) =>
      `The record of the crossing under ${gatewayWords(gateway)}`,
    recordOfPoint: ({ point, gateway, ...measured }: PointOf & Measured, f: Figures) =>
      `The ${f.say(point)} of the crossing under ${gatewayWords(gateway)}${measuredWords(measured, f)}`,
  },
};
