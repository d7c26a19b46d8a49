import { message } from '../words/message.ts';
import { note, ownName } from './common.ts';
import { kind, type ValueOf, type ValuesOf } from './describe.ts';
import { flag, list, most, number, orNone, path, place, record, shortText, tagged, whole } from './fields.ts';

/** Most positions that ways may have together. */
export const mostWayPositions = 200_000;

/** Most places that a grid in a property may have. */
export const mostGridPlaces = 250_000;

const stepDeg = number('degrees', { min: 1e-9, max: 10, file: { min: 1e-9, max: 10 } });
const side = whole({ min: 2, max: mostGridPlaces, file: { min: 2, max: mostGridPlaces } });
const heightM = { min: -1000, max: 10_000 };
const heightDm = { min: 10 * heightM.min, max: 10 * heightM.max };

const wayFields = {
  path: path(2),
  heightsM: list(number('m', { ...heightM, file: heightM }), {
    most: most.vertices,
    mustBe: message('kinds.mustBe.heightList'),
  }),
};
/** A height for each position of a way. */
export type HeightWay = ValuesOf<typeof wayFields>;

const heights = tagged(
  'as',
  {
    /** Heights along ways. */
    along: {
      ways: list(record(wayFields), { most: mostWayPositions / 2, mustBe: message('kinds.mustBe.ways') }),
      /** Measured with a receiver, whose heights wander by metres from one moment to the next. */
      byReceiver: flag(),
    },
    /** Heights on a lattice of places, row by row from the north-west corner. */
    grid: {
      northWest: place(),
      /** From one place to the next, degrees east and degrees south. */
      stepLonDeg: stepDeg,
      stepLatDeg: stepDeg,
      columns: side,
      rows: side,
      /** Whole decimetres; null where the file knows no height. */
      heightsDm: list(orNone(whole({ ...heightDm, file: heightDm })), {
        most: mostGridPlaces,
        mustBe: message('kinds.mustBe.heightList'),
      }),
    },
  },
  { mustBe: message('kinds.mustBe.heights') },
);
type Heights = ValueOf<typeof heights>;
export type HeightsAlong = Extract<Heights, { readonly as: 'along' }>;
export type HeightGrid = Extract<Heights, { readonly as: 'grid' }>;

/**
 * Heights of the ground, metres above the sea as the file gives them. They belong to the ground, not to the fences that
 * stand on it: no edit of a fence changes them, and a fence that is moved lies over what is there.
 */
export const ground = kind('ground', {
  lists: ['exchange', 'counted', 'plain'],
  fields: {
    name: ownName,
    /** The file that they came in. */
    fileName: shortText(),
    heights,
    note,
  },
});
