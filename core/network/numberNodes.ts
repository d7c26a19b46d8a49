import type { EnergiserJoint } from './connectEnergisers.ts';
import { unusedKey } from './joints.ts';
import type { NetworkDraft } from './networkDraft.ts';
import type { Network } from './types.ts';

/** Turns the joints of a finished draft into nodes; its edges become those of the network. */
export function numberNodes(draft: NetworkDraft, sources: readonly EnergiserJoint[]): Network {
  const { nodes, nodeOf } = draft.joints.number();
  const used = new Set<string>();
  const edges = draft.edges;
  const runsOfLine = new Map<string, number[]>();
  const edgeOfSwitch = new Map<string, number>();
  for (let index = 0; index < edges.length; index++) {
    const edge = edges[index]!;
    const from = nodeOf[edge.from]!;
    const to = nodeOf[edge.to]!;
    edge.from = from;
    edge.to = to;
    if (edge.kind === 'run') edge.key += `:${nodes[from]!.key}~${nodes[to]!.key}`;
    edge.key = unusedKey(edge.key, used);
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
    edgesAt: edgesAtNodes(nodes.length, edges),
    sources: sources.map(({ energiserId, joint }) => {
      return { energiserId, node: joint === null ? null : nodeOf[joint]! };
    }),
    runsOfLine,
    edgeOfSwitch,
    postsOfGateway,
    problems: draft.problems,
  };
}

/** The edges of each node, ascending; lists as long as they need to be. */
function edgesAtNodes(nodeCount: number, edges: readonly { readonly from: number; readonly to: number }[]): number[][] {
  const counts = new Int32Array(nodeCount);
  for (const { from, to } of edges) {
    counts[from]!++;
    if (to !== from) counts[to]!++;
  }
  const edgesAt: number[][] = Array.from({ length: nodeCount }, (_, node) => new Array<number>(counts[node]!));
  counts.fill(0);
  for (let index = 0; index < edges.length; index++) {
    const { from, to } = edges[index]!;
    edgesAt[from]![counts[from]!++] = index;
    if (to !== from) edgesAt[to]![counts[to]!++] = index;
  }
  return edgesAt;
}
