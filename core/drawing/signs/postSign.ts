import type { Post } from '../../model/things.ts';
import type { Item, PaperPoint } from '../displayList.ts';
import { box, circle, polygon } from '../paint.ts';
import { type Pen, paperPen, penStroke } from '../pen.ts';
import { type Sign, squareAround } from './sign.ts';

export const postReachMm = 0.75;

/** A post that tapes are measured from: strainer a square, angle post a lozenge, any other a dot; a bare rim about it. */
export function postSign(at: PaperPoint, role: Post['role'], pen: Pen = paperPen): Sign {
  return { items: [look(at, role, pen)], covers: squareAround(at, postReachMm * pen.unit) };
}

function look([x, y]: PaperPoint, role: Post['role'], pen: Pen): Item {
  const { unit, inks } = pen;
  const rim = penStroke(pen, 0.2, { ink: inks.paper });
  if (role === 'strainer') return box(squareAround([x, y], 0.6 * unit), inks.ink, rim);
  if (role === 'other') return circle([x, y], 0.55 * unit, inks.ink, rim);
  const reach = 0.85 * unit;
  const lozenge: PaperPoint[] = [
    [x, y - reach],
    [x + reach, y],
    [x, y + reach],
    [x - reach, y],
  ];
  return polygon(lozenge, inks.ink, rim);
}
