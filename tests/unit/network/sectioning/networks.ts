import fc from 'fast-check';
import type { SectioningNetwork } from '../../../../core/network/sectioning/index.ts';

/** Seed of every property test here, so that a failure can be had again. */
export const SEED = 20_260_401;

export interface Shape {
  readonly runs: number;
  /** Candidates beyond those that make the network connected. */
  readonly extra: number;
  readonly costs?: readonly number[];
  readonly limits?: boolean;
  readonly requests?: boolean;
}

const COSTS = [0, 0.7, 1, 1, 1.3, 2] as const;

/**
 * Connected networks with parallel candidates, rings, candidates from a run to itself, junctions of no length and (where
 * asked for) further limits, joints, forced and forbidden candidates. The limit is never below the longest run.
 */
export function anyNetwork({ runs, extra, costs = COSTS, limits, requests }: Shape): fc.Arbitrary<SectioningNetwork> {
  const oneOf = (values: readonly number[]): fc.Arbitrary<number> => fc.constantFrom(...values);
  const end = fc.nat({ max: 1_000_000 });
  return fc
    .record({
      lengths: fc.array(
        fc.oneof({ weight: 5, arbitrary: fc.integer({ min: 1, max: 500 }) }, { weight: 1, arbitrary: fc.constant(0) }),
        {
          minLength: 1,
          maxLength: runs,
        },
      ),
      gateways: fc.array(fc.nat({ max: 2 }), { minLength: runs, maxLength: runs }),
      tree: fc.array(fc.tuple(end, oneOf(costs)), { minLength: runs, maxLength: runs }),
      more: fc.array(fc.tuple(end, end, oneOf(costs)), { maxLength: extra }),
      spare: fc.nat({ max: 900 }),
      maxGateways: limits ? fc.option(fc.integer({ min: 2, max: 6 })) : fc.constant(null),
      maxRunsPerSection: limits ? fc.option(fc.integer({ min: 1, max: 5 })) : fc.constant(null),
      request: requests
        ? fc.array(fc.constantFrom('none', 'none', 'none', 'force', 'forbid'), {
            minLength: runs + extra,
            maxLength: runs + extra,
          })
        : fc.constant<string[]>([]),
      joint: requests ? fc.array(fc.tuple(end, end), { maxLength: 1 }) : fc.constant<[number, number][]>([]),
      source: end,
    })
    .map(({ lengths, gateways, tree, more, spare, maxGateways, maxRunsPerSection, request, joint, source }) => {
      const n = lengths.length;
      const id = (i: number): string => `r${i % n}`;
      const ends = [
        ...lengths.slice(1).map((_, i) => ({ a: id(i + 1), b: `r${tree[i]![0] % (i + 1)}`, cost: tree[i]![1] })),
        ...more.map(([a, b, cost]) => ({ a: id(a), b: id(b), cost })),
      ];
      const candidates = ends.map((candidate, c) => ({ id: `c${c}`, ...candidate }));
      const requested = (kind: string): string[] => candidates.filter((_, c) => request[c] === kind).map((c) => c.id);
      return {
        runs: lengths.map((lengthM, i) => ({ id: id(i), lengthM, gateways: gateways[i]! })),
        candidates,
        joints: joint.map(([a, b]) => [id(a), id(b)] as const),
        source: id(source),
        maxSectionM: Math.max(...lengths) + spare,
        maxGateways,
        maxRunsPerSection,
        forced: requested('force'),
        forbidden: requested('forbid'),
      };
    });
}

/** Groups of runs that stay joined when the given switches are open; by repeated relabelling, nothing clever. */
export function joinedGroups(network: SectioningNetwork, open: ReadonlySet<string>): string[][] {
  const label = new Map(network.runs.map((run, i) => [run.id, i]));
  const joins = [
    ...(network.joints ?? []),
    ...network.candidates.filter(({ id }) => !open.has(id)).map(({ a, b }) => [a, b] as const),
  ];
  for (let changed = true; changed; ) {
    changed = false;
    for (const [a, b] of joins) {
      const low = Math.min(label.get(a)!, label.get(b)!);
      if (label.get(a) === low && label.get(b) === low) continue;
      label.set(a, low).set(b, low);
      changed = true;
    }
  }
  const groups = new Map<number, string[]>();
  for (const [run, group] of label) groups.set(group, [...(groups.get(group) ?? []), run]);
  return [...groups.values()];
}

export interface Measure {
  readonly lengthM: number;
  readonly gateways: number;
  readonly runs: number;
}

export function measure(network: SectioningNetwork, group: readonly string[]): Measure {
  const members = network.runs.filter(({ id }) => group.includes(id));
  return {
    lengthM: members.reduce((sum, run) => sum + run.lengthM, 0),
    gateways: members.reduce((sum, run) => sum + (run.gateways ?? 0), 0),
    runs: members.length,
  };
}

export function isWithinLimits(network: SectioningNetwork, { lengthM, gateways, runs }: Measure): boolean {
  return (
    lengthM <= network.maxSectionM &&
    gateways <= (network.maxGateways ?? Number.POSITIVE_INFINITY) &&
    runs <= (network.maxRunsPerSection ?? Number.POSITIVE_INFINITY)
  );
}

/** The best plan by trying every set of candidates; undefined when none keeps the limits. */
export function bestByTryingAll(
  network: SectioningNetwork,
  forcedMustSeparate = false,
): { cost: number; longestSectionM: number } | undefined {
  const { candidates, forced = [], forbidden = [] } = network;
  let best: { tenths: number; longest: number } | undefined;
  for (let set = 0; set < 1 << candidates.length; set++) {
    const chosen = new Set(candidates.filter((_, c) => set & (1 << c)).map(({ id }) => id));
    if (forced.some((id) => !chosen.has(id)) || forbidden.some((id) => chosen.has(id))) continue;
    const tenths = candidates.reduce((sum, { id, cost }) => sum + (chosen.has(id) ? Math.round(10 * cost) : 0), 0);
    if (best && tenths > best.tenths) continue;
    const groups = joinedGroups(network, chosen);
    const measures = groups.map((group) => measure(network, group));
    if (!measures.every((one) => isWithinLimits(network, one))) continue;
    const together = (a: string, b: string): boolean => groups.some((group) => group.includes(a) && group.includes(b));
    if (forcedMustSeparate && candidates.some(({ id, a, b }) => forced.includes(id) && together(a, b))) continue;
    const longest = Math.max(...measures.map(({ lengthM }) => lengthM));
    if (!best || tenths < best.tenths || longest < best.longest) best = { tenths, longest };
  }
  return best && { cost: best.tenths / 10, longestSectionM: best.longest };
}
