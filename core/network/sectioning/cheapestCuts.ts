import type { Steps } from '../../model/steps.ts';
import { type Adjacency, adjacencyOf, type Subgraph, subgraph } from './adjacency.ts';
import type { CutGraph } from './contract.ts';
import { Front, type LengthRange, mergeShifted, unbeaten } from './fronts.ts';
import type { BlockChoices } from './ringFront.ts';
import { RingPart, type RingQuestion } from './ringPart.ts';
import type { RingBlock, Skeleton } from './skeleton.ts';
import { HardBlock, type Work } from './work.ts';

export interface CheapestCutsOptions {
  /** What it costs to free the root of a piece of what is outside the graph (default 0). */
  readonly rootFreeing?: (vertex: number) => number;
  /** Work that one ring block may take each time (default: all there is). */
  readonly blockSteps?: number;
}

/** What a vertex counts towards the next pause; nothing is charged for it. */
const STEPS_A_NODE = 10;

/** A ring block with numbers of its own. */
interface LocalBlock {
  readonly subgraph: Subgraph;
  readonly root: number;
  readonly part: RingPart;
}

/**
 * Exact dynamic programme for the cheapest cuts of one connected piece after another.
 *
 * Every node of the skeleton gets a front (see fronts.ts) of the part of the network that hangs from it, in costs above
 * the least cost of that part. A front only needs costs below "the least, plus parting the node from its parent": from
 * there on, parting at least cost is as cheap and leaves nothing open. That keeps fronts a few points long, and the
 * whole programme near linear on trees. Ring blocks have their own programme (ringFront.ts).
 *
 * When the length limit changes, only nodes whose own decisions could differ are computed again, and their ancestors
 * only as far as fronts really change: each node keeps the range of limits that would have led it to the same front.
 */
export class CheapestCuts {
  readonly #graph: CutGraph;
  readonly #skeleton: Skeleton;
  readonly #amounts: number;
  readonly #stride: number;
  readonly #childStart: Int32Array;
  readonly #children: Int32Array;
  readonly #cutCost: Float64Array;
  readonly #joinable: Uint8Array;
  /** How far above the least cost a node's front reaches. */
  readonly #window: Float64Array;
  /** What it costs to add nothing from a node to its parent, above its least. */
  readonly #freeing: Float64Array;
  readonly #blocks: LocalBlock[] = [];
  readonly #work: Work;
  readonly #options: CheapestCutsOptions;

  #limits: Float64Array;
  #arena: Float64Array;
  #arenaEnd = 0;
  readonly #frontAt: Int32Array;
  readonly #frontSize: Int32Array;
  readonly #frontRoom: Int32Array;
  readonly #least: Float64Array;
  readonly #kept: Float64Array;
  readonly #refused: Float64Array;
  readonly #stale: Uint8Array;
  /** 1 where a weight follows the limit, being over it. */
  readonly #bound: Uint8Array;
  readonly #pieceCost: Float64Array;

  /** During one vertex: the window, and what freeing it of the children still to come would cost. */
  #laterCuts = 0;
  #open: Front;
  #next: Front;
  #spare: Front;
  readonly #range: LengthRange = { kept: 0, refused: 0 };

