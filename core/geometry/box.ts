import { boxTree } from './boxTree.ts';
import type { Xy } from './types.ts';

/** Boxes with sides along the axes of the working plane: metres, `[west, south, east, north]`. */

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

/** Boxes that are looked up together. */
const groupSize = 16;

/**
 * The pairs of boxes that come within `marginM` of each other, each pair once as `first, second` with `first < second`,
 * in no order. `boxes` holds west, south, east, north of one box after the other.
 */
export function boxPairs(boxes: Float64Array, marginM: number): number[] {
  const count = boxes.length / 4;
  if (count < 2) return [];
  const tree = boxTree(count, (add) => {
    for (let i = 0; i < boxes.length; i += 4) add(boxes[i]!, boxes[i + 1]!, boxes[i + 2]!, boxes[i + 3]!);
  });
  // As the tree has packed them, neighbours stand together, so that one search does for a whole group.
  const packed = tree.search([-Infinity, -Infinity, Infinity, Infinity]);
  const pairs: number[] = [];
  for (let start = 0; start < count; start += groupSize) {
    const group = packed.slice(start, start + groupSize);
    const near = tree.search(boxOfGroup(boxes, group, marginM));
    for (const first of group) {
      const west = boxes[4 * first]! - marginM;
      const south = boxes[4 * first + 1]! - marginM;
      const east = boxes[4 * first + 2]! + marginM;
      const north = boxes[4 * first + 3]! + marginM;
      for (const second of near) {
        if (second <= first || boxes[4 * second]! > east || boxes[4 * second + 2]! < west) continue;
        if (boxes[4 * second + 1]! <= north && boxes[4 * second + 3]! >= south) pairs.push(first, second);
      }
    }
  }
  return pairs;
}

function boxOfGroup(boxes: Float64Array, group: readonly number[], marginM: number): [number, number, number, number] {
  let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const item of group) {
    west = Math.min(west, boxes[4 * item]!);
    south = Math.min(south, boxes[4 * item + 1]!);
    east = Math.max(east, boxes[4 * item + 2]!);
    north = Math.max(north, boxes[4 * item + 3]!);
  }
  return [west - marginM, south - marginM, east + marginM, north + marginM];
}
