import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { feedTree } from '../../../../core/network/faultSearch/feedTree.ts';
import {
  planFaultSearch,
  type SearchAim,
  type SearchNetwork,
  type SearchTree,
} from '../../../../core/network/faultSearch/index.ts';
import { lowerBound } from '../../../../core/network/faultSearch/lowerBounds.ts';
import { fenceTree } from '../../../support/randomNetworks.ts';
import { anyNetwork, SEED } from '../sectioning/networks.ts';

const AIMS: readonly SearchAim[] = ['expectedTests', 'worstCaseTests', 'expectedCost', 'worstCaseCost'];

/** Trees of sections, from the networks of the sectioning tests. */
function searchNetworks(sections: number, rings: number): fc.Arbitrary<SearchNetwork> {
  return anyNetwork({ runs: sections, extra: rings, costs: [0.5, 1, 2.5, 4] }).map(({ runs, candidates, source }) => ({
    sections: runs.map(({ id, lengthM }) => ({ id, lengthM })),
    switches: candidates,
    source,
  }));
}

/** Sections live with some switches open. */
function live(network: SearchNetwork, open: ReadonlySet<string>): Set<string> {
  const reached = new Set([network.source]);
  for (let grew = true; grew; ) {
    grew = false;
    for (const { id, a, b } of network.switches) {
      if (open.has(id) || reached.has(a) === reached.has(b)) continue;
      reached.add(a).add(b);
      grew = true;
    }
  }
  return reached;
}

/** Does the search with a fault in one section, by the switches; returns the tests made and where it ended. */
function walk(network: SearchNetwork, tree: SearchTree, openFirst: readonly string[], fault: string) {
  const tests: string[] = [];
  let at = tree;
  while ('test' in at) {
    tests.push(at.test);
    const recovers = !live(network, new Set([...openFirst, at.test])).has(fault);
    at = recovers ? at.ifRecovers : at.ifNot;
  }
  return { tests, found: at.fault };
}

/** The best value by trying every first test, then every second, and so on; sections as sorted lists. */
function bestByTryingAll(network: SearchNetwork, openFirst: readonly string[], aim: SearchAim): number {
  const weightOf = new Map(network.sections.map(({ id, lengthM }) => [id, lengthM]));
  const all = [...live(network, new Set(openFirst))];
  if (all.every((id) => weightOf.get(id) === 0)) for (const id of all) weightOf.set(id, 1);
  const total = all.reduce((sum, id) => sum + weightOf.get(id)!, 0);
  const sides = network.switches
    .filter(({ id }) => !openFirst.includes(id))
    .map(({ id, cost }) => ({
      price: aim.endsWith('Cost') ? (cost ?? 1) : 1,
      near: live(network, new Set([...openFirst, id])),
    }));
  const known = new Map<string, number>();
  const value = (part: readonly string[]): number => {
    if (part.length === 1) return 0;
    const key = part.join();
    if (!known.has(key)) {
      const weight = part.reduce((sum, id) => sum + weightOf.get(id)!, 0);
      const values = sides.flatMap(({ price, near }) => {
        const far = part.filter((id) => !near.has(id));
        if (far.length === 0 || far.length === part.length) return [];
        const [x, y] = [value(far), value(part.filter((id) => near.has(id)))];
        return aim.startsWith('worst') ? price + Math.max(x, y) : price * weight + x + y;
      });
      known.set(key, Math.min(...values));
    }
    return known.get(key)!;
  };
  return value(all) / (aim.startsWith('worst') ? 1 : total);
}