  constructor(graph: CutGraph, skeleton: Skeleton, work: Work, options: CheapestCutsOptions = {}) {
    const { nodeCount } = skeleton;
    this.#graph = graph;
    this.#skeleton = skeleton;
    this.#work = work;
    this.#options = options;
    this.#amounts = graph.limits.length;
    this.#stride = 1 + this.#amounts;
    this.#limits = graph.limits.slice();
    this.#open = new Front(this.#stride);
    this.#next = new Front(this.#stride);
    this.#spare = new Front(this.#stride);
    this.#childStart = new Int32Array(nodeCount + 1);
    this.#children = listChildren(skeleton, this.#childStart);
    this.#cutCost = new Float64Array(nodeCount);
    this.#joinable = new Uint8Array(nodeCount).fill(1);
    this.#window = new Float64Array(nodeCount);
    this.#freeing = new Float64Array(nodeCount);
    this.#bound = new Uint8Array(nodeCount);
    this.#arena = new Float64Array(4 * this.#stride * nodeCount);
    this.#frontAt = new Int32Array(nodeCount);
    this.#frontSize = new Int32Array(nodeCount);
    this.#frontRoom = new Int32Array(nodeCount);
    this.#least = new Float64Array(nodeCount);
    this.#kept = new Float64Array(nodeCount);
    this.#refused = new Float64Array(nodeCount);
    this.#stale = new Uint8Array(nodeCount).fill(1);
    this.#pieceCost = new Float64Array(skeleton.pieceStart.length - 1);
    this.#bound.set(graph.exempt);
    const adjacency = skeleton.blocks.length > 0 ? adjacencyOf(graph) : undefined;
    const place = new Int32Array(adjacency ? graph.vertexCount : 0).fill(-1);
    for (let b = 0; b < skeleton.blocks.length; b++) {
      const block = skeleton.blocks[b]!;
      this.#blocks.push(localBlock(graph, adjacency!, block, place, work));
      this.#bound[graph.vertexCount + b] = graph.exempt[block.root]!;
    }
    this.#readCosts();
  }

  get pieceCount(): number {
    return this.#pieceCost.length;
  }

  /** How wide the frontier of each ring block gets, and how many states are to be expected there. */
  blockDifficulty(): { width: number; burden: number }[] {
    return this.#blocks.map(({ part: { layout } }) => ({ width: layout.width, burden: layout.burden }));
  }

  /**
   * Least cost of a piece with no section longer than `maxLength` (units of the graph).
   * `maxLength` is at least every vertex that is not exempt. @throws OutOfWork when the budget runs out in a ring block.
   */
  *cost(piece: number, maxLength: number): Steps<number> {
    const { vertexCount } = this.#graph;
    const { order, pieceStart, parent } = this.#skeleton;
    this.#limits[0] = maxLength;
    let cost = this.#pieceCost[piece]!;
    for (let i = pieceStart[piece]!; i < pieceStart[piece + 1]!; i++) {
      const node = order[i]!;
      if (this.#work.isPauseDue(STEPS_A_NODE)) yield;
      if (
        this.#stale[node] === 0 &&
        this.#kept[node]! <= maxLength &&
        this.#refused[node]! > maxLength &&
        this.#bound[node] === 0
      )
        continue;
      cost -= this.#least[node]!;
      const changed = node < vertexCount ? this.#evaluateVertex(node) : yield* this.#evaluateBlock(node);
      cost += this.#least[node]!;
      this.#stale[node] = 0;
      if (changed && parent[node]! >= 0) this.#stale[parent[node]!] = 1;
    }
    this.#pieceCost[piece] = cost;
    return cost;
  }

  /**
   * The limits around the last one of a piece that lead to the very same decisions: from `kept` up to, not including,
   * `refused`.
   */
  sameDecisions(piece: number): LengthRange {
    const { order, pieceStart } = this.#skeleton;
    const range = { kept: 0, refused: Number.POSITIVE_INFINITY };
    for (let i = pieceStart[piece]!; i < pieceStart[piece + 1]!; i++) {
      const node = order[i]!;
      if (this.#kept[node]! > range.kept) range.kept = this.#kept[node]!;
      if (this.#refused[node]! < range.refused) range.refused = this.#refused[node]!;
    }
    return range;
  }

  /**
   * Marks in `cut` the edges of the piece that a cheapest plan for the last limit cuts; or, with `rootPoint`, a plan for
   * that point of the front of the piece's root.
   */
  *trace(piece: number, cut: Uint8Array, rootPoint = 0): Steps<void> {
    const { order, pieceStart, parentEdge, blocks } = this.#skeleton;
    const vertexCount = this.#graph.vertexCount;
    const target = new Map<number, number>([[order[pieceStart[piece + 1]! - 1]!, rootPoint]]);
    for (let i = pieceStart[piece + 1]! - 1; i >= pieceStart[piece]!; i--) {
      const node = order[i]!;
      if (this.#work.isPauseDue(STEPS_A_NODE)) yield;
      const point = target.get(node) ?? 0;
      target.delete(node);
      if (node < vertexCount) {
        this.#traceVertex(node, point, (child, childPoint) => {
          if (childPoint >= 0) target.set(child, childPoint);
          else cut[parentEdge[child]!] = 1;
        });
      } else yield* this.#traceBlock(node, blocks[node - vertexCount]!, point, target, cut);
    }
  }

  /** The front of a node as last computed: costs above `least`. */
  front(node: number): Float64Array {
    return this.#frontOf(node);
  }

  #evaluateVertex(vertex: number): boolean {
    this.#range.kept = 0;
    this.#range.refused = Number.POSITIVE_INFINITY;
    this.#startVertex(vertex);
    for (let i = this.#childStart[vertex]!; i < this.#childStart[vertex + 1]!; i++) this.#addChild(this.#children[i]!);
    return this.#keep(vertex);
  }

  *#evaluateBlock(node: number): Steps<boolean> {
    this.#range.kept = 0;
    this.#range.refused = Number.POSITIVE_INFINITY;
    const front = yield* this.#blockFront(node, this.#range);
    this.#open.size = 0;
    this.#open.reserve(front.length / this.#stride);
    this.#open.values.set(front);
    this.#open.size = front.length / this.#stride;
    return this.#keep(node);
  }

  #keep(node: number): boolean {
    this.#kept[node] = this.#range.kept;
    this.#refused[node] = this.#range.refused;
    return this.#store(node);
  }

