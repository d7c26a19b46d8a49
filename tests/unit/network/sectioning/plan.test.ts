import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Planning,
  planSections,
  type SectioningNetwork,
  type SectioningOptions,
  type SectioningPlan,
  startPlanning,
} from '../../../../core/network/sectioning/index.ts';
import { fenceTree, fenceWithRings, paddocks } from '../../../support/randomNetworks.ts';
import { anyNetwork, bestByTryingAll, isWithinLimits, joinedGroups, measure, SEED } from './networks.ts';

function planned(network: SectioningNetwork, options: SectioningOptions = {}): SectioningPlan {
  const result = planSections(network, options);
  if (result.outcome !== 'plan') throw new Error(result.outcome);
  return result;
}

function sorted(groups: readonly (readonly string[])[]): string[] {
  return groups.map((group) => [...group].sort().join()).sort();
}

/** What every plan must keep, checked by nothing but joining runs. */
function expectValid(network: SectioningNetwork, plan: SectioningPlan): void {
  const chosen = new Set(plan.chosen);
  expect(sorted(plan.sections.map(({ runs }) => runs))).toEqual(sorted(joinedGroups(network, chosen)));
  expect(plan.sections[0]!.runs).toContain(network.source);
  for (const section of plan.sections) {
    const own = measure(network, section.runs);
    expect(section.lengthM).toBeCloseTo(own.lengthM, 6);
    expect(section.gateways).toBe(own.gateways);
    const isNamed = plan.overLimit.some(({ runs }) => runs.some((run) => section.runs.includes(run)));
    if (!isNamed) expect(isWithinLimits(network, own)).toBe(true);
  }
  expect(plan.longestSectionM).toBe(Math.max(...plan.sections.map(({ lengthM }) => lengthM)));
  const cost = network.candidates.reduce((sum, { id, cost: own }) => sum + (chosen.has(id) ? own : 0), 0);
  expect(plan.cost).toBeCloseTo(cost, 9);
  expect(plan.lowerBoundCost).toBeLessThanOrEqual(plan.cost);
  expect(plan.optimal).toBe(plan.lowerBoundCost === plan.cost);
  for (const id of network.forced ?? []) expect(chosen.has(id)).toBe(true);
  for (const id of network.forbidden ?? []) expect(chosen.has(id)).toBe(false);
}

describe('planSections, against every set of candidates', () => {
  const small = { runs: 7, extra: 4, limits: true, requests: true };

  it.each([{ forcedMustSeparate: false }, { forcedMustSeparate: true }])(
    'least cost, then shortest longest section: %o',
    (options) => {
      let plans = 0;
      fc.assert(
        fc.property(anyNetwork(small), (network) => {
          const best = bestByTryingAll(network, options.forcedMustSeparate);
          const result = planSections(network, options);
          expect(result.outcome).toBe(best ? 'plan' : 'impossible');
          if (!best || result.outcome !== 'plan') return;
          plans++;
          expectValid(network, result);
          expect(result).toMatchObject({ ...best, optimal: true, longestProven: true });
        }),
        { seed: SEED, numRuns: 1500 },
      );
      expect(plans).toBeGreaterThan(700);
    },
  );

  it('never claims more than is so, however little work is allowed', () => {
    const outcomes = { proven: 0, open: 0 };
    fc.assert(
      fc.property(anyNetwork({ runs: 8, extra: 5 }), fc.integer({ min: 30, max: 6000 }), (network, workBudget) => {
        const best = bestByTryingAll(network)!;
        const plan = planned(network, { workBudget });
        expectValid(network, plan);
        expect(plan.lowerBoundCost).toBeLessThanOrEqual(best.cost);
        expect(plan.cost).toBeGreaterThanOrEqual(best.cost);
        if (plan.optimal) expect(plan.cost).toBe(best.cost);
        if (plan.longestProven) expect(plan.longestSectionM).toBe(best.longestSectionM);
        outcomes[plan.optimal ? 'proven' : 'open']++;
      }),
      { seed: SEED, numRuns: 800 },
    );
    expect(outcomes.proven).toBeGreaterThan(100);
    expect(outcomes.open).toBeGreaterThan(20);
  });

  it('the rest planned as well as can be round runs that are over a limit', () => {
    fc.assert(
      fc.property(anyNetwork({ runs: 6, extra: 3 }), fc.nat({ max: 5 }), (network, which) => {
        const long = network.runs[which % network.runs.length]!;
        const stretched = {
          ...network,
          runs: network.runs.map((run) => (run === long ? { ...run, lengthM: network.maxSectionM + 1 } : run)),
        };
        expect(planSections(stretched)).toMatchObject({
          outcome: 'impossible',
          reason: 'runsOverLimit',
          tooLongRuns: [long.id],
        });
        const plan = planned(stretched, { bestEffort: true });
        expectValid(stretched, plan);
        expect(plan.overLimit).toMatchObject([{ runs: [long.id], overByM: 1 }]);
        // The same as a run exactly at the limit: nothing can be joined to it but what has no length.
        const atLimit = {
          ...network,
          runs: network.runs.map((run) => (run === long ? { ...run, lengthM: network.maxSectionM } : run)),
        };
        expect(plan.cost).toBe(planned(atLimit).cost);
      }),
      { seed: SEED, numRuns: 500 },
    );
  });
});

