import type { Item, PaperBox, PaperPoint } from '../displayList.ts';

/** A sign on the map and the paper that it takes, which labels and other signs keep clear of. */
export interface Sign {
  readonly items: readonly Item[];
  readonly covers: PaperBox;
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

export function squareAround([x, y]: PaperPoint, halfMm: number): PaperBox {
  return [x - halfMm, y - halfMm, x + halfMm, y + halfMm];
}

export function boxAroundPaper(points: readonly PaperPoint[], rimMm: number): PaperBox {
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  return [Math.min(...xs) - rimMm, Math.min(...ys) - rimMm, Math.max(...xs) + rimMm, Math.max(...ys) + rimMm];
}
