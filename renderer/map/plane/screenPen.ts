import type { Palette } from '../../../core/drawing/palette.ts';
import type { Pen } from '../../../core/drawing/pen.ts';

/** Pixels of the screen for a millimetre of a sheet's signs, near: a screen is looked at from further off, and drawn on. */
const nearUnitPx = 7.5;

/** The same for the checks' signs at any scale. */
export const findingUnitPx = nearUnitPx;

/** Signs shrink less than the ground does, and keep a least size. 1 near, less far. */
function signScale(metresPerPx: number, least: number): number {
  const t = (Math.log10(metresPerPx) + 0.3) / 1.8;
  return Math.max(least, 1 - 0.55 * Math.min(1, Math.max(0, t)));
}

/** Pixels for a millimetre of a sheet's signs at a scale of the screen. */
export const signUnitPx = (metresPerPx: number): number => nearUnitPx * signScale(metresPerPx, 0.55);

/** The pen of signs at a scale of the screen. */
export function signPen(metresPerPx: number, inks: Palette): Pen {
  return { unit: signUnitPx(metresPerPx), least: 1, rim: 1.5, inks };
}

/** The pen of marks along lines: of lines there are thousands, so their marks shrink less and stand apart. */
export function linePen(metresPerPx: number, inks: Palette): Pen {
  return { unit: nearUnitPx * signScale(metresPerPx, 0.8), least: 1, rim: 1.5, inks };
}

/** The pen of the checks' signs: as large from afar, where they are to be seen and clicked too. */
export const findingPen = (pen: Pen): Pen => ({ ...pen, unit: findingUnitPx });

/** The pen of a sign that is being placed: near, in the accent. */
export function markedPen(palette: Palette): Pen {
  return { unit: nearUnitPx, least: 1, rim: 1.5, inks: { ...palette, ink: palette.accent } };
}
