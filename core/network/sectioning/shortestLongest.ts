import type { Steps } from '../../model/steps.ts';
import type { CheapestCuts } from './cheapestCuts.ts';

/**
 * The smallest length limit at which a piece still costs no more than `leastCost`: the length of the longest section of
 * the best of its cheapest plans. Exact: the limit is first tried just under the length in hand, further down as long
 * as that succeeds, then by halving; every trial also tells the next limit at which anything could change.
 *
 * `floor`: no limit below this can hold (the longest vertex). `limit`: one that is known to hold.
 */
export function* shortestLongest(
  cuts: CheapestCuts,
  piece: number,
  leastCost: number,
  floor: number,
  limit: number,
): Steps<number> {
  let lowest = floor;
  let holds = Math.max(floor, Math.min(limit, cuts.sameDecisions(piece).kept));
  let stride = 1;
  let falling = true;
  while (lowest < holds) {
    const trial = Math.max(lowest, falling ? holds - stride : Math.floor((lowest + holds) / 2));
    if ((yield* cuts.cost(piece, trial)) <= leastCost) {
      holds = Math.max(lowest, Math.min(trial, cuts.sameDecisions(piece).kept));
      stride *= 8;
    } else {
      lowest = Math.min(holds, Math.max(trial + 1, cuts.sameDecisions(piece).refused));
      falling = false;
    }
  }
  return holds;
}
