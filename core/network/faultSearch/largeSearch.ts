import type { Valuation } from './aims.ts';
import { connectedSets, ExactSearch } from './exactSearch.ts';
import type { FeedTree } from './feedTree.ts';

/** Parts with at most this many sections and connected sets are searched exactly: in the answer, and when trying out. */
const EXACT = { sections: 30, sets: 4000 };
const TRIED_EXACT = { sections: 10, sets: 400 };
/** How many of the most promising first tests are tried out. */
const CANDIDATES = 4;

/** A decision tree by section numbers: a test is named by the section its switch feeds. */
export type Decision = { readonly test: number; readonly far: Decision; readonly near: Decision } | number;

/**
 * A good search for plans too large to search exactly. Of a part still in question, tests are rated by the uncertainty
 * (entropy) they leave in the two parts they make, for the price of the test; a few of the best are tried out by going
 * on with the best-rated test each time, and the one that does best is taken. Small parts are searched exactly.
 *
 * Always taking the most balanced test is known to stay within 1.62 times the best for equal costs (Cicalese, Jacobs,
 * Laber and Molinaro 2014); how close this comes is shown by the bound (lowerBounds.ts).
 */
export class LargeSearch {
  readonly #tree: FeedTree;
  readonly #valuation: Valuation;
  readonly #worstCase: boolean;
  readonly #tried = new Map<string, number>();

  constructor(tree: FeedTree, valuation: Valuation, worstCase: boolean) {
    this.#tree = tree;
    this.#valuation = valuation;
    this.#worstCase = worstCase;
  }

  /** `part`: sections in question, connected, each after the one that feeds it. */
  decide(part: readonly number[], onSettled: (sections: number) => void = () => {}): Decision {
    if (part.length === 1) {
      onSettled(1);
      return part[0]!;
    }
    const exact = this.#exact(part, EXACT);
    if (exact) {
      onSettled(part.length);
      return this.#exactDecision(exact, part, exact.all);
    }
    let best = -1;
    let bestValue = Number.POSITIVE_INFINITY;
    for (const test of this.#promising(part, CANDIDATES)) {
      const value = this.#valueOf(part, test);
      if (value >= bestValue) continue;
      best = test;
      bestValue = value;
    }
    const { far, near } = this.#split(part, best);
    return { test: best, far: this.decide(far, onSettled), near: this.decide(near, onSettled) };
  }

  /** Value of going on with the best-rated test each time. */
  #tryOut(part: readonly number[]): number {
    if (part.length === 1) return 0;
    const key = part.join();
    const known = this.#tried.get(key);
    if (known !== undefined) return known;
    const exact = this.#exact(part, TRIED_EXACT);
    const value = exact ? exact.value(exact.all) : this.#valueOf(part, this.#promising(part, 1)[0]!);
    this.#tried.set(key, value);
    return value;
  }

  #valueOf(part: readonly number[], test: number): number {
    const { far, near } = this.#split(part, test);
    const total = part.reduce((sum, s) => sum + this.#tree.weight[s]!, 0);
    return this.#valuation.combine(this.#valuation.price[test]!, total, this.#tryOut(far), this.#tryOut(near));
  }

  /** The best-rated tests of a part, best first. */
  #promising(part: readonly number[], count: number): number[] {
    const { parent, weight } = this.#tree;
    const { price } = this.#valuation;
    const place = new Map(part.map((s, i) => [s, i]));
    // Of each section and what it feeds within the part: how many sections, their weight, sum of weight x log weight.
    const size = new Float64Array(part.length).fill(1);
    const sum = Float64Array.from(part, (s) => weight[s]!);
    const sumLog = Float64Array.from(part, (s) => xLog(weight[s]!));
    let prices = 0;
    for (let i = part.length - 1; i > 0; i--) {
      const up = place.get(parent[part[i]!]!)!;
      size[up]! += size[i]!;
      sum[up]! += sum[i]!;
      sumLog[up]! += sumLog[i]!;
      prices += price[part[i]!]!;
    }
    const usual = prices / (part.length - 1);
    const rating = (i: number): number => {
      const own = price[part[i]!]!;
      if (this.#worstCase) return own + usual * Math.log2(Math.max(size[i]!, size[0]! - size[i]!));
      const left = xLog(sum[i]!) - sumLog[i]! + xLog(sum[0]! - sum[i]!) - (sumLog[0]! - sumLog[i]!);
      return own * sum[0]! + usual * left;
    };
    const rated = Array.from({ length: part.length - 1 }, (_, i) => ({ test: part[i + 1]!, rating: rating(i + 1) }));
    rated.sort((x, y) => x.rating - y.rating || x.test - y.test);
    return rated.slice(0, count).map(({ test }) => test);
  }

  #split(part: readonly number[], test: number): { far: number[]; near: number[] } {
    const isFar = new Set([test]);
    const far: number[] = [];
    const near: number[] = [];
    for (const s of part) {
      if (s !== test && isFar.has(this.#tree.parent[s]!)) isFar.add(s);
      (isFar.has(s) ? far : near).push(s);
    }
    return { far, near };
  }

  #exact(part: readonly number[], most: { sections: number; sets: number }): ExactSearch | undefined {
    if (part.length > most.sections) return undefined;
    const place = new Map(part.map((s, i) => [s, i]));
    const parent = part.map((s, i) => (i === 0 ? -1 : place.get(this.#tree.parent[s]!)!));
    if (connectedSets(parent) > most.sets) return undefined;
    return new ExactSearch(
      { parent, weight: part.map((s) => this.#tree.weight[s]!), price: part.map((s) => this.#valuation.price[s]!) },
      this.#valuation.combine,
    );
  }

  #exactDecision(search: ExactSearch, part: readonly number[], set: number): Decision {
    if ((set & (set - 1)) === 0) return part[31 - Math.clz32(set)]!;
    const test = search.bestTests(set)[0]!;
    const far = search.farSide(set, test);
    return {
      test: part[test]!,
      far: this.#exactDecision(search, part, far),
      near: this.#exactDecision(search, part, set ^ far),
    };
  }
}

function xLog(x: number): number {
  return x > 0 ? x * Math.log2(x) : 0;
}
