import type { CutGraph } from './contract.ts';
import { DisjointSets } from './disjointSets.ts';
import { type LengthRange, unbeaten } from './fronts.ts';
import type { RingBlock } from './skeleton.ts';

/**
 * Exact programme for a ring block: its vertices are taken in one after another, and only the *frontier* is remembered,
 * the vertices that still have neighbours to come. A state says which frontier vertices share a section, how much each
 * of those open sections amounts to so far, and at what least cost. (Dynamic programming over connectivity states, as
 * for other problems on graphs of small width.) States that another of the same shape beats in everything are dropped;
 * so are states dearer than the cheapest by more than it costs to cut every edge still to come, and the root free.
 *
 * The work grows steeply with the width of the frontier, gently with the length of the block: rings with rings at their
 * sides, ladders and the like are quick; dense grids run out of work and are left to the caller.
 */

/** Steps left; shared by everything that works on one plan. */
export interface WorkBudget {
  left: number;
  /** Called now and then; may throw to give up. */
  readonly check: () => void;
}

export class OutOfWork extends Error {
  constructor() {
    super('The work allowed for an exact plan is used up.');
  }
}

interface Step {
  readonly vertex: number;
  /** Edges to frontier vertices, by their place in the frontier. */
  readonly links: readonly { readonly slot: number; readonly edge: number }[];
  /** Edges to vertices still to come. */
  readonly later: readonly number[];
  /** Places (the new vertex last) that stay in the frontier. */
  readonly stays: readonly number[];
  /** Vertices in the frontier before the step. */
  readonly frontier: readonly number[];
}

export interface BlockLayout {
  readonly graph: CutGraph;
  readonly block: RingBlock;
  readonly rootEdges: readonly number[];
  readonly steps: readonly Step[];
  /** Most vertices in the frontier. */
  readonly width: number;
}

/** Which choices make up a point of the block's front. */
export interface BlockChoices {
  /** Cost and amounts of the point. */
  readonly wanted: Float64Array;
  readonly vertexPoint: Map<number, number>;
  readonly cutEdges: number[];
}

/** Takes the vertex next that leaves the narrowest frontier. */
export function blockLayout(graph: CutGraph, block: RingBlock): BlockLayout {
  const edgesOf = new Map<number, number[]>();
  for (const edge of block.edges) {
    for (const end of [graph.edgeA[edge]!, graph.edgeB[edge]!]) {
      const list = edgesOf.get(end);
      if (list) list.push(edge);
      else edgesOf.set(end, [edge]);
    }
  }
  const waiting = new Map<number, number>();
  for (const [v, edges] of edgesOf) waiting.set(v, edges.length);
  const taken = new Set<number>();
  const steps: Step[] = [];
  let frontier: number[] = [];
  let width = 0;
  const near = new Set<number>();
  take(block.root);
  while (near.size > 0) take(narrowest());
  return { graph, block, rootEdges: edgesOf.get(block.root)!, steps, width };

  function otherEnd(edge: number, v: number): number {
    return graph.edgeA[edge] === v ? graph.edgeB[edge]! : graph.edgeA[edge]!;
  }

  function narrowest(): number {
    let best = -1;
    let bestGrowth = Number.POSITIVE_INFINITY;
    for (const v of near) {
      let growth = 1;
      let later = 0;
      for (const edge of edgesOf.get(v)!) {
        const w = otherEnd(edge, v);
        if (!taken.has(w)) later++;
        else if (waiting.get(w) === 1 && w !== block.root) growth--;
      }
      if (later === 0) growth--;
      if (growth < bestGrowth) {
        bestGrowth = growth;
        best = v;
      }
    }
    return best;
  }

  function take(v: number): void {
    const links: { slot: number; edge: number }[] = [];
    const later: number[] = [];
    taken.add(v);
    near.delete(v);
    for (const edge of edgesOf.get(v)!) {
      const w = otherEnd(edge, v);
      if (!taken.has(w)) {
        later.push(edge);
        near.add(w);
        continue;
      }
      links.push({ slot: frontier.indexOf(w), edge });
      waiting.set(w, waiting.get(w)! - 1);
      waiting.set(v, waiting.get(v)! - 1);
    }
    const all = [...frontier, v];
    const stays: number[] = [];
    for (let slot = 0; slot < all.length; slot++) {
      if (all[slot] === block.root || waiting.get(all[slot]!)! > 0) stays.push(slot);
    }
    steps.push({ vertex: v, links, later, stays, frontier });
    frontier = stays.map((slot) => all[slot]!);
    width = Math.max(width, frontier.length);
  }
}