describe('planSections, on networks too large to try all', () => {
  it('sections partition the runs, keep the limits, and are cut off on every side', () => {
    fc.assert(
      fc.property(anyNetwork({ runs: 60, extra: 12, limits: true, requests: true }), (network) => {
        const result = planSections(network, { workBudget: 300_000 });
        if (result.outcome === 'plan') expectValid(network, result);
        else expect(result.outcome).toBe('impossible');
      }),
      { seed: SEED, numRuns: 400 },
    );
  });

  it.each([
    ['a fence with rings', fenceWithRings(120, 8, 5)],
    ['paddocks', paddocks(4, 3, 2, 2500)],
    ['paddocks with a limit of gateways', { ...paddocks(3, 3, 3, 2500), maxGateways: 6 }],
  ])('proves %s', (_, network) => {
    const plan = planned(network);
    expectValid(network, plan);
    expect(plan).toMatchObject({ optimal: true, longestProven: true, bound: { costMore: 0, switchesMore: 0 } });
  });

  it('shows a bound where it does not come to a proof', () => {
    const network = paddocks(7, 7, 1, 2500);
    const plan = planned(network, { workBudget: 300_000 });
    expectValid(network, plan);
    expect(plan.optimal).toBe(false);
    expect(plan.bound.costMore).toBeCloseTo(plan.cost - plan.lowerBoundCost, 9);
    expect(plan.bound.switchesMore).toBe(Math.ceil(plan.bound.costMore));
  });

  it('plans a line of 200,000 runs without running out of stack', () => {
    const count = 200_000;
    const runs = Array.from({ length: count }, (_, i) => ({ id: `r${i}`, lengthM: 100 }));
    const candidates = Array.from({ length: count - 1 }, (_, i) => ({
      id: `c${i}`,
      a: `r${i}`,
      b: `r${i + 1}`,
      cost: 1,
    }));
    const plan = planned({ runs, candidates, source: 'r0', maxSectionM: 5000 });
    expect(plan.cost).toBe(count / 50 - 1);
    expect(plan.longestSectionM).toBe(5000);
  });

  it('plans a star of 2,000 runs', () => {
    const count = 2000;
    const runs = Array.from({ length: count }, (_, i) => ({ id: `r${i}`, lengthM: i === 0 ? 0 : 10 + (i % 7) }));
    const candidates = runs.slice(1).map((run, i) => ({ id: `c${i}`, a: 'r0', b: run.id, cost: 1 + (i % 3) / 10 }));
    expectValid(
      { runs, candidates, source: 'r0', maxSectionM: 9000 },
      planned({ runs, candidates, source: 'r0', maxSectionM: 9000 }),
    );
  });

  it('gives the same plan again for the same input', () => {
    expect(planned(paddocks(4, 4, 9, 2500), { workBudget: 1e6 })).toEqual(
      planned(paddocks(4, 4, 9, 2500), { workBudget: 1e6 }),
    );
  });
});

