import type { CutGraph } from './contract.ts';

/** Edges at each vertex: `edge[i]` leads to `other[i]`, for i from `start[v]` up to, not including, `start[v + 1]`. */
export interface Adjacency {
  readonly start: Int32Array;
  readonly edge: Int32Array;
  readonly other: Int32Array;
}

/** `leftOut` marks edges to be treated as if they were not there. */
export function adjacencyOf(graph: CutGraph, leftOut?: Uint8Array): Adjacency {
  const { vertexCount, edgeA, edgeB } = graph;
  const start = new Int32Array(vertexCount + 1);
  for (let e = 0; e < edgeA.length; e++) {
    if (leftOut?.[e]) continue;
    start[edgeA[e]! + 1]!++;
    start[edgeB[e]! + 1]!++;
  }
  for (let v = 0; v < vertexCount; v++) start[v + 1]! += start[v]!;
  const next = start.slice(0, vertexCount);
  const edge = new Int32Array(start[vertexCount]!);
  const other = new Int32Array(start[vertexCount]!);
  for (let e = 0; e < edgeA.length; e++) {
    if (leftOut?.[e]) continue;
    const a = edgeA[e]!;
    const b = edgeB[e]!;
    edge[next[a]!] = e;
    other[next[a]!++] = b;
    edge[next[b]!] = e;
    other[next[b]!++] = a;
  }
  return { start, edge, other };
}

export function otherEnd(graph: CutGraph, edge: number, end: number): number {
  return graph.edgeA[edge] === end ? graph.edgeB[edge]! : graph.edgeA[edge]!;
}

/** A part of a graph with numbers of its own. */
export interface Subgraph {
  readonly graph: CutGraph;
  /** Vertices and edges of the whole, by their number in the part. */
  readonly vertices: ArrayLike<number>;
  readonly edges: readonly number[];
}

/**
 * The vertices given and the edges among them for which `takes` says yes.
 * `place` is scratch space: one number a vertex of the whole, -1 before and after.
 */
export function subgraph(
  whole: CutGraph,
  adjacency: Adjacency,
  vertices: ArrayLike<number>,
  place: Int32Array,
  takes: (edge: number) => boolean = () => true,
): Subgraph {
  const kinds = whole.limits.length;
  const weights = new Float64Array(vertices.length * kinds);
  const exempt = new Uint8Array(vertices.length);
  for (let i = 0; i < vertices.length; i++) {
    const v = vertices[i]!;
    place[v] = i;
    exempt[i] = whole.exempt[v]!;
    for (let d = 0; d < kinds; d++) weights[i * kinds + d] = whole.weights[v * kinds + d]!;
  }
  const edges: number[] = [];
  const ends: number[] = [];
  for (let i = 0; i < vertices.length; i++) {
    const v = vertices[i]!;
    for (let k = adjacency.start[v]!; k < adjacency.start[v + 1]!; k++) {
      const j = place[adjacency.other[k]!]!;
      if (j <= i || !takes(adjacency.edge[k]!)) continue;
      edges.push(adjacency.edge[k]!);
      ends.push(i, j);
    }
  }
  for (let i = 0; i < vertices.length; i++) place[vertices[i]!] = -1;
  const graph: CutGraph = {
    vertexCount: vertices.length,
    limits: whole.limits,
    weights,
    exempt,
    edgeA: Int32Array.from(edges, (_, e) => ends[2 * e]!),
    edgeB: Int32Array.from(edges, (_, e) => ends[2 * e + 1]!),
    edgeCost: Float64Array.from(edges, (e) => whole.edgeCost[e]!),
    mustCut: Uint8Array.from(edges, (e) => whole.mustCut[e]!),
  };
  return { graph, vertices, edges };
}
