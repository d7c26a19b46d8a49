import { type Adjacency, adjacencyOf } from './adjacency.ts';
import type { CutGraph } from './contract.ts';

/**
 * The order in which a network is planned: every part after the parts that hang from it.
 *
 * Nodes 0 … vertexCount-1 are the graph's vertices; the nodes after them are its *ring blocks*, the biconnected
 * pieces of more than one edge (found by depth-first search, Hopcroft and Tarjan 1973). A vertex hangs from a vertex
 * by a bridge, or from a ring block; a ring block hangs from the vertex where the rest of the network meets it.
 * Trees have no ring blocks; on a fence with a few rings nearly all nodes are vertices that hang from vertices.
 */
export interface Skeleton {
  readonly nodeCount: number;
  /** Node that this one hangs from; -1 for the root of a connected piece. */
  readonly parent: Int32Array;
  /** Edge to the parent, where a vertex hangs from a vertex; else -1. */
  readonly parentEdge: Int32Array;
  readonly blocks: readonly RingBlock[];
  /** All nodes, pieces one after another, each node after those that hang from it. */
  readonly order: Int32Array;
  /** Piece p is `order[pieceStart[p]] … order[pieceStart[p + 1] - 1]`. */
  readonly pieceStart: Int32Array;
}

export interface RingBlock {
  /** The vertex it hangs from. */
  readonly root: number;
  /** Its other vertices, which hang from it. */
  readonly vertices: readonly number[];
  readonly edges: readonly number[];
}

/**
 * `leftOut` marks edges to be treated as if they were not there; `roots` marks vertices to hang pieces from, at most one
 * a piece. A piece without such a vertex hangs from its most tangled block, or from where the peeling of leaves ends.
 */
export function buildSkeleton(graph: CutGraph, leftOut?: Uint8Array, roots?: Uint8Array): Skeleton {
  const n = graph.vertexCount;
  const adjacency = adjacencyOf(graph, leftOut);
  const { start, edge, other } = adjacency;
  const parent = new Array<number>(n).fill(-1);
  const parentEdge = new Int32Array(n).fill(-1);
  const order: number[] = [];
  const pieceStart: number[] = [];
  const blocks: RingBlock[] = [];
  const degree = new Int32Array(n);
  for (let v = 0; v < n; v++) degree[v] = start[v + 1]! - start[v]!;
  const seen = new Uint8Array(n);
  const peeled = new Uint8Array(n);

  for (let first = 0; first < n; first++) {
    if (seen[first]) continue;
    const piece = reach(first, adjacency, seen);
    pieceStart.push(order.length);
    // What hangs from the rings as a tree comes off leaf by leaf.
    const leaves = piece.filter((v) => degree[v] === 1 && !roots?.[v]);
    let remaining = piece.length;
    while (leaves.length > 0 && remaining > 1) {
      const leaf = leaves.pop()!;
      peeled[leaf] = 1;
      remaining--;
      order.push(leaf);
      for (let i = start[leaf]!; i < start[leaf + 1]!; i++) {
        const up = other[i]!;
        if (peeled[up]) continue;
        parent[leaf] = up;
        parentEdge[leaf] = edge[i]!;
        if (--degree[up]! === 1 && !roots?.[up]) leaves.push(up);
      }
    }
    const core = piece.filter((v) => !peeled[v]);
    if (core.length === 1) order.push(core[0]!);
    else hangCore(core);
  }
  pieceStart.push(order.length);
  return {
    nodeCount: n + blocks.length,
    parent: Int32Array.from(parent),
    parentEdge,
    blocks,
    order: Int32Array.from(order),
    pieceStart: Int32Array.from(pieceStart),
  };

  /** Hangs the ringed core of a piece from its root, or else from a vertex of its most tangled block. */
  function hangCore(core: readonly number[]): void {
    const pieces = biconnectedPieces(core[0]!, adjacency, peeled);
    const verticesOf = pieces.map((edges) => endsOf(edges, graph));
    const piecesAt = new Map<number, number[]>();
    let hardest = 0;
    for (let p = 0; p < pieces.length; p++) {
      for (const v of verticesOf[p]!) {
        const list = piecesAt.get(v);
        if (list) list.push(p);
        else piecesAt.set(v, [p]);
      }
      if (rings(p) > rings(hardest)) hardest = p;
    }
    const done = new Uint8Array(pieces.length);
    const topDown: number[] = [];
    const stack = [core.find((v) => roots?.[v]) ?? verticesOf[hardest]![0]!];
    while (stack.length > 0) {
      const node = stack.pop()!;
      topDown.push(node);
      if (node >= n) {
        for (const v of blocks[node - n]!.vertices) stack.push(v);
        continue;
      }
      for (const p of piecesAt.get(node)!) {
        if (done[p]) continue;
        done[p] = 1;
        const below = verticesOf[p]!.filter((v) => v !== node);
        if (pieces[p]!.length === 1) {
          parent[below[0]!] = node;
          parentEdge[below[0]!] = pieces[p]![0]!;
          stack.push(below[0]!);
        } else {
          const block = n + blocks.length;
          blocks.push({ root: node, vertices: below, edges: pieces[p]! });
          parent[block] = node;
          for (const v of below) parent[v] = block;
          stack.push(block);
        }
      }
    }
    for (let i = topDown.length - 1; i >= 0; i--) order.push(topDown[i]!);

    function rings(p: number): number {
      return pieces[p]!.length - verticesOf[p]!.length;
    }
  }
}

