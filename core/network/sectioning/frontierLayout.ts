import { adjacencyOf } from './adjacency.ts';
import type { CutGraph } from './contract.ts';

/** The order in which the vertices of a ringed part are taken in, and what is remembered on the way. */
export interface FrontierLayout {
  readonly graph: CutGraph;
  /** The vertex through which the part hangs on to the rest, -1 for none. It is taken first and stays. */
  readonly root: number;
  readonly steps: readonly Step[];
  /** Most vertices in the frontier. */
  readonly width: number;
  /** Grows with the number of states to expect. */
  readonly burden: number;
}

export interface Step {
  readonly vertex: number;
  /** Edges to frontier vertices, by their place in the frontier. */
  readonly links: readonly { readonly slot: number; readonly edge: number }[];
  /** Edges to vertices still to come. */
  readonly later: readonly number[];
  /** Places (the new vertex last) that stay in the frontier. */
  readonly stays: readonly number[];
  /** Vertices in the frontier before the step: those that still have neighbours to come. */
  readonly frontier: readonly number[];
}

/**
 * Starts at a vertex of a connected graph and goes on with the one that leaves the narrowest frontier, the longest known
 * first among equals. With `keepStart` the first vertex is the root.
 */
export function frontierLayout(graph: CutGraph, start: number, keepStart: boolean): FrontierLayout {
  const adjacency = adjacencyOf(graph);
  const root = keepStart ? start : -1;
  /** Neighbours still to come. */
  const waiting = new Int32Array(graph.vertexCount);
  for (let v = 0; v < graph.vertexCount; v++) waiting[v] = adjacency.start[v + 1]! - adjacency.start[v]!;
  const taken = new Uint8Array(graph.vertexCount);
  const near = new Set<number>();
  const steps: Step[] = [];
  let frontier: number[] = [];
  let width = 0;
  let burden = 0;
  take(start);
  while (near.size > 0) take(narrowest());
  return { graph, root, steps, width, burden };

  function narrowest(): number {
    let best = -1;
    let bestGrowth = Number.POSITIVE_INFINITY;
    for (const v of near) {
      let growth = waiting[v]! > 0 ? 1 : 0;
      for (let i = adjacency.start[v]!; i < adjacency.start[v + 1]!; i++) {
        const w = adjacency.other[i]!;
        if (taken[w] && waiting[w] === 1 && w !== root) growth--;
      }
      if (growth >= bestGrowth) continue;
      bestGrowth = growth;
      best = v;
      if (growth < 0) break;
    }
    return best;
  }

  function take(v: number): void {
    const links: { slot: number; edge: number }[] = [];
    const later: number[] = [];
    taken[v] = 1;
    near.delete(v);
    for (let i = adjacency.start[v]!; i < adjacency.start[v + 1]!; i++) {
      const w = adjacency.other[i]!;
      waiting[w]!--;
      if (taken[w]) links.push({ slot: frontier.indexOf(w), edge: adjacency.edge[i]! });
      else {
        later.push(adjacency.edge[i]!);
        near.add(w);
      }
    }
    const all = [...frontier, v];
    const stays: number[] = [];
    for (let slot = 0; slot < all.length; slot++) {
      if (all[slot] === root || waiting[all[slot]!]! > 0) stays.push(slot);
    }
    steps.push({ vertex: v, links, later, stays, frontier });
    frontier = stays.map((slot) => all[slot]!);
    width = Math.max(width, frontier.length);
    burden += 3 ** Math.min(frontier.length, 30);
  }
}
