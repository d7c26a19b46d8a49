import type { Valuation } from './aims.ts';

/** A small tree of sections, parents first; at most 30 of them. */
export interface SmallTree {
  readonly parent: readonly number[];
  readonly weight: readonly number[];
  /** Price of the test at the switch that feeds each section. */
  readonly price: readonly number[];
}

/**
 * Exact dynamic programme over the connected sets of sections that a search can be left with (each a bit pattern): the
 * best value of a set is that of its best first test.
 */
export class ExactSearch {
  readonly #tree: SmallTree;
  readonly #combine: Valuation['combine'];
  /** By section: it and all it feeds, as bits. */
  readonly #below: Int32Array;
  readonly #values = new Map<number, number>();

  constructor(tree: SmallTree, combine: Valuation['combine']) {
    this.#tree = tree;
    this.#combine = combine;
    this.#below = Int32Array.from(tree.parent, (_, s) => 1 << s);
    for (let s = tree.parent.length - 1; s > 0; s--) this.#below[tree.parent[s]!]! |= this.#below[s]!;
  }

  get all(): number {
    return this.#below[0]!;
  }

  farSide(set: number, test: number): number {
    return set & this.#below[test]!;
  }

  value(set: number): number {
    if ((set & (set - 1)) === 0) return 0;
    const known = this.#values.get(set);
    if (known !== undefined) return known;
    const total = this.#weightOf(set);
    let best = Number.POSITIVE_INFINITY;
    for (let rest = withoutLowest(set); rest !== 0; rest = withoutLowest(rest)) {
      const value = this.#valueOfTest(set, lowest(rest), total);
      if (value < best) best = value;
    }
    this.#values.set(set, best);
    return best;
  }

  /** Sections whose feeding switch is a best first test in a set. */
  bestTests(set: number): number[] {
    const best = this.value(set);
    const total = this.#weightOf(set);
    const tests: number[] = [];
    for (let rest = withoutLowest(set); rest !== 0; rest = withoutLowest(rest)) {
      if (this.#valueOfTest(set, lowest(rest), total) === best) tests.push(lowest(rest));
    }
    return tests;
  }

  #valueOfTest(set: number, test: number, total: number): number {
    const far = this.farSide(set, test);
    return this.#combine(this.#tree.price[test]!, total, this.value(far), this.value(set ^ far));
  }

  #weightOf(set: number): number {
    let weight = 0;
    for (let rest = set; rest !== 0; rest = withoutLowest(rest)) weight += this.#tree.weight[lowest(rest)]!;
    return weight;
  }
}

/** How many connected sets of sections a tree (parents first) has; the work of an exact search grows with it. */
export function connectedSets(parent: readonly number[]): number {
  const topped = new Float64Array(parent.length).fill(1);
  let count = 0;
  for (let s = parent.length - 1; s >= 0; s--) {
    count += topped[s]!;
    if (s > 0) topped[parent[s]!]! *= 1 + topped[s]!;
  }
  return count;
}

function lowest(set: number): number {
  return 31 - Math.clz32(set & -set);
}

function withoutLowest(set: number): number {
  return set & (set - 1);
}
