import type { Project } from '../model/project.ts';
import type { Network } from '../network/types.ts';

/** What stands at a node, for someone who walks there: "start post of G4", "S7", "end of F12", "F12". */
export function nodeInWords(project: Project, network: Network, node: number): string {
  const { edges, edgesAt, nodes, postsOfGateway } = network;
  for (const index of edgesAt[node]!) {
    const edge = edges[index]!;
    if (edge.kind === 'switch') return nameOf(project, 'switch', edge.switchId);
    if (edge.kind === 'crossing') {
      const post = edge.from === node ? 'start' : 'end';
      return `${post} post of ${nameOf(project, 'gateway', edge.gatewayId)}`;
    }
  }
  if (nodes[node]!.roles.includes('gatePost')) {
    const gateway = [...postsOfGateway].find(([, posts]) => posts.includes(node));
    if (gateway) {
      const [id, [start]] = gateway;
      return `${start === node ? 'start' : 'end'} post of ${nameOf(project, 'gateway', id)}`;
    }
  }
  for (const index of edgesAt[node]!) {
    const edge = edges[index]!;
    if (edge.kind !== 'run') continue;
    const line = nameOf(project, 'fenceLine', edge.lineId);
    if (!nodes[node]!.roles.includes('lineEnd')) return line;
    return `${edge.from === node ? 'start' : 'end'} of ${line}`;
  }
  return 'the energiser';
}

function nameOf(project: Project, kind: 'switch' | 'gateway' | 'fenceLine', id: string): string {
  return project[kind].get(id)?.name ?? id;
}
