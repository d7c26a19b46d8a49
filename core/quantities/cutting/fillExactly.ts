import type { Filling } from './fillGreedily.ts';
import { ReachableSums } from './reachableSums.ts';
import { type Stock, totalLength, type Work } from './stock.ts';

/**
 * Whether these rolls can hold all pieces, and how: `impossible` is a proof, `unknown` means that the work ran out.
 *
 * Bin completion (R. E. Korf, "An improved algorithm for optimal bin packing", IJCAI 2003; for several sizes
 * A. S. Fukunaga and R. E. Korf, JAIR 28, 2007): rolls are filled one by one, the shortest first, each in every way
 * that still leaves enough room for the rest. If there is an answer at all, the one whose fillings come first in
 * dictionary order (longest pieces first) has three properties, and only such fillings are tried: nothing that is left
 * fits into a filled roll; no piece in it could be swapped for a longer one that is left; of two equal rolls the first
 * comes first in that order too.
 */
export function fillExactly(stock: Stock, rolls: readonly number[], work: Work): Filling | 'impossible' | 'unknown' {
  const order = rolls.map((_, roll) => roll).sort((a, b) => rolls[a]! - rolls[b]!);
  const lengths = order.map((roll) => rolls[roll]!);
  const found = new Search(stock, lengths, work).run();
  if (typeof found === 'string') return found;
  const filling = Array<readonly number[]>(rolls.length);
  for (const [i, roll] of order.entries()) filling[roll] = found[i]!;
  return filling;
}

class Search {
  readonly #lengths: readonly number[];
  readonly #left: number[];
  readonly #rolls: readonly number[];
  readonly #work: Work;
  readonly #filled: number[][] = [];
  /** States from which nothing was found: roll and what was left. */
  readonly #failed = new Set<string>();

  constructor(stock: Stock, rolls: readonly number[], work: Work) {
    this.#lengths = stock.lengths;
    this.#left = [...stock.counts];
    this.#rolls = rolls;
    this.#work = work;
  }

  run(): number[][] | 'impossible' | 'unknown' {
    const slack =
      this.#rolls.reduce((sum, roll) => sum + roll, 0) - totalLength({ lengths: this.#lengths, counts: this.#left });
    if (slack < 0) return 'impossible';
    if (this.#fillFrom(0, slack)) return this.#filled;
    return this.#work.left > 0 ? 'impossible' : 'unknown';
  }

  #fillFrom(roll: number, slack: number): boolean {
    if (this.#left.every((count) => count === 0)) {
      for (let rest = roll; rest < this.#rolls.length; rest++) this.#filled.push(this.#lengths.map(() => 0));
      return true;
    }
    if (roll === this.#rolls.length || this.#work.left <= 0) return false;
    const before = roll > 0 && this.#rolls[roll] === this.#rolls[roll - 1] ? this.#filled.at(-1)! : null;
    const state = `${roll} ${this.#left.join(' ')} ${before ? before.join(' ') : ''}`;
    if (this.#failed.has(state)) return false;
    const room = this.#rolls[roll]!;
    const sums = new ReachableSums(this.#lengths, this.#left, room, this.#work);
    const into = this.#lengths.map(() => 0);
    const done = this.#choose({ roll, sums, into, slack, before }, 0, room, before !== null);
    if (!done && this.#work.left > 0) this.#failed.add(state);
    return done;
  }

  /** Decides how many pieces of one length go in, most first; `equalSoFar` as the roll before. */
  #choose(at: Choice, type: number, room: number, equalSoFar: boolean): boolean {
    if (--this.#work.left <= 0) return false;
    if (at.sums.largest(type, room - at.slack, room) < 0) return false;
    if (type === this.#lengths.length) return this.#settle(at, room);
    const length = this.#lengths[type]!;
    const most = Math.min(this.#left[type]!, Math.floor(room / length), equalSoFar ? at.before![type]! : Infinity);
    for (let count = most; count >= 0; count--) {
      at.into[type] = count;
      this.#left[type]! -= count;
      const found = this.#choose(at, type + 1, room - count * length, equalSoFar && count === at.before![type]);
      if (found) return true;
      this.#left[type]! += count;
    }
    at.into[type] = 0;
    return false;
  }

  #settle({ roll, into, slack }: Choice, room: number): boolean {
    if (this.#canBeBettered(into, room)) return false;
    this.#filled.push([...into]);
    if (this.#fillFrom(roll + 1, slack - room)) return true;
    this.#filled.pop();
    return false;
  }

  /** Something that is left fits beside, or in place of a shorter piece. */
  #canBeBettered(into: readonly number[], room: number): boolean {
    let next = -1;
    for (let type = this.#lengths.length - 1; type >= 0; type--) {
      const length = this.#lengths[type]!;
      if (this.#left[type]! > 0) {
        if (length <= room) return true;
        // `next` is the longest piece in the roll that is shorter than this one.
        if (next >= 0 && length - this.#lengths[next]! <= room) return true;
      }
      if (into[type]! > 0) next = type;
    }
    return false;
  }
}

interface Choice {
  readonly roll: number;
  readonly sums: ReachableSums;
  readonly into: number[];
  readonly slack: number;
  readonly before: readonly number[] | null;
}