function reach(first: number, { start, other }: Adjacency, seen: Uint8Array): number[] {
  const found = [first];
  seen[first] = 1;
  for (let i = 0; i < found.length; i++) {
    const v = found[i]!;
    for (let j = start[v]!; j < start[v + 1]!; j++) {
      const w = other[j]!;
      if (seen[w]) continue;
      seen[w] = 1;
      found.push(w);
    }
  }
  return found;
}

/** Edge lists of the biconnected pieces reached from `first` without entering peeled vertices; no recursion. */
function biconnectedPieces(first: number, { start, edge, other }: Adjacency, peeled: Uint8Array): number[][] {
  const depth = new Map<number, number>([[first, 0]]);
  const low = new Map<number, number>([[first, 0]]);
  const next = new Map<number, number>([[first, start[first]!]]);
  const path = [first];
  const viaEdge = [-1];
  const open: number[] = [];
  const pieces: number[][] = [];
  while (path.length > 0) {
    const v = path.at(-1)!;
    const i = next.get(v)!;
    if (i < start[v + 1]!) {
      next.set(v, i + 1);
      const w = other[i]!;
      if (peeled[w] || edge[i] === viaEdge.at(-1)) continue;
      const depthOfW = depth.get(w);
      if (depthOfW === undefined) {
        depth.set(w, path.length);
        low.set(w, path.length);
        next.set(w, start[w]!);
        path.push(w);
        viaEdge.push(edge[i]!);
        open.push(edge[i]!);
      } else if (depthOfW < depth.get(v)!) {
        open.push(edge[i]!);
        low.set(v, Math.min(low.get(v)!, depthOfW));
      }
      continue;
    }
    path.pop();
    const down = viaEdge.pop()!;
    const up = path.at(-1);
    if (up === undefined) break;
    low.set(up, Math.min(low.get(up)!, low.get(v)!));
    if (low.get(v)! >= depth.get(up)!) {
      const piece: number[] = [];
      let e: number;
      do {
        e = open.pop()!;
        piece.push(e);
      } while (e !== down);
      pieces.push(piece);
    }
  }
  return pieces;
}

function endsOf(edges: readonly number[], graph: CutGraph): number[] {
  const ends = new Set<number>();
  for (const e of edges) ends.add(graph.edgeA[e]!).add(graph.edgeB[e]!);
  return [...ends];
}
