import type { HeightGrid } from '../../model/groundThings.ts';
import type { LonLat } from '../../model/things.ts';

const metresPerDm = 0.1;

/** Height at a place between the places of a grid, linear both ways (bilinear); null outside, or beside a gap. */
export function gridHeightM(grid: HeightGrid, [lon, lat]: LonLat): number | null {
  const { northWest, stepLonDeg, stepLatDeg, columns, rows, heightsDm } = grid;
  // The grid may lie across the 180 meridian.
  const eastward = ((((lon - northWest[0] + 540) % 360) + 360) % 360) - 180;
  const x = eastward / stepLonDeg;
  const y = (northWest[1] - lat) / stepLatDeg;
  if (!(x >= 0 && y >= 0 && x <= columns - 1 && y <= rows - 1)) return null;
  const [left, top] = [Math.min(Math.floor(x), columns - 2), Math.min(Math.floor(y), rows - 2)];
  const [u, v] = [x - left, y - top];
  let sumDm = 0;
  for (const [column, row, share] of [
    [left, top, (1 - u) * (1 - v)],
    [left + 1, top, u * (1 - v)],
    [left, top + 1, (1 - u) * v],
    [left + 1, top + 1, u * v],
  ] as const) {
    if (share === 0) continue;
    const heightDm = heightsDm[row * columns + column] ?? null;
    if (heightDm === null) return null;
    sumDm += share * heightDm;
  }
  return sumDm * metresPerDm;
}
