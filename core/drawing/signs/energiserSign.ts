import type { Status } from '../../model/things.ts';
import type { Item, PaperPoint } from '../displayList.ts';
import { circle, line } from '../paint.ts';
import { type Pen, paperPen, penStroke } from '../pen.ts';
import { type Sign, squareAround } from './sign.ts';

export const energiserRadiusMm = 2;

/** An energiser: the ring of a source with the pulse in it, both from IEC 60617. Built: filled. */
export function energiserSign([x, y]: PaperPoint, status: Status, pen: Pen = paperPen): Sign {
  const { unit, inks } = pen;
  const built = status === 'built';
  const at = (dx: number, dy: number): PaperPoint => [x + dx * unit, y + dy * unit];
  const pulse = [at(-1.2, 0.65), at(-0.42, 0.65), at(-0.42, -0.7), at(0.42, -0.7), at(0.42, 0.65), at(1.2, 0.65)];
  const items: Item[] = [
    circle([x, y], energiserRadiusMm * unit, built ? inks.ink : inks.paper, penStroke(pen, 0.2)),
    line(pulse, penStroke(pen, 0.25, { ink: built ? inks.paper : inks.ink })),
  ];
  return { items, covers: squareAround([x, y], (energiserRadiusMm + 0.3) * unit) };
}
