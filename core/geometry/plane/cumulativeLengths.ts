import type { Xy } from '../types.ts';
import { xyDistanceM } from './xyDistance.ts';

/** The station of every vertex: metres along the path from its start. As many as there are vertices; the last is the length. */
export function cumulativeLengthsM(path: readonly Xy[]): number[] {
  let station = 0;
  return path.map((vertex, i) => {
    if (i > 0) station += xyDistanceM(path[i - 1]!, vertex);
    return station;
  });
}
