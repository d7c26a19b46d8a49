import { nearestOnSegment } from './plane/nearestOnSegment.ts';
import type { Xy } from './types.ts';

/**
 * A path with fewer vertices that stays within `toleranceM` of the one given: every vertex dropped lies at most that
 * far from the segment that replaces it. Both ends stay. D. H. Douglas and T. K. Peucker, "Algorithms for the reduction
 * of the number of points required to represent a digitized line", Cartographica 10, 1973; without recursion, so
 * that a long track cannot overflow the stack.
 * @throws RangeError for a tolerance below 0.
 */
export function simplify(path: readonly Xy[], toleranceM: number): Xy[] {
  return keptVertices(path, toleranceM).map((index) => path[index]!);
}

/** Which vertices of a path `simplify` keeps, so that what goes with a vertex (height, time) can be kept with it. */
export function keptVertices(path: readonly Xy[], toleranceM: number): number[] {
  if (!(toleranceM >= 0)) throw new RangeError(`The tolerance must be 0 m or more; it is ${toleranceM}.`);
  const kept = new Uint8Array(path.length);
  if (path.length > 0) kept[0] = kept[path.length - 1] = 1;
  const spans: [number, number][] = [[0, path.length - 1]];
  for (let span = spans.pop(); span; span = spans.pop()) {
    const [first, last] = span;
    const { vertex, distanceM } = farthest(path, first, last);
    if (distanceM <= toleranceM) continue;
    kept[vertex] = 1;
    spans.push([first, vertex], [vertex, last]);
  }
  return Array.from(path.keys()).filter((index) => kept[index]);
}

function farthest(path: readonly Xy[], first: number, last: number): { vertex: number; distanceM: number } {
  let farthest = { vertex: first, distanceM: 0 };
  for (let vertex = first + 1; vertex < last; vertex++) {
    const { distanceM } = nearestOnSegment(path[vertex]!, path[first]!, path[last]!);
    if (distanceM > farthest.distanceM) farthest = { vertex, distanceM };
  }
  return farthest;
}
