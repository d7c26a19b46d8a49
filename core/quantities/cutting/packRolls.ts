import { largestOf } from '../../model/extremes.ts';
import { cannotHold } from './cannotHold.ts';
import { dive } from './dive.ts';
import { fillExactly } from './fillExactly.ts';
import { type Filling, fillGreedily, fillInOrder } from './fillGreedily.ts';
import { longestRolls, type RollSet, rollSets } from './rollSets.ts';
import { type Stock, stockOf, totalLength, type Work } from './stock.ts';
import type { OpenedRoll, Packing, RollSize } from './types.ts';

/** Steps of work in all, and for the proof of one set of rolls. */
export interface Allowance {
  readonly total: number;
  readonly forOneSet: number;
}

const usualAllowance: Allowance = { total: 40_000_000, forOneSet: 8_000_000 };
const mostSets = 3000;
/** A short search first: most sets are settled by it. */
const firstSearch = 5000;

/**
 * Cuts pieces from rolls without a joint: as few bought rolls as can be, then as few opened, then as little length
 * opened. Lengths are whole numbers of one unit. Ladder of sets of rolls in that order, each proven too small or
 * filled; within its allowance of work the answer is exact, beyond that `optimal` is false and the answer still whole.
 */
export function packRolls(pieces: readonly number[], sizes: readonly RollSize[], allowance = usualAllowance): Packing {
  const usable = sizes.map((size) => ({ ...size, count: size.length > 0 ? size.count : 0 }));
  const longest = Math.max(0, largestOf(usable.map(({ length, count }) => (count > 0 ? length : 0))));
  const tooLong = [...pieces.keys()].filter((piece) => pieces[piece]! > longest);
  const placed = [...pieces.keys()].filter((piece) => pieces[piece]! <= longest);
  const answer = climb(stockOf(placed.map((piece) => pieces[piece]!)), usable, placed.length, allowance);
  if (!answer) return { ...asMuchAsFits(pieces, placed, usable), tooLong, optimal: false, least: null };
  const { set, filling, optimal, least } = answer;
  return { rolls: nameRolls(pieces, placed, set, filling), tooLong, without: [], optimal, least };
}

interface Answer {
  readonly set: RollSet;
  readonly filling: Filling;
  readonly optimal: boolean;
  readonly least: Packing['least'];
}

/** The first set of the ladder that holds all; null where there are not enough rolls. */
function climb(stock: Stock, sizes: readonly RollSize[], pieceCount: number, allowance: Allowance): Answer | null {
  if (pieceCount === 0) return { set: sizes.map(() => 0), filling: [], optimal: true, least: { bought: 0, rolls: 0 } };
  const total = totalLength(stock);
  const work = { left: allowance.total };
  let least: Packing['least'] | null = null;
  let proven = true;
  for (const { bought, count } of rungs(sizes, pieceCount)) {
    const longest = longestRolls(sizes, count - bought, bought);
    if (longest === null || cannotHold(stock, longest)) continue;
    if (proven) least = { bought, rolls: count };
    const { sets, whole } = rollSets(sizes, count, bought, total, mostSets);
    for (const set of sets) {
      if (work.left <= 0) break;
      const found = fill(stock, rollsOf(sizes, set), work, allowance.forOneSet);
      if (typeof found !== 'string') return { set, filling: found, optimal: proven, least: least! };
      if (found === 'unknown') proven = false;
    }
    if (!whole || work.left <= 0) proven = false;
    const rough = proven ? null : fillLongest(stock, sizes, sets);
    if (rough) return { ...rough, optimal: false, least: least! };
  }
  return null;
}

/** The ladder: few bought rolls before few rolls. */
function* rungs(sizes: readonly RollSize[], pieceCount: number) {
  const onHand = sizes.reduce((sum, { count, bought }) => sum + (bought ? 0 : count), 0);
  const mostBought = sizes.some(({ bought, count }) => bought && count > 0) ? pieceCount : 0;
  for (let bought = 0; bought <= mostBought; bought++) {
    const most = bought + Math.min(onHand, pieceCount);
    for (let count = Math.max(1, bought); count <= most; count++) yield { bought, count };
  }
}

function fill(
  stock: Stock,
  rolls: readonly number[],
  work: Work,
  forOneSet: number,
): Filling | 'impossible' | 'unknown' {
  if (cannotHold(stock, rolls)) return 'impossible';
  const greedy = fillGreedily(stock, rolls, work);
  if (greedy) return greedy;
  if (work.left <= 0) return 'unknown';
  const own = { left: Math.min(forOneSet, work.left) };
  const before = own.left;
  let found = fillExactly(stock, rolls, { left: Math.min(own.left, firstSearch) });
  if (found === 'unknown') found = dive(stock, rolls, own);
  if (found === 'unknown' && own.left > 0) found = fillExactly(stock, rolls, own);
  work.left -= before - Math.max(0, own.left);
  return found;
}

/** With the work done or a set left open: the longest set of a rung, filled without looking back. */
function fillLongest(stock: Stock, sizes: readonly RollSize[], sets: readonly RollSet[]) {
  const set = sets.at(-1);
  const filling = set && fillGreedily(stock, rollsOf(sizes, set), { left: Infinity });
  return set && filling ? { set, filling } : null;
}

/** Lengths of the rolls of a set, size by size. */
function rollsOf(sizes: readonly RollSize[], set: RollSet): number[] {
  return set.flatMap((count, size) => Array<number>(count).fill(sizes[size]!.length));
}

/** Gives each filled roll its pieces by index. Equal pieces are told out in their own order. */
function nameRolls(pieces: readonly number[], placed: readonly number[], set: RollSet, filling: Filling): OpenedRoll[] {
  const waiting = Map.groupBy(placed, (piece) => pieces[piece]!);
  const lengths = [...waiting.keys()].sort((a, b) => b - a);
  const rolls = set.flatMap((count, size) => Array<number>(count).fill(size));
  return rolls
    .map((size, roll) => ({
      size,
      pieces: lengths.flatMap((length, type) => waiting.get(length)!.splice(0, filling[roll]![type]!)),
    }))
    .filter((roll) => roll.pieces.length > 0);
}

/** Where there are not enough rolls: the longest pieces first, and what is left without. */
function asMuchAsFits(pieces: readonly number[], placed: readonly number[], sizes: readonly RollSize[]) {
  const set = sizes.map(({ count }) => (Number.isFinite(count) ? Math.min(count, placed.length) : 0));
  const rolls = rollsOf(sizes, set);
  const stock = stockOf(placed.map((piece) => pieces[piece]!));
  const order = [...rolls.keys()].sort((a, b) => rolls[b]! - rolls[a]!);
  const { filling } = fillInOrder(stock, rolls, order, true, { left: Infinity });
  const named = nameRolls(pieces, placed, set, filling);
  const taken = new Set(named.flatMap((roll) => roll.pieces));
  return { rolls: named, without: placed.filter((piece) => !taken.has(piece)) };
}
