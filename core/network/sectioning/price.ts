import { planSections } from './plan.ts';
import { sectionGraph } from './sectionGraph.ts';
import type { SectioningNetwork, SectioningOptions, SectioningPlan, SectioningResult } from './types.ts';

/** What happens when one switch of a plan is left out and nothing else is changed. */
export interface PriceOfWithout {
  /** The two sections that become one; null when the switch parts nothing. */
  readonly merged: readonly [number, number] | null;
  /** Length and gateways of the section they become. */
  readonly lengthM: number;
  readonly gateways: number;
  /** The longest section then. */
  readonly longestSectionM: number;
  /** How far the section they become is over its limits; 0 when it is not. */
  readonly overByM: number;
  readonly overByGateways: number;
  readonly overByRuns: number;
  /** Other switches that then part nothing. */
  readonly needless: readonly string[];
  /** Cost of the switch. */
  readonly saves: number;
}

/** @throws RangeError when the plan has no such switch. */
export function priceOfWithout(network: SectioningNetwork, plan: SectioningPlan, switchId: string): PriceOfWithout {
  const { switches, needless } = sectionGraph(network, plan);
  const left = switches.find(({ id }) => id === switchId);
  if (!left && !needless.includes(switchId)) throw new RangeError(`The plan has no switch ${switchId}.`);
  const saves = network.candidates.find(({ id }) => id === switchId)!.cost;
  if (!left) {
    const nothing = { merged: null, lengthM: 0, gateways: 0, overByM: 0, overByGateways: 0, overByRuns: 0 };
    return { ...nothing, longestSectionM: plan.longestSectionM, needless: [], saves };
  }
  const { a, b } = left;
  const first = plan.sections[a]!;
  const second = plan.sections[b]!;
  const lengthM = tidy(first.lengthM + second.lengthM);
  const gateways = first.gateways + second.gateways;
  const runs = first.runs.length + second.runs.length;
  return {
    merged: [a, b],
    lengthM,
    gateways,
    longestSectionM: Math.max(plan.longestSectionM, lengthM),
    overByM: tidy(Math.max(0, lengthM - network.maxSectionM)),
    overByGateways: Math.max(0, gateways - (network.maxGateways ?? Number.POSITIVE_INFINITY)),
    overByRuns: Math.max(0, runs - (network.maxRunsPerSection ?? Number.POSITIVE_INFINITY)),
    needless: switches
      .filter((other) => other !== left && [other.a, other.b].every((s) => s === a || s === b))
      .map(({ id }) => id),
    saves,
  };
}

/** Candidates to force or to forbid, on top of what the network says; a later request replaces an earlier one. */
export interface Requests {
  readonly force?: readonly string[];
  readonly forbid?: readonly string[];
}

export interface PriceOfChange {
  /** The plan made anew around the requests. */
  readonly result: SectioningResult;
  /** Cost and longest section above those of the plan in hand; null when there is no plan with these requests. */
  readonly costMore: number | null;
  readonly longestMoreM: number | null;
}

/** What it costs to plan around some requests: pin a switch, keep a place free, move one (forbid here, force there). */
export function priceOfChange(
  network: SectioningNetwork,
  plan: SectioningPlan,
  requests: Requests,
  options: SectioningOptions = {},
): PriceOfChange {
  const result = planSections(withRequests(network, requests), options);
  if (result.outcome !== 'plan') return { result, costMore: null, longestMoreM: null };
  return {
    result,
    costMore: tidy(result.cost - plan.cost),
    longestMoreM: tidy(result.longestSectionM - plan.longestSectionM),
  };
}

export function priceOfForcing(
  network: SectioningNetwork,
  plan: SectioningPlan,
  candidateId: string,
  options: SectioningOptions = {},
): PriceOfChange {
  return priceOfChange(network, plan, { force: [candidateId] }, options);
}

export function priceOfForbidding(
  network: SectioningNetwork,
  plan: SectioningPlan,
  candidateId: string,
  options: SectioningOptions = {},
): PriceOfChange {
  return priceOfChange(network, plan, { forbid: [candidateId] }, options);
}

export function withRequests(network: SectioningNetwork, { force = [], forbid = [] }: Requests): SectioningNetwork {
  const requested = new Set([...force, ...forbid]);
  const others = (list: readonly string[] | undefined): string[] => (list ?? []).filter((id) => !requested.has(id));
  return {
    ...network,
    forced: [...others(network.forced), ...force],
    forbidden: [...others(network.forbidden), ...forbid],
  };
}

/** Differences of decimals without the last digits' noise. */
function tidy(difference: number): number {
  return Math.round(difference * 1e9) / 1e9;
}
