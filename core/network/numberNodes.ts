import type { EnergiserJoint } from './connectEnergisers.ts';
import { unusedKey } from './joints.ts';
import type { NetworkDraft } from './networkDraft.ts';
import type { Network } from './types.ts';

/** Turns the joints of a finished draft into nodes; its edges become those of the network. */
export function numberNodes(draft: NetworkDraft, sources: readonly EnergiserJoint[]): Network {
  const { nodes, nodeOf } = draft.joints.number();
  const used = new Set<string>();
  const edges = draft.edges;
  const edgesAt: number[][] = nodes.map(() => []);
  const runsOfLine = new Map<string, number[]>();
  const edgeOfSwitch = new Map<string, number>();
  for (const [index, edge] of edges.entries()) {
    const from = nodeOf[edge.from]!;
    const to = nodeOf[edge.to]!;
    edge.from = from;
    edge.to = to;
    if (edge.kind === 'run') edge.key += `:${nodes[from]!.key}~${nodes[to]!.key}`;
    edge.key = unusedKey(edge.key, used);
    edgesAt[from]!.push(index);
    if (to !== from) edgesAt[to]!.push(index);
    if (edge.kind === 'run') {
      const runs = runsOfLine.get(edge.lineId);
      if (runs) runs.push(index);
      else runsOfLine.set(edge.lineId, [index]);
    } else if (edge.kind === 'switch') {
      edgeOfSwitch.set(edge.switchId, index);
      if (from === to) draft.report('switchBypassed', [edge.switchId], nodes[from]!.at);
    }
  }
  const postsOfGateway = new Map<string, readonly [number, number]>();
  for (const { posts } of draft.chains) {
    for (const [gatewayId, { start, end }] of posts) {
      postsOfGateway.set(gatewayId, [nodeOf[start.joint]!, nodeOf[end.joint]!]);
    }
  }
  return {
    nodes,
    edges,
    edgesAt,
    sources: sources.map(({ energiserId, joint }) => {
      return { energiserId, node: joint === null ? null : nodeOf[joint]! };
    }),
    runsOfLine,
    edgeOfSwitch,
    postsOfGateway,
    problems: draft.problems,
  };
}
