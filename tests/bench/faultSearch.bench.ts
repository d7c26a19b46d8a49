import { planFaultSearch, type SearchAim, type SearchNetwork } from '../../core/network/faultSearch/index.ts';
import { fenceTree } from '../support/randomNetworks.ts';
import { measure } from './measure.ts';
import type { BenchRow } from './row.ts';

export async function bench(): Promise<BenchRow[]> {
  return [
    row(12, 'expectedTests'),
    row(20, 'expectedTests'),
    row(60, 'expectedTests'),
    row(300, 'expectedTests'),
    row(300, 'worstCaseTests'),
    row(300, 'expectedCost'),
    row(1000, 'expectedTests'),
  ];
}

const WORDS: Record<SearchAim, string> = {
  expectedTests: 'expected tests',
  worstCaseTests: 'tests at worst',
  expectedCost: 'expected cost',
  worstCaseCost: 'cost at worst',
};

/** The ratio in the name is that of the plan to the lower bound: 1 is proven best. */
function row(sections: number, aim: SearchAim): BenchRow {
  const { runs, candidates } = fenceTree(sections, 3);
  const network: SearchNetwork = { sections: runs, switches: candidates, source: 'r1' };
  const plan = planFaultSearch(network, aim);
  const ratio = (plan[aim] / plan.lowerBound).toFixed(3);
  return {
    name: `fault search, ${plan[aim].toFixed(2)} ${WORDS[aim]}, ${ratio} x the lower bound`,
    size: sections,
    ...measure(() => planFaultSearch(network, aim), 10),
    unit: 'ms',
    budget: null,
  };
}