describe('planSections, decimals', () => {
  const line = (lengths: readonly number[], costs: readonly number[], maxSectionM: number): SectioningNetwork => ({
    runs: lengths.map((lengthM, i) => ({ id: `r${i}`, lengthM })),
    candidates: costs.map((cost, i) => ({ id: `c${i}`, a: `r${i}`, b: `r${i + 1}`, cost })),
    source: 'r0',
    maxSectionM,
  });

  it('allows a section exactly at the limit though its lengths add up with rounding errors', () => {
    expect(planned(line([0.1, 0.2, 0.3], [1, 1], 0.6)).cost).toBe(0);
    expect(planned(line([0.1, 0.2, 0.3], [1, 1], 0.599999)).cost).toBe(1);
  });

  it('adds up costs without rounding errors', () => {
    const plan = planned(line([10, 10, 10, 10], [0.1, 0.2, 0.7], 10));
    expect(plan.cost).toBe(1);
    expect(planned(line([10, 10, 10], [1.23456789, 2], 20)).cost).toBe(1.23456789);
  });

  it('takes lengths that are no round numbers', () => {
    const plan = planned(line([Math.PI, Math.E, Math.SQRT2], [1, 1], 5));
    expect(plan.chosen).toEqual(['c0']);
    expect(plan.longestSectionM).toBeCloseTo(Math.E + Math.SQRT2, 5);
  });
});

describe('planSections, what it says', () => {
  const network: SectioningNetwork = {
    runs: [
      { id: 'a', lengthM: 300 },
      { id: 'b', lengthM: 200 },
      { id: 'c', lengthM: 100 },
      { id: 'lost', lengthM: 50 },
    ],
    candidates: [
      { id: 'ab', a: 'a', b: 'b', cost: 1 },
      { id: 'bc', a: 'b', b: 'c', cost: 1 },
    ],
    source: 'a',
    maxSectionM: 400,
  };

  it('names runs that no way leads to, and divides them all the same', () => {
    const plan = planned(network);
    expect(plan.unfedRuns).toEqual(['lost']);
    expect(plan.sections.map(({ runs }) => runs)).toEqual([['a'], ['b', 'c'], ['lost']]);
  });

  it('names every run of a joined group that is too long', () => {
    const result = planSections({ ...network, joints: [['a', 'c']], maxSectionM: 350 });
    expect(result).toMatchObject({
      tooLongRuns: ['a', 'c'],
      overLimit: [{ runs: ['a', 'c'], lengthM: 400, overByM: 50 }],
    });
  });

  it('names forced switches that can not part what is joined for good', () => {
    const joined = { ...network, forced: ['ab'], joints: [['a', 'b']] as const, maxSectionM: 900 };
    expect(planSections(joined, { forcedMustSeparate: true })).toMatchObject({
      outcome: 'impossible',
      reason: 'forcedCannotSeparate',
      forcedCannotSeparate: ['ab'],
    });
    expect(planned(joined).chosen).toEqual(['ab']);
  });

  it.each([
    [{ ...network, source: 'x' }, /source names run x/],
    [{ ...network, forced: ['zz'] }, /forced names candidate zz/],
    [{ ...network, forced: ['ab'], forbidden: ['ab'] }, /ab is both forced and forbidden/],
    [{ ...network, maxSectionM: Number.NaN }, /maxSectionM is NaN/],
    [{ ...network, runs: [...network.runs, { id: 'a', lengthM: 1 }] }, /same id/],
    [{ ...network, runs: [...network.runs, { id: 'd', lengthM: -1 }] }, /Run d has length -1/],
    [{ ...network, candidates: [{ id: 'q', a: 'a', b: 'x', cost: 1 }] }, /candidate q names run x/],
    [{ ...network, candidates: [{ id: 'q', a: 'a', b: 'b', cost: -1 }] }, /Candidate q costs -1/],
  ])('refuses input that makes no sense (%#)', (input, message) => {
    expect(() => planSections(input)).toThrow(message);
  });
});

describe('planSections, watched', () => {
  it('stops when told to', () => {
    let asked = 0;
    const watch = { shouldStop: () => ++asked > 5, progress: () => {} };
    expect(planSections(paddocks(6, 6, 1, 2500), { watch })).toEqual({ outcome: 'stopped' });
    expect(asked).toBe(6);
  });

  it('stops on a large tree as well', () => {
    const watch = { shouldStop: () => true, progress: () => {} };
    expect(planSections(fenceTree(20_000, 1), { watch })).toEqual({ outcome: 'stopped' });
  });

  it('tells how far it is, never going back', () => {
    const seen: number[] = [];
    planned(paddocks(4, 4, 1, 2500), {
      watch: { shouldStop: () => false, progress: (fraction: number) => seen.push(fraction) },
    });
    expect(seen.length).toBeGreaterThan(3);
    expect(seen).toEqual([...seen].sort((a, b) => a - b));
    expect(seen.at(-1)).toBe(1);
    expect(seen.every((fraction) => fraction >= 0 && fraction <= 1)).toBe(true);
  });
});

