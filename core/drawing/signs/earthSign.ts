import type { Status } from '../../model/things.ts';
import type { PaperPoint } from '../displayList.ts';
import { box, lines, stroke } from '../paint.ts';
import { ink } from '../style.ts';
import type { Sign } from './sign.ts';

/** Earth stakes: the earth sign of IEC 60617. Built: strong strokes. */
export function earthSign([x, y]: PaperPoint, status: Status): Sign {
  const strokes: PaperPoint[][] = [
    [
      [x, y - 1.5],
      [x, y],
    ],
    [
      [x - 1.5, y],
      [x + 1.5, y],
    ],
    [
      [x - 0.95, y + 0.65],
      [x + 0.95, y + 0.65],
    ],
    [
      [x - 0.4, y + 1.3],
      [x + 0.4, y + 1.3],
    ],
  ];
  const covers = [x - 1.8, y - 1.7, x + 1.8, y + 1.6] as const;
  return { items: [box(covers, ink.white), lines(strokes, stroke(status === 'built' ? 0.42 : 0.2))], covers };
}
