import { contractNetwork } from './contract.ts';
import { listSections, partsOf } from './sections.ts';
import type { PlannedSection, SectioningNetwork } from './types.ts';

/** Sections and the switches between them. Sections are numbered as in `sections`; the energiser feeds section 0. */
export interface SectionGraph {
  readonly sections: readonly PlannedSection[];
  readonly switches: readonly SectionSwitch[];
  /** Switches with both sides in one section: they part nothing. */
  readonly needless: readonly string[];
}

export interface SectionSwitch {
  readonly id: string;
  readonly a: number;
  readonly b: number;
}

/**
 * The sections that any set of switches makes, within the limits or not.
 * @throws RangeError when a switch is not among the candidates.
 */
export function sectionsWith(network: SectioningNetwork, switches: readonly string[]): PlannedSection[] {
  const contracted = contractNetwork({ ...network, forced: switches, forbidden: [] });
  // Every candidate that has a switch is no edge any more; every other one joins.
  const { partOf, count } = partsOf(contracted, new Uint8Array(contracted.graph.edgeA.length));
  return listSections(network, contracted, partOf, count);
}

/** Which sections each switch lies between. */
export function sectionGraph(
  network: SectioningNetwork,
  plan: { readonly chosen: readonly string[]; readonly sections: readonly PlannedSection[] },
): SectionGraph {
  const sectionOf = new Map<string, number>();
  plan.sections.forEach((section, s) => {
    for (const run of section.runs) sectionOf.set(run, s);
  });
  const chosen = new Set(plan.chosen);
  const switches: SectionSwitch[] = [];
  const needless: string[] = [];
  for (const { id, a, b } of network.candidates) {
    if (!chosen.has(id)) continue;
    const sectionA = sectionOf.get(a)!;
    const sectionB = sectionOf.get(b)!;
    if (sectionA === sectionB) needless.push(id);
    else switches.push({ id, a: sectionA, b: sectionB });
  }
  return { sections: plan.sections, switches, needless };
}
