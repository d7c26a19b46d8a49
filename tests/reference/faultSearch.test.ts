import { describe, expect, it } from 'vitest';
import {
  planFaultSearch,
  type SearchAim,
  type SearchNetwork,
  type SearchTree,
} from '../../core/network/faultSearch/index.ts';
import { referenceData } from './data.ts';

// Source: fault-search-optima.json, "exact dynamic programme over connected sets of sections, integer arithmetic".

interface Case extends SearchNetwork {
  readonly id: string;
  readonly family: string;
  readonly expected: {
    readonly totalLengthM: number;
    readonly minExpectedTests: number;
    readonly expectedTestsTimesLengthM: number;
    readonly minWorstCaseTests: number;
    readonly optimalFirstTests: readonly string[];
    readonly optimalFirstTestsWorstCase: readonly string[];
    readonly exampleTree: SearchTree;
  };
  readonly expectedWithCosts?: {
    readonly minExpectedCost: number;
    readonly minWorstCaseCost: number;
    readonly optimalFirstTests: readonly string[];
    readonly optimalFirstTestsWorstCase: readonly string[];
    readonly exampleTree: SearchTree;
  };
}

const { cases } = referenceData<{ cases: Case[] }>('fault-search-optima.json');

/** Follows a tree to every section it ends at, with the tests made on the way. */
function leaves(tree: SearchTree, path: readonly string[] = []): { fault: string; path: readonly string[] }[] {
  if ('fault' in tree) return [{ fault: tree.fault, path }];
  const next = [...path, tree.test];
  return [...leaves(tree.ifRecovers, next), ...leaves(tree.ifNot, next)];
}

/** Which sections lie on the far side of a switch, seen from the source. */
function farSide(network: SearchNetwork, switchId: string): Set<string> {
  const near = new Set([network.source]);
  for (let grew = true; grew; ) {
    grew = false;
    for (const { id, a, b } of network.switches) {
      if (id === switchId || near.has(a) === near.has(b)) continue;
      near.add(a).add(b);
      grew = true;
    }
  }
  return new Set(network.sections.map(({ id }) => id).filter((id) => !near.has(id)));
}

/** Simulates the search for a fault in each section: it must end there. Returns the sum of length times cost. */
function simulate(network: Case, tree: SearchTree, costOf: (switchId: string) => number): number {
  const sides = new Map(network.switches.map(({ id }) => [id, farSide(network, id)]));
  let sum = 0;
  for (const { id, lengthM } of network.sections) {
    let at = tree;
    let cost = 0;
    while ('test' in at) {
      cost += costOf(at.test);
      at = sides.get(at.test)!.has(id) ? at.ifRecovers : at.ifNot;
    }
    expect(at.fault).toBe(id);
    sum += lengthM * cost;
  }
  return sum;
}

function firstTests(network: Case, aim: SearchAim): string[] {
  return [...planFaultSearch(network, aim).firstTests].sort();
}

describe('fewest tests to find a fault, proven optima', () => {
  it.each(cases)('$id ($family)', (network) => {
    const { expected } = network;
    const plan = planFaultSearch(network, 'expectedTests');
    expect(plan.optimal).toBe(true);
    expect(Math.abs(plan.expectedTests - expected.minExpectedTests)).toBeLessThanOrEqual(1e-9);
    expect(Math.abs(plan.lowerBound - expected.minExpectedTests)).toBeLessThanOrEqual(1e-9);
    expect(simulate(network, plan.tree, () => 1)).toBeCloseTo(expected.expectedTestsTimesLengthM, 6);
    expect(firstTests(network, 'expectedTests')).toEqual([...expected.optimalFirstTests].sort());
    // The example of the file means the same to us: it finds every fault, at the same expectation.
    expect(simulate(network, expected.exampleTree, () => 1)).toBeCloseTo(expected.expectedTestsTimesLengthM, 6);

    const worst = planFaultSearch(network, 'worstCaseTests');
    expect(worst.worstCaseTests).toBe(expected.minWorstCaseTests);
    expect(Math.max(...leaves(worst.tree).map(({ path }) => path.length))).toBe(expected.minWorstCaseTests);
    expect(firstTests(network, 'worstCaseTests')).toEqual([...expected.optimalFirstTestsWorstCase].sort());
  });

  it.each(cases.filter((network) => network.expectedWithCosts))('$id, tests at their cost', (network) => {
    const expected = network.expectedWithCosts!;
    const costs = new Map(network.switches.map(({ id, cost }) => [id, cost ?? 1]));
    const plan = planFaultSearch(network, 'expectedCost');
    expect(Math.abs(plan.expectedCost - expected.minExpectedCost)).toBeLessThanOrEqual(1e-9);
    const total = simulate(network, plan.tree, (id) => costs.get(id)!);
    expect(total / network.expected.totalLengthM).toBeCloseTo(expected.minExpectedCost, 9);
    expect(firstTests(network, 'expectedCost')).toEqual([...expected.optimalFirstTests].sort());
    const worst = planFaultSearch(network, 'worstCaseCost');
    expect(Math.abs(worst.worstCaseCost - expected.minWorstCaseCost)).toBeLessThanOrEqual(1e-9);
    expect(firstTests(network, 'worstCaseCost')).toEqual([...expected.optimalFirstTestsWorstCase].sort());
  });
});
