import { type BoxTree, boxTree } from '../geometry/boxTree.ts';
import type { Xy } from '../geometry/types.ts';
import { keptFor } from '../model/memo.ts';
import type { MeasuredPath } from './measuredPath.ts';

/** Up to this many segments are simply looked through. */
const fewSegments = 24;

/** Segments of a path whose box comes within `reachM` of a point, in order along the path. */
export function segmentsNear(geometry: MeasuredPath, [x, y]: Xy, reachM: number): number[] {
  const { xy } = geometry;
  if (xy.length - 1 > fewSegments) {
    const found = treeOf(geometry).search([x - reachM, y - reachM, x + reachM, y + reachM]);
    return found.length > 1 ? found.sort((a, b) => a - b) : found;
  }
  const near: number[] = [];
  for (let i = 1; i < xy.length; i++) {
    const [ax, ay] = xy[i - 1]!;
    const [bx, by] = xy[i]!;
    if (Math.max(ax, bx) < x - reachM || Math.min(ax, bx) > x + reachM) continue;
    if (Math.max(ay, by) < y - reachM || Math.min(ay, by) > y + reachM) continue;
    near.push(i - 1);
  }
  return near;
}

const treeOf = keptFor(
  ({ xy }: MeasuredPath): BoxTree =>
    boxTree(xy.length - 1, (add) => {
      for (let i = 1; i < xy.length; i++) {
        const [ax, ay] = xy[i - 1]!;
        const [bx, by] = xy[i]!;
        add(Math.min(ax, bx), Math.min(ay, by), Math.max(ax, bx), Math.max(ay, by));
      }
    }),
);
