import type { Steps } from '../../model/steps.ts';
import { DisjointSets } from './disjointSets.ts';
import type { FrontierLayout, Step } from './frontierLayout.ts';
import { type LengthRange, unbeaten } from './fronts.ts';
import { OutOfWork, type Work } from './work.ts';

/**
 * Programme for a ringed part: its vertices are taken in one after another, and only the *frontier* is remembered, the
 * vertices that still have neighbours to come. A state says which frontier vertices share a section, how much each of
 * those open sections amounts to so far, and at what least cost. (Dynamic programming over connectivity states, as for
 * other problems on graphs of small width.) Dropped are states that another of the same shape beats in everything;
 * states dearer than the cheapest by more than it costs to cut every edge still to come, and the root free; and states
 * that a guide shows can't end within a cost ceiling.
 *
 * The work grows steeply with the width of the frontier, gently with the length of the part.
 */

/** Which choices make up a point of the block's front. */
export interface BlockChoices {
  /** Cost and amounts of the point. */
  readonly wanted: Float64Array;
  readonly vertexPoint: Map<number, number>;
  readonly cutEdges: number[];
}

/** States with the same frontier vertices together. A point is: cost, log entry, option, mask, room, amounts by part. */
interface Shape {
  readonly labels: readonly number[];
  readonly parts: number;
  /** Pairs of parts that may never be joined, as `low * 64 + high`. */
  readonly apart: readonly number[];
  points: number[];
  /** What hangs from each part: see `Guide`. */
  readonly choices: ArrayLike<number>[];
}

const HEAD = 5;
/** The most numbers that the states of one step may take before the pruned ones are dropped: some 30 MB. */
const MOST_NUMBERS = 4e6;
/** Frontier places are bits of a number. */
const WIDEST = 30;

/** Turns away states that can't end within a cost ceiling. */
export interface Guide {
  readonly ceiling: number;
  /** Most states kept after a step, those with the most room under the ceiling first; what is found is then no proof. */
  readonly most: number;
  /** Least that all vertices after a step can still cost, by themselves. */
  readonly costAfter: Float64Array;
  /**
   * After a step, a section open at the given places of the frontier (a bit each): its choices about what hangs there,
   * as a front (added cost, added amounts), cheapest first.
   */
  choicesAt(step: number, slots: number): ArrayLike<number>;
}

export interface RingProblem {
  readonly layout: FrontierLayout;
  /** What each vertex brings along, as a front. For the root: its own amounts, at no cost. */
  readonly seedOf: (vertex: number) => ArrayLike<number>;
  readonly limits: Float64Array;
  /** How far above the least cost the front has to reach. */
  readonly window: number;
  readonly guide: Guide;
}

/**
 * The front of a ringed part: cost, and what it adds to the section of its root (the root itself not counted; zeros when
 * it has no root). Flat, one amount a limit after each cost; empty when the guide turned every state away.
 * `range` is told which lengths the limit was compared with. With `choices`, also how to make one of the points.
 */
