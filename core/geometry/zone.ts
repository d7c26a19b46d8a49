import type { Xy } from './types.ts';
import { cross, dot, subtract } from './vector.ts';

/**
 * The part of the segment from `a` to `b` that lies within a distance of the segment from `c` to `d`, as fractions of
 * it; null where none does. The zone is a strip with round ends. It bulges nowhere inward, so that the part is one
 * stretch: from the first place inside the strip or either end's circle to the last. A segment without length is a
 * point, of either.
 */
export function stretchInZone(a: Xy, b: Xy, c: Xy, d: Xy, withinM: number): readonly [number, number] | null {
  const way = subtract(b, a);
  let [from, to] = [Infinity, -Infinity];
  const take = (first: number, last: number): void => {
    if (!(first <= 1 && last >= 0 && first <= last)) return;
    from = Math.min(from, Math.max(0, first));
    to = Math.max(to, Math.min(1, last));
  };
  takeCircle(a, way, c, withinM, take);
  takeCircle(a, way, d, withinM, take);
  takeStrip(a, way, c, d, withinM, take);
  return from <= to ? [from, to] : null;
}

type Take = (first: number, last: number) => void;

/** Where `a + t way` is within a distance of a point. */
function takeCircle(a: Xy, way: Xy, centre: Xy, withinM: number, take: Take): void {
  const off = subtract(a, centre);
  const squared = dot(way, way);
  if (squared === 0) {
    if (Math.hypot(off[0], off[1]) <= withinM) take(0, 1);
    return;
  }
  // Half the chord from the foot of the perpendicular: its offset comes from the cross product, which loses no digits.
  const offM = cross(way, off) / Math.sqrt(squared);
  const halfSquared = withinM * withinM - offM * offM;
  if (halfSquared < 0) return;
  const foot = -dot(way, off) / squared;
  const half = Math.sqrt(halfSquared / squared);
  take(foot - half, foot + half);
}

/** Where `a + t way` is beside the segment, within a distance. */
function takeStrip(a: Xy, way: Xy, c: Xy, d: Xy, withinM: number, take: Take): void {
  const axis = subtract(d, c);
  const lengthM = Math.hypot(axis[0], axis[1]);
  if (lengthM === 0) return;
  const off = subtract(a, c);
  let [first, last] = [0, 1];
  for (const [start, step, least, most] of [
    [dot(axis, off) / lengthM, dot(axis, way) / lengthM, 0, lengthM],
    [cross(axis, off) / lengthM, cross(axis, way) / lengthM, -withinM, withinM],
  ] as const) {
    if (step === 0) {
      if (start < least || start > most) return;
      continue;
    }
    const [p, q] = [(least - start) / step, (most - start) / step];
    first = Math.max(first, Math.min(p, q));
    last = Math.min(last, Math.max(p, q));
  }
  take(first, last);
}
