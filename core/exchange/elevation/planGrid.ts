import { type HeightGrid, mostGridPlaces } from '../../model/groundThings.ts';
import type { LonLat } from '../../model/things.ts';

/** West, south, east, north; west is the larger where it lies across the 180 meridian. */
export type Area = readonly [west: number, south: number, east: number, north: number];

export type GridPlan = Omit<HeightGrid, 'as' | 'heightsDm'>;

const metresPerDegree = 111_320;
/** So much ground beyond the outermost fence. */
const marginM = 100;

/**
 * The lattice of places at which heights are kept for an area: as fine as the model they come from, or as fine as a
 * property may hold, where that is coarser.
 */
export function planGrid([west, south, east, north]: Area, cellM: number): GridPlan {
  const squeeze = Math.cos((((south + north) / 2) * Math.PI) / 180);
  const eastward = (((east - west) % 360) + 360) % 360;
  const widthM = eastward * metresPerDegree * squeeze + 2 * marginM;
  const heightM = (north - south) * metresPerDegree + 2 * marginM;
  const fewestM = Math.sqrt((widthM * heightM) / mostGridPlaces);
  // A little coarser than just fits, as whole places are counted on both sides.
  const stepM = Math.max(cellM, 1.05 * fewestM, widthM / 20_000, heightM / 20_000);
  const [columns, rows] = [widthM, heightM].map((lengthM) => Math.max(2, Math.ceil(lengthM / stepM) + 1));
  const [stepLonDeg, stepLatDeg] = [stepM / metresPerDegree / squeeze, stepM / metresPerDegree];
  const lon = west - marginM / metresPerDegree / squeeze;
  const northWest: LonLat = [lon < -180 ? lon + 360 : lon, Math.min(90, north + marginM / metresPerDegree)];
  return { northWest, stepLonDeg, stepLatDeg, columns: columns!, rows: rows! };
}

/** How far apart the places of a grid are, metres. */
export function stepOfGrid({ stepLatDeg }: Pick<GridPlan, 'stepLatDeg'>): number {
  return stepLatDeg * metresPerDegree;
}

/** Every place of a grid, row by row from the north-west. */
export function* placesOf({ northWest, stepLonDeg, stepLatDeg, columns, rows }: GridPlan): Generator<LonLat> {
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const lon = northWest[0] + column * stepLonDeg;
      yield [lon > 180 ? lon - 360 : lon, northWest[1] - row * stepLatDeg];
    }
  }
}
