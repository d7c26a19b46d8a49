import type { Xy } from '../geometry/types.ts';
import type { DivideSettings } from '../model/things.ts';
import { sourceNodes } from '../network/feed.ts';
import { DisjointSets } from '../network/sectioning/disjointSets.ts';
import { shortestWays } from '../network/shortestWays.ts';
import type { Network, Reach } from '../network/types.ts';
import { xyAt } from '../shapes/measuredPath.ts';
import type { LineShape } from '../shapes/types.ts';
import { sectionLetter } from './sectionLetter.ts';
import type { Section } from './types.ts';

export interface SectionsFound {
  readonly sections: readonly Section[];
  /** Section of each edge; -1 for switches, and for a lead-out with a switch between it and the fence. */
  readonly ofEdge: Int32Array;
  /** Section of each node; -1 where no section lies on it. */
  readonly ofNode: Int32Array;
}

interface Draft {
  readonly edges: number[];
  readonly nodes: number[];
  readonly lineIds: Set<string>;
  readonly gatewayIds: Set<string>;
  readonly switchIds: Set<string>;
  lengthM: number;
  longestRun: number;
}

/**
 * The sections: what stays joined when every switch is open, however they normally stand. Lettered in the order in
 * which they are reached from the energiser by the shortest way with all switches closed; those that nothing reaches
 * follow. A gateway belongs to the section of its crossing, or of its start post where nothing bridges it. A piece with
 * neither fence nor crossing (a lead-out with a switch at its end) is no section.
 */
export function sectionsOf(
  network: Network,
  reach: Reach,
  lines: ReadonlyMap<string, LineShape>,
  { maxSectionM, maxGateways }: DivideSettings,
): SectionsFound {
  const { nodes, edges } = network;
  const joined = new DisjointSets(nodes.length);
  for (const { kind, from, to } of edges) if (kind !== 'switch') joined.join(from, to);
  const pieceOfRoot = letterPieces(network, joined);
  const drafts = Array.from({ length: pieceOfRoot.count }, emptyDraft);
  const ofNode = new Int32Array(nodes.length);
  for (let node = 0; node < nodes.length; node++) {
    const piece = pieceOfRoot.index[joined.find(node)]!;
    ofNode[node] = piece;
    if (piece >= 0) drafts[piece]!.nodes.push(node);
  }
  const ofEdge = new Int32Array(edges.length);
  const sources = sourceNodes(network);
  for (let index = 0; index < edges.length; index++) {
    const edge = edges[index]!;
    ofEdge[index] = edge.kind === 'switch' ? -1 : ofNode[edge.from]!;
    if (edge.kind === 'switch') {
      if (ofNode[edge.from] === ofNode[edge.to]) continue;
      for (const node of [edge.from, edge.to]) drafts[ofNode[node]!]?.switchIds.add(edge.switchId);
      continue;
    }
    const draft = drafts[ofEdge[index]!];
    if (!draft) continue;
    draft.edges.push(index);
    if (edge.kind === 'crossing') draft.gatewayIds.add(edge.gatewayId);
    if (edge.kind !== 'run') continue;
    draft.lengthM += edge.lengthM;
    draft.lineIds.add(edge.lineId);
    if (draft.longestRun === -1 || edge.lengthM > lengthOf(network, draft.longestRun)) draft.longestRun = index;
  }
  addOpenGateways(network, drafts, ofNode);
  const sections = drafts.map((draft, index): Section => {
    return {
      index,
      letter: sectionLetter(index),
      edges: draft.edges,
      nodes: draft.nodes,
      lineIds: [...draft.lineIds],
      gatewayIds: [...draft.gatewayIds],
      lengthM: draft.lengthM,
      switchIds: [...draft.switchIds],
      fed: draft.nodes.some((node) => reach.nodeFed[node] === 1),
      holdsEnergiser: draft.nodes.some((node) => sources.has(node)),
      overByM: draft.lengthM > maxSectionM ? draft.lengthM - maxSectionM : null,
      overByGateways:
        maxGateways !== null && draft.gatewayIds.size > maxGateways ? draft.gatewayIds.size - maxGateways : null,
      labelXy: labelPlace(network, lines, draft),
    };
  });
  return { sections, ofEdge, ofNode };
}

/**
 * Numbers the joined pieces with fence or a crossing in the order of letters: by their nearest node, of equally near
 * ones the first. The number stands at the root of the piece; -1 for all else.
 */
function letterPieces(network: Network, joined: DisjointSets): { readonly index: Int32Array; readonly count: number } {
  const { nodes, edges } = network;
  const { distanceM } = shortestWays(network);
  const nearestOf = new Int32Array(nodes.length).fill(-1);
  for (let node = 0; node < nodes.length; node++) {
    const root = joined.find(node);
    const nearest = nearestOf[root]!;
    if (nearest === -1 || distanceM[node]! < distanceM[nearest]!) nearestOf[root] = node;
  }
  const roots = new Set<number>();
  for (const { kind, from } of edges) if (kind === 'run' || kind === 'crossing') roots.add(joined.find(from));
  const inOrder = [...roots].sort((a, b) => {
    const [m, n] = [nearestOf[a]!, nearestOf[b]!];
    return compare(distanceM[m]!, distanceM[n]!) || m - n;
  });
  const index = new Int32Array(nodes.length).fill(-1);
  for (const [letter, root] of inOrder.entries()) index[root] = letter;
  return { index, count: inOrder.length };
}

function compare(a: number, b: number): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

function emptyDraft(): Draft {
  return {
    edges: [],
    nodes: [],
    lineIds: new Set(),
    gatewayIds: new Set(),
    switchIds: new Set(),
    lengthM: 0,
    longestRun: -1,
  };
}

function addOpenGateways({ edges, postsOfGateway }: Network, drafts: readonly Draft[], ofNode: Int32Array): void {
  const crossed = new Set<string>();
  for (const edge of edges) if (edge.kind === 'crossing') crossed.add(edge.gatewayId);
  for (const [gatewayId, [start, end]] of postsOfGateway) {
    if (crossed.has(gatewayId)) continue;
    const draft = drafts[ofNode[start]!] ?? drafts[ofNode[end]!];
    draft?.gatewayIds.add(gatewayId);
  }
}

function lengthOf({ edges }: Network, index: number): number {
  const edge = edges[index]!;
  return edge.kind === 'run' ? edge.lengthM : 0;
}

/** The middle of the longest run; of a crossing alone, one of its posts. */
function labelPlace({ nodes, edges }: Network, lines: ReadonlyMap<string, LineShape>, draft: Draft): Xy {
  const run = edges[draft.longestRun];
  if (run?.kind !== 'run') return nodes[draft.nodes[0]!]!.xy;
  return xyAt(lines.get(run.lineId)!, (run.fromM + run.toM) / 2);
}
