import type { HeightGrid, HeightsAlong } from '../../model/groundThings.ts';
import type { LonLat } from '../../model/things.ts';
import { type GridPlan, placesOf } from './planGrid.ts';

/** The heights that an elevation model gives at the places of a grid; places where it knows none are null. */
export function heightsOn(plan: GridPlan, heightM: (lonLat: LonLat, index: number) => number | null): HeightGrid {
  const heightsDm = Array.from(placesOf(plan), (place, index) => {
    const height = heightM(place, index);
    return height === null ? null : Math.round(height * 10);
  });
  return { as: 'grid', ...plan, heightsDm };
}

/** The share of a grid's places whose height is known. */
export function shareKnown({ heightsDm }: HeightGrid): number {
  return heightsDm.filter((height) => height !== null).length / heightsDm.length;
}

/** The lowest and the highest of some heights, metres; null where none is known. */
export function rangeOf(
  heights: HeightGrid | HeightsAlong,
): { readonly lowestM: number; readonly highestM: number } | null {
  let [lowestM, highestM] = [Infinity, -Infinity];
  const see = (heightM: number) => {
    lowestM = Math.min(lowestM, heightM);
    highestM = Math.max(highestM, heightM);
  };
  if (heights.as === 'grid') {
    for (const height of heights.heightsDm) if (height !== null) see(height / 10);
  } else for (const { heightsM } of heights.ways) for (const heightM of heightsM) see(heightM);
  return lowestM > highestM ? null : { lowestM, highestM };
}
