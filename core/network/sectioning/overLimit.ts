import type { ContractedNetwork } from './contract.ts';
import type { OverLimitGroup, SectioningNetwork } from './types.ts';

/** Runs, alone or joined for good, that are over a limit by themselves. */
export function overLimitGroups(network: SectioningNetwork, contracted: ContractedNetwork): OverLimitGroup[] {
  const { graph, vertexOfRun, metresPerUnit } = contracted;
  if (!graph.exempt.includes(1)) return [];
  const members = new Map<number, number[]>();
  for (let r = 0; r < vertexOfRun.length; r++) {
    const vertex = vertexOfRun[r]!;
    if (!graph.exempt[vertex]) continue;
    const list = members.get(vertex);
    if (list) list.push(r);
    else members.set(vertex, [r]);
  }
  const limits = {
    length: Math.round(network.maxSectionM * metresPerUnit),
    gateways: network.maxGateways ?? Number.POSITIVE_INFINITY,
    runs: network.maxRunsPerSection ?? Number.POSITIVE_INFINITY,
  };
  return [...members.values()].map((list) => {
    let length = 0;
    let gateways = 0;
    for (const r of list) {
      const run = network.runs[r]!;
      length += Math.round(run.lengthM * metresPerUnit);
      gateways += run.gateways ?? 0;
    }
    return {
      runs: list.map((r) => network.runs[r]!.id),
      lengthM: length / metresPerUnit,
      gateways,
      overByM: Math.max(0, length - limits.length) / metresPerUnit,
      overByGateways: Math.max(0, gateways - limits.gateways),
      overByRuns: Math.max(0, list.length - limits.runs),
    };
  });
}

/** The runs of groups that are too long, in the order given. */
export function tooLongRuns(network: SectioningNetwork, groups: readonly OverLimitGroup[]): string[] {
  const named = new Set<string>();
  for (const group of groups) if (group.overByM > 0) for (const run of group.runs) named.add(run);
  return network.runs.map((run) => run.id).filter((id) => named.has(id));
}
