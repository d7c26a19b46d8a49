import type { LonLat } from './things.ts';

/**
 * Heights of the ground, metres above the sea as the file gives them. They belong to the ground, not to the fences that
 * stand on it: no edit of a fence changes them, and a fence that is moved lies over what is there.
 */
export interface GroundHeights {
  readonly kind: 'ground';
  readonly id: string;
  readonly name: string;
  /** The file that they came in. */
  readonly fileName: string;
  readonly heights: HeightsAlong | HeightGrid;
  readonly note: string;
}

/** Heights along ways. */
export interface HeightsAlong {
  readonly as: 'along';
  readonly ways: readonly HeightWay[];
  /** Measured with a receiver, whose heights wander by metres from one moment to the next. */
  readonly byReceiver: boolean;
}

/** A height for each position of a way. */
export interface HeightWay {
  readonly path: readonly LonLat[];
  readonly heightsM: readonly number[];
}

/** Heights on a lattice of places, row by row from the north-west corner. */
export interface HeightGrid {
  readonly as: 'grid';
  readonly northWest: LonLat;
  /** From one place to the next, degrees east and degrees south. */
  readonly stepLonDeg: number;
  readonly stepLatDeg: number;
  readonly columns: number;
  readonly rows: number;
  /** Whole decimetres; null where the file knows no height. */
  readonly heightsDm: readonly (number | null)[];
}

/** Most positions that ways may have together. */
export const mostWayPositions = 200_000;

/** Most places that a grid in a property may have. */
export const mostGridPlaces = 250_000;