/** States with the same frontier vertices together. A point is: cost, log entry, option, mask, amounts part by part. */
interface Shape {
  readonly labels: readonly number[];
  readonly parts: number;
  /** Pairs of parts that may never be joined, as `low * 64 + high`. */
  readonly apart: readonly number[];
  points: number[];
}

const HEAD = 4;

/**
 * The block's front at its root: cost, and what the block adds to the root's section (the root itself not counted).
 * Flat, one amount a limit after each cost. `window`: how far above the least cost the front has to reach.
 * With `choices` given, also how to make one of its points.
 */
export function blockFront(
  layout: BlockLayout,
  frontOf: (vertex: number) => Float64Array,
  weightOf: (vertex: number, amount: number) => number,
  limits: Float64Array,
  window: number,
  range: LengthRange,
  work: WorkBudget,
  choices?: BlockChoices,
): Float64Array {
  const { graph, block, steps } = layout;
  const amounts = limits.length;
  const rootWeight = Array.from({ length: amounts }, (_, d) => weightOf(block.root, d));
  const log: number[] = [];
  let crossing = 0;
  for (const edge of steps[0]!.later) crossing += graph.edgeCost[edge]!;
  let shapes = new Map<string, Shape>();
  shapes.set('', { labels: [0], parts: 1, apart: [], points: [0, -1, 0, 0, ...rootWeight] });

  for (let s = 1; s < steps.length; s++) {
    const step = steps[s]!;
    for (const { edge } of step.links) crossing -= graph.edgeCost[edge]!;
    for (const edge of step.later) crossing += graph.edgeCost[edge]!;
    const next = new Map<string, Shape>();
    const options = frontOf(step.vertex);
    for (const shape of shapes.values()) extend(shape, step, options, next);
    shapes = prune(next, crossing + window);
  }
  const last = [...shapes.values()][0]!;
  const stride = HEAD + amounts;
  const front = new Float64Array((last.points.length / stride) * (1 + amounts));
  for (let from = 0, to = 0; from < last.points.length; from += stride, to += 1 + amounts) {
    front[to] = last.points[from]!;
    for (let d = 0; d < amounts; d++) front[to + 1 + d] = last.points[from + HEAD + d]! - rootWeight[d]!;
  }
  if (choices) follow(last.points[1 + stride * findPoint(front, choices.wanted)]!, choices);
  return front;

  /** All ways of taking one vertex into the states of one shape. */
  function extend(shape: Shape, step: Step, options: Float64Array, next: Map<string, Shape>): void {
    const { labels, parts, points } = shape;
    const costTo = new Array<number>(parts).fill(0);
    const touched = new Array<boolean>(parts).fill(false);
    const barred = new Array<boolean>(parts).fill(false);
    for (const { slot, edge } of step.links) {
      const label = labels[slot]!;
      touched[label] = true;
      costTo[label]! += graph.edgeCost[edge]!;
      if (graph.mustCut[edge]) barred[label] = true;
    }
    const joinable: number[] = [];
    let partAll = 0;
    for (let label = 0; label < parts; label++) {
      if (!touched[label]) continue;
      partAll += costTo[label]!;
      if (!barred[label]) joinable.push(label);
    }
    const stride = HEAD + parts * amounts;
    const sum = new Array<number>(amounts);
    for (let subset = 0; subset < 1 << joinable.length; subset++) {
      const joins = joinable.filter((_, i) => subset & (1 << i));
      if (shape.apart.some((pair) => joins.includes(pair >> 6) && joins.includes(pair & 63))) continue;
      let cost = partAll;
      for (const label of joins) cost -= costTo[label]!;
      const target = shapeAfter(shape, step, joins, barred, next);
      let mask = 0;
      for (const label of joins) mask |= 1 << labels.indexOf(label);
      const optionStride = 1 + amounts;
      for (let p = 0; p < points.length; p += stride) {
        for (let o = 0, option = 0; o < options.length; o += optionStride, option++) {
          let fits = true;
          sum[0] = 0;
          for (let d = amounts - 1; d >= 0 && fits; d--) {
            let amount = options[o + 1 + d]!;
            for (const label of joins) amount += points[p + HEAD + label * amounts + d]!;
            sum[d] = amount;
            fits = amount <= limits[d]!;
          }
          if (!fits) {
            if (sum[0]! > limits[0]!) range.refused = Math.min(range.refused, sum[0]!);
            continue;
          }
          range.kept = Math.max(range.kept, sum[0]!);
          const out = target.shape.points;
          out.push(points[p]! + cost + options[o]!, points[p + 1]!, option, mask);
          for (const from of target.partFrom) {
            if (from < 0) for (let d = 0; d < amounts; d++) out.push(sum[d]!);
            else for (let d = 0; d < amounts; d++) out.push(points[p + HEAD + from * amounts + d]!);
          }
        }
      }
    }
  }

  /** The shape after a step that joins the new vertex to `joins`; `partFrom`: which old part each part is, -1: the new. */
  function shapeAfter(
    shape: Shape,
    step: Step,
    joins: readonly number[],
    barred: readonly boolean[],
    next: Map<string, Shape>,
  ): { shape: Shape; partFrom: number[] } {
    const { labels } = shape;
    const partFrom: number[] = [];
    const partOf = (old: number): number => (joins.includes(old) ? -1 : old);
    const newLabels = step.stays.map((slot) => {
      const from = slot < labels.length ? partOf(labels[slot]!) : -1;
      let label = partFrom.indexOf(from);
      if (label < 0) label = partFrom.push(from) - 1;
      return label;
    });
    const apart = new Set<number>();
    const bar = (a: number, b: number): void => {
      const i = partFrom.indexOf(a);
      const j = partFrom.indexOf(b);
      if (i >= 0 && j >= 0) apart.add(Math.min(i, j) * 64 + Math.max(i, j));
    };
    for (const pair of shape.apart) bar(partOf(pair >> 6), partOf(pair & 63));
    for (let label = 0; label < barred.length; label++) if (barred[label]) bar(-1, label);
    const pairs = [...apart].sort((a, b) => a - b);
    const key = `${newLabels.join()}|${pairs.join()}`;
    let found = next.get(key);
    if (!found) {
      found = { labels: newLabels, parts: partFrom.length, apart: pairs, points: [] };
      next.set(key, found);
    }
    return { shape: found, partFrom };
  }

  function prune(made: Map<string, Shape>, slack: number): Map<string, Shape> {
    let least = Number.POSITIVE_INFINITY;
    for (const { points, parts } of made.values()) {
      const stride = HEAD + parts * amounts;
      for (let p = 0; p < points.length; p += stride) if (points[p]! < least) least = points[p]!;
    }
    const below = least + slack;
    const kept = new Map<string, Shape>();
    for (const [key, shape] of made) {
      const stride = HEAD + shape.parts * amounts;
      const { points } = shape;
      let size = 0;
      for (let p = 0; p < points.length; p += stride) {
        if (points[p]! >= below) continue;
        if (size < p) for (let i = 0; i < stride; i++) points[size + i] = points[p + i]!;
        size += stride;
      }
      if (size === 0) continue;
      const best = unbeaten(points, size / stride, stride, HEAD);
      const survivors: number[] = [];
      for (const index of best) {
        const at = index * stride;
        let entry = -1;
        if (choices) {
          entry = log.length;
          log.push(points[at + 1]!, points[at + 2]!, points[at + 3]!);
        }
        survivors.push(points[at]!, entry, 0, 0);
        for (let i = HEAD; i < stride; i++) survivors.push(points[at + i]!);
      }
      work.left -= points.length + (size / stride) * Math.min(best.length, 64);
      shape.points = survivors;
      kept.set(key, shape);
    }
    if (work.left < 0) throw new OutOfWork();
    work.check();
    return kept;
  }

  /** Walks the log back from a final state and writes down what was chosen. */
  function follow(lastEntry: number, { vertexPoint, cutEdges }: BlockChoices): void {
    const place = new Map(steps.map((step, i) => [step.vertex, i]));
    const together = new DisjointSets(steps.length);
    for (let s = steps.length - 1, entry = lastEntry; s >= 1; s--) {
      const { vertex, frontier } = steps[s]!;
      vertexPoint.set(vertex, log[entry + 1]!);
      for (let slot = 0; slot < frontier.length; slot++) {
        if (log[entry + 2]! & (1 << slot)) together.join(s, place.get(frontier[slot]!)!);
      }
      entry = log[entry]!;
    }
    for (const edge of block.edges) {
      const a = place.get(graph.edgeA[edge]!)!;
      const b = place.get(graph.edgeB[edge]!)!;
      if (together.find(a) !== together.find(b)) cutEdges.push(edge);
    }
  }
}

function findPoint(front: Float64Array, wanted: Float64Array): number {
  const stride = wanted.length;
  for (let p = 0; p < front.length / stride; p++) {
    let d = 0;
    while (d < stride && front[p * stride + d] === wanted[d]) d++;
    if (d === stride) return p;
  }
  throw new Error('The plan can not be followed back: a point of a ring block has no origin.');
}
