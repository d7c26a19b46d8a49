import { called } from '../../model/edits/support/find.ts';
import { type Project, propertyOf } from '../../model/project.ts';
import { builtMarkId, crossingRecordId } from '../../model/recordDefaults.ts';
import type { BuildableKind, BuriedPoint, CrossingRecord } from '../../model/recordThings.ts';
import { formatTape, type Units } from '../../words/numbers/write.ts';
import { counted } from '../../words/text.ts';
import { gatePostWord, tieFromKey } from '../tieFrom.ts';
import type { GroundAnswer } from './answer.ts';
import { fateInShort } from './leftWords.ts';
import type { HowGone, Mark, Touched } from './touched.ts';

/** What is asked before an edit that touches what is built, recorded or taped from. */
export interface GroundQuestion {
  readonly title: string;
  /** What is touched, a sentence each. */
  readonly lines: readonly string[];
  /** How many more things are touched than there are lines. */
  readonly more: number;
  readonly ask: string;
  /** The safe answer first. */
  readonly choices: readonly GroundChoice[];
}

export interface GroundChoice {
  readonly answer: GroundAnswer;
  readonly label: string;
  /** What will then be so in the file. */
  readonly means: string;
}

/** More than this is no longer read. */
const mostLines = 8;

/** The one question of an edit; `touched` must not be empty. */
export function groundQuestion(project: Project, touched: readonly Touched[]): GroundQuestion {
  const { units } = propertyOf(project);
  const lines = touched.map((each) => touchedInWords(project, each, units));
  const buried = touched.filter(isBuried);
  return {
    title: titleOf(touched, buried.length),
    lines: lines.slice(0, mostLines),
    more: Math.max(0, lines.length - mostLines),
    ...choicesOf(touched, buried),
  };
}

/** What is touched, and how: the same for the same question about the same thing. */
export function touchedKey(touched: Touched): string {
  switch (touched.what) {
    case 'crossingGone':
    case 'crossingMoved':
    case 'bowChanged':
      return `${touched.what} ${touched.crossing.id}`;
    case 'leadOutGone':
    case 'leadOutMoved':
      return `${touched.what} ${touched.leadOut.id}`;
    case 'earthFieldGone':
    case 'earthFieldMoved':
      return `${touched.what} ${touched.earthField.id}`;
    case 'markMoved':
    case 'markGone':
      return `${touched.what} ${tieFromKey(touched.mark.from)}`;
    case 'recordChanged':
    case 'recordGone':
      return `${touched.what} ${touched.before.id}`;
    case 'recordAdded':
      return `${touched.what} ${touched.added.id}`;
    case 'inGroundGone':
      return `${touched.what} ${touched.inGround.id}`;
    case 'builtGone':
      return `${touched.what} ${touched.thing.id}`;
  }
}

function isBuried({ what }: Touched): boolean {
  return /^(crossing|leadOut|earthField)/.test(what);
}

function titleOf(touched: readonly Touched[], buried: number): string {
  if (buried > 0) return buried === 1 ? 'This is in the ground' : `${buried} of these things are in the ground`;
  const only = (...kinds: Touched['what'][]) => touched.every(({ what }) => kinds.includes(what));
  if (only('inGroundGone')) return 'This record is of something in the ground';
  if (only('bowChanged')) return 'This trench is dug already';
  if (only('markMoved', 'markGone')) return 'Tapes were held to this post';
  if (only('builtGone')) return touched.length === 1 ? 'This is built' : 'These things are built';
  if (only('recordGone', 'recordChanged', 'recordAdded')) return 'This was measured in the trench';
  return 'This is built or recorded';
}

function choicesOf(touched: readonly Touched[], buried: readonly Touched[]): Pick<GroundQuestion, 'ask' | 'choices'> {
  const has = (...kinds: Touched['what'][]) => touched.some(({ what }) => kinds.includes(what));
  const gone = has('crossingGone', 'leadOutGone', 'earthFieldGone');
  const moved = has('crossingMoved', 'leadOutMoved', 'earthFieldMoved');
  if (buried.length > 0) {
    return {
      ask: 'What is true on the ground?',
      choices: [
        gone ? staysWhenGone : staysWhenMoved(has('crossingMoved')),
        dead,
        takenOut,
        ...(moved && !gone ? [corrected] : []),
        ...(gone && !moved ? [mistake] : []),
      ],
    };
  }
  if (has('inGroundGone')) return { ask: 'What is true on the ground?', choices: [keepsRecord, takenOut, mistake] };
  if (has('markMoved')) return { ask: 'Was the post really moved?', choices: [postMoved, postCorrected] };
  if (has('bowChanged')) return { ask: 'How does the trench run?', choices: [bowStays, bowIsSo] };
  if (has('recordChanged', 'recordAdded'))
    return { ask: 'Which of the two is right?', choices: [recordStays, recordTaken] };
  if (has('recordGone')) return { ask: 'Delete what was measured?', choices: [recordGoes] };
  if (has('markGone')) return { ask: 'Delete the post?', choices: [postGoes] };
  return { ask: 'Delete what is built?', choices: [builtGoes] };
}

