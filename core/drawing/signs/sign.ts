import { largestOf, leastOf } from '../../model/extremes.ts';
import type { Item, PaperBox, PaperPoint } from '../displayList.ts';

/** A sign on the map and the paper that it takes, which labels and other signs keep clear of. */
export interface Sign {
  readonly items: readonly Item[];
  readonly covers: PaperBox;
}

/** A sign with room between its strokes: labels may stand there. */
export interface OpenSign extends Sign {
  /** What its strokes take. */
  readonly parts: readonly PaperBox[];
}

/** Direction on the page with length 1; to the right where there is none. */
export function paperDirection(from: PaperPoint, to: PaperPoint): PaperPoint {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  return length === 0 ? [1, 0] : [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
}

/** What lies to the left of a direction, seen on the page (whose y runs down). */
export function paperLeft([x, y]: PaperPoint): PaperPoint {
  return [y, -x];
}

/** The point `along` mm from `from` in direction `u`, then `left` mm to its left. */
export function paperShift(from: PaperPoint, u: PaperPoint, along: number, left = 0): PaperPoint {
  const [nx, ny] = paperLeft(u);
  return [from[0] + u[0] * along + nx * left, from[1] + u[1] * along + ny * left];
}

/** Boxes along some paths, none longer than `stepMm`: what a large open sign really takes of the page. */
export function boxesAlong(paths: readonly (readonly PaperPoint[])[], rimMm: number, stepMm = 3): PaperBox[] {
  return paths.flatMap((path) =>
    path.slice(1).flatMap((to, i) => {
      const from = path[i]!;
      const parts = Math.max(1, Math.ceil(Math.hypot(to[0] - from[0], to[1] - from[1]) / stepMm));
      const at = (k: number): PaperPoint => [
        from[0] + ((to[0] - from[0]) * k) / parts,
        from[1] + ((to[1] - from[1]) * k) / parts,
      ];
      return Array.from({ length: parts }, (_, k) => boxAroundPaper([at(k), at(k + 1)], rimMm));
    }),
  );
}

export function squareAround([x, y]: PaperPoint, halfMm: number): PaperBox {
  return [x - halfMm, y - halfMm, x + halfMm, y + halfMm];
}

export function boxAroundPaper(points: readonly PaperPoint[], rimMm: number): PaperBox {
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  return [leastOf(xs) - rimMm, leastOf(ys) - rimMm, largestOf(xs) + rimMm, largestOf(ys) + rimMm];
}
