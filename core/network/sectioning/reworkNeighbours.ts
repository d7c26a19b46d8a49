import type { Steps } from '../../model/steps.ts';
import { type Adjacency, adjacencyOf, subgraph } from './adjacency.ts';
import { CheapestCuts } from './cheapestCuts.ts';
import type { CutGraph } from './contract.ts';
import { costOf, partsWithout } from './cutCosts.ts';
import { buildSkeleton } from './skeleton.ts';
import type { Work } from './work.ts';

/** Steps that one small plan may take. */
const SMALL = 40_000;
/** Most vertices that are planned anew together. */
const LARGEST = 160;

/**
 * Makes a plan cheaper, a few sections at a time: two neighbouring sections (then three, then four) are thrown together and planned
 * anew, exactly, with everything around them left as it is, until nothing more is gained.
 */
export class NeighbourRework {
  /** Nothing more can be gained. */
  isDone = false;
  readonly #plan: Parts;

  /** Changes `cut` in place. */
  constructor(graph: CutGraph, cut: Uint8Array) {
    this.#plan = new Parts(graph, adjacencyOf(graph), cut);
  }

  get cut(): Uint8Array {
    return this.#plan.cut;
  }

  get cost(): number {
    return this.#plan.cost;
  }

  /** Goes on for at most `steps` of work; `gained` hears of each gain. */
  *run(steps: number, work: Work, gained: () => void): Steps<void> {
    if (this.isDone) return;
    const plan = this.#plan;
    const done = yield* work.attempt(steps, function* () {
      for (const count of [2, 3, 4]) while (yield* sweep(plan, count, work, gained));
      return true;
    });
    this.isDone = done === true;
  }
}

function* sweep(plan: Parts, count: number, work: Work, gained: () => void): Steps<boolean> {
  let better = false;
  for (const start of plan.parts()) {
    if (plan.isSettled(start, count)) continue;
    for (const group of plan.groupsAround(start, count)) {
      if (!(yield* rework(plan, group, work))) continue;
      better = true;
      gained();
    }
    plan.settle(start, count);
  }
  return better;
}

function* rework(plan: Parts, group: readonly number[], work: Work): Steps<boolean> {
  const vertices = plan.verticesOf(group);
  if (vertices.length === 0 || vertices.length > LARGEST) return false;
  work.charge(60 * vertices.length);
  const part = subgraph(plan.graph, plan.adjacency, vertices, plan.place);
  const before = plan.costWithin(part.edges);
  const cut = yield* work.attempt(SMALL, () => cheaper(part.graph, before, work));
  if (cut) plan.replace(group, vertices, part.edges, cut);
  return cut !== undefined;
}

/** The cheapest cuts, if they cost less than `cost`. */
function* cheaper(graph: CutGraph, cost: number, work: Work): Steps<Uint8Array | undefined> {
  const cuts = new CheapestCuts(graph, buildSkeleton(graph), work);
  let least = 0;
  for (let p = 0; p < cuts.pieceCount; p++) {
    const own = yield* cuts.cost(p, graph.limits[0]!);
    least += own;
  }
  if (least >= cost) return undefined;
  const cut = new Uint8Array(graph.edgeA.length);
  for (let p = 0; p < cuts.pieceCount; p++) yield* cuts.trace(p, cut);
  return cut;
}

/** A plan as sections that can be replaced. */
class Parts {
  readonly graph: CutGraph;
  readonly adjacency: Adjacency;
  readonly place: Int32Array;
  readonly cut: Uint8Array;
  cost: number;
  readonly #partOf: Int32Array;
  readonly #vertices: (number[] | undefined)[];
  /** By part: the number of sections it was last tried with, in vain. */
  readonly #tried: number[] = [];

  constructor(graph: CutGraph, adjacency: Adjacency, cut: Uint8Array) {
    this.graph = graph;
    this.adjacency = adjacency;
    this.place = new Int32Array(graph.vertexCount).fill(-1);
    this.cut = cut;
    const { setOf, count } = partsWithout(graph, cut).number();
    this.#partOf = setOf;
    const vertices: number[][] = Array.from({ length: count }, () => []);
    for (let v = 0; v < setOf.length; v++) vertices[setOf[v]!]!.push(v);
    this.#vertices = vertices;
    for (let e = 0; e < cut.length; e++) cut[e] = this.#isBetween(e) ? 1 : 0;
    this.cost = costOf(graph, cut);
  }

  costWithin(edges: readonly number[]): number {
    let cost = 0;
    for (const e of edges) if (this.cut[e]) cost += this.graph.edgeCost[e]!;
    return cost;
  }

  parts(): number[] {
    const parts: number[] = [];
    for (let p = 0; p < this.#vertices.length; p++) if (this.#vertices[p]) parts.push(p);
    return parts;
  }

  isSettled(part: number, count: number): boolean {
    return !this.#vertices[part] || (this.#tried[part] ?? 0) >= count;
  }

  settle(part: number, count: number): void {
    this.#tried[part] = count;
  }

  /** Each way of taking a section with others that hang together with it, so many in all. */
  groupsAround(part: number, count: number): number[][] {
    let groups = [[part]];
    for (let size = 2; size <= count; size++) {
      const larger = new Map<string, number[]>();
      for (const group of groups) {
        for (const next of this.#neighbours(group)) {
          const taken = [...group, next];
          const key = taken.toSorted((a, b) => a - b).join();
          if (!larger.has(key)) larger.set(key, taken);
        }
      }
      groups = [...larger.values()];
    }
    return groups;
  }

  /** None when one of the sections has been replaced meanwhile. */
  verticesOf(group: readonly number[]): number[] {
    const all: number[] = [];
    for (const part of group) {
      const vertices = this.#vertices[part];
      if (!vertices) return [];
      for (const v of vertices) all.push(v);
    }
    return all;
  }

  replace(group: readonly number[], vertices: readonly number[], edges: readonly number[], cut: Uint8Array): void {
    this.cost -= this.costWithin(edges);
    for (let i = 0; i < edges.length; i++) this.cut[edges[i]!] = cut[i]!;
    for (const part of group) {
      for (const near of this.#neighbours([part])) this.#tried[near] = 0;
      this.#vertices[part] = undefined;
    }
    for (const v of vertices) this.#partOf[v] = -1;
    for (const v of vertices) {
      if (this.#partOf[v]! >= 0) continue;
      const part = this.#vertices.length;
      const found = [v];
      this.#partOf[v] = part;
      for (const u of found) {
        for (let i = this.adjacency.start[u]!; i < this.adjacency.start[u + 1]!; i++) {
          const w = this.adjacency.other[i]!;
          if (this.cut[this.adjacency.edge[i]!] || this.#partOf[w]! >= 0) continue;
          this.#partOf[w] = part;
          found.push(w);
        }
      }
      this.#vertices.push(found);
    }
    for (const e of edges) this.cut[e] = this.#isBetween(e) ? 1 : 0;
    this.cost += this.costWithin(edges);
  }

  #isBetween(edge: number): boolean {
    return this.#partOf[this.graph.edgeA[edge]!] !== this.#partOf[this.graph.edgeB[edge]!];
  }

  #neighbours(parts: readonly number[]): Set<number> {
    const near = new Set<number>();
    for (const part of parts) {
      for (const v of this.#vertices[part] ?? []) {
        for (let i = this.adjacency.start[v]!; i < this.adjacency.start[v + 1]!; i++) {
          const other = this.#partOf[this.adjacency.other[i]!]!;
          if (!parts.includes(other)) near.add(other);
        }
      }
    }
    return near;
  }
}