describe('startPlanning, step by step', () => {
  const started = (network: SectioningNetwork, options: SectioningOptions = {}): Planning => {
    const planning = startPlanning(network, options);
    if ('outcome' in planning) throw new Error(planning.reason);
    return planning;
  };
  /** Every answer on the way, the last one too. */
  const answersOf = (planning: Planning): SectioningPlan[] => {
    const answers: SectioningPlan[] = [];
    let seen = 0;
    for (let more = true; more; ) {
      more = planning.step();
      if (planning.answers === seen) continue;
      seen = planning.answers;
      answers.push(planning.plan!);
    }
    return answers;
  };
  const networks: [string, SectioningNetwork, SectioningOptions][] = [
    ['a fence with rings', fenceWithRings(800, 30, 5), {}],
    ['paddocks without a proof', paddocks(7, 7, 1, 2500), { workBudget: 2e6 }],
    ['a tree', fenceTree(3000, 4), {}],
    ['paddocks with a limit of gateways', { ...paddocks(4, 3, 3, 2500), maxGateways: 6 }, {}],
  ];

  it.each(networks)(
    'of %s: each answer is valid, none dearer than the one before, no bound lower',
    (_, network, options) => {
      const answers = answersOf(started(network, options));
      expect(answers.length).toBeGreaterThan(1);
      answers.forEach((answer, i) => {
        expectValid(network, answer);
        expect(answer.complete).toBe(i === answers.length - 1);
        const before = answers[i - 1];
        if (!before) return;
        expect(answer.cost).toBeLessThanOrEqual(before.cost);
        expect(answer.lowerBoundCost).toBeGreaterThanOrEqual(before.lowerBoundCost);
      });
      expect(answers.at(-1)).toEqual(planned(network, options));
    },
  );

  it('of any network, wherever it is left: the answer is valid, says that it is not the end, and claims no more than is so', () => {
    fc.assert(
      fc.property(
        anyNetwork({ runs: 9, extra: 5, limits: true, requests: true }),
        fc.nat({ max: 40 }),
        (network, steps) => {
          const planning = startPlanning(network, { bestEffort: true });
          if ('outcome' in planning) return;
          let more = true;
          for (let left = steps; left > 0 && more; left--) more = planning.step();
          const { plan } = planning;
          expect(planning.isDone).toBe(!more);
          expect(plan !== null || more).toBe(true);
          if (!plan) return;
          expectValid(network, plan);
          expect(plan.complete).toBe(!more);
          const best = bestByTryingAll(network);
          if (!best) return;
          expect(plan.cost).toBeGreaterThanOrEqual(best.cost);
          expect(plan.lowerBoundCost).toBeLessThanOrEqual(best.cost);
          if (plan.longestProven && plan.optimal) expect(plan.longestSectionM).toBe(best.longestSectionM);
        },
      ),
      { seed: SEED, numRuns: 600 },
    );
  });

  it('comes to the same end whatever is done beside it', () => {
    const networksBeside = [paddocks(4, 4, 9, 2500), fenceWithRings(300, 20, 2)];
    const alone = networksBeside.map((network) => planned(network, { workBudget: 1e6 }));
    const plannings = networksBeside.map((network) => started(network, { workBudget: 1e6 }));
    for (let more = true; more; ) more = plannings.map((planning) => planning.step()).includes(true);
    expect(plannings.map(({ plan }) => plan)).toEqual(alone);
  });

  it('has a good first answer soon, on a network with rings as on a tree', () => {
    // By the most steps that the first answer may take: see the bench for how long they take.
    const network = fenceWithRings(5000, 100, 11);
    const planning = started(network);
    while (!planning.plan) planning.step();
    expect(planning.progress).toBeLessThan(0.01);
    // The least cost is 732.5.
    expect(planning.plan.cost).toBeLessThan(1.04 * 732.5);
    expect(planning.plan.lowerBoundCost).toBeGreaterThan(0.88 * 732.5);
  });

  it('proves a plan of thousands of runs with rings by default', () => {
    expect(planned(fenceWithRings(5000, 100, 11))).toMatchObject({ cost: 732.5, optimal: true, complete: true });
  });
});
