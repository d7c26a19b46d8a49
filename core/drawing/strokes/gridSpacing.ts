import { mPerFoot, mPerMile } from '../../words/numbers/units.ts';
import type { Units } from '../../words/numbers/write.ts';

export interface GridSpacing {
  /** Between two lines of the grid, metres. */
  readonly stepM: number;
  /** Every so many lines there is a heavy one. */
  readonly heavyEvery: number;
}

/**
 * The finest round spacing whose lines stand at least `least` apart in a drawing of `perM` to a metre: 1, 2 or 5 times a
 * power of ten, in metres, or in feet (up to a thousand) and miles.
 */
export function gridSpacing(perM: number, units: Units, least: number): GridSpacing {
  const leastM = least / perM;
  if (units === 'metric') return roundUp(leastM, 1);
  const leastFeet = leastM / mPerFoot;
  if (leastFeet <= 1000) return roundUp(leastFeet, mPerFoot);
  return roundUp(leastM / mPerMile, mPerMile);
}

function roundUp(least: number, unitM: number): GridSpacing {
  const power = 10 ** Math.floor(Math.log10(least));
  const mantissa = (least / power) * (1 - 1e-9);
  const step = mantissa <= 1 ? 1 : mantissa <= 2 ? 2 : mantissa <= 5 ? 5 : 10;
  return { stepM: step * power * unitM, heavyEvery: step === 5 ? 2 : 5 };
}

/** The multiples of `stepM` from `fromM` to `toM`, as whole numbers of steps. */
export function gridLines(fromM: number, toM: number, stepM: number): number[] {
  const lines: number[] = [];
  for (let n = Math.ceil(fromM / stepM); n * stepM <= toM; n++) lines.push(n);
  return lines;
}
