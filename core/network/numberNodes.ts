import type { EnergiserJoint } from './connectEnergisers.ts';
import { unusedKey } from './joints.ts';
import type { NetworkDraft } from './networkDraft.ts';
import type { Network, NetworkEdge } from './types.ts';

/** Turns the joints of a finished draft into nodes, and all that refers to joints with them. */
export function numberNodes(draft: NetworkDraft, sources: readonly EnergiserJoint[]): Network {
  const { nodes, nodeOf } = draft.joints.number();
  const used = new Set<string>();
  const edges: NetworkEdge[] = [];
  const edgesAt: number[][] = nodes.map(() => []);
  const runsOfLine = new Map<string, number[]>();
  const edgeOfSwitch = new Map<string, number>();
  for (const [index, drafted] of draft.edges.entries()) {
    const from = nodeOf[drafted.from]!;
    const to = nodeOf[drafted.to]!;
    const key = drafted.kind === 'run' ? `${drafted.key}:${nodes[from]!.key}~${nodes[to]!.key}` : drafted.key;
    edges.push({ ...drafted, key: unusedKey(key, used), from, to });
    edgesAt[from]!.push(index);
    if (to !== from) edgesAt[to]!.push(index);
    if (drafted.kind === 'run') {
      const runs = runsOfLine.get(drafted.lineId);
      if (runs) runs.push(index);
      else runsOfLine.set(drafted.lineId, [index]);
    } else if (drafted.kind === 'switch') {
      edgeOfSwitch.set(drafted.switchId, index);
      if (from === to) draft.report('switchBypassed', [drafted.switchId], nodes[from]!.at);
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
