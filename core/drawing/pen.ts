import type { Stroke } from './displayList.ts';
import { type Ink, type Palette, paletteOf } from './palette.ts';

/** What signs and strokes are drawn with. Their sizes are millimetres of the printed sheets, times `unit`. */
export interface Pen {
  /** Units of the drawing for a millimetre of the printed sheets: 1 on paper, some pixels on a screen. */
  readonly unit: number;
  /** No stroke of a sign is thinner than this: what a screen can show. */
  readonly least: number;
  /** Ground left bare on either side of what lies over other lines or a picture; none on white paper. */
  readonly rim: number;
  readonly inks: Palette;
}

export const paperPen: Pen = { unit: 1, least: 0, rim: 0, inks: paletteOf('paper') };

interface StrokeLook {
  readonly ink?: Ink;
  readonly dashMm?: readonly [strokeMm: number, gapMm: number];
  readonly cap?: Stroke['cap'];
}

/** A stroke of a sign, as wide as it is on the sheets times the pen's unit. */
export function penStroke({ unit, least, inks }: Pen, widthMm: number, look: StrokeLook = {}): Stroke {
  const { ink = inks.ink, dashMm, cap } = look;
  return {
    width: Math.max(least, widthMm * unit),
    ink,
    ...(dashMm ? { dash: [dashMm[0] * unit, dashMm[1] * unit] as const } : {}),
    ...(cap ? { cap } : {}),
  };
}
