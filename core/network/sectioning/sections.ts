import type { ContractedNetwork } from './contract.ts';
import { DisjointSets } from './disjointSets.ts';
import type { PlannedSection, SectioningNetwork } from './types.ts';

/** Which section each vertex falls in when the marked edges are cut; numbered by first vertex. */
export function partsOf(contracted: ContractedNetwork, cut: Uint8Array): { partOf: Int32Array; count: number } {
  const { vertexCount, edgeA, edgeB } = contracted.graph;
  const together = new DisjointSets(vertexCount);
  for (let e = 0; e < edgeA.length; e++) if (!cut[e]) together.join(edgeA[e]!, edgeB[e]!);
  const { setOf, count } = together.number();
  return { partOf: setOf, count };
}

/** Candidates that get a switch: the forced ones and those on cut edges, in the order given. */
export function chosenCandidates(
  network: SectioningNetwork,
  { edgeOfCandidate, forced }: ContractedNetwork,
  cut: Uint8Array,
): string[] {
  const chosen: string[] = [];
  for (let c = 0; c < edgeOfCandidate.length; c++) {
    const edge = edgeOfCandidate[c]!;
    if (forced[c] || (edge >= 0 && cut[edge])) chosen.push(network.candidates[c]!.id);
  }
  return chosen;
}

/** The sections of a plan, the one with the source first, the rest in the order of their first runs. */
export function listSections(
  network: SectioningNetwork,
  contracted: ContractedNetwork,
  partOf: Int32Array,
  count: number,
): PlannedSection[] {
  const { vertexOfRun, sourceRun, metresPerUnit } = contracted;
  const runs: string[][] = Array.from({ length: count }, () => []);
  const lengths = new Float64Array(count);
  const gateways = new Float64Array(count);
  for (let r = 0; r < vertexOfRun.length; r++) {
    const part = partOf[vertexOfRun[r]!]!;
    const run = network.runs[r]!;
    runs[part]!.push(run.id);
    lengths[part]! += Math.round(run.lengthM * metresPerUnit);
    gateways[part]! += run.gateways ?? 0;
  }
  const sourcePart = partOf[vertexOfRun[sourceRun]!]!;
  const order = Array.from({ length: count }, (_, part) => part);
  order.sort((a, b) => Number(b === sourcePart) - Number(a === sourcePart) || a - b);
  return order.map((part) => ({
    runs: runs[part]!,
    lengthM: lengths[part]! / metresPerUnit,
    gateways: gateways[part]!,
  }));
}

/** Runs with no way from the source over runs, joints and candidates. */
export function unfedRuns(network: SectioningNetwork, contracted: ContractedNetwork): string[] {
  const { graph, vertexOfRun, sourceRun } = contracted;
  const reached = new DisjointSets(graph.vertexCount);
  for (let e = 0; e < graph.edgeA.length; e++) reached.join(graph.edgeA[e]!, graph.edgeB[e]!);
  for (const [a, b] of contracted.forcedEnds) reached.join(a, b);
  const source = reached.find(vertexOfRun[sourceRun]!);
  return network.runs.filter((_, r) => reached.find(vertexOfRun[r]!) !== source).map((run) => run.id);
}
