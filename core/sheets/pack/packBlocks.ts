import type { PaperPoint } from '../../drawing/displayList.ts';
import { line, stroke, tagged, text } from '../../drawing/paint.ts';
import { letters, pen } from '../../drawing/style.ts';
import type { MeasureText } from '../../drawing/words.ts';
import { largestOf } from '../../model/extremes.ts';
import { type Block, space, stack, words } from '../flow/block.ts';
import { type Table, tableBlocks } from '../flow/table.ts';
import { textRoom } from '../flow/textPages.ts';
import type { PackInput } from './packInput.ts';

/** Width of the upright pages that most of the pack is on. */
export function uprightWidthMm({ property }: Pick<PackInput, 'property'>): number {
  const [left, , right] = textRoom('portrait', property);
  return right - left;
}

export function heading(title: string, widthMm: number, measure: MeasureText): Block {
  return words(
    title,
    widthMm,
    { sizePt: letters.heading, font: 'bold', role: 'H2', afterMm: 1, keepWithNext: true },
    measure,
  );
}

export function paragraph(
  content: string,
  widthMm: number,
  measure: MeasureText,
  font: 'regular' | 'bold' = 'regular',
): Block {
  return words(content, widthMm, { sizePt: letters.body, font, afterMm: 1.5 }, measure);
}

/** A heading with its table, or with a sentence where there is nothing to list. */
export function listed(title: string, table: Table, nothing: string, widthMm: number, measure: MeasureText): Block[] {
  return [
    heading(title, widthMm, measure),
    ...(table.rows.length === 0 ? [paragraph(nothing, widthMm, measure)] : tableBlocks(table, widthMm, measure)),
    space(4),
  ];
}

export interface Fact {
  readonly name: string;
  readonly value: string;
}

/** Names and values in rows, ruled. */
export function facts(rows: readonly Fact[], widthMm: number, measure: MeasureText): Block[] {
  const nameMm = Math.min(
    widthMm * 0.45,
    3 + largestOf(rows.map(({ name }) => measure(name, 'italic', letters.table))),
  );
  return rows.map(({ name, value }) => {
    const inner = words(value, widthMm - nameMm, { sizePt: letters.table }, measure);
    const heightMm = inner.heightMm + 1.4;
    return {
      heightMm,
      paint: ([x, y]) => [
        line(
          [
            [x, y + heightMm],
            [x + widthMm, y + heightMm],
          ],
          stroke(pen.hairline),
        ),
        tagged('P', [text(name, [x, y + 0.7 + 2.6], { sizePt: letters.table, font: 'italic' })]),
        ...inner.paint([x + nameMm, y + 0.7]),
      ],
    };
  });
}

/** Two columns of blocks beside each other as one block. */
export function sideBySide(left: readonly Block[], right: readonly Block[], rightFromMm: number): Block {
  const [a, b] = [stack(left), stack(right)];
  return {
    heightMm: Math.max(a.heightMm, b.heightMm),
    paint: ([x, y]: PaperPoint) => [...a.paint([x, y]), ...b.paint([x + rightFromMm, y])],
  };
}

/** A figure and its unit, or the parts of a date, are not parted at the end of a line. */
export function held(words: string): string {
  return words.replaceAll(' ', '\u00a0');
}
