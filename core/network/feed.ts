import type { Network } from './types.ts';

/** How current gets from the energisers to everything: a tree of ways, and which of its edges are the only way. */
export interface Feed {
  /** Fed nodes, each before all that lies beyond it on the tree. */
  readonly order: readonly number[];
  /** Position of each node in `order`; -1 where it is not fed. */
  readonly positionOf: Int32Array;
  /** The tree beyond a node takes up `order` from the node's own position to this one. */
  readonly lastOf: Int32Array;
  /** The edge that feeds each node on the tree; -1 at a source and where it is not fed. */
  readonly edgeInto: Int32Array;
  /** 1 for an edge that is the only way to what lies beyond it. */
  readonly onlyWay: Uint8Array;
}

/**
 * Walks the network from its sources over the edges that `passes` lets through. Where more than one source feeds the
 * network, a way that leads from one to another is no only way. Linear in the edges: bridges by R. E. Tarjan, "A note
 * on finding the bridges of a graph", Information Processing Letters 2, 1974.
 */
export function feedOf(network: Network, passes: (edge: number) => boolean): Feed {
  const { nodes, edges, edgesAt } = network;
  const order: number[] = [];
  const positionOf = new Int32Array(nodes.length).fill(-1);
  const lastOf = new Int32Array(nodes.length).fill(-1);
  const edgeInto = new Int32Array(nodes.length).fill(-1);
  const onlyWay = new Uint8Array(edges.length);
  const nextEdge = new Int32Array(nodes.length);
  const sources = sourceNodes(network);
  /** The earliest position that can be reached from beyond each node without the edge into it; -2 before any source. */
  const lowest = new Int32Array(nodes.length);
  const enter = (node: number, edge: number): void => {
    positionOf[node] = order.push(node) - 1;
    edgeInto[node] = edge;
    lowest[node] = sources.size > 1 && sources.has(node) ? -2 : positionOf[node]!;
  };
  for (const source of sources) {
    if (positionOf[source] !== -1) continue;
    enter(source, -1);
    const way = [source];
    while (way.length > 0) {
      const node = way.at(-1)!;
      const edge = edgesAt[node]![nextEdge[node]!++];
      if (edge === undefined) {
        way.pop();
        lastOf[node] = order.length - 1;
        const parent = way.at(-1);
        if (parent === undefined) continue;
        lowest[parent] = Math.min(lowest[parent]!, lowest[node]!);
        if (lowest[node]! > positionOf[parent]!) onlyWay[edgeInto[node]!] = 1;
      } else if (edge !== edgeInto[node] && passes(edge)) {
        const { from, to } = edges[edge]!;
        const other = from === node ? to : from;
        if (positionOf[other] === -1) {
          enter(other, edge);
          way.push(other);
        } else lowest[node] = Math.min(lowest[node]!, positionOf[other]!);
      }
    }
  }
  return { order, positionOf, lastOf, edgeInto, onlyWay };
}

/** The nodes that energisers feed, each once. */
export function sourceNodes({ sources }: Network): Set<number> {
  return new Set(sources.flatMap(({ node }) => (node === null ? [] : [node])));
}

/** Lets everything through but switches that normally stand open. */
export function passesNormally({ edges }: Network): (edge: number) => boolean {
  return (index) => {
    const edge = edges[index]!;
    return edge.kind !== 'switch' || edge.normally === 'closed';
  };
}
