import type { FeedTree } from './feedTree.ts';
import type { SearchAim } from './types.ts';

/** How a decision tree is valued: whole numbers, to be divided by `divisor` for the caller's units. */
export interface Valuation {
  /** Units that one test at the switch feeding a section takes. */
  readonly price: Float64Array;
  /** Value of testing first, then going on in one of two parts; `total` is the weight of both. */
  combine(price: number, total: number, far: number, near: number): number;
  readonly divisor: number;
}

export function valuation(tree: FeedTree, aim: SearchAim): Valuation {
  const byCost = aim === 'expectedCost' || aim === 'worstCaseCost';
  const price = byCost ? tree.cost : new Float64Array(tree.ids.length).fill(1);
  const scale = byCost ? tree.costScale : 1;
  if (aim === 'worstCaseTests' || aim === 'worstCaseCost') {
    return { price, combine: (own, _total, far, near) => own + Math.max(far, near), divisor: scale };
  }
  const totalWeight = tree.weight.reduce((sum, weight) => sum + weight, 0);
  return { price, combine: (own, total, far, near) => own * total + far + near, divisor: scale * totalWeight };
}
