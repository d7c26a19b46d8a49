import { CheapestCuts } from './cheapestCuts.ts';
import { contractNetwork } from './contract.ts';
import { chosenCandidates, listSections, partsOf, unfedRuns } from './sections.ts';
import { shortestLongest } from './shortestLongest.ts';
import { buildSkeleton } from './skeleton.ts';
import type { SectioningNetwork, SectioningOptions, SectioningResult } from './types.ts';

export function planSections(network: SectioningNetwork, options: SectioningOptions = {}): SectioningResult {
  const contracted = contractNetwork(network, options);
  const { graph } = contracted;
  const skeleton = buildSkeleton(graph);
  const cuts = new CheapestCuts(graph, skeleton, { left: options.workBudget ?? 3e7, check: () => {} });
  const cut = new Uint8Array(graph.edgeA.length);
  let cost = contracted.paid;
  for (let p = 0; p < cuts.pieceCount; p++) {
    const limit = graph.limits[0]!;
    const c = cuts.cost(p, limit);
    cost += c;
    let floor = 0;
    for (let i = skeleton.pieceStart[p]!; i < skeleton.pieceStart[p + 1]!; i++) {
      const v = skeleton.order[i]!;
      if (v < graph.vertexCount) floor = Math.max(floor, graph.weights[v * graph.limits.length]!);
    }
    const best = shortestLongest(cuts, p, c, floor, limit);
    cuts.cost(p, best);
    cuts.trace(p, cut);
  }
  const { partOf, count } = partsOf(contracted, cut);
  const sections = listSections(network, contracted, partOf, count);
  return {
    outcome: 'plan',
    chosen: chosenCandidates(network, contracted, cut),
    cost: cost / contracted.costPerUnit,
    sections,
    longestSectionM: Math.max(...sections.map((s) => s.lengthM)),
    optimal: true,
    lowerBoundCost: cost / contracted.costPerUnit,
    longestProven: true,
    bound: { costMore: 0, switchesMore: 0 },
    overLimit: [],
    unfedRuns: unfedRuns(network, contracted),
  };
}
