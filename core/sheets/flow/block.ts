import type { FontRole, Item, PaperPoint } from '../../drawing/displayList.ts';
import { tagged, text } from '../../drawing/paint.ts';
import { face, leading, mmPerPt } from '../../drawing/style.ts';
import { type MeasureText, wrapText } from '../../drawing/words.ts';

/** Something that stands in a column: so high, and drawn wherever the column has room for it. */
export interface Block {
  readonly heightMm: number;
  readonly paint: (topLeft: PaperPoint) => readonly Item[];
  /** Never the last of a page: a heading with what it heads. */
  readonly keepWithNext?: boolean;
  /** Painted again at the top of a page that this block begins: the head of its table. */
  readonly head?: Block;
}

export function space(heightMm: number): Block {
  return { heightMm, paint: () => [] };
}

export interface WordsStyle {
  readonly font?: FontRole;
  readonly sizePt: number;
  readonly role?: 'H1' | 'H2' | 'P';
  readonly afterMm?: number;
  readonly keepWithNext?: boolean;
}

/** Wrapped words, one block for the whole. */
export function words(content: string, widthMm: number, style: WordsStyle, measure: MeasureText): Block {
  const font = style.font ?? 'regular';
  const step = style.sizePt * mmPerPt * leading;
  const lines = wrapText(content, widthMm, font, style.sizePt, measure);
  return {
    heightMm: lines.length * step + (style.afterMm ?? 0),
    keepWithNext: style.keepWithNext ?? false,
    paint: ([x, y]) => [
      tagged(
        style.role ?? 'P',
        lines.map((line, i) =>
          text(line, [x, baselineIn(y + i * step, step, style.sizePt)], { font, sizePt: style.sizePt }),
        ),
      ),
    ],
  };
}

/** The baseline that stands a line of letters in the middle of its height. */
export function baselineIn(topMm: number, heightMm: number, sizePt: number): number {
  return topMm + heightMm / 2 + (face.capital * sizePt * mmPerPt) / 2;
}

/** Blocks below one another as one. */
export function stack(blocks: readonly Block[]): Block {
  return {
    heightMm: blocks.reduce((sum, block) => sum + block.heightMm, 0),
    paint: ([x, y]) => {
      let top = y;
      return blocks.flatMap((block) => {
        const items = block.paint([x, top]);
        top += block.heightMm;
        return items;
      });
    },
  };
}
