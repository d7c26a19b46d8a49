import type { Status } from '../../model/things.ts';
import type { PaperPoint } from '../displayList.ts';
import { lines } from '../paint.ts';
import { type Pen, paperPen, penStroke } from '../pen.ts';
import type { Sign } from './sign.ts';

export const earthReachMm = 1.5;

/** Earth stakes: the earth sign of IEC 60617, with bare ground about its strokes. Built: strong strokes. */
export function earthSign([x, y]: PaperPoint, status: Status, pen: Pen = paperPen): Sign {
  const { unit, inks } = pen;
  const at = (dx: number, dy: number): PaperPoint => [x + dx * unit, y + dy * unit];
  const bar = (half: number, dy: number): PaperPoint[] => [at(-half, dy), at(half, dy)];
  const strokes = [[at(0, -1.5), at(0, 0)], bar(earthReachMm, 0), bar(0.95, 0.65), bar(0.4, 1.3)];
  const widthMm = status === 'built' ? 0.42 : 0.2;
  const [left, top] = at(-1.8, -1.7);
  const [right, bottom] = at(1.8, 1.6);
  return {
    items: [
      lines(strokes, penStroke(pen, widthMm + 0.5, { ink: inks.paper, cap: 'round' })),
      lines(strokes, penStroke(pen, widthMm)),
    ],
    covers: [left, top, right, bottom],
  };
}
