/** The sheets' pens, inks and letter sizes. One ink must do: nothing here is told apart by colour. */
import { type Ink, paletteOf } from './palette.ts';

const paper = paletteOf('paper');

/** The inks of paper, by what they are there. */
export const ink = {
  black: paper.ink,
  /** For letters that stand back; 7:1 on white. */
  soft: paper.inkSoft,
  /** For rules and fills that carry no words. */
  faint: paper.inkFaint,
  white: paper.paper,
} as const satisfies Record<string, Ink>;

/** Widths of lines, millimetres. */
export const pen = {
  hairline: 0.1,
  thin: 0.15,
  sign: 0.2,
  frame: 0.35,
} as const;

/** Width of a built fence line on a sheet; it falls with the scale, as the ground it stands for crowds together. */
export function fenceWidthMm(scaleDenominator: number): number {
  if (scaleDenominator <= 1000) return 0.6;
  return scaleDenominator <= 5000 ? 0.5 : 0.4;
}

/** Sizes of letters, points. Nothing that must be read is smaller than `small`. */
export const letters = {
  small: 6,
  panel: 6.5,
  table: 7.5,
  label: 6.8,
  sectionLetter: 9,
  body: 9,
  heading: 11,
  title: 13,
} as const;

/** Unprinted rim of every page: within what office printers reach. */
export const pageMarginMm = 8;

export const mmPerPt = 25.4 / 72;

/** How far the typeface reaches above and below its baseline, as shares of its size: of capitals, and of any letter. */
export const face = { capital: 0.668, above: 0.78, below: 0.22 } as const;

/** Distance from line to line, as a share of the size. */
export const leading = 1.25;
