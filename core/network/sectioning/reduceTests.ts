import { largestOf } from '../../model/extremes.ts';
import type { Steps } from '../../model/steps.ts';
import { planFaultSearch } from '../faultSearch/planFaultSearch.ts';
import { sectionGraph, sectionsWith } from './sectionGraph.ts';
import type { PlannedSection, SectioningNetwork } from './types.ts';

/** Only plans up to this size are looked at: there the gain is a test or part of one, and the search cheap. */
const MOST_SECTIONS = 14;
const MOST_RUNS = 400;
/** How many other plans are valued at most. */
const MOST_TRIALS = 60;

interface Plan {
  readonly chosen: readonly string[];
  readonly sections: readonly PlannedSection[];
  readonly longestSectionM: number;
}

/**
 * Among plans that are equally cheap and whose longest section is equally long, one in which a fault is expected to be
 * found in fewer tests: single switches are moved to places of the same cost, one after another, as long as that helps.
 * A search from the plan in hand, not a proof that no other has fewer.
 */
export function* withReducedTests<P extends Plan>(network: SectioningNetwork, plan: P): Steps<P> {
  if (plan.sections.length < 3 || plan.sections.length > MOST_SECTIONS || network.runs.length > MOST_RUNS) return plan;
  const trials = { left: MOST_TRIALS };
  let best = plan;
  let tests = expectedTests(network, plan);
  for (;;) {
    const better = yield* improved(network, best, tests, trials);
    if (!better) return best;
    const { chosen, sections } = better.plan;
    const longestSectionM = largestOf(sections.map(({ lengthM }) => lengthM));
    best = { ...best, chosen, sections, longestSectionM };
    tests = better.tests;
  }
}

function* improved(
  network: SectioningNetwork,
  plan: Plan,
  tests: number,
  trials: { left: number },
): Steps<{ plan: Plan; tests: number } | undefined> {
  const { switches } = sectionGraph(network, plan);
  const forced = new Set(network.forced);
  const forbidden = new Set(network.forbidden);
  const chosen = new Set(plan.chosen);
  const sectionOf = new Map<string, number>();
  plan.sections.forEach((section, s) => {
    for (const run of section.runs) sectionOf.set(run, s);
  });
  const costOf = new Map(network.candidates.map(({ id, cost }) => [id, cost]));
  for (const { id, a, b } of switches) {
    if (forced.has(id)) continue;
    for (const other of network.candidates) {
      const near = [a, b].includes(sectionOf.get(other.a)!) && [a, b].includes(sectionOf.get(other.b)!);
      if (!near || chosen.has(other.id) || forbidden.has(other.id) || other.cost !== costOf.get(id)) continue;
      if (trials.left-- <= 0) return undefined;
      const moved = network.candidates.map((c) => c.id).filter((c) => c === other.id || (c !== id && chosen.has(c)));
      const sections = sectionsWith(network, moved);
      if (sections.length !== plan.sections.length || !sections.every((section) => isWithin(network, plan, section)))
        continue;
      const trial = { ...plan, chosen: moved, sections };
      const trialTests = expectedTests(network, trial);
      yield;
      if (trialTests < tests - 1e-9) return { plan: trial, tests: trialTests };
    }
  }
  return undefined;
}

function isWithin(network: SectioningNetwork, plan: Plan, section: PlannedSection): boolean {
  return (
    section.lengthM <= plan.longestSectionM &&
    section.gateways <= (network.maxGateways ?? Number.POSITIVE_INFINITY) &&
    section.runs.length <= (network.maxRunsPerSection ?? Number.POSITIVE_INFINITY)
  );
}

function expectedTests(network: SectioningNetwork, plan: Plan): number {
  const { sections, switches } = sectionGraph(network, plan);
  return planFaultSearch({
    sections: sections.map(({ lengthM }, s) => ({ id: String(s), lengthM })),
    switches: switches.map(({ id, a, b }) => ({ id, a: String(a), b: String(b) })),
    source: '0',
  }).expectedTests;
}
