import { fillExactly } from './fillExactly.ts';
import { type Filling, fillGreedily } from './fillGreedily.ts';
import { type FractionalPattern, fractionalCuts } from './fractionalCuts.ts';
import type { Stock, Work } from './stock.ts';

/** Steps of exact search that the rest of a dive may cost each time. */
const forRest = 20_000;

/**
 * Fills rolls by taking the fractional cuts at their word: whatever is used nearly whole is fixed, at least the most
 * used, and the rest is worked out anew, until a search can finish it. `impossible` only where the very first look
 * proves it.
 */
export function dive(stock: Stock, rolls: readonly number[], work: Work): Filling | 'impossible' | 'unknown' {
  const filling = rolls.map(() => stock.lengths.map(() => 0));
  const open = new Set(rolls.keys());
  const left = [...stock.counts];
  for (let depth = 0; work.left > 0; depth++) {
    const rest = restOf(stock, left);
    const openRolls = [...open];
    const lengths = openRolls.map((roll) => rolls[roll]!);
    const cuts = fractionalCuts(rest.stock, lengths, work);
    if (cuts === 'impossible') return depth === 0 ? 'impossible' : 'unknown';
    if (cuts === 'unknown') return 'unknown';
    const finished = finish(rest.stock, lengths, work);
    if (finished) {
      for (const [i, roll] of openRolls.entries()) {
        for (const [t, type] of rest.types.entries()) filling[roll]![type]! += finished[i]![t]!;
      }
      return filling;
    }
    for (const pattern of toFix(cuts, rest.stock.counts)) {
      const roll = openRolls.find((candidate) => open.has(candidate) && rolls[candidate] === pattern.roll);
      if (roll === undefined) break;
      open.delete(roll);
      for (const [t, type] of rest.types.entries()) {
        filling[roll]![type]! += pattern.counts[t]!;
        left[type]! -= pattern.counts[t]!;
      }
    }
  }
  return 'unknown';
}

function restOf({ lengths }: Stock, left: readonly number[]) {
  const types = [...lengths.keys()].filter((type) => left[type]! > 0);
  return { types, stock: { lengths: types.map((type) => lengths[type]!), counts: types.map((type) => left[type]!) } };
}

function finish(stock: Stock, rolls: readonly number[], work: Work): Filling | null {
  const greedy = fillGreedily(stock, rolls, work);
  if (greedy) return greedy;
  const own = { left: Math.min(forRest, work.left) };
  const before = own.left;
  const found = fillExactly(stock, rolls, own);
  work.left -= before - own.left;
  return typeof found === 'string' ? null : found;
}

/** The patterns to fix, most used first: those used at least nine tenths whole, and always the first. */
function toFix(cuts: readonly FractionalPattern[], counts: readonly number[]): FractionalPattern[] {
  const left = [...counts];
  const fixed: FractionalPattern[] = [];
  const fits = ({ counts: taken }: FractionalPattern) => taken.every((count, type) => count <= left[type]!);
  for (const cut of [...cuts].sort((a, b) => b.times - a.times)) {
    for (let times = cut.times; (times >= 0.9 || fixed.length === 0) && fits(cut); times--) {
      fixed.push(cut);
      for (const [type, count] of cut.counts.entries()) left[type]! -= count;
    }
  }
  return fixed;
}
