import type { Xy } from '../types.ts';
import { pointAtStation } from './pointAtStation.ts';

/**
 * The piece of a path between two stations, metres from its start, clipped to the path; it runs backwards where
 * `fromM` is larger than `toM`. A piece without length is one point twice.
 * @throws RangeError for a path with fewer than two vertices or a station that is not a number.
 */
export function slicePolyline(path: readonly Xy[], fromM: number, toM: number): Xy[] {
  if (fromM > toM) return slicePolyline(path, toM, fromM).reverse();
  const start = pointAtStation(path, fromM);
  const end = pointAtStation(path, toM);
  const inner = path.slice(start.segment + 1, end.segment + 1);
  while (inner[0] && same(inner[0], start.point)) inner.shift();
  while (inner.length > 0 && same(inner.at(-1)!, end.point)) inner.pop();
  return [start.point, ...inner, end.point];
}

function same(a: Xy, b: Xy): boolean {
  return a[0] === b[0] && a[1] === b[1];
}
