import type { Figures } from '../../../types.ts';
import { compass } from '../../things.ts';

type Side = keyof typeof compass;
/** What was edited: "bend of the crossing at G4". */
type Where = { readonly where: string };

const edit = (what: string) => (edited: Where) => `${what}: ${edited.where}`;

/** One buried point: its tapes, and other ways to measure it. */
export const point = {
  ofCrossing: ({ point, gateway }: { point: string; gateway: string }) => `${point} of the crossing at ${gateway}`,
  name: 'Name',
  delete: 'Delete what was measured here',
  fromPost: ({ side }: { side: Side }) => `From the ${compass[side]} post`,
  offIt: 'Off it',
  off: ({ offM, side }: { offM: number; side: Side }, f: Figures) => `${f.tape(offM)} ${compass[side]}`,
  within: 'Within',
  /** Where it is on earth, for a hint of two sentences. */
  place: ({ place }: { place: string }) => `${place}.`,
  residuals: ({ tapes }: { tapes: readonly { readonly post: string; readonly offM: number }[] }, f: Figures) =>
    `Each tape is off by: ${tapes.map(({ post, offM }) => `${post} ${f.tape(offM)}`).join(', ')}.`,
  /** 0.28 m north of the opening, 0.40 m along it from the west post. */
  offset: ({ offM, side, alongM, post }: { offM: number; side: Side; alongM: number; post: Side }, f: Figures) =>
    `${f.tape(offM)} ${compass[side]} of the opening, ${f.tape(alongM)} along it from the ${compass[post]} post`,
  placeAt: ({ name, offset }: { name: string; offset: string }) => `${name}: ${offset}`,
  untilSaid: 'Until it is said, whoever digs has to keep clear of both.',
  mapShowsBoth: 'The map shows both. A third tape from a post off their line tells them apart too.',
  doNotMeet: 'These tapes do not meet',
  whichSide: 'On which side of the line of the posts it lies',
  notSaid: 'Not said: it can be at both',
  bestPosts: 'Best posts to tape from, before the trench is closed',
  sureTo: ({ sePositionM, checked }: { sePositionM: number; checked: boolean }, f: Figures) =>
    `to ${f.tape(sePositionM)}${checked ? ', and it checks itself' : ''}`,
  anotherWay: 'Measured another way',
  along: 'Along the opening',
  alongHint: ({ from, to }: { from: Side; to: Side }) =>
    `From the ${compass[from]} post towards the ${compass[to]} one.`,
  square: 'Square off it',
  squareHint: ({ above, below }: { above: Side; below: Side }) =>
    `Above 0 to the ${compass[above]}, below to the ${compass[below]}.`,
  gps: 'GPS: latitude, longitude',
  gpsHint: 'Decimal degrees, WGS 84.',
  error: 'Standard error',
  /** What Undo calls these edits. */
  edits: {
    side: edit('Say the side'),
    name: edit('Name'),
    delete: ({ where }: Where) => `Delete ${where}`,
    offset: edit('Measure along and off the opening'),
    forgetOffset: edit('Forget the offset'),
    gps: edit('Write the GPS position'),
    changeTie: edit('Change a tie'),
    removeTie: edit('Remove a tie'),
    tie: ({ where, post, distanceM }: Where & { post: string; distanceM: number }, f: Figures) =>
      `Tie from ${post}, ${f.tape(distanceM)}: ${where}`,
  },
  /** The tapes of a point. */
  ties: {
    removeFrom: ({ post }: { post: string }) => `Remove the tie from ${post}`,
    remove: 'Remove',
    postMoved: 'This tape counts from where the post stood. If you tape it anew, remove this one first.',
    tape: 'Tape',
    noPost: 'No further post within reach of a tape. Mark one in Draw: a corner of a shed will do.',
    checkTape: ({ post, awayM }: { post: string; awayM: number }, f: Figures) =>
      `${post} is drawn ${f.tape(awayM)} away: check the tape.`,
    tapeFrom: 'Tape from',
    asDrawn: ({ post, awayM }: { post: string; awayM: number }, f: Figures) => `${post} (${f.tape(awayM)} as drawn)`,
    reads: 'Tape reads',
    enterAdds: 'Enter adds it.',
  },
};
