import { DisjointSets } from '../../network/sectioning/disjointSets.ts';
import type { Network } from '../../network/types.ts';

/** What hangs together when every switch is closed, with the energisers that stand on it. */
export interface FencePiece {
  readonly edges: readonly number[];
  readonly nodes: readonly number[];
  readonly sources: readonly { readonly energiserId: string; readonly node: number }[];
}

export function fencePieces({ nodes, edges, sources }: Network): FencePiece[] {
  const joined = new DisjointSets(nodes.length);
  for (const { from, to } of edges) joined.join(from, to);
  const { setOf, count } = joined.number();
  const pieces = Array.from({ length: count }, () => ({
    edges: [] as number[],
    nodes: [] as number[],
    sources: [] as { energiserId: string; node: number }[],
  }));
  for (const node of nodes.keys()) pieces[setOf[node]!]!.nodes.push(node);
  for (const [index, { from }] of edges.entries()) pieces[setOf[from]!]!.edges.push(index);
  for (const { energiserId, node } of sources)
    if (node !== null) pieces[setOf[node]!]!.sources.push({ energiserId, node });
  return pieces;
}
