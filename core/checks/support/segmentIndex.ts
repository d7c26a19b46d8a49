import { type Box, boxAround, boxesMeet } from '../../geometry/box.ts';
import { type BoxTree, boxTree } from '../../geometry/boxTree.ts';
import { type NearestOnSegment, nearestOnSegment } from '../../geometry/polyline.ts';
import type { Xy } from '../../geometry/types.ts';
import { keptFor } from '../../model/memo.ts';

/** Up to this many segments are simply looked through. */
const fewSegments = 16;

interface Indexed {
  readonly boxes: readonly Box[];
  readonly tree: BoxTree | null;
}

/** Segments of a path (or the one point of a point) whose boxes share a point with a box, in order. */
export function segmentsNear(path: readonly Xy[], box: Box): number[] {
  const { boxes, tree } = indexOf(path);
  if (tree) return tree.search(box).sort((a, b) => a - b);
  const near: number[] = [];
  for (let i = 0; i < boxes.length; i++) if (boxesMeet(boxes[i]!, box)) near.push(i);
  return near;
}

/** The nearest place of a path within a distance of a point, or null. */
export function nearestWithin(path: readonly Xy[], point: Xy, withinM: number): NearestOnSegment | null {
  const [x, y] = point;
  let nearest: NearestOnSegment | null = null;
  for (const i of segmentsNear(path, [x - withinM, y - withinM, x + withinM, y + withinM])) {
    const here = nearestOnSegment(point, path[i]!, path[i + 1] ?? path[i]!);
    if (here.distanceM <= withinM && here.distanceM < (nearest?.distanceM ?? Infinity)) nearest = here;
  }
  return nearest;
}

export function segmentBox(a: Xy, b: Xy, marginM = 0): Box {
  return [
    Math.min(a[0], b[0]) - marginM,
    Math.min(a[1], b[1]) - marginM,
    Math.max(a[0], b[0]) + marginM,
    Math.max(a[1], b[1]) + marginM,
  ];
}

const indexOf = keptFor((path: readonly Xy[]): Indexed => {
  const boxes = path.length === 1 ? [boxAround(path)!] : path.slice(1).map((end, i) => segmentBox(path[i]!, end));
  return { boxes, tree: boxes.length > fewSegments ? packed(boxes) : null };
});

function packed(boxes: readonly Box[]): BoxTree {
  return boxTree(boxes.length, (add) => {
    for (const box of boxes) add(...box);
  });
}
