import { coordinates } from './exchange/coordinates.ts';

/** Import, export, heights, coordinates. */
export const exchange = { coordinates };
