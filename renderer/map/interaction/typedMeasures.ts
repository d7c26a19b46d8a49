import type { Units } from '../../../core/model/formatUnits.ts';
import { readLengthM, readMeasure } from '../../../core/model/readNumber.ts';

/** A typed measure, or a sentence that says what is wrong with it. Empty text gives null. */
export type Typed = number | null | { readonly problem: string };

/** A length in metres: "125", "1,250.5 m", "0.4 km", "8 ft 6 in". Without a unit, metres or feet as the screen shows. */
export function typedLengthM(text: string, units: Units): Typed {
  if (text.trim() === '') return null;
  const lengthM = readLengthM(text, units);
  if (lengthM === null) {
    return { problem: `"${text.trim()}" is no length. Type a number, with m, km or ft behind it if need be.` };
  }
  if (lengthM > 0 && lengthM <= 200_000) return lengthM;
  return { problem: 'The length must be more than 0 and at most 200 km.' };
}

/** A bearing in degrees clockwise from north, 0 to 360: "92.5", "092.5°". */
export function typedBearingDeg(text: string): Typed {
  if (text.trim() === '') return null;
  const bearingDeg = readMeasure(text, '°');
  if (bearingDeg !== null && bearingDeg >= 0 && bearingDeg <= 360) return bearingDeg % 360;
  return { problem: `"${text.trim()}" is no bearing. Type degrees clockwise from north, 0 to 360.` };
}

/** Splits "125 @ 092.5" into its length and its bearing. */
export function splitTyped(text: string): readonly [length: string, bearing: string | null] {
  const [length = '', bearing] = text.split('@', 2);
  return [length, bearing ?? null];
}
