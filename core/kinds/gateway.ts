import { alongLineM, lineEnd, note, ownName, status } from './common.ts';
import { kind } from './describe.ts';
import { choice, flag, lengthM, like, reference } from './fields.ts';

/** Which side a gate swings to, looking along the line from start to end. */
const swing = choice([
  ['left', 'Left, looking along the line'],
  ['right', 'Right, looking along the line'],
]);

/** An opening in a fence line. Its start post stands at `atM - widthM / 2`, its end post at `atM + widthM / 2`. */
export const gateway = kind('gateway', {
  prefix: 'G',
  uniqueName: true,
  lists: ['drawing', 'keptPlan', 'handover', 'changes', 'exchange', 'network', 'counted'],
  fields: {
    name: ownName,
    lineId: reference('fenceLine', { ownEdit: true, column: 'fence_line' }),
    /** Centre of the opening, along the line. */
    atM: alongLineM,
    widthM: lengthM({
      label: 'Width, post to post',
      hint: 'Ordinary gates are {3.6 m} to {4.9 m}, doubled for machinery (common practice).',
      min: 0.5,
      max: 60,
      column: true,
      default: 4.2,
      ownEdit: true,
    }),
    leaves: choice(
      [
        [1, 'Single'],
        [2, 'Double'],
      ],
      { column: true, default: 1 },
    ),
    /** The post that a single gate hangs from. */
    hungFrom: like(lineEnd, { default: 'start' }),
    /** The side it swings to, looking along the line from start to end. */
    opens: like(swing, {
      label: 'Swings to',
      hint: "The line's start post is the one nearer to where the line was begun.",
      default: 'left',
    }),
    /** Vehicles pass here, so the trench goes deeper. */
    vehicles: flag({
      label: 'Vehicles pass here',
      hint: 'The trench goes deeper: {0.45 m} to {0.6 m} (common practice).',
      column: true,
      default: false,
    }),
    status,
    note,
  },
});
