import type { Stock, Work } from './stock.ts';

/** For each room up to the largest: the most worth that pieces put into it can have, and which pieces. */
export interface BestPatterns {
  readonly worth: (room: number) => number;
  /** How many of each length. */
  readonly pattern: (room: number) => number[];
}

/**
 * Knapsack with so many copies of each length, by dynamic programming over the room. Worths are whole numbers, so that
 * sums are exact.
 */
export function bestPatterns(
  { lengths, counts }: Stock,
  worths: readonly number[],
  most: number,
  work: Work,
): BestPatterns {
  const bundles = bundlesOf(lengths, counts, worths);
  const best = new Float64Array(most + 1);
  const taken = bundles.map(({ length, worth }) => {
    const chosen = new Uint8Array(most + 1);
    for (let room = most; room >= length; room--) {
      const withIt = best[room - length]! + worth;
      if (withIt > best[room]!) {
        best[room] = withIt;
        chosen[room] = 1;
      }
    }
    return chosen;
  });
  work.left -= (bundles.length * most) >> 6;
  return {
    worth: (room) => best[room]!,
    pattern: (room) => {
      const pattern = lengths.map(() => 0);
      let left = room;
      for (let i = bundles.length - 1; i >= 0; i--) {
        if (taken[i]![left] === 0) continue;
        pattern[bundles[i]!.type]! += bundles[i]!.copies;
        left -= bundles[i]!.length;
      }
      return pattern;
    },
  };
}

/** Copies of a length in bundles of 1, 2, 4, ... and the rest, which make up every number of copies. */
function bundlesOf(lengths: readonly number[], counts: readonly number[], worths: readonly number[]) {
  return lengths.flatMap((length, type) => {
    const bundles = [];
    let left = worths[type]! > 0 ? counts[type]! : 0;
    for (let copies = 1; left > 0; copies *= 2) {
      const some = Math.min(copies, left);
      bundles.push({ type, copies: some, length: some * length, worth: some * worths[type]! });
      left -= some;
    }
    return bundles;
  });
}
