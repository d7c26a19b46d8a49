import type { Item, PaperBox } from '../../drawing/displayList.ts';
import { box, line, stroke, tagged, text } from '../../drawing/paint.ts';
import { letters, pen } from '../../drawing/style.ts';
import type { MeasureText } from '../../drawing/words.ts';
import type { Property } from '../../model/things.ts';
import type { Figures } from '../../words/types.ts';
import { type Block, baselineIn, space, stack, words } from '../flow/block.ts';

/** "Invented example", framed, where the property is one. Nothing else. */
export function inventedMark(property: Property, f: Figures, measure: MeasureText): Block {
  if (!property.invented) return space(0);
  const label = f.words.sheets.common.invented;
  const widthMm = measure(label, 'bold', letters.panel) + 3;
  return {
    heightMm: 5.6,
    paint: ([x, y]) => [
      box([x, y, x + widthMm, y + 4.4], null, stroke(pen.sign)),
      tagged('P', [text(label, [x + 1.5, baselineIn(y, 4.4, letters.panel)], { sizePt: letters.panel, font: 'bold' })]),
    ],
  };
}

export interface TitleRow {
  readonly name: string;
  readonly value: string;
}

/** Property, what the sheet is, and rows of particulars; the last of them leaves room for the page number. */
export function titleBlock(
  property: Property,
  subtitle: string,
  rows: readonly TitleRow[],
  widthMm: number,
  f: Figures,
  measure: MeasureText,
): Block {
  return stack([
    words(
      property.name,
      widthMm,
      { sizePt: nameSize(property.name, widthMm, measure), font: 'bold', role: 'H1' },
      measure,
    ),
    words(subtitle, widthMm, { sizePt: letters.body, afterMm: 1 }, measure),
    inventedMark(property, f, measure),
    ...rows.map((row) => titleRow(row, widthMm, measure)),
  ]);
}

/** The largest size at which a name takes at most three lines, down to the least that reads well. */
function nameSize(name: string, widthMm: number, measure: MeasureText): number {
  const total = measure(name, 'bold', 1);
  const sizes = [letters.title, letters.heading, letters.body, letters.table];
  return sizes.find((size) => total * size <= widthMm * 2.6) ?? letters.table;
}

function titleRow({ name, value }: TitleRow, widthMm: number, measure: MeasureText): Block {
  const nameMm = 14;
  const inner = words(value, widthMm - nameMm, { sizePt: letters.panel }, measure);
  const heightMm = Math.max(4, inner.heightMm + 1.2);
  return {
    heightMm,
    paint: ([x, y]) => [
      line(
        [
          [x, y],
          [x + widthMm, y],
        ],
        stroke(pen.hairline),
      ),
      tagged('P', [
        text(name, [x, baselineIn(y + 0.6, inner.heightMm, letters.panel)], { sizePt: letters.panel, font: 'italic' }),
      ]),
      ...inner.paint([x + nameMm, y + 0.6]),
    ],
  };
}

/** Frame and rules of a sheet's panel. */
export function panelFrame(frame: PaperBox, columns: readonly PaperBox[]): Item[] {
  return [
    box(frame, null, stroke(pen.frame)),
    ...columns.map(([left, top, right, bottom]) => box([left, top, right, bottom], null, stroke(pen.sign))),
  ];
}
