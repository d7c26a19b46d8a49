import { message } from '../words/message.ts';
import { hand, note, status } from './common.ts';
import { kind } from './describe.ts';
import { choice, flag, lengthM, like, looseReference, number, orNone, reference } from './fields.ts';

/** The widest gateway bounds every bow: the trench never leaves its opening by more than the opening is wide. */
export const bowM = lengthM({ max: 60 });

/**
 * Figures of a crossing, and of what a new one is given. Depths and pipe bore: common practice, no source. Riser height,
 * tails, allowance and the pipe's least bend radius (about 20 times the outer diameter of 19 mm low-density pipe) are
 * assumptions of this project; all can be changed, and every screen that shows them says so.
 */
export const crossingFigures = {
  /** No trencher cuts deeper than 3 m; a slip here would tell a digger that nothing lies near the surface. */
  depthM: lengthM({ max: 3, column: 'planned_trench_depth_m', default: 0.3 }),
  /** Height of the riser pipe above ground; of an overhead wire, its height. */
  riserHeightM: lengthM({ max: 10, default: 0.9 }),
  /** Spare cable beyond each end of the pipe. */
  tailM: lengthM({ max: 10, default: 1 }),
  /** Added to the pipe for bends and trimming. */
  allowanceM: lengthM({ max: 10, default: 0.3 }),
  /** 19 mm is usual; no cable goes through less than 5, and no pipe over 200 mm goes under a gateway. */
  pipeBoreMm: number('mm', { min: 5, max: 200, decimals: 1, column: true, default: 19 }),
  minBendRadiusM: lengthM({ max: 10, default: 0.5 }),
  /** Height above ground at which the earth cable is joined. */
  earthConnectionM: lengthM({ max: 3, default: 0.3 }),
};

/** Both riser ends plugged: yes, no, or not noted. */
const sealed = orNone(flag(), { column: 'risers_sealed', default: null });

/** How the live wire and the earth get past a gateway. At most one for each gateway. */
export const crossing = kind('crossing', {
  lists: ['drawing', 'keptPlan', 'handover', 'changes', 'exchange', 'network', 'counted'],
  fields: {
    gatewayId: reference('gateway', { ownEdit: true, column: 'gateway' }),
    method: choice(['buried', 'overhead'], { column: true, default: 'buried' }),
    /** Bow of the trench; `null` takes the default share of the opening's width. */
    bowM: orNone(bowM, {
      atMost: {
        through: 'gatewayId',
        field: 'widthM',
        advice: message('kinds.advice.bow'),
      },
      default: null,
    }),
    /** Which side the trench bows to, looking along the line from start to end. */
    bowSide: like(hand, { default: 'left' }),
    ...crossingFigures,
    /** Conductor of the live cable: id of a library conductor or of a `conductor` thing. */
    cableId: looseReference('conductor', { column: 'cable', default: 'cable-steel-2.5' }),
    /** The earth goes across too: a cable in the trench, or a wire overhead. */
    earth: flag({ default: true }),
    sealed,
    status,
    note,
  },
});