describe('planFaultSearch', () => {
  it.each(AIMS)('is best for %s, against every order of tests', (aim) => {
    fc.assert(
      fc.property(searchNetworks(8, 3), (network) => {
        const plan = planFaultSearch(network, aim);
        expect(plan.optimal).toBe(true);
        expect(plan[aim]).toBeCloseTo(bestByTryingAll(network, plan.openFirst, aim), 9);
      }),
      { seed: SEED, numRuns: 400 },
    );
  });

  it.each(AIMS)('finds every fault, in as many tests as it says (%s)', (aim) => {
    fc.assert(
      fc.property(searchNetworks(60, 6), (network) => {
        const plan = planFaultSearch(network, aim);
        const weights = network.sections.map(({ lengthM }) => lengthM);
        const even = weights.every((weight) => weight === 0);
        const total = even ? weights.length : weights.reduce((sum, weight) => sum + weight, 0);
        const costOf = new Map(network.switches.map(({ id, cost }) => [id, cost!]));
        let [expectedTests, expectedCost, worstCaseTests, worstCaseCost] = [0, 0, 0, 0];
        for (const { id, lengthM } of network.sections) {
          const { tests, found } = walk(network, plan.tree, plan.openFirst, id);
          expect(found).toBe(id);
          const cost = tests.reduce((sum, test) => sum + costOf.get(test)!, 0);
          expectedTests += ((even ? 1 : lengthM) * tests.length) / total;
          expectedCost += ((even ? 1 : lengthM) * cost) / total;
          worstCaseTests = Math.max(worstCaseTests, tests.length);
          worstCaseCost = Math.max(worstCaseCost, cost);
        }
        expect(plan.expectedTests).toBeCloseTo(expectedTests, 9);
        expect(plan.expectedCost).toBeCloseTo(expectedCost, 9);
        expect(plan.worstCaseTests).toBe(worstCaseTests);
        expect(plan.worstCaseCost).toBeCloseTo(worstCaseCost, 9);
        expect(plan.lowerBound).toBeLessThanOrEqual(plan[aim] + 1e-12);
        expect(plan.lowerBound).toBeGreaterThan(network.sections.length > 1 ? 0 : -1);
      }),
      { seed: SEED, numRuns: 120 },
    );
  });

  it('has bounds that no best search goes below', () => {
    fc.assert(
      fc.property(searchNetworks(9, 0), fc.constantFrom(...AIMS), (network, aim) => {
        expect(lowerBound(feedTree(network), aim)).toBeLessThanOrEqual(bestByTryingAll(network, [], aim) + 1e-9);
      }),
      { seed: SEED, numRuns: 1000 },
    );
  });

  it('stays close to the bound on large plans', () => {
    const { runs, candidates } = fenceTree(300, 3);
    const plan = planFaultSearch({ sections: runs, switches: candidates, source: 'r1' });
    expect(plan.expectedTests / plan.lowerBound).toBeLessThan(1.05);
  });

  it('opens ring switches first: those that stand open, then the far ones of what rings are left', () => {
    const network: SearchNetwork = {
      sections: ['s', 'a', 'b', 'c'].map((id) => ({ id, lengthM: 100 })),
      switches: [
        { id: 'sa', a: 's', b: 'a' },
        { id: 'ab', a: 'a', b: 'b' },
        { id: 'bc', a: 'b', b: 'c' },
        { id: 'cs', a: 'c', b: 's' },
        { id: 'ac', a: 'a', b: 'c' },
      ],
      source: 's',
    };
    expect(planFaultSearch(network).openFirst).toEqual(['bc', 'ac']);
    expect(planFaultSearch({ ...network, normallyOpen: ['sa'] }).openFirst).toEqual(['sa', 'ab']);
    expect(() => planFaultSearch({ ...network, normallyOpen: ['zz'] })).toThrow(/normallyOpen names switch zz/);
  });

  it('names sections that the energiser does not reach', () => {
    const network: SearchNetwork = {
      sections: ['s', 'a', 'b'].map((id) => ({ id, lengthM: 100 })),
      switches: [{ id: 'sa', a: 's', b: 'a' }],
      source: 's',
    };
    expect(planFaultSearch(network)).toMatchObject({
      unfed: ['b'],
      tree: { test: 'sa', ifRecovers: { fault: 'a' }, ifNot: { fault: 's' } },
    });
  });

  it('goes by weights other than length where they are given', () => {
    const sections = [10, 1, 1, 1].map((weight, i) => ({ id: `s${i}`, lengthM: 500, weight }));
    const switches = [1, 2, 3].map((i) => ({ id: `w${i}`, a: `s${i - 1}`, b: `s${i}` }));
    expect(planFaultSearch({ sections, switches, source: 's0' }).firstTests).toEqual(['w1']);
    expect(
      planFaultSearch({ sections: sections.map(({ id, lengthM }) => ({ id, lengthM })), switches, source: 's0' })
        .firstTests,
    ).toEqual(['w2']);
  });
});
