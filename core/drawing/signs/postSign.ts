import type { Post } from '../../model/things.ts';
import type { Item, PaperPoint } from '../displayList.ts';
import { box, circle, polygon } from '../paint.ts';
import { ink } from '../style.ts';
import { type Sign, squareAround } from './sign.ts';

/** A post that tapes are measured from: strainer a square, angle post a lozenge, any other a dot. */
export function postSign(at: PaperPoint, role: Post['role']): Sign {
  return { items: [look(at, role)], covers: squareAround(at, 0.75) };
}

function look([x, y]: PaperPoint, role: Post['role']): Item {
  if (role === 'strainer') return box(squareAround([x, y], 0.5), ink.black);
  if (role === 'other') return circle([x, y], 0.45, ink.black);
  const lozenge: PaperPoint[] = [
    [x, y - 0.75],
    [x + 0.75, y],
    [x, y + 0.75],
    [x - 0.75, y],
  ];
  return polygon(lozenge, ink.black);
}
