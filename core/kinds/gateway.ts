import { alongLineM, lineEnd, note, ownName, status } from './common.ts';
import { kind } from './describe.ts';
import { choice, flag, lengthM, like, reference } from './fields.ts';

/** Which side a gate swings to, looking along the line from start to end. */
const swing = choice(['left', 'right']);

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
      min: 0.5,
      max: 60,
      column: true,
      default: 4.2,
      ownEdit: true,
    }),
    leaves: choice([1, 2], { column: true, default: 1 }),
    /** The post that a single gate hangs from. */
    hungFrom: like(lineEnd, { default: 'start' }),
    /** The side it swings to, looking along the line from start to end. */
    opens: like(swing, {
      default: 'left',
    }),
    /** Vehicles pass here, so the trench goes deeper. */
    vehicles: flag({
      column: true,
      default: false,
    }),
    status,
    note,
  },
});
