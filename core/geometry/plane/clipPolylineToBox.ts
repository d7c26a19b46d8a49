import type { Xy } from '../types.ts';
import type { Box } from './box.ts';
import { between } from './vector.ts';

/**
 * The pieces of a path inside a box, in order, each with at least two vertices. Segment by segment after Y.-D. Liang
 * and B. A. Barsky, "A new concept and method for line clipping", ACM Transactions on Graphics 3, 1984.
 */
export function clipPolylineToBox(path: readonly Xy[], box: Box): Xy[][] {
  const pieces: Xy[][] = [];
  let piece: Xy[] = [];
  const finish = () => {
    if (piece.length > 1) pieces.push(piece);
    piece = [];
  };
  for (let i = 1; i < path.length; i++) {
    const a = path[i - 1]!;
    const b = path[i]!;
    const inside = stretchInside(a, b, box);
    if (!inside) {
      finish();
      continue;
    }
    const [enter, leave] = inside;
    if (enter > 0) finish();
    if (piece.length === 0) piece.push(between(a, b, enter));
    if (leave > enter) piece.push(between(a, b, leave));
    if (leave < 1) finish();
  }
  finish();
  return pieces;
}

/** Fractions along the segment where it enters and leaves the box; null where it stays outside. */
function stretchInside(a: Xy, b: Xy, [minX, minY, maxX, maxY]: Box): readonly [number, number] | null {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  let enter = 0;
  let leave = 1;
  for (const [step, room] of [
    [-dx, a[0] - minX],
    [dx, maxX - a[0]],
    [-dy, a[1] - minY],
    [dy, maxY - a[1]],
  ] as const) {
    if (step === 0) {
      if (room < 0) return null;
    } else if (step < 0) enter = Math.max(enter, room / step);
    else leave = Math.min(leave, room / step);
  }
  return enter <= leave ? [enter, leave] : null;
}
