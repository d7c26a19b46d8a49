import { roughUnit } from '../../../numbers/units.ts';
import { capital } from '../../../text.ts';
import type { Figures } from '../../../types.ts';
import { compass } from '../../things.ts';

type Side = keyof typeof compass;
type AtGateway = { readonly gateway: string };

const at = (what: string) => (gateway: AtGateway) => `${what}: ${crossingAt(gateway)}`;
const crossingAt = ({ gateway }: AtGateway) => `the crossing at ${gateway}`;

const conduits = {
  same: 'It lies in one conduit with the live cable, which is forbidden: give the live cable one of its own.',
  own: 'It has a conduit of its own.',
  notSaid: 'Has it a conduit of its own? Write it down: “in its own conduit”.',
};

/** Every crossing, as a table. */
export const crossings = {
  hint: 'Select a crossing, here or by its gateway on the map, to record it.',
  title: 'Crossings in the ground and planned',
  none: 'No buried crossing is drawn.',
  at: 'At',
  state: 'State',
  howSure: 'How sure',
  within: ({ within }: { within: string }) => `within ${within}`,
  joints: 'Joints',
  jointsNotNoted: 'not noted',
  noJoints: 'none',
  missing: 'Missing',
  nothingMissing: 'nothing',
};

/** All that is recorded of one crossing. */
export const crossing = {
  named: crossingAt,
  none: ({ gateway }: AtGateway) => `No buried crossing is drawn at ${gateway}, so there is none to record.`,
  parts: {
    title: 'Parts of the record',
    points: 'Where it lies',
    depths: 'Depths',
    trench: 'Trench and cable',
    photos: 'Photos',
    built: 'Built',
  },
  bend: 'Bend',
  furtherPoint: 'A further point',
  point: 'Point',
  /** A point in the list, with what is known of it. */
  told: {
    sideNotSaid: ({ point }: { point: string }) => `${point}: side not said`,
    doNotMeet: ({ point }: { point: string }) => `${point}: tapes do not meet`,
    ties: ({ point, count }: { point: string; count: number }, f: Figures) =>
      `${point}: ${f.number(count, 0)} ${f.plural(count, { one: 'tie', other: 'ties' })}`,
  },
  runs: 'The trench runs',
  routes: { arc: 'in an arc from foot to foot', points: 'straight from point to point' },
  throughBend: 'The arc runs through the bend as it was measured.',
  bow: 'Curve: most off the straight, as measured',
  bowAssumed: 'Not measured: a share of the width is assumed.',
  bowFrom: 'From the middle of the opening.',
  bowSide: 'It curves to the',
  depthsHint: (
    { lengthM, depthM, side, known }: { lengthM: number; depthM: number; side: Side; known: string },
    f: Figures,
  ) =>
    `The trench is ${f.tape(lengthM)} long and planned ${f.tape(depthM)} deep. Measure from the ground to the top of the pipe, along the trench from the riser at the ${compass[side]} post. So far: ${known}.`,
  removeDepth: ({ alongM }: { alongM: number }, f: Figures) => `Remove the depth at ${f.tape(alongM)}`,
  remove: 'Remove',
  alongTrench: 'Along the trench',
  emptyAtStart: 'Empty: at the start.',
  emptyHalfOn: 'Empty: half a trench on.',
  depthThere: 'Depth there',
  enterAdds: 'Enter adds it.',
  liveCable: 'Live cable',
  jointCaution:
    'A joint underground is where water gets in and the fence leaks, years later and out of sight. Run one unbroken cable instead, if the trench is still open.',
  riserOn: ({ side }: { side: Side }) => `${capital(compass[side])} riser is on`,
  texts: {
    jointsNote: 'Where and how they are joined',
    alsoInTrench: 'Also in the trench',
    soil: 'Soil',
    recordedBy: 'Recorded by',
    note: 'Notes',
  },
  recordedOn: 'Recorded on',
  /** Another cable than the live one is named. */
  otherCable: ({ cables, conduit }: { cables: readonly string[]; conduit: keyof typeof conduits }) =>
    `Another cable is named here (${cables.join(', ')}). ${conduits[conduit]}`,
  /** What Undo calls these edits. */
  edits: {
    route: at('Say how the trench runs'),
    bow: ({ gateway }: AtGateway) => `Measure the curve: crossing at ${gateway}`,
    bowSide: ({ gateway }: AtGateway) => `Change the side of the curve: crossing at ${gateway}`,
    measureDepth: at('Measure a depth'),
    moveDepth: at('Move a depth'),
    changeDepth: at('Change a depth'),
    removeDepth: at('Remove a depth'),
    pipeBore: at('Write the pipe bore'),
    cable: at('Write the cable'),
    joints: at('Count the joints'),
    seals: at('Note the seals'),
    riser: ({ side, ...gateway }: AtGateway & { side: Side }) =>
      `Write the ${compass[side]} riser: ${crossingAt(gateway)}`,
    date: at('Date the record'),
    texts: {
      jointsNote: at('Write where and how they are joined'),
      alsoInTrench: at('Write also in the trench'),
      soil: at('Write soil'),
      recordedBy: at('Write recorded by'),
      note: at('Write notes'),
    },
    track: ({ gateway }: AtGateway) => `Take a track as the trench at ${gateway}`,
  },
  /** A track that was walked along the open trench. */
  track: {
    none: ({ fileName }: { fileName: string }) => `${fileName} holds no track.`,
    error: 'Receiver’s standard error',
    errorHint: (_: null, f: Figures) => `In the hand, some ${roughUnit(f.units)}: then tapes are far better.`,
    bring: 'Import a GPS track',
    bringHint: 'A GPX file walked along the open trench.',
    file: 'GPS track of the trench',
  },
};