  *#blockFront(node: number, range: LengthRange, choices?: BlockChoices): Steps<Float64Array> {
    const block = node - this.#graph.vertexCount;
    const { part, root, subgraph } = this.#blocks[block]!;
    const rootSeed = new Float64Array(this.#stride);
    for (let d = 0; d < this.#amounts; d++) {
      // A vertex that is over a limit by itself counts as exactly at it.
      rootSeed[1 + d] = Math.min(subgraph.graph.weights[root * this.#amounts + d]!, this.#limits[d]!);
    }
    const question: RingQuestion = {
      seedOf: (v) => (v === root ? rootSeed : this.#frontOf(subgraph.vertices[v]!)),
      limits: this.#limits,
    };
    const steps = this.#options.blockSteps ?? this.#work.left;
    const front = yield* this.#work.attempt(steps, () => part.front(question, this.#window[node]!, range, choices));
    if (!front) throw new HardBlock(subgraph.edges[0]!);
    return front;
  }

  readonly #frontOf = (node: number): Float64Array => {
    const at = this.#frontAt[node]!;
    return this.#arena.subarray(at, at + this.#frontSize[node]! * this.#stride);
  };

  #startVertex(vertex: number): void {
    const { weights, exempt } = this.#graph;
    const { values } = this.#open;
    values[0] = 0;
    for (let d = 0; d < this.#amounts; d++) {
      const weight = weights[vertex * this.#amounts + d]!;
      values[1 + d] = exempt[vertex] ? Math.min(weight, this.#limits[d]!) : weight;
    }
    this.#open.size = 1;
    this.#range.kept = values[1]!;
    this.#laterCuts = this.#window[vertex]!;
    for (let i = this.#childStart[vertex]!; i < this.#childStart[vertex + 1]!; i++)
      this.#laterCuts += this.#freeing[this.#children[i]!]!;
  }

  #addChild(child: number): void {
    if (this.#amounts === 1) this.#addChildByLength(child);
    else this.#addChildByAll(child);
    const swap = this.#open;
    this.#open = this.#next;
    this.#next = swap;
    // Dearer than the cheapest by all that could still be cut here: never needed.
    this.#laterCuts -= this.#freeing[child]!;
    const { values } = this.#open;
    const below = values[0]! + this.#laterCuts;
    while (values[(this.#open.size - 1) * this.#stride]! >= below) this.#open.size--;
  }

  #addChildByLength(child: number): void {
    const cutCost = this.#cutCost[child]!;
    const from = this.#frontAt[child]!;
    this.#next.size = 0;
    if (this.#joinable[child]) {
      for (let p = 0; p < this.#frontSize[child]!; p++) {
        this.#mergeIntoNext(this.#arena[from + 2 * p]!, this.#arena[from + 2 * p + 1]!);
      }
    }
    if (cutCost < Number.POSITIVE_INFINITY) this.#mergeIntoNext(cutCost, 0);
  }

  #mergeIntoNext(cost: number, length: number): void {
    mergeShifted(this.#next, this.#open, cost, length, this.#limits[0]!, this.#range, this.#spare);
    const swap = this.#next;
    this.#next = this.#spare;
    this.#spare = swap;
  }

  #addChildByAll(child: number): void {
    const stride = this.#stride;
    const open = this.#open;
    const all = this.#spare;
    all.size = 0;
    const options = this.#additions(child);
    all.reserve((open.size * options.length) / stride);
    for (let o = 0; o < options.length; o += stride) {
      for (let p = 0; p < open.size; p++) {
        const at = all.size * stride;
        all.values[at] = open.values[p * stride]! + options[o]!;
        let fits = true;
        for (let d = this.#amounts; d >= 1 && fits; d--) {
          const amount = open.values[p * stride + d]! + options[o + d]!;
          all.values[at + d] = amount;
          fits = amount <= this.#limits[d - 1]!;
          if (d !== 1) continue;
          if (fits) this.#range.kept = Math.max(this.#range.kept, amount);
          else this.#range.refused = Math.min(this.#range.refused, amount);
        }
        if (fits) all.size++;
      }
    }
    const kept = unbeaten(all.values, all.size, stride, 1);
    this.#next.size = 0;
    this.#next.reserve(kept.length);
    for (const point of kept) {
      this.#next.values.set(all.values.subarray(point * stride, (point + 1) * stride), this.#next.size++ * stride);
    }
  }

  /** What a child may add: each point of its front, joined; or nothing, for the cost of parting it. */
  #additions(child: number): Float64Array {
    const front = this.#joinable[child] ? this.#frontOf(child) : new Float64Array(0);
    const cutCost = this.#cutCost[child]!;
    if (cutCost === Number.POSITIVE_INFINITY) return front;
    const options = new Float64Array(front.length + this.#stride);
    options.set(front);
    options[front.length] = cutCost;
    return options;
  }

  /** Keeps the open front as the node's, in costs above its least; tells whether that differs from what it had. */
  #store(node: number): boolean {
    const stride = this.#stride;
    const { values } = this.#open;
    const least = values[0]!;
    const below = least + this.#window[node]!;
    let size = 0;
    while (size < this.#open.size && values[size * stride]! < below) size++;
    let changed = size !== this.#frontSize[node];
    if (size > this.#frontRoom[node]!) this.#makeRoom(node, size);
    const at = this.#frontAt[node]!;
    for (let i = 0; i < size * stride; i++) {
      const value = i % stride === 0 ? values[i]! - least : values[i]!;
      if (this.#arena[at + i] !== value) {
        this.#arena[at + i] = value;
        changed = true;
      }
    }
    this.#frontSize[node] = size;
    this.#least[node] = least;
    return changed;
  }

  #makeRoom(node: number, size: number): void {
    const room = size <= 2 ? 2 : size + (size >> 1);
    if (this.#arenaEnd + room * this.#stride > this.#arena.length) {
      const grown = new Float64Array(2 * this.#arena.length + room * this.#stride);
      grown.set(this.#arena);
      this.#arena = grown;
    }
    this.#frontAt[node] = this.#arenaEnd;
    this.#frontRoom[node] = room;
    this.#arenaEnd += room * this.#stride;
  }

  /** Finds, child by child from the last, which choices made up a point of a vertex's front (costs are whole). */
  #traceVertex(vertex: number, point: number, choose: (child: number, childPoint: number) => void): void {
    const first = this.#childStart[vertex]!;
    const end = this.#childStart[vertex + 1]!;
    if (first === end) return;
    const stride = this.#stride;
    this.#startVertex(vertex);
    const steps: Float64Array[] = [];
    for (let i = first; i < end; i++) {
      steps.push(this.#open.values.slice(0, this.#open.size * stride));
      this.#addChild(this.#children[i]!);
    }
    const wanted = this.#frontOf(vertex).slice(point * stride, (point + 1) * stride);
    wanted[0]! += this.#least[vertex]!;
    for (let i = end - 1; i >= first; i--) {
      const child = this.#children[i]!;
      const before = steps[i - first]!;
      const options = this.#additions(child);
      const joinedCount = this.#joinable[child] ? this.#frontSize[child]! : 0;
      const [option, from] = findSum(before, options, wanted, stride);
      choose(child, option < joinedCount ? option : -1);
      wanted.set(before.subarray(from * stride, (from + 1) * stride));
    }
  }

  *#traceBlock(
    node: number,
    block: RingBlock,
    point: number,
    target: Map<number, number>,
    cut: Uint8Array,
  ): Steps<void> {
    const wanted = this.#frontOf(node).slice(point * this.#stride, (point + 1) * this.#stride);
    wanted[0]! += this.#least[node]!;
    const range = { kept: 0, refused: Number.POSITIVE_INFINITY };
    const choices: BlockChoices = { wanted, vertexPoint: new Map(), cutEdges: [] };
    yield* this.#blockFront(node, range, choices);
    const { edges, vertices } = this.#blocks[node - this.#graph.vertexCount]!.subgraph;
    for (const edge of choices.cutEdges) cut[edges[edge]!] = 1;
    for (const [v, vertexPoint] of choices.vertexPoint) {
      if (vertices[v] !== block.root) target.set(vertices[v]!, vertexPoint);
    }
  }

  #readCosts(): void {
    const { parent, parentEdge, blocks, nodeCount } = this.#skeleton;
    const { vertexCount, edgeCost, mustCut, edgeA, edgeB } = this.#graph;
    this.#freeing.fill(0);
    this.#cutCost.fill(Number.POSITIVE_INFINITY, vertexCount);
    for (let v = 0; v < vertexCount; v++) {
      const edge = parentEdge[v]!;
      if (edge < 0) continue;
      this.#cutCost[v] = edgeCost[edge]!;
      this.#joinable[v] = mustCut[edge] ? 0 : 1;
      this.#freeing[v] = edgeCost[edge]!;
    }
    for (let b = 0; b < blocks.length; b++) {
      const { root, edges } = blocks[b]!;
      for (const edge of edges) {
        for (const end of [edgeA[edge]!, edgeB[edge]!]) {
          this.#freeing[end === root ? vertexCount + b : end]! += edgeCost[edge]!;
        }
      }
    }
    for (let node = 0; node < nodeCount; node++) {
      // A block's front has to hold the point that frees its root; a vertex is freed by cutting it, which costs the same.
      const freed = node < vertexCount ? 0 : 1;
      if (parent[node]! < 0) this.#freeing[node] = this.#options.rootFreeing?.(node) ?? 0;
      this.#window[node] = Math.max(1, this.#freeing[node]! + freed);
    }
  }
}

function localBlock(
  graph: CutGraph,
  adjacency: Adjacency,
  { root, vertices, edges }: RingBlock,
  place: Int32Array,
  work: Work,
): LocalBlock {
  const own = new Set(edges);
  const part = subgraph(graph, adjacency, [root, ...vertices], place, (edge) => own.has(edge));
  return { subgraph: part, root: 0, part: new RingPart(part.graph, 0, work) };
}

function listChildren({ nodeCount, parent }: Skeleton, start: Int32Array): Int32Array {
  for (let node = 0; node < nodeCount; node++) if (parent[node]! >= 0) start[parent[node]! + 1]!++;
  for (let node = 0; node < nodeCount; node++) start[node + 1]! += start[node]!;
  const next = start.slice(0, nodeCount);
  const children = new Int32Array(start[nodeCount]!);
  for (let node = 0; node < nodeCount; node++) if (parent[node]! >= 0) children[next[parent[node]!]!++] = node;
  return children;
}

/** Which option added to which earlier point makes the wanted point. */
function findSum(before: Float64Array, options: Float64Array, wanted: Float64Array, stride: number): [number, number] {
  for (let o = options.length / stride - 1; o >= 0; o--) {
    for (let p = 0; p < before.length / stride; p++) {
      let d = 0;
      while (d < stride && options[o * stride + d]! + before[p * stride + d]! === wanted[d]) d++;
      if (d === stride) return [o, p];
    }
  }
  throw new Error('The plan can not be followed back: a point of a front has no origin.');
}
