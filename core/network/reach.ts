import type { Project } from '../model/project.ts';
import { deadReasons } from './deadReasons.ts';
import { type Feed, feedOf, passesNormally } from './feed.ts';
import { DisjointSets } from './sectioning/disjointSets.ts';
import type { DeadPart, Network, Reach } from './types.ts';

/** What the energisers reach with every switch in its normal position, and why the rest is dead. */
export function reachOf(project: Project, network: Network, feed = feedOf(network, passesNormally(network))): Reach {
  const { nodes, edges } = network;
  const passes = passesNormally(network);
  const nodeFed = new Uint8Array(nodes.length);
  for (let node = 0; node < nodes.length; node++) if (feed.positionOf[node] !== -1) nodeFed[node] = 1;
  const edgeFed = new Uint8Array(edges.length);
  for (let edge = 0; edge < edges.length; edge++) if (nodeFed[edges[edge]!.from] && passes(edge)) edgeFed[edge] = 1;
  return { nodeFed, edgeFed, deadParts: deadParts(project, network, feed) };
}

/** The unfed pieces of fence that hang together, in the order of their first edge. */
function deadParts(project: Project, network: Network, feed: Feed): DeadPart[] {
  const { nodes, edges } = network;
  const deadEdges = unfedEdges(network, feed);
  if (deadEdges.length === 0) return [];
  const together = new DisjointSets(nodes.length);
  for (const index of deadEdges) together.join(edges[index]!.from, edges[index]!.to);
  /** The dead part of each node: -1 where it is fed. */
  const partOf = new Int32Array(nodes.length).fill(-1);
  const parts: Piece[] = [];
  const partOfRoot = new Map<number, Piece>();
  for (const index of deadEdges) {
    const edge = edges[index]!;
    const root = together.find(edge.from);
    let part = partOfRoot.get(root);
    if (!part) {
      part = { edges: [], lengthM: 0, lineIds: new Set() };
      partOfRoot.set(root, part);
      parts.push(part);
    }
    part.edges.push(index);
    if (edge.kind !== 'run') continue;
    part.lengthM += edge.lengthM;
    part.lineIds.add(edge.lineId);
  }
  const withFence = parts.filter(({ lineIds }) => lineIds.size > 0);
  for (const [part, piece] of withFence.entries()) {
    for (const index of piece.edges) {
      partOf[edges[index]!.from] = part;
      partOf[edges[index]!.to] = part;
    }
  }
  const reasons = deadReasons(project, network, { feed, partOf, count: withFence.length });
  return withFence.map((piece, part) => {
    const reason = reasons[part];
    const at = reason?.at ?? nodes[edges[piece.edges[0]!]!.from]!.at;
    const why = reason?.why ?? { code: 'notJoined' };
    return { edges: piece.edges, lengthM: piece.lengthM, lineIds: [...piece.lineIds], why, at };
  });
}

/** Edges that let current through if there were any. Both ends of such an edge are fed, or neither. */
function unfedEdges(network: Network, feed: Feed): number[] {
  const passes = passesNormally(network);
  const unfed: number[] = [];
  for (let index = 0; index < network.edges.length; index++) {
    if (feed.positionOf[network.edges[index]!.from] === -1 && passes(index)) unfed.push(index);
  }
  return unfed;
}

interface Piece {
  readonly edges: number[];
  lengthM: number;
  readonly lineIds: Set<string>;
}
