import type { RollSize } from './types.ts';

/** How many rolls of each size are opened. */
export type RollSet = readonly number[];

/**
 * All ways to open `count` rolls, `bought` of them bought ones, that are long enough together, the shortest together
 * first; `whole` is false where there were more than `most`.
 */
export function rollSets(
  sizes: readonly RollSize[],
  count: number,
  bought: number,
  leastLength: number,
  most: number,
): { readonly sets: readonly RollSet[]; readonly whole: boolean } {
  const sets: { readonly set: number[]; readonly length: number }[] = [];
  const now = sizes.map(() => 0);
  const longest = longestFrom(sizes);
  let whole = true;
  const walk = (size: number, kept: number, buys: number, length: number): void => {
    if (!whole || length + longest(size, kept, buys) < leastLength) return;
    if (size === sizes.length) {
      if (kept > 0 || buys > 0) return;
      if (sets.length === most) whole = false;
      else sets.push({ set: [...now], length });
      return;
    }
    const { length: rollLength, count: there, bought: isBought } = sizes[size]!;
    for (let taken = Math.min(there, isBought ? buys : kept); taken >= 0; taken--) {
      now[size] = taken;
      walk(size + 1, kept - (isBought ? 0 : taken), buys - (isBought ? taken : 0), length + taken * rollLength);
    }
    now[size] = 0;
  };
  walk(0, count - bought, bought, 0);
  sets.sort((a, b) => a.length - b.length);
  return { sets: sets.map(({ set }) => set), whole };
}

/** The most length that so many kept and bought rolls of the sizes from one on can have; less than none: impossible. */
function longestFrom(sizes: readonly RollSize[]): (size: number, kept: number, buys: number) => number {
  return (size, kept, buys) => longestTogether(sizes.slice(size), kept, buys) ?? -Infinity;
}

/** Lengths of the longest rolls that make up so many kept and bought ones; null where there are not so many. */
export function longestRolls(sizes: readonly RollSize[], kept: number, buys: number): number[] | null {
  const rolls: number[] = [];
  const left = { kept, buys };
  for (const { length, count, bought } of [...sizes].sort((a, b) => b.length - a.length)) {
    const which = bought ? 'buys' : 'kept';
    const taken = Math.min(left[which], count);
    left[which] -= taken;
    for (let i = 0; i < taken; i++) rolls.push(length);
  }
  return left.kept > 0 || left.buys > 0 ? null : rolls;
}

function longestTogether(sizes: readonly RollSize[], kept: number, buys: number): number | null {
  return longestRolls(sizes, kept, buys)?.reduce((sum, length) => sum + length, 0) ?? null;
}
