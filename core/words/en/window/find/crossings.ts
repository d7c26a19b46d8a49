import { capital } from '../../../text.ts';
import type { Figures, Phrase } from '../../../types.ts';

const beforeDigging =
  'Energiser off and the fence proven dead before you dig. Have all other buried services located. Dig by hand near the cable.';

/** The crossings, searched by name or by a place. */
export const crossings = {
  searchFor: 'Gateway, fence, or coordinates',
  caption: 'Crossings in the ground and planned',
  none: 'No buried crossing yet. Draw gives each live gateway one.',
  noneFound: 'None has that name.',
  gateway: 'Gateway',
  away: 'Away',
  fence: 'Fence',
  howSure: 'How sure',
  within: 'Within',
  choose: 'Select one here or on the map, or type where you stand.',
  found: ({ count }: { count: number }, f: Figures) => `${f.number(count)} found.`,
  noSuchName: ({ problem }: { problem: string }) => `No gateway or fence is called that. ${problem}`,
  nearestFirst: 'Nearest first. Enter shows the place on the map.',
};

/** What is in the ground and drawn no longer. */
export const left = {
  noLongerDrawn: 'No longer drawn',
  state: 'State',
  fate: 'What has become of it',
  fates: {
    inUse: 'In the ground, may be live',
    dead: 'Dead: cut off at both ends, left in the ground',
    takenOut: 'Taken out of the ground',
  },
  called: 'Called',
  note: 'Note',
  deleteRecord: 'Delete this record',
  steps: {
    fate: ({ name }: { name: string }) => `Say what has become of it: ${name}`,
    rename: ({ name }: { name: string }) => `Rename: ${name}`,
    note: ({ name }: { name: string }) => `Write the note: ${name}`,
    delete: ({ name }: { name: string }) => `Delete the record of the ${name}`,
  },
  place: ({ withinM }: { withinM: number }, f: Figures) =>
    `Not measured (from the plan). It is assumed to lie within ${f.tape(withinM)} of where it was drawn.`,
  caution: beforeDigging,
};

type Recorded = { readonly by: string; readonly on: string };

/** How to find one crossing on the ground. */
export const stakeOut = {
  crossing: ({ gateway }: { gateway: string }) => `Crossing at ${gateway}`,
  toFind: ({ gateway }: { gateway: string }) => `To find the crossing at ${gateway}`,
  plan: ({ gateway }: { gateway: string }) => `Plan of the crossing at ${gateway}, north up`,
  /** The same of what is drawn no longer, by its own name. */
  toFindLeft: ({ name }: { name: string }) => `To find the ${name}`,
  planOfLeft: ({ name }: { name: string }) => `Plan of the ${name}, north up`,
  caution: `${beforeDigging} Hold tapes level, to the middle of the post at the ground.`,
  print: 'Print on one page',
  photoAt: ({ name }: { name: string }) => `Photo at ${name}`,
  /** A part of a sentence by itself. */
  sentence: ({ said }: { said: Phrase }, f: Figures) => `${capital(f.say(said))}.`,
  placeOf: ({ name, at }: { name: Phrase; at: string }, f: Figures) => `${f.say(name)}: ${at}`,
  steps: 'Step along the trench',
  layTape: ({ start, end }: { start: Phrase; end: Phrase }, f: Figures) =>
    `Lay a tape from the ${f.say(start)} to the ${f.say(end)}. At each mark go so far off it:`,
  at: 'At',
  trench: ({ lengthM, boreMm }: { lengthM: number; boreMm: number }, f: Figures) =>
    `Trench ${f.tape(lengthM)} long; pipe of ${f.number(boreMm)} mm bore.`,
  earthCable: 'An earth cable lies in it too.',
  joints: ({ count, note }: { count: number; note: string }, f: Figures) =>
    count === 0 ? 'No joint underground.' : `Joints underground: ${f.number(count)}. ${note}`,
  also: ({ what }: { what: string }) => `Also in the trench: ${what}`,
  recorded: ({ by, on }: Recorded, f: Figures) =>
    `Recorded${by === '' ? '' : ` by ${by}`}${on === '' ? '' : ` on ${f.date(on)}`}.`,
};
