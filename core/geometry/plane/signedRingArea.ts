import type { Xy } from '../types.ts';

/**
 * Area of a plane ring, square metres, positive when it runs anticlockwise. The last vertex may repeat the first or
 * not. Tells which way a ring runs and which of two is larger; areas for people come from `geodesic.ts`.
 */
export function signedRingArea(ring: readonly Xy[]): number {
  const origin = ring[0];
  if (!origin) return 0;
  let twice = 0;
  let [px, py] = [0, 0];
  for (let i = 1; i < ring.length; i++) {
    const x = ring[i]![0] - origin[0];
    const y = ring[i]![1] - origin[1];
    twice += px * y - x * py;
    [px, py] = [x, y];
  }
  return twice / 2;
}
