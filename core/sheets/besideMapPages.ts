import type { Item, PaperBox } from '../drawing/displayList.ts';
import { letters } from '../drawing/style.ts';
import { type Block, words } from './flow/block.ts';
import { type TextPagesInput, textPage, textRoom } from './flow/textPages.ts';
import type { PageDraft } from './pageDraft.ts';
import { fillColumns } from './panel/fillColumns.ts';

/** What stands beside a map sheet and found no room there. */
export interface LeftBeside {
  readonly sheet: string;
  readonly blocks: readonly Block[];
}

const columnCount = 3;
const gutterMm = 4;

/** The rest of legends and lists, in columns. Nothing that belongs beside a map is dropped. */
export function besideMapPages(left: readonly LeftBeside[], input: TextPagesInput): PageDraft[] {
  const [leftMm, top, right, bottom] = textRoom('portrait', input.property);
  const columnMm = (right - leftMm - (columnCount - 1) * gutterMm) / columnCount;
  const columns = Array.from({ length: columnCount }, (_, i): PaperBox => {
    const x = leftMm + i * (columnMm + gutterMm);
    return [x, top, x + columnMm, bottom];
  });
  const blocks = left.flatMap(({ sheet, blocks: rest }): readonly Block[] => [
    sheetHeading(sheet, columnMm, input),
    ...rest,
  ]);
  return filledPages(blocks, columns).map((items, i) =>
    textPage(input.f.words.sheets.map.panel.continued, items, 'portrait', input, i),
  );
}

function sheetHeading(sheet: string, widthMm: number, { measure }: TextPagesInput): Block {
  return words(sheet, widthMm, { sizePt: letters.body, font: 'bold', role: 'H2', keepWithNext: true }, measure);
}

function filledPages(blocks: readonly Block[], columns: readonly PaperBox[]): (readonly Item[])[] {
  const pages: (readonly Item[])[] = [];
  let rest = blocks;
  while (rest.length > 0) {
    const filled = fillColumns(rest, columns);
    if (filled.left.length < rest.length) {
      pages.push(filled.items);
      rest = filled.left;
      continue;
    }
    // One block higher than a page: it gets a page and may run on below.
    pages.push(rest[0]!.paint([columns[0]![0], columns[0]![1]]));
    rest = rest.slice(1);
  }
  return pages;
}
