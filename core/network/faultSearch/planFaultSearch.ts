import { valuation } from './aims.ts';
import { connectedSets, ExactSearch } from './exactSearch.ts';
import { type FeedTree, feedTree } from './feedTree.ts';
import { named, searchFigures } from './figures.ts';
import { type Decision, LargeSearch } from './largeSearch.ts';
import { lowerBound } from './lowerBounds.ts';
import type { FaultSearchPlan, SearchAim, SearchNetwork } from './types.ts';

/** Plans with at most this many sections, and connected sets of them, are searched exactly. */
const EXACT_SECTIONS = 30;
const EXACT_SETS = 60_000;

/**
 * The order of switches to open in order to find a fault with as few tests as can be (or at as little cost): a decision
 * tree over the sections as they are fed one way from the energiser. One fault, steady, and a reading that shows it, are
 * taken for granted; with more faults than one the search ends at one of them.
 *
 * Exact for small plans (about 15 to 30 sections, by shape); larger ones by the method of LargeSearch, with a bound.
 * @throws RangeError when the input makes no sense.
 */
export function planFaultSearch(network: SearchNetwork, aim: SearchAim = 'expectedTests'): FaultSearchPlan {
  const tree = feedTree(network);
  const parent = [...tree.parent];
  const isSmall = parent.length <= EXACT_SECTIONS && connectedSets(parent) <= EXACT_SETS;
  const { decision, firstTests, value } = isSmall ? exactly(tree, aim) : largely(tree, aim);
  const figures = searchFigures(tree, decision);
  const bound = value ?? lowerBound(tree, aim);
  return {
    aim,
    tree: named(tree, decision),
    ...figures,
    openFirst: tree.openFirst,
    optimal: value !== undefined || figures[aim] <= bound + 1e-12,
    lowerBound: Math.min(bound, figures[aim]),
    firstTests: firstTests.map((test) => tree.switchId[test]!),
    unfed: tree.unfed,
  };
}

interface Answer {
  readonly decision: Decision;
  /** Sections whose switches some best tree tests first. */
  readonly firstTests: readonly number[];
  /** Proven best value, in the caller's units. */
  readonly value?: number;
}

function exactly(tree: FeedTree, aim: SearchAim): Answer {
  const { price, combine, divisor } = valuation(tree, aim);
  const search = new ExactSearch({ parent: [...tree.parent], weight: [...tree.weight], price: [...price] }, combine);
  const decide = (set: number): Decision => {
    if ((set & (set - 1)) === 0) return 31 - Math.clz32(set);
    const test = search.bestTests(set)[0]!;
    const far = search.farSide(set, test);
    return { test, far: decide(far), near: decide(set ^ far) };
  };
  const { all } = search;
  return {
    decision: decide(all),
    firstTests: tree.ids.length === 1 ? [] : search.bestTests(all),
    value: search.value(all) / divisor,
  };
}

function largely(tree: FeedTree, aim: SearchAim): Answer {
  const worstCase = aim === 'worstCaseTests' || aim === 'worstCaseCost';
  const all = Array.from(tree.ids, (_, section) => section);
  const decision = new LargeSearch(tree, valuation(tree, aim), worstCase).decide(all);
  return { decision, firstTests: typeof decision === 'number' ? [] : [decision.test] };
}
