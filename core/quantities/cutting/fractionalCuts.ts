import { largestOf } from '../../model/extremes.ts';
import { bestPatterns } from './bestPattern.ts';
import type { Stock, Work } from './stock.ts';

/** A way to fill one roll, and how often it is used where rolls may be used in part. */
export interface FractionalPattern {
  readonly roll: number;
  readonly counts: readonly number[];
  readonly times: number;
}

const worthScale = 1e6;
const small = 1e-9;

/**
 * Whether the rolls could hold all pieces if each roll might be filled in several ways at once, in part each. If not
 * even so, they can't at all (`impossible`, proven in whole numbers: the pieces are given worths of which no roll can
 * hold its share). Else the ways, with how much of each.
 *
 * Column generation (P. C. Gilmore and R. E. Gomory, "A linear programming approach to the cutting-stock problem",
 * Operations Research 9, 1961): a simplex over few ways of filling, to which the best new one is added by a knapsack.
 * The aim is the number of pieces left out.
 */
export function fractionalCuts(
  stock: Stock,
  rolls: readonly number[],
  work: Work,
): FractionalPattern[] | 'impossible' | 'unknown' {
  const sizes = [...new Set(rolls)].sort((a, b) => a - b);
  const simplex = new Simplex(
    stock.counts,
    sizes.map((size) => rolls.filter((roll) => roll === size).length),
  );
  for (let round = 0; round < 30 * simplex.rows && work.left > 0; round++) {
    if (simplex.leftOut() < 1e-7)
      return simplex.patterns().map(({ size, ...pattern }) => ({ ...pattern, roll: sizes[size]! }));
    const { worths, prices } = simplex.duals();
    const whole = worths.map((worth) => Math.max(0, Math.round(worth * worthScale)));
    const best = bestPatterns(stock, whole, sizes.at(-1)!, work);
    const wanted = stock.counts.reduce((sum, count, type) => sum + count * whole[type]!, 0);
    const held = sizes.reduce((sum, size, i) => sum + simplex.rollCounts[i]! * best.worth(size), 0);
    if (wanted > held) return 'impossible';
    const gains = sizes.map((size, i) => best.worth(size) / worthScale - prices[i]!);
    const size = gains.indexOf(largestOf(gains));
    const entered = simplex.improve(size, gains[size]! > 1e-7 ? best.pattern(sizes[size]!) : null);
    work.left -= (simplex.rows * simplex.rows) >> 5;
    if (!entered) return 'unknown';
  }
  return 'unknown';
}

/** A column of the basis: a way to fill a roll of one size, or what makes a row come out even. */
type Column =
  | { readonly kind: 'pattern'; readonly size: number; readonly counts: readonly number[] }
  | { readonly kind: 'leftOut' | 'tooMuch'; readonly type: number }
  | { readonly kind: 'unused'; readonly size: number };

/** Revised simplex with the inverse of the basis held whole. One row for each length, then one for each size of roll. */
class Simplex {
  readonly rows: number;
  readonly rollCounts: readonly number[];
  readonly #types: number;
  readonly #inverse: Float64Array[];
  readonly #values: Float64Array;
  readonly #basis: Column[];

  constructor(pieceCounts: readonly number[], rollCounts: readonly number[]) {
    this.#types = pieceCounts.length;
    this.rollCounts = rollCounts;
    this.rows = pieceCounts.length + rollCounts.length;
    // A little less of each length, by different amounts: else many corners of the polytope fall together, and the
    // simplex goes round in circles among them.
    const eased = pieceCounts.map((count, type) => count - 1e-5 * (1 + ((type * 37) % 101) / 101));
    this.#values = Float64Array.from([...eased, ...rollCounts]);
    this.#inverse = Array.from({ length: this.rows }, (_, row) => {
      const unit = new Float64Array(this.rows);
      unit[row] = 1;
      return unit;
    });
    this.#basis = [
      ...pieceCounts.map((_, type): Column => ({ kind: 'leftOut', type })),
      ...rollCounts.map((_, size): Column => ({ kind: 'unused', size })),
    ];
  }

  leftOut(): number {
    return this.#basis.reduce((sum, column, row) => sum + (column.kind === 'leftOut' ? this.#values[row]! : 0), 0);
  }

  patterns(): { readonly size: number; readonly counts: readonly number[]; readonly times: number }[] {
    return this.#basis.flatMap((column, row) =>
      column.kind === 'pattern' && this.#values[row]! > 1e-7
        ? [{ size: column.size, counts: column.counts, times: this.#values[row]! }]
        : [],
    );
  }

  /** What one more piece of each length would cost, and what a roll of each size is worth. */
  duals(): { readonly worths: number[]; readonly prices: number[] } {
    const duals = new Float64Array(this.rows);
    for (const [row, column] of this.#basis.entries()) {
      if (column.kind !== 'leftOut') continue;
      for (let i = 0; i < this.rows; i++) duals[i]! += this.#inverse[row]![i]!;
    }
    return {
      worths: [...duals.subarray(0, this.#types)],
      prices: [...duals.subarray(this.#types)].map((dual) => -dual),
    };
  }

  /** Lets a column into the basis: the pattern, or one of those that even out. False where none would help. */
  improve(size: number, pattern: readonly number[] | null): boolean {
    const { worths, prices } = this.duals();
    const type = worths.findIndex((worth) => worth < -1e-9);
    const over = worths.findIndex((worth) => worth > 1 + 1e-9);
    const unused = prices.findIndex((price) => price < -1e-9);
    if (type >= 0) return this.#enter({ kind: 'tooMuch', type });
    if (over >= 0) return this.#enter({ kind: 'leftOut', type: over });
    if (unused >= 0) return this.#enter({ kind: 'unused', size: unused });
    return pattern !== null && this.#enter({ kind: 'pattern', size, counts: pattern });
  }

  #enter(column: Column): boolean {
    const direction = this.#times(this.#entriesOf(column));
    let leaving = -1;
    for (let row = 0; row < this.rows; row++) {
      if (direction[row]! <= small) continue;
      if (leaving < 0 || this.#values[row]! / direction[row]! < this.#values[leaving]! / direction[leaving]! - 1e-12)
        leaving = row;
    }
    if (leaving < 0) return false;
    const pivot = direction[leaving]!;
    const pivotRow = this.#inverse[leaving]!;
    for (let i = 0; i < this.rows; i++) pivotRow[i]! /= pivot;
    this.#values[leaving]! /= pivot;
    for (let row = 0; row < this.rows; row++) {
      const factor = direction[row]!;
      if (row === leaving || factor === 0) continue;
      const target = this.#inverse[row]!;
      for (let i = 0; i < this.rows; i++) target[i]! -= factor * pivotRow[i]!;
      this.#values[row] = Math.max(0, this.#values[row]! - factor * this.#values[leaving]!);
    }
    this.#basis[leaving] = column;
    return true;
  }

  #entriesOf(column: Column): Float64Array {
    const entries = new Float64Array(this.rows);
    if (column.kind === 'pattern') {
      entries.set(column.counts);
      entries[this.#types + column.size] = 1;
    } else if (column.kind === 'unused') entries[this.#types + column.size] = 1;
    else entries[column.type] = column.kind === 'leftOut' ? 1 : -1;
    return entries;
  }

  #times(entries: Float64Array): Float64Array {
    return Float64Array.from(this.#inverse, (row) => {
      let sum = 0;
      for (let i = 0; i < entries.length; i++) sum += row[i]! * entries[i]!;
      return sum;
    });
  }
}
