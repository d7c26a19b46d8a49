import type { Steps } from '../../model/steps.ts';
import { type Adjacency, adjacencyOf, type Subgraph, subgraph } from './adjacency.ts';
import { CheapestCuts } from './cheapestCuts.ts';
import type { CutGraph } from './contract.ts';
import type { LengthRange } from './fronts.ts';
import type { BlockChoices } from './ringFront.ts';
import { RingPart, type RingQuestion } from './ringPart.ts';
import { buildSkeleton, type Skeleton } from './skeleton.ts';
import type { Work } from './work.ts';

/** Widest frontier that is worth a try. */
const WIDEST = 16;

/**
 * The tangled middle of a connected network: its hard ring blocks and what lies between them. All the rest hangs from
 * the core's vertices and is planned exactly by itself; the core sees of it one front a vertex.
 */
export class RingCore {
  readonly #part: RingPart;
  readonly #limits: Float64Array;
  readonly #whole: Subgraph;
  readonly #hanging: CheapestCuts;
  readonly #pieceOf: Int32Array;
  readonly #edgeCount: number;
  #seeds: Float64Array[] = [];
  #base = 0;

  /** `hard` tells which blocks of the skeleton belong to the core. */
  constructor(whole: CutGraph, skeleton: Skeleton, hard: readonly boolean[], work: Work, blockSteps: number) {
    this.#edgeCount = whole.edgeA.length;
    const adjacency = adjacencyOf(whole);
    const { vertices, inCore } = coreEdges(whole, skeleton, hard);
    const place = new Int32Array(whole.vertexCount).fill(-1);
    this.#whole = subgraph(whole, adjacency, vertices, place, (edge) => inCore[edge] === 1);
    this.#part = new RingPart(this.#whole.graph, -1, work);
    this.#limits = whole.limits.slice();
    const roots = new Uint8Array(whole.vertexCount);
    for (const v of vertices) roots[v] = 1;
    const rest = buildSkeleton(whole, inCore, roots);
    this.#hanging = new CheapestCuts(whole, rest, work, {
      rootFreeing: (v) => costAt(v, whole, adjacency, inCore),
      blockSteps,
    });
    this.#pieceOf = new Int32Array(whole.vertexCount).fill(-1);
    for (let p = 0; p < this.#hanging.pieceCount; p++) this.#pieceOf[rest.order[rest.pieceStart[p + 1]! - 1]!] = p;
  }

  /** Whether the core is narrow enough to be searched. */
  get searchable(): boolean {
    return this.#part.layout.width <= WIDEST;
  }

  /** No plan of the whole costs less. @throws OutOfWork (a HardBlock) when a block outside the core is too much. */
  *bound(maxLength: number): Steps<number> {
    yield* this.#setLimit(maxLength);
    const range = { kept: 0, refused: Number.POSITIVE_INFINITY };
    return this.#base + (yield* this.#part.bound(this.#question(), range));
  }

  /**
   * The cheapest plan of the whole that costs at most `ceiling`, or undefined when there is none. `range` is told the
   * lengths that the limit was compared with. With at most `most` states kept after a step it proves nothing.
   * @throws OutOfWork
   */
  *within(
    ceiling: number,
    maxLength: number,
    range: LengthRange = { kept: 0, refused: Number.POSITIVE_INFINITY },
    most = Number.POSITIVE_INFINITY,
  ): Steps<{ cut: Uint8Array; cost: number } | undefined> {
    yield* this.#setLimit(maxLength);
    for (let p = 0; p < this.#hanging.pieceCount; p++) {
      const { kept, refused } = this.#hanging.sameDecisions(p);
      range.kept = Math.max(range.kept, kept);
      range.refused = Math.min(range.refused, refused);
    }
    const found = yield* this.#part.within(this.#question(), ceiling - this.#base, range, most);
    return found && { cost: this.#base + found.cost, cut: yield* this.#cutsOfWhole(found.choices) };
  }

  *#setLimit(maxLength: number): Steps<void> {
    this.#limits[0] = maxLength;
    this.#base = 0;
    for (let p = 0; p < this.#hanging.pieceCount; p++) {
      const cost = yield* this.#hanging.cost(p, maxLength);
      this.#base += cost;
    }
    this.#seeds = Array.from(this.#whole.vertices, (v) => this.#hanging.front(v).slice());
  }

  #question(): RingQuestion {
    return { seedOf: (v) => this.#seeds[v]!, limits: this.#limits };
  }

  *#cutsOfWhole({ cutEdges, vertexPoint }: BlockChoices): Steps<Uint8Array> {
    const { edges, vertices } = this.#whole;
    const cut = new Uint8Array(this.#edgeCount);
    for (const edge of cutEdges) cut[edges[edge]!] = 1;
    for (let v = 0; v < vertices.length; v++) {
      yield* this.#hanging.trace(this.#pieceOf[vertices[v]!]!, cut, vertexPoint.get(v)!);
    }
    return cut;
  }
}

/** Vertices and edges from the hard blocks up to the root of the skeleton. */
function coreEdges(
  graph: CutGraph,
  { parent, parentEdge, blocks, nodeCount, order }: Skeleton,
  hard: readonly boolean[],
): { vertices: number[]; inCore: Uint8Array } {
  const n = graph.vertexCount;
  const marked = new Uint8Array(nodeCount);
  for (let b = 0; b < blocks.length; b++) {
    if (!hard[b]) continue;
    for (let node = n + b; node >= 0 && !marked[node]; node = parent[node]!) marked[node] = 1;
  }
  const inCore = new Uint8Array(graph.edgeA.length);
  const isCore = new Uint8Array(n);
  for (const node of order) {
    if (!marked[node]) continue;
    if (node < n) {
      isCore[node] = 1;
      if (parentEdge[node]! >= 0) inCore[parentEdge[node]!] = 1;
      continue;
    }
    const { edges, vertices } = blocks[node - n]!;
    for (const edge of edges) inCore[edge] = 1;
    for (const v of vertices) isCore[v] = 1;
  }
  return { vertices: Array.from({ length: n }, (_, v) => v).filter((v) => isCore[v]), inCore };
}

function costAt(vertex: number, graph: CutGraph, { start, edge }: Adjacency, taken: Uint8Array): number {
  let cost = 0;
  for (let i = start[vertex]!; i < start[vertex + 1]!; i++) if (taken[edge[i]!]) cost += graph.edgeCost[edge[i]!]!;
  return cost;
}
