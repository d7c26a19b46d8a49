import type { CutGraph } from './contract.ts';
import { DisjointSets } from './disjointSets.ts';

/** What the marked edges cost. */
export function costOf({ edgeCost }: CutGraph, cut: Uint8Array): number {
  let cost = 0;
  for (let e = 0; e < cut.length; e++) if (cut[e]) cost += edgeCost[e]!;
  return cost;
}

/** The longest section that holds no vertex over a limit by itself. */
export function longestPart(graph: CutGraph, cut: Uint8Array): number {
  const { setOf, count } = partsWithout(graph, cut).number();
  const length = new Float64Array(count);
  const exempt = new Uint8Array(count);
  for (let v = 0; v < setOf.length; v++) {
    length[setOf[v]!]! += graph.weights[v * graph.limits.length]!;
    if (graph.exempt[v]) exempt[setOf[v]!] = 1;
  }
  let longest = 0;
  for (let p = 0; p < count; p++) if (!exempt[p]) longest = Math.max(longest, length[p]!);
  return longest;
}

/** Which vertices hang together when the marked edges are cut. */
export function partsWithout({ vertexCount, edgeA, edgeB }: CutGraph, cut: Uint8Array): DisjointSets {
  const together = new DisjointSets(vertexCount);
  for (let e = 0; e < cut.length; e++) if (!cut[e]) together.join(edgeA[e]!, edgeB[e]!);
  return together;
}
