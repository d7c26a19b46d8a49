import type { Steps } from '../../model/steps.ts';
import { CheapestCuts } from './cheapestCuts.ts';
import type { CutGraph } from './contract.ts';
import { costOf } from './cutCosts.ts';
import { DisjointSets } from './disjointSets.ts';
import { buildSkeleton } from './skeleton.ts';
import type { Work } from './work.ts';

/** A first plan and a bound of a connected graph, by one of its spanning trees. */
export interface TreePlan {
  /** Null where the tree alone can't keep two ends apart that have to be. */
  readonly cut: Uint8Array | null;
  readonly cost: number;
  /** No plan costs less. */
  readonly lowerBound: number;
}

/**
 * The best plan of a spanning tree of the dearest edges, which is exact and near linear: of the edges left out, those
 * that then lie between two sections are cut as well. Parts of a plan of the whole keep the limits on the tree, too, so
 * no plan of the whole costs less than that of the tree.
 */
export function* treePlan(graph: CutGraph, work: Work): Steps<TreePlan> {
  const { edgeA, edgeB, mustCut } = graph;
  const leftOut = edgesOutsideTree(graph);
  const cuts = new CheapestCuts(graph, buildSkeleton(graph, leftOut), work);
  const cut = new Uint8Array(edgeA.length);
  let lowerBound = 0;
  for (let p = 0; p < cuts.pieceCount; p++) {
    const own = yield* cuts.cost(p, graph.limits[0]!);
    lowerBound += own;
    yield* cuts.trace(p, cut);
  }
  const together = new DisjointSets(graph.vertexCount);
  for (let e = 0; e < cut.length; e++) if (!leftOut[e] && !cut[e]) together.join(edgeA[e]!, edgeB[e]!);
  let holds = true;
  for (let e = 0; e < cut.length; e++) {
    cut[e] = together.find(edgeA[e]!) === together.find(edgeB[e]!) ? 0 : 1;
    if (mustCut[e] && !cut[e]) holds = false;
  }
  return { cut: holds ? cut : null, cost: costOf(graph, cut), lowerBound };
}

/** All but the edges of a spanning tree: those that have to be cut go first into it, then the dearest. */
function edgesOutsideTree({ vertexCount, edgeA, edgeB, edgeCost, mustCut }: CutGraph): Uint8Array {
  const order = Array.from(edgeA.keys());
  order.sort((x, y) => mustCut[y]! - mustCut[x]! || edgeCost[y]! - edgeCost[x]! || x - y);
  const joined = new DisjointSets(vertexCount);
  const leftOut = new Uint8Array(edgeA.length);
  for (const e of order) if (!joined.join(edgeA[e]!, edgeB[e]!)) leftOut[e] = 1;
  return leftOut;
}
