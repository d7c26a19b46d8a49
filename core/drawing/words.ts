import { largestOf, leastOf } from '../model/extremes.ts';
import { pushAll } from '../model/pushAll.ts';
/** Measuring, wrapping and boxing words. */
import type { FontRole, PaperBox, PaperPoint, TextItem } from './displayList.ts';
import { face, mmPerPt } from './style.ts';

/** Width of one line of text, in the drawing's unit. Whoever owns the fonts supplies it; `sizePt` as in `TextStyle`. */
export type MeasureText = (text: string, font: FontRole, sizePt: number) => number;

/** Where a line may be broken; not at U+00A0, which holds a figure and its unit together. */
const breaks = /[ \t\n\r]+/;

/**
 * The lines that `text` takes in a width. Breaks at spaces and where the text itself does; a word that is too wide
 * alone is broken where the width ends, so that nothing is ever cut off.
 */
export function wrapText(
  text: string,
  widthMm: number,
  font: FontRole,
  sizePt: number,
  measure: MeasureText,
): string[] {
  const lines: string[] = [];
  for (const paragraph of text.split(/\r?\n/)) {
    let current = '';
    for (const word of paragraph.split(breaks).filter((part) => part !== '')) {
      const longer = current === '' ? word : `${current} ${word}`;
      if (measure(longer, font, sizePt) <= widthMm) {
        current = longer;
        continue;
      }
      if (current !== '') lines.push(current);
      const pieces = breakWord(word, widthMm, font, sizePt, measure);
      pushAll(lines, pieces.slice(0, -1));
      current = pieces.at(-1) ?? '';
    }
    lines.push(current);
  }
  return lines;
}

function breakWord(word: string, widthMm: number, font: FontRole, sizePt: number, measure: MeasureText): string[] {
  if (measure(word, font, sizePt) <= widthMm) return [word];
  const pieces: string[] = [];
  let piece = '';
  for (const letter of graphemes(word)) {
    if (piece !== '' && measure(piece + letter, font, sizePt) > widthMm) {
      pieces.push(piece);
      piece = '';
    }
    piece += letter;
  }
  return [...pieces, piece];
}

const segmenter = new Intl.Segmenter('en', { granularity: 'grapheme' });

/** The letters of a text as a reader counts them: a base with its accents is one. */
function graphemes(text: string): string[] {
  return Array.from(segmenter.segment(text), ({ segment }) => segment);
}

/** The widest word of a text: the narrowest that a column can be without breaking one. */
export function widestWordMm(text: string, font: FontRole, sizePt: number, measure: MeasureText): number {
  return Math.max(0, largestOf(text.split(breaks).map((word) => measure(word, font, sizePt))));
}

/** The four corners of a line of text, turned as it is. */
export function textCorners(item: TextItem, measure: MeasureText): PaperPoint[] {
  const widthMm = measure(item.text, item.font, item.size / mmPerPt);
  const left = item.align === 'left' ? 0 : item.align === 'centre' ? -widthMm / 2 : -widthMm;
  const em = item.size;
  const angle = (item.rotationDeg * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return (
    [
      [left, -face.above * em],
      [left + widthMm, -face.above * em],
      [left + widthMm, face.below * em],
      [left, face.below * em],
    ] as const
  ).map(([x, y]) => [item.at[0] + x * cos - y * sin, item.at[1] + x * sin + y * cos]);
}

/** The upright box around a line of text. */
export function textBox(item: TextItem, measure: MeasureText): PaperBox {
  const corners = textCorners(item, measure);
  const xs = corners.map(([x]) => x);
  const ys = corners.map(([, y]) => y);
  return [leastOf(xs), leastOf(ys), largestOf(xs), largestOf(ys)];
}
