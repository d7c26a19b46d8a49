import { describe, expect, it } from 'vitest';
import {
  planSections,
  type SectioningNetwork,
  type SectioningOptions,
  type SectioningPlan,
} from '../../core/network/sectioning/index.ts';
import { referenceData } from './data.ts';

// Source: isolation-optima.json, "exhaustive over all edge subsets" up to 14 runs; larger cases by exact ring branching
// and Pareto dynamic programming, checked by a MILP (HiGHS).

interface Optimum {
  readonly minCost: number;
  readonly minLongestSectionM: number;
}

interface Case extends SectioningNetwork {
  readonly id: string;
  readonly family: string;
  readonly expected:
    | ({ readonly feasible: true; readonly sections?: readonly { readonly runs: readonly string[] }[] } & Optimum)
    | { readonly feasible: false; readonly tooLongRuns: readonly string[] };
  readonly expectedIfForcedMustSeparate?: Optimum;
}

const { cases } = referenceData<{ cases: Case[] }>('isolation-optima.json');

function planned(network: Case, options?: SectioningOptions): SectioningPlan {
  const result = planSections(network, options);
  if (result.outcome !== 'plan') throw new Error(`${network.id}: ${result.outcome}`);
  return result;
}

function expectOptimum(plan: SectioningPlan, optimum: Optimum): void {
  expect(plan.cost).toBe(optimum.minCost);
  expect(plan.lowerBoundCost).toBe(optimum.minCost);
  expect(plan.optimal).toBe(true);
  expect(plan.longestSectionM).toBe(optimum.minLongestSectionM);
  expect(plan.longestProven).toBe(true);
}

describe('cheapest sectioning, proven optima', () => {
  it.each(cases)('$id ($family)', (network) => {
    const { expected } = network;
    if (!expected.feasible) {
      const result = planSections(network);
      expect(result).toMatchObject({ outcome: 'impossible', reason: 'runsOverLimit' });
      expect(result).toHaveProperty('tooLongRuns', expected.tooLongRuns);
      return;
    }
    expectOptimum(planned(network), expected);
  });

  const separating = cases.filter((network) => network.expectedIfForcedMustSeparate);
  it.each(separating)('$id, each forced switch parting two sections', (network) => {
    expectOptimum(planned(network, { forcedMustSeparate: true }), network.expectedIfForcedMustSeparate!);
  });

  it.each(cases.filter(({ expected }) => !expected.feasible))('$id, planned as well as it can be', (network) => {
    const plan = planned(network, { bestEffort: true });
    const { expected } = network;
    const named = plan.overLimit.flatMap((group) => group.runs);
    expect([...named].sort()).toEqual(expected.feasible ? [] : [...expected.tooLongRuns].sort());
    for (const section of plan.sections) {
      if (section.runs.some((run) => named.includes(run))) continue;
      expect(section.lengthM).toBeLessThanOrEqual(network.maxSectionM);
    }
  });
});
