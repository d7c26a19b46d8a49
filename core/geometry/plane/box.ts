/** Boxes with sides along the axes of the working plane: metres, `[west, south, east, north]`. */
import type { Xy } from '../types.ts';

export type Box = readonly [minX: number, minY: number, maxX: number, maxY: number];

/** The smallest box around some points; null where there are none. */
export function boxAround(points: Iterable<Xy>): Box | null {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of points) {
    if (x < minX) minX = x;
    if (x > maxX) maxX = x;
    if (y < minY) minY = y;
    if (y > maxY) maxY = y;
  }
  return minX <= maxX ? [minX, minY, maxX, maxY] : null;
}

/** The box of the segment from `a` to `b`. */
export function boxOfSegment(a: Xy, b: Xy): Box {
  return [Math.min(a[0], b[0]), Math.min(a[1], b[1]), Math.max(a[0], b[0]), Math.max(a[1], b[1])];
}

/** The box with every side moved out by `marginM`. */
export function growBox(box: Box, marginM: number): Box {
  return [box[0] - marginM, box[1] - marginM, box[2] + marginM, box[3] + marginM];
}

/** Whether two boxes share a point; edges count. */
export function boxesMeet(a: Box, b: Box): boolean {
  return a[0] <= b[2] && b[0] <= a[2] && a[1] <= b[3] && b[1] <= a[3];
}

/** Distance from a point to a box, metres; 0 inside. */
export function boxDistanceM([x, y]: Xy, [minX, minY, maxX, maxY]: Box): number {
  return Math.hypot(Math.max(minX - x, 0, x - maxX), Math.max(minY - y, 0, y - maxY));
}
