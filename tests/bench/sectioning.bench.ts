import highsLoader from 'highs';
import {
  planSections,
  type SectioningNetwork,
  type SectioningPlan,
  startPlanning,
} from '../../core/network/sectioning/index.ts';
import { fenceTree, fenceWithRings, paddocks } from '../support/randomNetworks.ts';
import { measure } from './measure.ts';
import type { BenchRow } from './row.ts';

/** Most seconds that the other solver gets for one network. */
const SOLVER_S = 10;

export async function bench(): Promise<BenchRow[]> {
  const highs = await highsLoader();
  return [
    beside(highs, 'tree', fenceTree(20, 1, 1500), treeModel),
    beside(highs, 'tree', fenceTree(40, 2, 2500), treeModel),
    beside(highs, 'tree', fenceTree(80, 3, 2500), treeModel),
    beside(highs, 'two rings', fenceWithRings(18, 2, 3, 1500), ringModel),
    row('tree', fenceTree(1000, 1), 20, null),
    row('tree', fenceTree(10_000, 1), 20, 50),
    row('tree', fenceTree(100_000, 1), 5, 1000),
    row('tree, gateways limited', { ...fenceTree(10_000, 1), maxGateways: 6 }, 5, null),
    row('3 rings', fenceWithRings(200, 3, 1), 10, null),
    row('10 rings', fenceWithRings(200, 10, 1), 5, null),
    row('20 rings', fenceWithRings(200, 20, 1), 2, null),
    row('4 x 4 paddocks', paddocks(4, 4, 1, 2500), 3, null),
    row('5 x 5 paddocks', paddocks(5, 5, 1, 2500), 2, null),
    ...onTheWay('30 rings', fenceWithRings(10_000, 30, 1), 1000),
    ...onTheWay('300 rings', fenceWithRings(10_000, 300, 1), 1000),
    ...onTheWay('1,500 rings', fenceWithRings(10_000, 1500, 1), 1000),
    ...onTheWay('400 rings', fenceWithRings(20_000, 400, 5), null),
    ...onTheWay('500 rings', fenceWithRings(50_000, 500, 3), null),
    ...onTheWay('30 x 30 paddocks', paddocks(30, 30, 1), null),
  ];
}

/** The first answer, for which somebody waits, and the end of the search, which takes its time. */
function onTheWay(name: string, network: SectioningNetwork, budget: number | null): BenchRow[] {
  const size = network.runs.length;
  const first = firstAnswer(network);
  const firstTimes = measure(() => firstAnswer(network), 5);
  const start = performance.now();
  const last = planOf(network);
  const tookMs = performance.now() - start;
  const dearer = (100 * (first.cost / last.cost - 1)).toFixed(1);
  return [
    { name: `sections, ${name}, first answer: ${dearer} % dearer`, size, ...firstTimes, unit: 'ms', budget },
    { name: `sections, ${name}, end: ${proof(last)}`, size, median: tookMs, p95: tookMs, unit: 'ms', budget: null },
  ];
}

function firstAnswer(network: SectioningNetwork): SectioningPlan {
  const planning = startPlanning(network);
  if ('outcome' in planning) throw new Error(planning.reason);
  while (planning.answers === 0) planning.step();
  return planning.plan!;
}

function row(name: string, network: SectioningNetwork, rounds: number, budget: number | null): BenchRow {
  const plan = planOf(network);
  return {
    name: `sections, ${name}: ${proof(plan)}`,
    size: network.runs.length,
    ...measure(() => planSections(network), rounds),
    unit: 'ms',
    budget,
  };
}

