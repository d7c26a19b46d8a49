import type { HeightGrid } from '../../model/groundThings.ts';
import type { LonLat } from '../../model/things.ts';
import { type GridPlan, placesOf } from './planGrid.ts';

/** The heights that an elevation model gives at the places of a grid; places where it knows none are null. */
export function heightsOn(plan: GridPlan, heightM: (lonLat: LonLat) => number | null): HeightGrid {
  const heightsDm = Array.from(placesOf(plan), (place) => {
    const height = heightM(place);
    return height === null ? null : Math.round(height * 10);
  });
  return { as: 'grid', ...plan, heightsDm };
}

/** The share of a grid's places whose height is known. */
export function shareKnown({ heightsDm }: HeightGrid): number {
  return heightsDm.filter((height) => height !== null).length / heightsDm.length;
}
