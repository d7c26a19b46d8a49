import type { FeedTree } from './feedTree.ts';
import type { Decision } from './largeSearch.ts';
import type { SearchFigures, SearchTree } from './types.ts';

/** What a search takes: expected and at worst, in tests and in cost. */
export function searchFigures(tree: FeedTree, decision: Decision): SearchFigures {
  const totalWeight = tree.weight.reduce((sum, weight) => sum + weight, 0);
  let expectedTests = 0;
  let expectedCost = 0;
  let worstCaseTests = 0;
  let worstCaseCost = 0;
  const stack: { at: Decision; tests: number; cost: number }[] = [{ at: decision, tests: 0, cost: 0 }];
  for (let next = stack.pop(); next; next = stack.pop()) {
    const { at, tests, cost } = next;
    if (typeof at === 'number') {
      expectedTests += tests * tree.weight[at]!;
      expectedCost += cost * tree.weight[at]!;
      worstCaseTests = Math.max(worstCaseTests, tests);
      worstCaseCost = Math.max(worstCaseCost, cost);
      continue;
    }
    const after = { tests: tests + 1, cost: cost + tree.cost[at.test]! };
    stack.push({ at: at.far, ...after }, { at: at.near, ...after });
  }
  return {
    expectedTests: expectedTests / totalWeight,
    expectedCost: expectedCost / (tree.costScale * totalWeight),
    worstCaseTests,
    worstCaseCost: worstCaseCost / tree.costScale,
  };
}

/** The decision tree in the caller's ids. */
export function named(tree: FeedTree, decision: Decision): SearchTree {
  if (typeof decision === 'number') return { fault: tree.ids[decision]! };
  return {
    test: tree.switchId[decision.test]!,
    ifRecovers: named(tree, decision.far),
    ifNot: named(tree, decision.near),
  };
}
