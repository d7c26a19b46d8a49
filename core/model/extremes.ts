/**
 * The least and the largest of numbers, however many: `Math.min(...values)` puts each on the stack, and overflows it at
 * about a hundred thousand. As with those, one that is no number makes the answer none.
 */

/** Infinity where there is none. */
export function leastOf(values: Iterable<number>): number {
  let least = Infinity;
  for (const value of values) least = Math.min(least, value);
  return least;
}

/** -Infinity where there is none. */
export function largestOf(values: Iterable<number>): number {
  let largest = -Infinity;
  for (const value of values) largest = Math.max(largest, value);
  return largest;
}
