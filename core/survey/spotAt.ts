import type { Project } from '../model/project.ts';
import type { Network } from '../network/types.ts';
import type { Spot } from '../words/en/survey/spots.ts';

/** What stands at a node, for someone who walks there: "start post of G4", "S7", "end of F12", "F12". */
export function spotAt(project: Project, network: Network, node: number): Spot {
  const { edges, edgesAt, nodes, postsOfGateway } = network;
  for (const index of edgesAt[node]!) {
    const edge = edges[index]!;
    if (edge.kind === 'switch') return { on: 'switch', name: nameOf(project, 'switch', edge.switchId) };
    if (edge.kind === 'crossing') {
      const gateway = nameOf(project, 'gateway', edge.gatewayId);
      return { on: 'gatePost', end: edge.from === node ? 'start' : 'end', gateway };
    }
  }
  if (nodes[node]!.roles.includes('gatePost')) {
    const found = [...postsOfGateway].find(([, posts]) => posts.includes(node));
    if (found) {
      const [id, [start]] = found;
      return { on: 'gatePost', end: start === node ? 'start' : 'end', gateway: nameOf(project, 'gateway', id) };
    }
  }
  for (const index of edgesAt[node]!) {
    const edge = edges[index]!;
    if (edge.kind !== 'run') continue;
    const line = nameOf(project, 'fenceLine', edge.lineId);
    if (!nodes[node]!.roles.includes('lineEnd')) return { on: 'line', line };
    return { on: 'lineEnd', end: edge.from === node ? 'start' : 'end', line };
  }
  return { on: 'energiser' };
}

function nameOf(project: Project, kind: 'switch' | 'gateway' | 'fenceLine', id: string): string {
  return project[kind].get(id)?.name ?? id;
}
