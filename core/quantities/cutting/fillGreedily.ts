import { ReachableSums } from './reachableSums.ts';
import type { Stock, Work } from './stock.ts';

/** How many pieces of each length go into each roll. */
export type Filling = readonly (readonly number[])[];

/**
 * Fills rolls one by one as full as can be, in several orders; the first that takes all pieces, or null. Each roll
 * begins with the longest piece that fits (after K. Fleszar and K. S. Hindi, "New heuristics for one-dimensional
 * bin-packing", Computers & Operations Research 29, 2002), or not.
 */
export function fillGreedily(stock: Stock, rolls: readonly number[], work: Work): Filling | null {
  const ascending = rolls.map((_, roll) => roll).sort((a, b) => rolls[a]! - rolls[b]!);
  for (const order of [ascending, ascending.toReversed()]) {
    for (const longestFirst of [true, false]) {
      if (work.left <= 0) return null;
      const { filling, left } = fillInOrder(stock, rolls, order, longestFirst, work);
      if (left.every((count) => count === 0)) return filling;
    }
  }
  return null;
}

/** Fills rolls in the given order; what does not go in is left. */
export function fillInOrder(
  { lengths, counts }: Stock,
  rolls: readonly number[],
  order: readonly number[],
  longestFirst: boolean,
  work: Work,
): { readonly filling: number[][]; readonly left: number[] } {
  const left = [...counts];
  const filling = rolls.map(() => lengths.map(() => 0));
  for (const roll of order) {
    const into = filling[roll]!;
    let room = rolls[roll]!;
    const longest = longestFirst ? lengths.findIndex((length, type) => left[type]! > 0 && length <= room) : -1;
    if (longest >= 0) {
      into[longest]! += 1;
      left[longest]! -= 1;
      room -= lengths[longest]!;
    }
    const sums = new ReachableSums(lengths, left, room, work);
    let target = sums.largest(0, 0, room);
    for (let type = 0; type < lengths.length && target > 0; type++) {
      const length = lengths[type]!;
      let taken = Math.min(left[type]!, Math.floor(target / length));
      while (sums.largest(type + 1, target - taken * length, target - taken * length) < 0) taken--;
      into[type]! += taken;
      left[type]! -= taken;
      target -= taken * length;
    }
  }
  return { filling, left };
}
