import { growth, note, ownName } from './common.ts';
import { crossingFigures } from './crossing.ts';
import { kind, type ValueOf } from './describe.ts';
import { choice, flag, lengthM, neverNothing, number, orNone, place, record, whole } from './fields.ts';

/** A cost relative to that of a switch at a gateway. */
export const relativeCost = number('x', { min: 0.1, max: 100, decimals: 1 });

/** Common practice, no source. */
export const costFields = {
  gateway: { ...relativeCost, default: 1 },
  takeOff: { ...relativeCost, default: 1.3 },
  alongRun: { ...relativeCost, default: 2 },
};

/** Limits and relative costs as the design sets them; common practice, no source. */
export const divideFields = {
  /** Longest fence length that a section may have. */
  maxSectionM: lengthM({ min: 50, max: 1e6, file: neverNothing, default: 5000 }),
  /** Most gateways that a section may have, or no such limit. */
  maxGateways: orNone(whole({ unit: 'gateways', min: 1, max: 1000 }), {
    default: null,
  }),
  /** What a switch costs, relative to one at a gateway. */
  costs: record(costFields),
};
const divide = record(divideFields);
export type DivideSettings = ValueOf<typeof divide>;

export const powerFields = {
  growth,
  /** Least peak voltage that holds the stock. 4 kV: where the pressure of stock is high; common practice, no source. */
  stockMinimumV: number('V', { max: 20_000, decimals: 0, default: 4000 }),
  /** Resistivity of the soil at the earth field. 100 ohm m: a middling loam. */
  soilOhmM: number('ohm m', {
    min: 1,
    max: 1e5,
    decimals: 1,
    file: neverNothing,
    default: 100,
  }),
};
const power = record(powerFields);
export type PowerSettings = ValueOf<typeof power>;

const { depthM, riserHeightM, tailM, allowanceM, pipeBoreMm, minBendRadiusM, earthConnectionM } = crossingFigures;

/** What a new crossing is given. Sources and assumptions: see `crossing.ts`. */
const crossings = record({
  /** The bow (sagitta) of the trench as a share of the opening's width. An assumption of this project. */
  bowShare: number('', { max: 1, default: 0.25 }),
  depthM,
  /** Depth where vehicles pass. Common practice, no source. */
  vehicleDepthM: { ...depthM, default: 0.45 },
  riserHeightM,
  tailM,
  allowanceM,
  pipeBoreMm,
  minBendRadiusM,
  earthConnectionM,
});
export type CrossingDefaults = ValueOf<typeof crossings>;

/** The property itself and the figures that hold for all of it. There is exactly one, with id `property`. */
export const property = kind('property', {
  onlyId: 'property',
  lists: ['drawing', 'keptPlan', 'handover', 'exchange', 'counted', 'placeless'],
  fields: {
    name: ownName,
    note,
    /** True for an invented example; every sheet then says so. */
    invented: flag({ default: false }),
    /** Centre of the working plane. */
    origin: place({ ownEdit: true }),
    /** False: drawn on the blank grid, with no place on earth yet (`origin` is then a stand-in). */
    placed: flag({ ownEdit: true }),
    units: choice(['metric', 'imperial'], { default: 'metric' }),
    /** Ends nearer than this join. */
    snapToleranceM: lengthM({ min: 0.01, max: 5, default: 0.3 }),
    divide,
    power,
    crossings,
  },
});
