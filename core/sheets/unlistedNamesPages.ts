import { type Block, words } from './flow/block.ts';
import { type TextPagesInput, textPages, textRoom } from './flow/textPages.ts';
import type { PageDraft } from './pageDraft.ts';
import { letters } from './style.ts';

export interface UnlistedNames {
  readonly sheet: number;
  readonly names: readonly string[];
}

/** Names for which there was room neither on a map sheet nor beside it. Nothing that is drawn goes unnamed. */
export function unlistedNamesPages(lists: readonly UnlistedNames[], input: TextPagesInput): PageDraft[] {
  if (lists.length === 0) return [];
  const [left, , right] = textRoom('portrait', input.property);
  const widthMm = right - left;
  const blocks = lists.flatMap(({ sheet, names }): Block[] => [
    words(
      `Map sheet ${sheet}`,
      widthMm,
      { sizePt: letters.heading, font: 'bold', role: 'H2', keepWithNext: true },
      input.measure,
    ),
    ...chunks(names, 40).map((some, i, all) =>
      words(`${some.join(', ')}${i < all.length - 1 ? ',' : ''}`, widthMm, { sizePt: letters.body }, input.measure),
    ),
  ]);
  const intro = 'These are drawn on the map, which had no room for their names. A larger scale has.';
  return textPages(
    'Names without room on the map',
    [words(intro, widthMm, { sizePt: letters.body, afterMm: 2 }, input.measure), ...blocks],
    'portrait',
    input,
  );
}

/** Lists short enough to break between pages. */
function chunks<T>(list: readonly T[], size: number): T[][] {
  return Array.from({ length: Math.ceil(list.length / size) }, (_, i) => list.slice(i * size, (i + 1) * size));
}