const staysWhenGone: GroundChoice = {
  answer: 'stays',
  label: 'It stays in the ground',
  means:
    'It is kept as it was recorded, apart from the drawing. Find, the dig check and the sheets go on showing it, as cable that may be live.',
};

const staysWhenMoved = (crossing: boolean): GroundChoice => ({
  answer: 'stays',
  label: 'It stays in the ground where it is',
  means: crossing
    ? 'Only the gate or the fence was really moved. The cable is found where it was recorded, and still serves.'
    : 'It is kept where it lies, as cable that may be live. What is drawn anew counts as planned.',
});

const dead: GroundChoice = {
  answer: 'dead',
  label: 'It stays in the ground, cut off at both ends',
  means: 'It is kept where it lies, as dead and left in the ground. What is still drawn counts as planned.',
};

const takenOut: GroundChoice = {
  answer: 'takenOut',
  label: 'It has been taken out of the ground',
  means: 'Its record is kept, but the dig check no longer warns of it.',
};

const corrected: GroundChoice = {
  answer: 'corrected',
  label: 'Nothing was moved: the drawing is being put right',
  means: 'What was recorded and taped from here moves along with the drawing.',
};

const mistake: GroundChoice = {
  answer: 'mistake',
  label: 'It was never there: the record is a mistake',
  means: 'The record goes, and nothing in this file will warn of it.',
};

const keepsRecord: GroundChoice = {
  answer: 'stays',
  label: 'It is still in the ground',
  means: 'The record stays.',
};

const postMoved: GroundChoice = {
  answer: 'stays',
  label: 'Yes: the post was moved',
  means: 'What was taped from it stays where it is: the tapes count from where the post stood.',
};

const postCorrected: GroundChoice = {
  answer: 'corrected',
  label: 'No: the drawing is being put right',
  means: 'What was taped from it moves along with it.',
};

const bowStays: GroundChoice = {
  answer: 'stays',
  label: 'As it was',
  means: 'The trench stays as it was dug.',
};

const bowIsSo: GroundChoice = {
  answer: 'corrected',
  label: 'As it is drawn now',
  means: 'The new curve counts as the real one.',
};

const recordStays: GroundChoice = {
  answer: 'stays',
  label: 'What is recorded here',
  means: 'The records of what lies there stay as they are; the rest is taken over.',
};

const recordTaken: GroundChoice = {
  answer: 'corrected',
  label: 'What comes in now',
  means: 'What comes in replaces the records here, or is added to them.',
};

const recordGoes: GroundChoice = {
  answer: 'stays',
  label: 'Delete it',
  means: 'The place is then known only from what is left. Undo brings it back.',
};

const postGoes: GroundChoice = {
  answer: 'stays',
  label: 'Delete it',
  means: 'The tapes go on counting from where it stood, but nobody can hold a tape to it any more.',
};

const builtGoes: GroundChoice = {
  answer: 'stays',
  label: 'Delete',
  means: 'It goes from the drawing. Undo brings it back.',
};

