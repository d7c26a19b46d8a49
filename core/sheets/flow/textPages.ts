import type { Item, PaperBox } from '../../drawing/displayList.ts';
import { line, stroke, tagged, text } from '../../drawing/paint.ts';
import { ink, letters, pageMarginMm, pen } from '../../drawing/style.ts';
import { type MeasureText, wrapText } from '../../drawing/words.ts';
import type { Property } from '../../model/things.ts';
import type { Figures } from '../../words/types.ts';
import type { PageDraft } from '../pageDraft.ts';
import { inventedMark } from '../panel/titleBlock.ts';
import type { Block } from './block.ts';

/** Pages of words and tables are A4 whatever the maps are, to lie in one folder. */
const a4 = { portrait: [210, 297], landscape: [297, 210] } as const;

const headMm = 12;
const footMm = 9;
const sideMm = pageMarginMm + 4;

export interface TextPagesInput {
  readonly property: Property;
  /** ISO 8601. */
  readonly date: string;
  readonly measure: MeasureText;
  readonly f: Figures;
}

/** Room for blocks on a page of words. */
export function textRoom(orientation: 'portrait' | 'landscape', property: Property): PaperBox {
  const [widthMm, heightMm] = a4[orientation];
  const top = pageMarginMm + headMm + (property.invented ? 5 : 0);
  return [sideMm, top, widthMm - sideMm, heightMm - pageMarginMm - footMm];
}

/**
 * Blocks set on as many pages as they take, each headed with the property, the title and the date. A heading goes on to
 * the page of what it heads; a table's head is repeated; a block higher than a page begins one of its own.
 */
export function textPages(
  title: string,
  blocks: readonly Block[],
  orientation: 'portrait' | 'landscape',
  input: TextPagesInput,
): PageDraft[] {
  const room = textRoom(orientation, input.property);
  return paginate(blocks, room).map((items, i) => textPage(title, items, orientation, input, i));
}

/** One page of words: its head, what stands on it, its foot. `turn` counts the pages of the same title from 0. */
export function textPage(
  title: string,
  items: readonly Item[],
  orientation: 'portrait' | 'landscape',
  input: TextPagesInput,
  turn: number,
): PageDraft {
  const [widthMm, heightMm] = a4[orientation];
  return {
    widthMm,
    heightMm,
    title: turn === 0 ? title : input.f.words.sheets.common.continued({ title, number: turn + 1 }),
    items: [...pageHead(title, widthMm, input), ...items, ...pageFoot(widthMm, heightMm, input)],
    pageNumber: {
      at: [widthMm - sideMm, heightMm - pageMarginMm - 0.5],
      style: { sizePt: letters.panel, font: 'bold', align: 'right' },
    },
  };
}

function paginate(blocks: readonly Block[], [left, top, , bottom]: PaperBox): Item[][] {
  const pages: Item[][] = [[]];
  let y = top;
  const turnPage = (head: Block | undefined) => {
    pages.push([]);
    y = top;
    if (!head) return;
    for (const item of head.paint([left, y])) pages.at(-1)!.push(item);
    y += head.heightMm;
  };
  blocks.forEach((block, i) => {
    const need = block.heightMm + keptHeightMm(blocks, i);
    if (y > top && y + need > bottom) turnPage(block.head);
    for (const item of block.paint([left, y])) pages.at(-1)!.push(item);
    y += block.heightMm;
  });
  return pages;
}

/** Height of what must follow a block on the same page. */
function keptHeightMm(blocks: readonly Block[], i: number): number {
  let heightMm = 0;
  for (let k = i; blocks[k]?.keepWithNext; k++) heightMm += blocks[k + 1]?.heightMm ?? 0;
  return heightMm;
}

function pageHead(title: string, widthMm: number, { property, date, measure, f }: TextPagesInput): Item[] {
  const y = pageMarginMm + 5;
  const dateWords = f.date(date);
  const dateMm = measure(dateWords, 'regular', letters.body);
  const nameMm = widthMm - 2 * sideMm - dateMm - 6;
  const name = headName(f.words.sheets.common.headed({ property: property.name, title }), nameMm, measure);
  return [
    ...name.lines.map((words, i) =>
      tagged('H1', [
        text(words, [sideMm, y + (i - name.lines.length + 1) * 3.4], { sizePt: name.sizePt, font: 'bold' }),
      ]),
    ),
    tagged('P', [text(dateWords, [widthMm - sideMm, y], { sizePt: letters.body, align: 'right' })]),
    line(
      [
        [sideMm, y + 2],
        [widthMm - sideMm, y + 2],
      ],
      stroke(pen.frame),
    ),
    ...inventedMark(property, f, measure).paint([sideMm, y + 3.5]),
  ];
}

/** The page's heading on one line, or on two in small letters where it is very long. */
function headName(words: string, widthMm: number, measure: MeasureText): { lines: string[]; sizePt: number } {
  const sizes = [letters.heading, letters.body, letters.table];
  const sizePt = sizes.find((size) => measure(words, 'bold', size) <= widthMm) ?? letters.panel;
  return { sizePt, lines: wrapText(words, widthMm, 'bold', sizePt, measure) };
}

function pageFoot(widthMm: number, heightMm: number, { measure, f }: TextPagesInput): Item[] {
  const bottom = heightMm - pageMarginMm;
  const lines = wrapText(
    f.words.sheets.common.cautions.inOneLine,
    widthMm - 2 * sideMm - 26,
    'regular',
    letters.small,
    measure,
  );
  return [
    line(
      [
        [sideMm, bottom - 6.2],
        [widthMm - sideMm, bottom - 6.2],
      ],
      stroke(pen.hairline),
    ),
    tagged(
      'P',
      lines.map((words, i) => text(words, [sideMm, bottom - 3.2 + i * 2.7], { sizePt: letters.small, ink: ink.soft })),
    ),
  ];
}
