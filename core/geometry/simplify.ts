import type { Xy } from './types.ts';

/**
 * A path with fewer vertices that stays within `toleranceM` of the one given: every vertex dropped lies at most that
 * far from the segment that replaces it. Both ends stay. D. H. Douglas and T. K. Peucker, "Algorithms for the reduction
 * of the number of points required to represent a digitized line", Cartographica 10, 1973; without recursion, so
 * that a long track cannot overflow the stack. Where a path turns so that the farthest vertex keeps lying near one end,
 * which would take time by the square of its vertices, stretches are halved instead: a vertex more may stay there than
 * must, the tolerance holds all the same, and the time grows as n log n.
 * @throws RangeError for a tolerance below 0.
 */
export function simplify(path: readonly Xy[], toleranceM: number): Xy[] {
  return keptVertices(path, toleranceM).map((index) => path[index]!);
}

/** Which vertices of a path `simplify` keeps, so that what goes with a vertex (height, time) can be kept with it. */
export function keptVertices(path: readonly Xy[], toleranceM: number): number[] {
  if (!(toleranceM >= 0)) throw new RangeError(`The tolerance must be 0 m or more; it is ${toleranceM}.`);
  const count = path.length;
  const xs = Float64Array.from(path, ([x]) => x);
  const ys = Float64Array.from(path, ([, y]) => y);
  const kept = new Uint8Array(count);
  if (count > 0) kept[0] = kept[count - 1] = 1;
  const deepest = 2 * Math.ceil(Math.log2(count + 1)) + spareDepth;
  const spans: (readonly [first: number, last: number, depth: number])[] = [[0, count - 1, 0]];
  for (let span = spans.pop(); span; span = spans.pop()) {
    const [first, last, depth] = span;
    const farthest = farthestBeyond(xs, ys, first, last, toleranceM);
    if (farthest < 0) continue;
    const split = depth < deepest || isInMiddle(farthest, first, last) ? farthest : (first + last) >> 1;
    kept[split] = 1;
    spans.push([first, split, depth + 1], [split, last, depth + 1]);
  }
  const indices: number[] = [];
  for (let index = 0; index < count; index++) if (kept[index]) indices.push(index);
  return indices;
}

/** Splits beyond those of an even halving, before stretches are halved: ordinary tracks stay far below. */
const spareDepth = 16;

function isInMiddle(vertex: number, first: number, last: number): boolean {
  const quarter = (last - first) / 4;
  return vertex - first >= quarter && last - vertex >= quarter;
}

/** The vertex between two that is farthest from the segment between them, if it is more than `toleranceM` away; else -1. */
function farthestBeyond(xs: Float64Array, ys: Float64Array, first: number, last: number, toleranceM: number): number {
  const [x, y] = [xs[first]!, ys[first]!];
  const [dx, dy] = [xs[last]! - x, ys[last]! - y];
  const lengthSquared = dx * dx + dy * dy;
  let farthest = -1;
  let mostSquared = toleranceM * toleranceM;
  for (let i = first + 1; i < last; i++) {
    const [px, py] = [xs[i]! - x, ys[i]! - y];
    const raw = lengthSquared === 0 ? 0 : (px * dx + py * dy) / lengthSquared;
    const along = Math.max(0, Math.min(1, raw));
    const [offX, offY] = [px - along * dx, py - along * dy];
    const squared = offX * offX + offY * offY;
    if (squared > mostSquared) {
      mostSquared = squared;
      farthest = i;
    }
  }
  return farthest;
}
