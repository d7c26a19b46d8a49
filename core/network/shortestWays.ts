import { sourceNodes } from './feed.ts';
import type { Network, NetworkEdge } from './types.ts';

/** The shortest way to each node from the nearest energiser. */
export interface ShortestWays {
  /** Metres of fence and cable; Infinity where there is no way. */
  readonly distanceM: Float64Array;
  /** The last edge of the way; -1 at a source and where there is no way. */
  readonly edgeInto: Int32Array;
}

/** Over the edges that `passes` lets through (all, unless told). E. W. Dijkstra, Numerische Mathematik 1, 1959. */
export function shortestWays(network: Network, passes: (edge: number) => boolean = () => true): ShortestWays {
  const { edges, edgesAt } = network;
  const distanceM = new Float64Array(network.nodes.length).fill(Infinity);
  const edgeInto = new Int32Array(network.nodes.length).fill(-1);
  const waiting = new NearestFirst();
  for (const node of sourceNodes(network)) {
    distanceM[node] = 0;
    waiting.push(node, 0);
  }
  for (let nearest = waiting.pop(); nearest; nearest = waiting.pop()) {
    const { node, farM } = nearest;
    if (farM > distanceM[node]!) continue;
    for (const index of edgesAt[node]!) {
      if (!passes(index)) continue;
      const edge = edges[index]!;
      const other = edge.from === node ? edge.to : edge.from;
      const otherM = farM + edgeLengthM(edge);
      if (otherM < distanceM[other]!) {
        distanceM[other] = otherM;
        edgeInto[other] = index;
        waiting.push(other, otherM);
      }
    }
  }
  return { distanceM, edgeInto };
}

/** The edges of the shortest way to a node, from the energiser on. */
export function wayTo({ edges }: Network, { edgeInto }: ShortestWays, node: number): number[] {
  const way: number[] = [];
  let at = node;
  while (edgeInto[at] !== -1) {
    const index = edgeInto[at]!;
    way.push(index);
    at = edges[index]!.from === at ? edges[index]!.to : edges[index]!.from;
  }
  return way.reverse();
}

/** Metres of fence or cable; 0 for a switch. */
export function edgeLengthM(edge: NetworkEdge): number {
  if (edge.kind === 'run') return edge.lengthM;
  return edge.kind === 'switch' ? 0 : edge.cableLengthM;
}

/** A binary heap of nodes, the nearest on top. */
class NearestFirst {
  readonly #nodes: number[] = [];
  readonly #farM: number[] = [];

  push(node: number, farM: number): void {
    let at = this.#nodes.length;
    while (at > 0) {
      const above = (at - 1) >> 1;
      if (this.#farM[above]! <= farM) break;
      this.#nodes[at] = this.#nodes[above]!;
      this.#farM[at] = this.#farM[above]!;
      at = above;
    }
    this.#nodes[at] = node;
    this.#farM[at] = farM;
  }

  pop(): { readonly node: number; readonly farM: number } | null {
    const count = this.#nodes.length - 1;
    if (count < 0) return null;
    const top = { node: this.#nodes[0]!, farM: this.#farM[0]! };
    const node = this.#nodes.pop()!;
    const farM = this.#farM.pop()!;
    if (count === 0) return top;
    let at = 0;
    for (;;) {
      let below = 2 * at + 1;
      if (below >= count) break;
      if (below + 1 < count && this.#farM[below + 1]! < this.#farM[below]!) below++;
      if (this.#farM[below]! >= farM) break;
      this.#nodes[at] = this.#nodes[below]!;
      this.#farM[at] = this.#farM[below]!;
      at = below;
    }
    this.#nodes[at] = node;
    this.#farM[at] = farM;
    return top;
  }
}
