import type { Item, PaperPoint } from '../displayList.ts';
import { line, polygon, stroke, text } from '../paint.ts';
import { ink, letters, pen } from '../style.ts';

/** A north arrow 13 mm high whose foot stands at `foot`; its right half is filled. */
export function northArrow([x, y]: PaperPoint): Item[] {
  const tip: PaperPoint = [x, y - 9.5];
  const notch: PaperPoint = [x, y - 2];
  return [
    polygon([tip, [x - 2, y], notch], ink.white, stroke(pen.thin)),
    polygon([tip, [x + 2, y], notch], ink.black, stroke(pen.thin)),
    line([tip, [x, y - 10.2]], stroke(pen.thin)),
    text('N', [x, y - 10.6], { sizePt: letters.heading, font: 'bold', align: 'centre' }),
  ];
}