function touchedInWords(project: Project, touched: Touched, units: Units): string {
  switch (touched.what) {
    case 'crossingGone': {
      const name = `crossing under ${touched.gateway.name}`;
      return `The ${name} (${crossingRecordInWords(project, touched.crossing.id)}) ${goneWords[touched.how]}.`;
    }
    case 'crossingMoved': {
      const { gateway, crossing, movedM } = touched;
      const record = crossingRecordInWords(project, crossing.id);
      return `The crossing under ${gateway.name} (${record}): a post of the gate moves ${formatTape(movedM, units)}.`;
    }
    case 'bowChanged':
      return `The trench under ${touched.gateway.name} (${crossingRecordInWords(project, touched.crossing.id)}) is given another curve.`;
    case 'leadOutGone':
      return `The buried lead-out ${touched.leadOut.name} (${builtInWords(project, 'leadOut', touched.leadOut.id)}) ${goneWords[touched.how]}.`;
    case 'leadOutMoved':
      return `The buried lead-out ${touched.leadOut.name} (${builtInWords(project, 'leadOut', touched.leadOut.id)}) moves by up to ${formatTape(touched.movedM, units)}.`;
    case 'earthFieldGone':
      return `The earth stakes${ofEnergiser(project, touched.earthField.energiserId)} (${builtInWords(project, 'earthField', touched.earthField.id)}) ${goneWords[touched.how]}.`;
    case 'earthFieldMoved':
      return `The earth stakes${ofEnergiser(project, touched.earthField.energiserId)} (${builtInWords(project, 'earthField', touched.earthField.id)}) move ${formatTape(touched.movedM, units)}.`;
    case 'markMoved':
      return `${markInWords(touched.mark)} moves ${formatTape(touched.movedM, units)}. From it was taped: ${pointsInWords(project, touched.points)}.`;
    case 'markGone':
      return `${markInWords(touched.mark)} goes. From it was taped: ${pointsInWords(project, touched.points)}.`;
    case 'recordChanged':
      return `${recordInWords(project, touched.before)} is changed.`;
    case 'recordAdded':
      return `${recordInWords(project, touched.added)} is added to what was measured there.`;
    case 'recordGone':
      return `${recordInWords(project, touched.before)} is deleted.`;
    case 'inGroundGone':
      return `The record of the ${touched.inGround.name} (${fateInShort(touched.inGround)}) is deleted.`;
    case 'builtGone':
      return `The ${called(touched.thing).replace(/^this /, '')} is built and goes from the drawing.`;
  }
}

const goneWords: Readonly<Record<HowGone, string>> = {
  deleted: 'goes from the drawing',
  overhead: 'is drawn above ground from now on',
  planned: 'counts as planned from now on',
};

/** "built 2025-02-11, 3 points taped or measured, 2 photos". */
function crossingRecordInWords(project: Project, crossingId: string): string {
  const points = [...project.buriedPoint.values()].filter((point) => point.crossingId === crossingId).length;
  const photos = [...project.photo.values()].filter(({ of }) => of?.id === crossingId).length;
  const depths = project.crossingRecord.get(crossingRecordId(crossingId))?.depths.length ?? 0;
  const status = project.crossing.get(crossingId)?.status;
  return [
    status === 'built' ? builtInWords(project, 'crossing', crossingId) : 'recorded',
    points === 0 ? '' : `${counted(points, 'point')} measured`,
    depths === 0 ? '' : `${counted(depths, 'depth')}`,
    photos === 0 ? '' : `${counted(photos, 'photo')}`,
  ]
    .filter((part) => part !== '')
    .join(', ');
}

function builtInWords(project: Project, kind: BuildableKind, id: string): string {
  const date = project.builtMark.get(builtMarkId(kind, id))?.date;
  return date ? `built ${date}` : 'built';
}

function ofEnergiser(project: Project, energiserId: string): string {
  const name = project.energiser.get(energiserId)?.name;
  return name ? ` of ${name}` : '';
}

function markInWords({ from, post }: Mark): string {
  if (post.kind === 'post') return `Post ${post.name}`;
  return `The ${gatePostWord(post, from.on === 'gatePost' ? from.post : 'start')} of ${post.name}`;
}

function pointsInWords(project: Project, points: readonly BuriedPoint[]): string {
  const said = points.slice(0, 4).map((point) => `${pointWord(point)} of ${gatewayOf(project, point.crossingId)}`);
  return `${said.join(', ')}${points.length > said.length ? ` and ${points.length - said.length} more` : ''}`;
}

function recordInWords(
  project: Project,
  record: CrossingRecord | BuriedPoint | (Touched & { what: 'recordChanged' })['before'],
): string {
  if (record.kind === 'inGround') return `The record of the ${record.name}`;
  const gateway = gatewayOf(project, record.crossingId);
  if (record.kind === 'crossingRecord') return `The record of the crossing under ${gateway}`;
  const how = [
    record.ties.length > 0 ? `${counted(record.ties.length, 'tape')}` : '',
    record.offset ? 'an offset' : '',
    record.gps ? 'a receiver’s position' : '',
  ].filter((part) => part !== '');
  return `The ${pointWord(record)} of the crossing under ${gateway}${how.length > 0 ? ` (${how.join(', ')})` : ''}`;
}

/** "bend", "riser foot", or the name it was given. */
function pointWord({ name, role }: BuriedPoint): string {
  if (name.trim() !== '') return name.trim();
  return role === 'startFoot' || role === 'endFoot' ? 'riser foot' : role;
}

function gatewayOf(project: Project, crossingId: string): string {
  const crossing = project.crossing.get(crossingId);
  return (crossing && project.gateway.get(crossing.gatewayId)?.name) ?? 'a gateway that is gone';
}
