import type { EnergiserJoint } from './connectEnergisers.ts';
import type { NetworkDraft } from './networkDraft.ts';
import type { Network, NetworkNode, Run } from './types.ts';

/** Turns the joints of a finished draft into nodes; its edges become those of the network. */
export function numberNodes(draft: NetworkDraft, sources: readonly EnergiserJoint[]): Network {
  const { nodes, nodeOf } = draft.joints.number();
  const nameRun = createRunNames(nodes);
  const edges = draft.edges;
  const runsOfLine = new Map<string, number[]>();
  const edgeOfSwitch = new Map<string, number>();
  for (let index = 0; index < edges.length; index++) {
    const edge = edges[index]!;
    const from = nodeOf[edge.from]!;
    const to = nodeOf[edge.to]!;
    edge.from = from;
    edge.to = to;
    if (edge.kind === 'run') {
      edge.key = nameRun(edge);
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

/**
 * Names runs by their line and nodes, those between the same two nodes with a number. All runs of a line are named one
 * after the other.
 */
function createRunNames(nodes: readonly NetworkNode[]): (run: Run) => string {
  let lineId: string | null = null;
  const known = new Map<number, number>();
  return (run) => {
    if (run.lineId !== lineId) known.clear();
    lineId = run.lineId;
    const ends = run.from * nodes.length + run.to;
    const count = (known.get(ends) ?? 0) + 1;
    known.set(ends, count);
    const name = `run:${lineId}:${nodes[run.from]!.key}~${nodes[run.to]!.key}`;
    return count === 1 ? name : `${name}#${count}`;
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
