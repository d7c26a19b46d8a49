import type { Work } from './stock.ts';

/** Which sums up to `most` can be made of pieces: for each length, of it and all shorter ones. One bit a sum. */
export class ReachableSums {
  readonly #sets: Int32Array[];

  constructor(lengths: readonly number[], counts: readonly number[], most: number, work: Work) {
    const words = (most >> 5) + 1;
    let set = new Int32Array(words);
    set[0] = 1;
    this.#sets = Array<Int32Array>(lengths.length + 1);
    this.#sets[lengths.length] = set;
    for (let type = lengths.length - 1; type >= 0; type--) {
      const next = Int32Array.from(set);
      let left = counts[type]!;
      // Doubling: 1, 2, 4, ... copies and the rest make every number of copies from 0 to the count.
      for (let copies = 1; left > 0; copies *= 2) {
        const used = Math.min(copies, left);
        orShifted(next, used * lengths[type]!);
        work.left -= words >> 4;
        left -= used;
      }
      set = next;
      this.#sets[type] = set;
    }
  }

  /** The largest sum in [from, to] of pieces from `type` on; -1 where there is none. */
  largest(type: number, from: number, to: number): number {
    const set = this.#sets[type]!;
    const least = Math.max(0, from);
    for (let sum = Math.min(to, set.length * 32 - 1); sum >= least; ) {
      const word = set[sum >> 5]!;
      if (word === 0) sum = (sum & ~31) - 1;
      else if ((word >>> (sum & 31)) & 1) return sum;
      else sum--;
    }
    return -1;
  }
}

/** set |= set << shift; what is shifted past the end is lost. */
function orShifted(set: Int32Array, shift: number): void {
  const wordShift = shift >> 5;
  const bitShift = shift & 31;
  for (let i = set.length - 1; i >= wordShift; i--) {
    const low = set[i - wordShift]!;
    const carry = bitShift === 0 || i === wordShift ? 0 : set[i - wordShift - 1]! >>> (32 - bitShift);
    set[i]! |= (low << bitShift) | carry;
  }
}
