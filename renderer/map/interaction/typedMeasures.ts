import { figures, plainWords } from '../../../core/words/figures.ts';
import { twoMeanings } from '../../../core/words/numbers/field.ts';
import { readLengthM, readMeasure, tidy } from '../../../core/words/numbers/read.ts';
import { lengthUnit } from '../../../core/words/numbers/units.ts';
import type { Units } from '../../../core/words/numbers/write.ts';

/** A typed measure, or a sentence that says what is wrong with it. Empty text gives null. */
export type Typed = number | null | { readonly problem: string };

const longestM = 200_000;

/** A length in metres: "125", "1,250.5 m", "0.4 km", "8 ft 6 in". Without a unit, metres or feet as the screen shows. */
export function typedLengthM(text: string, units: Units): Typed {
  if (text.trim() === '') return null;
  const words = figures(units).words.window.map.typed;
  const figure = readLengthM(text, units);
  if (!figure) {
    return { problem: words.noLength({ text: text.trim() }) };
  }
  const meanings = figure.or === null ? [figure.value] : [figure.value, figure.or];
  const fitting = meanings.filter((lengthM) => lengthM > 0 && lengthM <= longestM);
  if (fitting.length === 1) return fitting[0]!;
  if (fitting.length === 0) {
    return { problem: words.lengthRange({ mostM: longestM }) };
  }
  const unit = lengthUnit(units);
  const inUnit = fitting.map((lengthM) => tidy(lengthM / unit.lengthM));
  return { problem: twoMeanings(text, inUnit, unit.name) };
}

/** A bearing in degrees clockwise from north, 0 to 360: "92.5", "092.5°". */
export function typedBearingDeg(text: string): Typed {
  if (text.trim() === '') return null;
  const bearingDeg = readMeasure(text, '°')?.value ?? null;
  if (bearingDeg !== null && bearingDeg >= 0 && bearingDeg <= 360) return bearingDeg % 360;
  return { problem: plainWords().window.map.typed.noBearing({ text: text.trim() }) };
}

/** Splits "125 @ 092.5" into its length and its bearing. */
export function splitTyped(text: string): readonly [length: string, bearing: string | null] {
  const [length = '', bearing] = text.split('@', 2);
  return [length, bearing ?? null];
}
