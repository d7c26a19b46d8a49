import type { Steps } from '../../model/steps.ts';
import { otherEnd } from './adjacency.ts';
import type { FrontierLayout } from './frontierLayout.ts';
import { frontSum } from './frontSums.ts';
import type { LengthRange } from './fronts.ts';

/**
 * A spanning tree of a ringed part, and what the tree alone would cost.
 *
 * Cutting a plan's tree edges alone parts the tree into pieces that each lie within one of the plan's sections, so they
 * keep the limits: the cheapest cuts of the tree never cost more than the best plan of the whole part. As every vertex
 * hangs from one that the layout takes in before it, one run from the last vertex to the first also gives the bound for
 * what is left after every step.
 */
export class TreeBound {
  /** By vertex; -1 for the first one taken in. */
  readonly parentEdge: Int32Array;
  readonly children: readonly number[][];
  /** By vertex: the front of what hangs from it, in costs above its least. */
  readonly fronts: Float64Array[];
  /** By step: the least that all vertices after it can cost. */
  readonly costAfter: Float64Array;
  readonly #layout: FrontierLayout;

  constructor(layout: FrontierLayout, parentEdge: Int32Array) {
    const { graph, steps } = layout;
    this.#layout = layout;
    this.parentEdge = parentEdge;
    const children: number[][] = Array.from({ length: graph.vertexCount }, () => []);
    for (const { vertex } of steps) {
      if (parentEdge[vertex]! >= 0) children[otherEnd(graph, parentEdge[vertex]!, vertex)]!.push(vertex);
    }
    this.children = children;
    this.fronts = new Array<Float64Array>(graph.vertexCount);
    this.costAfter = new Float64Array(steps.length);
  }

  /** Runs the tree's programme. Returns the bound for the whole part. */
  compute(seedOf: (vertex: number) => Float64Array, limits: Float64Array, range: LengthRange): number {
    const { steps } = this.#layout;
    let cost = 0;
    for (let s = steps.length - 1; s >= 0; s--) {
      const { vertex } = steps[s]!;
      this.costAfter[s] = cost;
      let front = seedOf(vertex);
      for (const child of this.children[vertex]!) front = frontSum(front, this.optionsOf(child), limits, range);
      cost += front[0]!;
      this.fronts[vertex] = this.#aboveLeast(vertex, front, limits.length + 1);
    }
    return cost;
  }

  /** What a child may add to its parent: each point of its front, or nothing for the cost of cutting it off. */
  optionsOf(child: number): Float64Array {
    const { edgeCost, mustCut } = this.#layout.graph;
    const edge = this.parentEdge[child]!;
    const front = this.fronts[child]!;
    const joined = mustCut[edge] ? 0 : front.length;
    const options = new Float64Array(joined + 1 + this.#layout.graph.limits.length);
    options.set(front.subarray(0, joined));
    options[joined] = edgeCost[edge]!;
    return options;
  }

  #aboveLeast(vertex: number, front: Float64Array, stride: number): Float64Array {
    const edge = this.parentEdge[vertex]!;
    const window = edge < 0 ? 1 : Math.max(1, this.#layout.graph.edgeCost[edge]!);
    const least = front[0]!;
    let end = 0;
    while (end < front.length && front[end]! < least + window) end += stride;
    const above = front.slice(0, end);
    for (let i = 0; i < end; i += stride) above[i]! -= least;
    return above;
  }
}

/** Hangs every vertex by the dearest edge to a vertex taken in before it. */
export function dearestTree(layout: FrontierLayout): TreeBound {
  const { graph, steps } = layout;
  const parentEdge = new Int32Array(graph.vertexCount).fill(-1);
  for (const { vertex, links } of steps) {
    for (const { edge } of links) {
      const soFar = parentEdge[vertex]!;
      if (soFar < 0 || graph.edgeCost[edge]! > graph.edgeCost[soFar]!) parentEdge[vertex] = edge;
    }
  }
  return new TreeBound(layout, parentEdge);
}

/** Looks for a tree with a larger bound, changing one vertex's parent at a time, with at most `trials` tries. */
export function* improvedTree(
  layout: FrontierLayout,
  start: TreeBound,
  seedOf: (vertex: number) => Float64Array,
  limits: Float64Array,
  trials: number,
): Steps<TreeBound> {
  const range = { kept: 0, refused: Number.POSITIVE_INFINITY };
  const choices = layout.steps.filter(({ links }) => links.length > 1);
  let best = start;
  let bound = best.compute(seedOf, limits, range);
  for (let left = trials, gained = true; gained; ) {
    gained = false;
    for (const { vertex, links } of choices) {
      for (const { edge } of links) {
        if (edge === best.parentEdge[vertex]) continue;
        if (left-- <= 0) return best;
        const parentEdge = best.parentEdge.slice();
        parentEdge[vertex] = edge;
        const other = new TreeBound(layout, parentEdge);
        const cost = other.compute(seedOf, limits, range);
        yield;
        if (cost <= bound) continue;
        best = other;
        bound = cost;
        gained = true;
      }
    }
  }
  return best;
}
