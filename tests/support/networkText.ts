import type { Network, NetworkEdge } from '../../core/network/types.ts';

/** A network as lines of text, `run sq: end:sq:end - gate:G1:start 198.0`, sorted, for tests to compare. */
export function networkText(network: Network): string[] {
  return network.edges.map((edge) => edgeText(network, edge)).sort();
}

function edgeText({ nodes }: Network, edge: NetworkEdge): string {
  const ends = `${nodes[edge.from]!.key} - ${nodes[edge.to]!.key}`;
  if (edge.kind === 'run') return `run ${edge.lineId}: ${ends} ${edge.lengthM.toFixed(1)}`;
  if (edge.kind === 'crossing') return `crossing ${edge.gatewayId}: ${ends}`;
  if (edge.kind === 'switch') return `switch ${edge.switchId}: ${ends}`;
  return `leadOut ${edge.leadOutId}: ${ends} ${edge.cableLengthM.toFixed(1)}`;
}

/** Codes and things of the problems. */
export function problemText({ problems }: Network): string[] {
  return problems.map(({ code, thingIds }) => [code, ...thingIds].join(' '));
}
