import type { Xy } from '../types.ts';

/** Straight distance in the working plane, metres. For snapping and drawing; lengths for people come from `geodesic.ts`. */
export function xyDistanceM(a: Xy, b: Xy): number {
  return Math.hypot(b[0] - a[0], b[1] - a[1]);
}
