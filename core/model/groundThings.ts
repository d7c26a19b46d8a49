/** Heights of the ground: see `things.ts`. */
import type { ThingOf } from '../kinds/allKinds.ts';

export type { HeightGrid, HeightsAlong, HeightWay } from '../kinds/ground.ts';
export { mostGridPlaces, mostWayPositions } from '../kinds/ground.ts';

export type GroundHeights = ThingOf<'ground'>;
