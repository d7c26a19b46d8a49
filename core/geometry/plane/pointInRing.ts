import type { Xy } from '../types.ts';

/**
 * Whether a point lies inside a ring, by counting crossings to the east. Points on the boundary may fall either way.
 * The last vertex may repeat the first or not.
 */
export function pointInRing([x, y]: Xy, ring: readonly Xy[]): boolean {
  let inside = false;
  for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
    const [ax, ay] = ring[i]!;
    const [bx, by] = ring[j]!;
    if (ay > y !== by > y && x < ax + ((bx - ax) * (y - ay)) / (by - ay)) inside = !inside;
  }
  return inside;
}
