import { leastOf } from '../../model/extremes.ts';
import { Heap } from '../sectioning/heap.ts';
import type { FeedTree } from './feedTree.ts';
import type { SearchAim } from './types.ts';

/**
 * What no search can do better than, in the units of the aim.
 *
 * Every test has two outcomes, so a search is a binary code for the sections; and to be sure of one section every switch
 * at it has to be tested. Hence, for the expected tests: Huffman's code (1952); codes whose words are at least as long
 * as each section has switches, by Kraft's inequality (1949); the best order round any one section, its neighbours
 * taken by weight per cost (Smith's rule, 1956). For the worst case: the logarithm of the number of sections, and the
 * switches at any one section. Costs: the cheapest switch, where a bound counts tests.
 */
export function lowerBound(tree: FeedTree, aim: SearchAim): number {
  if (tree.ids.length === 1) return 0;
  const byCost = aim === 'expectedCost' || aim === 'worstCaseCost';
  const price = (section: number): number => (byCost ? tree.cost[section]! / tree.costScale : 1);
  const around = switchesAround(tree);
  const cheapest = leastOf(tree.ids.slice(1).map((_, i) => price(i + 1)));
  if (aim === 'worstCaseTests' || aim === 'worstCaseCost') {
    const halving = cheapest * Math.ceil(Math.log2(tree.ids.length) - 1e-12);
    return around.reduce(
      (most, list) =>
        Math.max(
          most,
          list.reduce((sum, { by }) => sum + price(by), 0),
        ),
      halving,
    );
  }
  const total = tree.weight.reduce((sum, weight) => sum + weight, 0);
  const codes = Math.max(
    huffman(tree.weight),
    constrainedCode(
      tree.weight,
      around.map((list) => list.length),
    ),
  );
  const stars = around.reduce((most, list, hub) => {
    const order = list.map(({ by, other }) => ({ cost: price(by), weight: tree.weight[other]! }));
    order.sort((x, y) => y.weight * x.cost - x.weight * y.cost);
    let spent = 0;
    let sum = 0;
    for (const { cost, weight } of order) {
      spent += cost;
      sum += spent * weight;
    }
    return Math.max(most, sum + spent * tree.weight[hub]!);
  }, 0);
  return Math.max(cheapest * codes, stars) / total;
}

interface SwitchAt {
  /** The section it feeds, by which the switch is named. */
  readonly by: number;
  readonly other: number;
}

function switchesAround({ parent }: FeedTree): SwitchAt[][] {
  const around: SwitchAt[][] = Array.from(parent, () => []);
  for (let s = 1; s < parent.length; s++) {
    around[s]!.push({ by: s, other: parent[s]! });
    around[parent[s]!]!.push({ by: s, other: s });
  }
  return around;
}

/** Least sum of weight times word length of a binary code. */
function huffman(weights: Float64Array): number {
  const heap = new Heap<number>((x, y) => x < y);
  for (const weight of weights) heap.add(weight);
  let sum = 0;
  for (let left = weights.length; left > 1; left--) {
    const merged = heap.take()! + heap.take()!;
    sum += merged;
    heap.add(merged);
  }
  return sum;
}

/**
 * Least sum of weight times length where the lengths keep Kraft's inequality (sum of 2^-length at most 1) and are at
 * least as given; lengths need not be whole here, so that this is a lower bound. The best lengths are
 * max(given, log2(level / weight)) for some level, found by halving.
 */
function constrainedCode(weights: Float64Array, atLeast: readonly number[]): number {
  const length = (i: number, level: number): number =>
    weights[i]! > 0 ? Math.max(atLeast[i]!, Math.log2(level / weights[i]!)) : Number.POSITIVE_INFINITY;
  const kraft = (level: number): number => {
    let sum = 0;
    for (let i = 0; i < weights.length; i++) sum += 2 ** -length(i, level);
    return sum;
  };
  let low = 0;
  let high = weights.reduce((sum, weight) => sum + weight, 0);
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (kraft(middle) > 1) low = middle;
    else high = middle;
  }
  let sum = 0;
  for (let i = 0; i < weights.length; i++) if (weights[i]! > 0) sum += weights[i]! * length(i, low);
  return sum;
}