export function* ringFront(
  problem: RingProblem,
  range: LengthRange,
  work: Work,
  choices?: BlockChoices | 'cheapest',
): Steps<{ front: Float64Array; choices: BlockChoices | undefined }> {
  const { layout, seedOf, limits, window, guide } = problem;
  const { graph, root, steps } = layout;
  const amounts = limits.length;
  if (layout.width > WIDEST) throw new OutOfWork();
  const optionStride = 1 + amounts;
  const log = new ChoiceLog();
  let crossing = 0;
  /** Numbers that the step under way has made. */
  let numbersMade = 0;
  let shapes = new Map<string, Shape>();
  shapes.set('', { labels: [], parts: 0, apart: [], points: [0, -1, 0, 0, 0], choices: [] });
  for (let s = 0; s < steps.length && shapes.size > 0; s++) {
    const step = steps[s]!;
    for (const { edge } of step.links) crossing -= graph.edgeCost[edge]!;
    for (const edge of step.later) crossing += graph.edgeCost[edge]!;
    const next = new Map<string, Shape>();
    numbersMade = 0;
    const options = seedOf(step.vertex);
    for (const shape of shapes.values()) yield* extend(shape, s, options, next);
    shapes = yield* prune(next, crossing + window);
    thin(shapes, guide.most);
  }
  const last = shapes.values().next().value;
  if (!last) return { front: new Float64Array(0), choices: undefined };
  const stride = HEAD + last.parts * amounts;
  const rootSeed = root < 0 ? undefined : seedOf(root);
  const front = new Float64Array((last.points.length / stride) * optionStride);
  for (let from = 0, to = 0; from < last.points.length; from += stride, to += optionStride) {
    front[to] = last.points[from]!;
    if (rootSeed)
      for (let d = 0; d < amounts; d++) front[to + 1 + d] = last.points[from + HEAD + d]! - rootSeed[1 + d]!;
  }
  if (!choices) return { front, choices: undefined };
  const made: BlockChoices =
    choices === 'cheapest' ? { wanted: front.slice(0, optionStride), vertexPoint: new Map(), cutEdges: [] } : choices;
  follow(last.points[1 + stride * findPoint(front, made.wanted)]!, made);
  return { front, choices: made };

  /** All ways of taking one vertex into the states of one shape. */
  function* extend(shape: Shape, s: number, options: ArrayLike<number>, next: Map<string, Shape>): Steps<void> {
    const { labels, parts, points } = shape;
    const step = steps[s]!;
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
    const sum = new Float64Array(amounts);
    for (let subset = 0; subset < 1 << joinable.length; subset++) {
      if (work.isPauseDue((points.length / stride) * (options.length / optionStride))) yield;
      const joins = joinable.filter((_, i) => subset & (1 << i));
      if (shape.apart.some((pair) => joins.includes(pair >> 6) && joins.includes(pair & 63))) continue;
      let cost = partAll;
      for (const label of joins) cost -= costTo[label]!;
      const { shape: target, partFrom } = shapeAfter(shape, s, joins, barred, next);
      let mask = 0;
      for (const label of joins) mask |= 1 << labels.indexOf(label);
      const out = target.points;
      const before = out.length;
      for (let p = 0; p < points.length; p += stride) {
        for (let o = 0, option = 0; o < options.length; o += optionStride, option++) {
          const total = points[p]! + cost + options[o]!;
          let room = guide.ceiling - total - guide.costAfter[s]!;
          if (room < 0) break;
          if (!fits(p, joins, options, o)) continue;
          room = roomLeft(target, partFrom, p, room);
          if (room < 0) continue;
          out.push(total, points[p + 1]!, option, mask, room);
          for (const from of partFrom) {
            if (from < 0) for (let d = 0; d < amounts; d++) out.push(sum[d]!);
            else for (let d = 0; d < amounts; d++) out.push(points[p + HEAD + from * amounts + d]!);
          }
        }
      }
      numbersMade += out.length - before;
      if (numbersMade > MOST_NUMBERS) throw new OutOfWork();
    }

    /** Adds up the joined sections and the option into `sum`; tells whether that keeps every limit. */
    function fits(p: number, joins: readonly number[], options: ArrayLike<number>, o: number): boolean {
      for (let d = amounts - 1; d >= 0; d--) {
        let amount = options[o + 1 + d]!;
        for (const label of joins) amount += points[p + HEAD + label * amounts + d]!;
        sum[d] = amount;
        if (d === 0) return keepsLength(amount);
        if (amount > limits[d]!) return false;
      }
      return true;
    }

    /** What is left under the ceiling once every open section is brought to an end; less than 0 when there is too little. */
    function roomLeft(target: Shape, partFrom: readonly number[], p: number, room: number): number {
      let left = room;
      for (let part = 0; part < partFrom.length; part++) {
        const from = partFrom[part]!;
        const list = target.choices[part]!;
        let c = 0;
        for (; c < list.length; c += optionStride) {
          let d = amounts - 1;
          for (; d >= 0; d--) {
            const amount = from < 0 ? sum[d]! : points[p + HEAD + from * amounts + d]!;
            if (d === 0 ? !keepsLength(amount + list[c + 1]!) : amount + list[c + 1 + d]! > limits[d]!) break;
          }
          if (d < 0) break;
        }
        left -= c < list.length ? list[c]! : Number.POSITIVE_INFINITY;
        if (left < 0) return left;
      }
      return left;
    }
  }

  /** Whether a length keeps its limit; makes a note of it in `range`. */
  function keepsLength(length: number): boolean {
    if (length <= limits[0]!) {
      if (length > range.kept) range.kept = length;
      return true;
    }
    if (length < range.refused) range.refused = length;
    return false;
  }

  /** The shape after a step that joins the new vertex to `joins`; `partFrom`: which old part each part is, -1: the new. */
  function shapeAfter(
    shape: Shape,
    s: number,
    joins: readonly number[],
    barred: readonly boolean[],
    next: Map<string, Shape>,
  ): { shape: Shape; partFrom: number[] } {
    const { labels } = shape;
    const step: Step = steps[s]!;
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
      found = { labels: newLabels, parts: partFrom.length, apart: pairs, points: [], choices: [] };
      next.set(key, found);
      for (let part = 0; part < partFrom.length; part++) found.choices.push(guide.choicesAt(s, slotsOf(part)));
    }
    return { shape: found, partFrom };

    function slotsOf(part: number): number {
      let slots = 0;
      for (let slot = 0; slot < newLabels.length; slot++) if (newLabels[slot] === part) slots |= 1 << slot;
      return slots;
    }
  }

  function* prune(shapesMade: Map<string, Shape>, slack: number): Steps<Map<string, Shape>> {
    let least = Number.POSITIVE_INFINITY;
    for (const { points, parts } of shapesMade.values()) {
      const stride = HEAD + parts * amounts;
      for (let p = 0; p < points.length; p += stride) if (points[p]! < least) least = points[p]!;
    }
    const below = least + slack;
    const kept = new Map<string, Shape>();
    for (const [key, shape] of shapesMade) {
      if (work.isPauseDue()) yield;
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
          entry = log.add(points[at + 1]!, points[at + 2]!, points[at + 3]!);
        }
        survivors.push(points[at]!, entry, 0, 0, points[at + 4]!);
        for (let i = HEAD; i < stride; i++) survivors.push(points[at + i]!);
      }
      work.charge(points.length + (size / stride) * (1 + best.length / 200));
      shape.points = survivors;
      kept.set(key, shape);
    }
    return kept;
  }

  /** Leaves at most `most` states. */
  function thin(made: Map<string, Shape>, most: number): void {
    const rooms: number[] = [];
    for (const { points, parts } of made.values()) {
      for (let p = 4; p < points.length; p += HEAD + parts * amounts) rooms.push(points[p]!);
    }
    if (rooms.length <= most) return;
    const least = rooms.sort((a, b) => b - a)[most - 1]!;
    let ties = most - rooms.indexOf(least);
    for (const [key, shape] of made) {
      const stride = HEAD + shape.parts * amounts;
      const left: number[] = [];
      for (let p = 0; p < shape.points.length; p += stride) {
        const room = shape.points[p + 4]!;
        if (room < least || (room === least && ties-- <= 0)) continue;
        for (let i = p; i < p + stride; i++) left.push(shape.points[i]!);
      }
      shape.points = left;
      if (left.length === 0) made.delete(key);
    }
  }

  /** Walks the log back from a final state and writes down what was chosen. */
  function follow(lastEntry: number, { vertexPoint, cutEdges }: BlockChoices): void {
    const place = new Map(steps.map((step, i) => [step.vertex, i]));
    const together = new DisjointSets(steps.length);
    for (let s = steps.length - 1, entry = lastEntry; s >= 0; s--) {
      const { vertex, frontier } = steps[s]!;
      const [before, option, mask] = log.at(entry);
      vertexPoint.set(vertex, option);
      for (let slot = 0; slot < frontier.length; slot++) {
        if (mask & (1 << slot)) together.join(s, place.get(frontier[slot]!)!);
      }
      entry = before;
    }
    for (let edge = 0; edge < graph.edgeA.length; edge++) {
      const a = place.get(graph.edgeA[edge]!)!;
      const b = place.get(graph.edgeB[edge]!)!;
      if (together.find(a) !== together.find(b)) cutEdges.push(edge);
    }
  }
}

