import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  planSections,
  priceOfChange,
  priceOfForbidding,
  priceOfForcing,
  priceOfWithout,
  type SectioningNetwork,
  type SectioningPlan,
  sectionsWith,
} from '../../../../core/network/sectioning/index.ts';
import { anyNetwork, bestByTryingAll, joinedGroups, SEED } from './networks.ts';

const line: SectioningNetwork = {
  runs: [3200, 4000, 2500].map((lengthM, i) => ({ id: `r${i}`, lengthM, gateways: 2 })),
  candidates: [
    { id: 'S6', a: 'r0', b: 'r1', cost: 1 },
    { id: 'S7', a: 'r1', b: 'r2', cost: 1.3 },
  ],
  source: 'r0',
  maxSectionM: 5000,
  maxGateways: 3,
};

function planned(network: SectioningNetwork): SectioningPlan {
  const result = planSections(network);
  if (result.outcome !== 'plan') throw new Error(result.outcome);
  return result;
}

describe('priceOfWithout', () => {
  it('says which sections merge and by how much they are over', () => {
    expect(priceOfWithout(line, planned(line), 'S6')).toEqual({
      merged: [0, 1],
      lengthM: 7200,
      gateways: 4,
      longestSectionM: 7200,
      overByM: 2200,
      overByGateways: 1,
      overByRuns: 0,
      needless: [],
      saves: 1,
    });
  });

  it('agrees with the sections that the other switches make', () => {
    fc.assert(
      fc.property(anyNetwork({ runs: 12, extra: 6, requests: true }), (network) => {
        const result = planSections(network);
        if (result.outcome !== 'plan') return;
        for (const id of result.chosen) {
          const price = priceOfWithout(network, result, id);
          const rest = result.chosen.filter((other) => other !== id);
          const sections = sectionsWith(network, rest);
          expect(Math.max(...sections.map(({ lengthM }) => lengthM))).toBe(price.longestSectionM);
          expect(sections).toHaveLength(result.sections.length - (price.merged ? 1 : 0));
          const useful = sectionsWith(
            network,
            rest.filter((other) => !price.needless.includes(other)),
          );
          expect(useful).toHaveLength(sections.length);
        }
      }),
      { seed: SEED, numRuns: 400 },
    );
  });

  it('knows only switches of the plan', () => {
    expect(() => priceOfWithout(line, planned(line), 'S9')).toThrow(/no switch S9/);
  });
});

describe('sectionsWith', () => {
  it('lists the sections that any switches make', () => {
    fc.assert(
      fc.property(anyNetwork({ runs: 12, extra: 6, requests: true }), fc.nat(), (network, pick) => {
        const switches = network.candidates.filter((_, c) => (pick >> (c % 30)) & 1).map(({ id }) => id);
        const groups = joinedGroups(network, new Set(switches)).map((group) => [...group].sort().join());
        expect(
          sectionsWith(network, switches)
            .map(({ runs }) => [...runs].sort().join())
            .sort(),
        ).toEqual(groups.sort());
      }),
      { seed: SEED, numRuns: 300 },
    );
  });
});

describe('prices of requests', () => {
  it('are the difference between the best plans with and without them', () => {
    fc.assert(
      fc.property(anyNetwork({ runs: 7, extra: 3 }), fc.nat(), (network, which) => {
        if (network.candidates.length === 0) return;
        const { id } = network.candidates[which % network.candidates.length]!;
        const plan = planned(network);
        for (const [price, requested] of [
          [priceOfForcing(network, plan, id), { ...network, forced: [id] }],
          [priceOfForbidding(network, plan, id), { ...network, forbidden: [id] }],
        ] as const) {
          const best = bestByTryingAll(requested);
          if (!best) expect(price).toMatchObject({ costMore: null, result: { outcome: 'impossible' } });
          else {
            expect(price.costMore).toBeCloseTo(best.cost - plan.cost, 9);
            expect(price.costMore).toBeGreaterThanOrEqual(0);
            expect(price.longestMoreM).toBeCloseTo(best.longestSectionM - plan.longestSectionM, 6);
          }
        }
      }),
      { seed: SEED, numRuns: 300 },
    );
  });

  it('moves a switch: forbids one place and forces another, whatever was requested before', () => {
    const network = { ...line, maxSectionM: 6500, maxGateways: null, forced: ['S7'], forbidden: ['S6'] };
    const { result } = priceOfChange(network, planned({ ...network, maxSectionM: 9000 }), {
      force: ['S6'],
      forbid: ['S7'],
    });
    expect(result).toMatchObject({ outcome: 'plan', chosen: ['S6'], longestSectionM: 6500 });
  });
});