/** Beside the solver, which must find the same cost. */
function beside(
  highs: Highs,
  name: string,
  network: SectioningNetwork,
  model: (network: SectioningNetwork) => string,
): BenchRow {
  const plan = planOf(network);
  const start = performance.now();
  const solution = highs.solve(model(network), { time_limit: SOLVER_S, mip_rel_gap: 0 });
  const median = performance.now() - start;
  const same = solution.Status === 'Optimal' && Math.abs(solution.ObjectiveValue - plan.cost) < 1e-6;
  if (solution.Status === 'Optimal' && !same)
    throw new Error(`${name}: cost ${plan.cost}, the solver has ${solution.ObjectiveValue}.`);
  return {
    ...row(`${name}${same ? ', same cost' : ''}`, network, 20, null),
    other: { name: same ? 'HiGHS' : 'HiGHS (gave up)', median },
  };
}

function planOf(network: SectioningNetwork): SectioningPlan {
  const plan = planSections(network);
  if (plan.outcome !== 'plan') throw new Error(plan.outcome);
  return plan;
}

function proof({ optimal, longestProven, cost, bound }: SectioningPlan): string {
  if (optimal) return longestProven ? 'proven best' : 'cost proven best';
  return `at most ${((100 * bound.costMore) / cost).toFixed(0)} % of its cost too dear`;
}

type Highs = Awaited<ReturnType<typeof highsLoader>>;

/** The least cost as a mixed-integer program in the format of CPLEX, on a tree whose runs come after those they join. */
function treeModel({ runs, candidates, maxSectionM }: SectioningNetwork): string {
  // h_v: fence hanging at run v in its own section, v included; candidate c joins run c + 1 to an earlier one.
  const place = new Map(runs.map(({ id }, v) => [id, v]));
  const hanging = runs.map((): string[] => []);
  candidates.forEach(({ a }, c) => {
    hanging[place.get(a)!]!.push(`f_${c}`);
  });
  const adds = runs.map(({ lengthM }, v) => ` h_${v}${hanging[v]!.map((f) => ` - ${f}`).join('')} = ${lengthM}`);
  const carries = candidates.map((_, c) => ` f_${c} - h_${c + 1} + ${maxSectionM} z_${c} >= 0`);
  const limits = runs.map((_, v) => ` h_${v} <= ${maxSectionM}`);
  return program(candidates, [...adds, ...carries], limits);
}

/**
 * The same with rings: y_v_r says that run v is in the section named by run r (r at most v). No further conditions are
 * needed: parts of one name that hang apart only waste room.
 */
function ringModel({ runs, candidates, maxSectionM }: SectioningNetwork): string {
  const place = new Map(runs.map(({ id }, v) => [id, v]));
  const names = (v: number): number[] => Array.from({ length: v + 1 }, (_, r) => r);
  const once = runs.map(
    (_, v) =>
      ` ${names(v)
        .map((r) => `y_${v}_${r}`)
        .join(' + ')} = 1`,
  );
  const room = runs.map((_, r) => {
    const members = runs.slice(r).map(({ lengthM }, i) => `${lengthM} y_${r + i}_${r}`);
    return ` ${members.join(' + ')} - ${maxSectionM} y_${r}_${r} <= 0`;
  });
  const parted = candidates.flatMap(({ a, b }, c) => {
    const [low, high] = [place.get(a)!, place.get(b)!].sort((x, y) => x - y) as [number, number];
    return names(high).map((r) =>
      r <= low ? ` y_${high}_${r} - y_${low}_${r} - z_${c} <= 0` : ` y_${high}_${r} - z_${c} <= 0`,
    );
  });
  const membership = runs.flatMap((_, v) => names(v).map((r) => `y_${v}_${r}`));
  return program(candidates, [...once, ...room, ...parted], [], membership);
}

function program(
  candidates: SectioningNetwork['candidates'],
  conditions: readonly string[],
  bounds: readonly string[],
  binaries: readonly string[] = [],
): string {
  const aim = candidates.map(({ cost }, c) => `${cost} z_${c}`).join(' + ');
  const switches = candidates.map((_, c) => `z_${c}`);
  return [
    'Minimize',
    ` ${aim}`,
    'Subject To',
    ...conditions,
    'Bounds',
    ...bounds,
    'Binary',
    ...[...switches, ...binaries].map((name) => ` ${name}`),
    'End',
  ].join('\n');
}
