import { plainWords } from '../../words/figures.ts';
import type { Item, PaperPoint } from '../displayList.ts';
import { line, polygon, text } from '../paint.ts';
import { type Pen, paperPen, penStroke } from '../pen.ts';
import { letters, pen as pens } from '../style.ts';

/** A north arrow 13 mm high whose foot stands at `foot`; its right half is filled. */
export function northArrow([x, y]: PaperPoint, pen: Pen = paperPen): Item[] {
  const { unit, inks } = pen;
  const at = (dx: number, dy: number): PaperPoint => [x + dx * unit, y + dy * unit];
  const tip = at(0, -9.5);
  const notch = at(0, -2);
  const stroke = penStroke(pen, pens.thin);
  return [
    polygon([tip, at(-2, 0), notch], inks.paper, stroke),
    polygon([tip, at(2, 0), notch], inks.ink, stroke),
    line([tip, at(0, -10.2)], stroke),
    text(plainWords().things.northLetter, at(0, -10.6), {
      sizePt: letters.heading * unit,
      font: 'bold',
      align: 'centre',
      ink: inks.ink,
    }),
  ];
}
