import type { Units } from '../../../core/model/formatUnits.ts';

const metresPerFoot = 0.3048;
const metresOf: Readonly<Record<string, number>> = {
  m: 1,
  km: 1000,
  cm: 0.01,
  mm: 0.001,
  ft: metresPerFoot,
  "'": metresPerFoot,
  in: metresPerFoot / 12,
  mi: metresPerFoot * 5280,
};

/** A typed measure, or a sentence that says what is wrong with it. Empty text gives null. */
export type Typed = number | null | { readonly problem: string };

/** A length in metres: "125", "125.5 m", "0.4 km", "30 ft". Without a unit, metres or feet as the screen shows. */
export function typedLengthM(text: string, units: Units): Typed {
  const trimmed = text.trim().toLowerCase();
  if (trimmed === '') return null;
  const match = /^(\d+(?:[.,]\d+)?|[.,]\d+)\s*([a-z']*)$/.exec(trimmed);
  const factor = match?.[2] ? metresOf[match[2]] : units === 'imperial' ? metresPerFoot : 1;
  if (!match || factor === undefined) {
    return { problem: `"${text.trim()}" is no length. Type a number, with m, km or ft behind it if need be.` };
  }
  const lengthM = Number(match[1]!.replace(',', '.')) * factor;
  if (lengthM > 0 && lengthM <= 200_000) return lengthM;
  return { problem: 'The length must be more than 0 and at most 200 km.' };
}

/** A bearing in degrees clockwise from north, 0 to 360: "92.5", "092.5°". */
export function typedBearingDeg(text: string): Typed {
  const trimmed = text.trim().replace(/[°d]$/i, '').replace(',', '.').trim();
  if (trimmed === '') return null;
  const bearingDeg = /^\d+(\.\d+)?$/.test(trimmed) ? Number(trimmed) : Number.NaN;
  if (bearingDeg >= 0 && bearingDeg <= 360) return bearingDeg % 360;
  return { problem: `"${text.trim()}" is no bearing. Type degrees clockwise from north, 0 to 360.` };
}

/** Splits "125 @ 092.5" into its length and its bearing. */
export function splitTyped(text: string): readonly [length: string, bearing: string | null] {
  const [length = '', bearing] = text.split('@', 2);
  return [length, bearing ?? null];
}
