import type { Item, Page, PaperPoint } from '../drawing/displayList.ts';
import { type TextStyle, text } from '../drawing/paint.ts';
import type { Figures } from '../words/types.ts';

/** A page that does not know yet which of how many it is. */
export interface PageDraft {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly title: string;
  readonly items: readonly Item[];
  /** Where "Page 3 of 12" goes. */
  readonly pageNumber: { readonly at: PaperPoint; readonly style: TextStyle };
}

/** The finished pages, numbered. */
export function numberPages(drafts: readonly PageDraft[], f: Figures): Page[] {
  return drafts.map(({ widthMm, heightMm, title, items, pageNumber }, i) => {
    const number = text(
      f.words.sheets.common.page({ number: i + 1, of: drafts.length }),
      pageNumber.at,
      pageNumber.style,
    );
    return { widthMm, heightMm, title, items: [...items, number] };
  });
}
