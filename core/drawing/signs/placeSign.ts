import type { PaperPoint } from '../displayList.ts';
import { circle } from '../paint.ts';
import { type Pen, paperPen, penStroke } from '../pen.ts';
import { pen as pens } from '../style.ts';
import { type Sign, squareAround } from './sign.ts';

/** A buried place: filled where it is certain, hollow where it may as well lie elsewhere. */
export function placeSign(at: PaperPoint, certain: boolean, radiusMm: number, pen: Pen = paperPen): Sign {
  const { unit, inks } = pen;
  const radius = radiusMm * unit;
  return {
    items: [circle(at, radius, certain ? inks.ink : inks.paper, penStroke(pen, pens.sign))],
    covers: squareAround(at, radius + 0.1 * unit),
  };
}
