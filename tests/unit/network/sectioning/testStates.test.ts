import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  planSections,
  type SectioningNetwork,
  type SectioningPlan,
  sectionGraph,
  testStates,
} from '../../../../core/network/sectioning/index.ts';
import { anyNetwork, SEED } from './networks.ts';

/** Runs that the energiser reaches over runs, joints, places without a switch, and closed switches. */
function liveRuns(network: SectioningNetwork, plan: SectioningPlan, closed: ReadonlySet<string>): Set<string> {
  const open = new Set(plan.chosen.filter((id) => !closed.has(id)));
  const live = new Set([network.source]);
  const ways = [
    ...(network.joints ?? []),
    ...network.candidates.filter(({ id }) => !open.has(id)).map(({ a, b }) => [a, b] as const),
  ];
  for (let grew = true; grew; ) {
    grew = false;
    for (const [a, b] of ways) {
      if (live.has(a) === live.has(b)) continue;
      live.add(a).add(b);
      grew = true;
    }
  }
  return live;
}

function runsOf(plan: SectioningPlan, sections: readonly number[]): Set<string> {
  return new Set(sections.flatMap((s) => plan.sections[s]!.runs));
}

function planOf(network: SectioningNetwork): SectioningPlan | undefined {
  const result = planSections(network, { workBudget: 200_000, bestEffort: true });
  return result.outcome === 'plan' ? result : undefined;
}

describe('every section can be tested on its own', () => {
  it('shown by where the energiser reaches in each state, on thousands of networks', () => {
    let sections = 0;
    fc.assert(
      fc.property(anyNetwork({ runs: 24, extra: 8, limits: true, requests: true }), (network) => {
        const plan = planOf(network);
        if (!plan) return;
        const graph = sectionGraph(network, plan);
        const everyone = liveRuns(network, plan, new Set(plan.chosen));
        for (const { section, way, alone, allBut, fedOnlyThroughIt } of testStates(graph)) {
          sections++;
          const own = plan.sections[section]!.runs;
          if (!everyone.has(own[0]!)) {
            expect({ way, alone }).toEqual({ way: [], alone: null });
            continue;
          }
          // Exactly the section and its way are live.
          expect(way[0]).toBe(0);
          expect(way.at(-1)).toBe(section);
          expect(new Set(way).size).toBe(way.length);
          expect(alone!.closed).toHaveLength(way.length - 1);
          expect([...alone!.open, ...alone!.closed, ...graph.needless].sort()).toEqual([...plan.chosen].sort());
          expect(liveRuns(network, plan, new Set(alone!.closed))).toEqual(runsOf(plan, way));
          expect(alone!.live).toEqual(way);

          if (section === 0) {
            expect(allBut).toBeNull();
            continue;
          }
          // Everything is live but the section and what is fed only through it.
          const live = liveRuns(network, plan, new Set([...allBut!.closed, ...graph.needless]));
          expect(live).toEqual(runsOf(plan, allBut!.live));
          const dead = [...everyone].filter((run) => !live.has(run)).sort();
          expect(dead).toEqual([...runsOf(plan, [section, ...fedOnlyThroughIt])].sort());
          // And what is said to be fed only through it stays dead with any other switches closed: its runs taken away,
          // the energiser does not reach them.
          const without = {
            ...network,
            joints: (network.joints ?? []).filter(([a, b]) => !own.includes(a) && !own.includes(b)),
            candidates: network.candidates.filter(({ a, b }) => !own.includes(a) && !own.includes(b)),
          };
          const reached = liveRuns(without, plan, new Set(plan.chosen));
          expect([...reached].sort()).toEqual([...live].sort());
          // The section itself is cut off on every side.
          const atIt = network.candidates.filter(({ a, b }) => own.includes(a) !== own.includes(b));
          for (const { id } of atIt) expect(allBut!.open).toContain(id);
        }
      }),
      { seed: SEED, numRuns: 2500 },
    );
    expect(sections).toBeGreaterThan(5000);
  });

  it('on a ring: what is behind the section is fed from the other side', () => {
    const network: SectioningNetwork = {
      runs: ['a', 'b', 'c', 'd'].map((id) => ({ id, lengthM: 100 })),
      candidates: [
        { id: 'ab', a: 'a', b: 'b', cost: 1 },
        { id: 'bc', a: 'b', b: 'c', cost: 1 },
        { id: 'ca', a: 'c', b: 'a', cost: 1 },
        { id: 'cd', a: 'c', b: 'd', cost: 1 },
      ],
      source: 'a',
      maxSectionM: 100,
    };
    const plan = planOf(network)!;
    const tests = testStates(sectionGraph(network, plan));
    const byRun = (run: string) => tests.find(({ section }) => plan.sections[section]!.runs.includes(run))!;
    expect(byRun('b')).toMatchObject({ fedOnlyThroughIt: [], allBut: { open: ['ab', 'bc'], closed: ['ca', 'cd'] } });
    expect(byRun('c').fedOnlyThroughIt).toEqual([byRun('d').section]);
    expect(byRun('d').alone!.closed).toEqual(['ca', 'cd']);
    expect(byRun('a')).toMatchObject({ allBut: null, fedOnlyThroughIt: [1, 2, 3], alone: { closed: [] } });
  });
});
