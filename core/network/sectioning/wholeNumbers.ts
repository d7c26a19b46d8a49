/**
 * Lengths and costs are added up as whole numbers, so that "exactly at the limit" and "equally cheap" mean what they
 * say: lengths in micrometres, costs in the smallest decimal place that any of them uses.
 */

const LARGEST_SUM = 2 ** 52;

/** Units per metre: a million, or less where the total would not fit a whole number. */
export function lengthScale(totalM: number): number {
  return fitting(1e6, totalM);
}

/** Power of ten that makes every cost whole (at most nine decimal places; further ones are rounded away). */
export function costScale(costs: readonly number[]): number {
  let scale = 1;
  let total = 0;
  for (const cost of costs) {
    total += cost;
    while (scale < 1e9 && !isWhole(cost * scale)) scale *= 10;
  }
  return fitting(scale, total);
}

function fitting(scale: number, total: number): number {
  let fits = scale;
  while (total * fits > LARGEST_SUM) fits /= 10;
  return fits;
}

function isWhole(value: number): boolean {
  return Math.abs(value - Math.round(value)) <= 1e-9 * Math.max(1, Math.abs(value));
}

/** Greatest common divisor of whole numbers, zeros ignored; 0 when there is none. */
export function greatestCommonDivisor(values: Iterable<number>): number {
  let divisor = 0;
  for (const value of values) {
    let a = divisor;
    let b = value;
    while (b !== 0) [a, b] = [b, a % b];
    divisor = a;
    if (divisor === 1) break;
  }
  return divisor;
}