/** How each state came about, so that the way can be walked back: the state before, the option taken, the parts joined. */
class ChoiceLog {
  #entries = new Int32Array(3 * 1024);
  #length = 0;

  /** @throws OutOfWork when there are too many to remember. */
  add(before: number, option: number, mask: number): number {
    if (this.#length === this.#entries.length) {
      if (this.#length >= MOST_REMEMBERED) throw new OutOfWork();
      const grown = new Int32Array(2 * this.#length);
      grown.set(this.#entries);
      this.#entries = grown;
    }
    const entry = this.#length;
    this.#entries[entry] = before;
    this.#entries[entry + 1] = option;
    this.#entries[entry + 2] = mask;
    this.#length += 3;
    return entry;
  }

  at(entry: number): [before: number, option: number, mask: number] {
    return [this.#entries[entry]!, this.#entries[entry + 1]!, this.#entries[entry + 2]!];
  }
}

/** Numbers in a log of choices, at most: 100 MB. */
const MOST_REMEMBERED = 3 * 1024 * 2 ** 13;

function findPoint(front: Float64Array, wanted: Float64Array): number {
  const stride = wanted.length;
  for (let p = 0; p < front.length / stride; p++) {
    let d = 0;
    while (d < stride && front[p * stride + d] === wanted[d]) d++;
    if (d === stride) return p;
  }
  throw new Error('The plan can not be followed back: a point of a ring block has no origin.');
}
