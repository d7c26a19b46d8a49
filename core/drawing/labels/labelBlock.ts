import { largestOf } from '../../model/extremes.ts';
import type { FontRole, PaperBox, PaperPoint, TextItem } from '../displayList.ts';
import { text } from '../paint.ts';
import type { Ink } from '../palette.ts';
import { face, ink, leading, mmPerPt } from '../style.ts';
import { type MeasureText, wrapText } from '../words.ts';

export interface LabelStyle {
  readonly font: FontRole;
  readonly sizePt: number;
  readonly ink?: Ink;
}

export interface LabelLine extends LabelStyle {
  readonly text: string;
}

/** Some lines of words set as one block, to be put down anywhere. */
export interface LabelBlock {
  readonly widthMm: number;
  readonly heightMm: number;
  /** The block with its middle at a point. */
  readonly centredAt: (middle: PaperPoint) => TextItem[];
}

const halo = 0.35;

/** Widest that a label grows before it is broken into lines. */
const widestMm = 30;

export function labelLines(words: string, style: LabelStyle, measure: MeasureText): LabelLine[] {
  return wrapText(words, widestMm, style.font, style.sizePt, measure).map((line) => ({ ...style, text: line }));
}

export function labelBlock(lines: readonly LabelLine[], measure: MeasureText): LabelBlock {
  const widthMm = Math.max(0, largestOf(lines.map((line) => measure(line.text, line.font, line.sizePt))));
  const steps = lines.map((line) => line.sizePt * mmPerPt * leading);
  const heightMm = steps.reduce((sum, step) => sum + step, 0);
  return {
    widthMm,
    heightMm,
    centredAt: ([x, y]) => {
      let top = y - heightMm / 2;
      return lines.map((line, i) => {
        const step = steps[i]!;
        const baseline = top + step / 2 + (face.capital * line.sizePt * mmPerPt) / 2;
        top += step;
        return text(line.text, [x, baseline], {
          font: line.font,
          sizePt: line.sizePt,
          align: 'centre',
          halo,
          ink: line.ink ?? ink.black,
        });
      });
    },
  };
}

export function middleOf([left, top, right, bottom]: PaperBox): PaperPoint {
  return [(left + right) / 2, (top + bottom) / 2];
}
