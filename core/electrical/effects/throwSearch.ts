import type { Span } from '../circuit/circuit.ts';
import { lowestInSpan } from '../lowestInSpan.ts';
import type { PreparedVoltage } from '../preparedVoltage.ts';
import type { Factor } from '../solver/factor.ts';
import { readColumn } from '../solver/voltages.ts';
import { voltageAlongSpan } from '../voltageAlongSpan.ts';
import { conductingWalk } from './conductingWalk.ts';
import { type ReachChange, ThrownReach } from './thrownReach.ts';
import { type CircuitPlace, CLEARLY_LOWER, type PlaceVoltage } from './weakestPlace.ts';

/** What a circuit reads with one link thrown. */
export interface Thrown {
  readonly reach: ReachChange;
  /** Of what is reached; null where nothing is. */
  readonly weakest: PlaceVoltage | null;
  readonly sourceVoltageV: number;
  readonly sourceCurrentA: number;
  /** Volts at the places asked for, in their order. */
  readonly volts: readonly number[];
}

/** Rounding in a bound must not turn away the place that is looked for. */
const SLACK = 1 - 1e-9;

/**
 * The weakest place with one link thrown, without reading every node.
 *
 * A throw changes only the columns between the link and the energiser. Each part of the circuit that hangs on them (what
 * was eliminated into one column) stays as it is: its nodes read weighted means of the voltages that it hangs on. Kept
 * for each part are the least weight that any of its nodes gives to each of those, and the least sum of a node's
 * weights; so it is known how low a part can read at the least, and only parts that can hold the weakest place are
 * opened. What is read is read by the same sums in the same order as when every node is: to the last bit the same.
 */
export class ThrowSearch {
  readonly #prepared: PreparedVoltage;
  readonly #reach: ThrownReach;
  /** By column: its node. */
  readonly #nodeAt: Int32Array;
  /** The columns that hang on a column, and the runs in rings whose earlier end it is. */
  readonly #children: Groups;
  readonly #ringRuns: Groups;
  /** By column, of the part from it down: least weight by entry of the column, and least sum of weights. */
  readonly #leastWeight: Float64Array;
  readonly #leastSum: Float64Array;
  /** Between which of `ThrownReach`'s numbers its nodes lie; the other way round where none can ever be live. */
  readonly #firstNumber: Int32Array;
  readonly #lastNumber: Int32Array;
  /** The least share of the lower end's voltage that a run in rings can sag to; 0 where the part has no such run. */
  readonly #sag: Float64Array;
  readonly #volts: Float64Array;
  /** By column: the last throw in which it was read, and in which it differed. */
  readonly #readIn: Int32Array;
  readonly #changedIn: Int32Array;
  #round = 0;

  constructor(prepared: PreparedVoltage) {
    const { circuit, branches, plan } = prepared;
    const { nodeCount, positionOf, colStart, rowOf } = plan;
    this.#prepared = prepared;
    this.#reach = new ThrownReach(circuit, branches);
    this.#nodeAt = new Int32Array(nodeCount);
    for (let v = 0; v < nodeCount; v++) this.#nodeAt[positionOf[v]!] = v;
    this.#children = grouped(nodeCount, nodeCount, (j) =>
      colStart[j] === colStart[j + 1] ? -1 : rowOf[colStart[j]!]!,
    );
    const inRing = runsInRings(prepared);
    this.#ringRuns = grouped(nodeCount, circuit.spans.length, (i) => {
      const { from, to } = circuit.spans[i]!;
      return inRing(i) ? Math.min(positionOf[from]!, positionOf[to]!) : -1;
    });
    this.#leastWeight = new Float64Array(rowOf.length);
    this.#leastSum = new Float64Array(nodeCount);
    this.#firstNumber = new Int32Array(nodeCount);
    this.#lastNumber = new Int32Array(nodeCount);
    this.#sag = new Float64Array(nodeCount);
    this.#volts = new Float64Array(nodeCount);
    this.#readIn = new Int32Array(nodeCount);
    this.#changedIn = new Int32Array(nodeCount);
    for (let j = 0; j < nodeCount; j++) this.#describePart(j);
  }

  /** Null where the circuit has no answer with the link thrown. */
  throwLink(link: number, places: readonly CircuitPlace[] = []): Thrown | null {
    const { circuit, trying } = this.#prepared;
    const reach = this.#reach.change(link);
    const thrown = trying({ [reach.gains ? 'close' : 'open']: [link] }, (factor, columns, source) => {
      const { sourceVoltageV, sourceCurrentA } = source;
      this.#round++;
      const root = circuit.nodeCount - 1;
      const changed = columns.at(-1) === root ? columns : Int32Array.of(...columns, root);
      this.#volts[root] = sourceVoltageV;
      for (let c = changed.length - 2; c >= 0; c--) this.#readColumn(factor, changed[c]!);
      for (const j of changed) this.#readIn[j] = this.#changedIn[j] = this.#round;
      const lowestNode = this.#lowestNode(factor, changed, reach);
      const weakest = lowestNode && this.#lowestInRings(factor, changed, reach, lowestNode);
      const volts = places.map((place) => this.#voltsAt(factor, place));
      return { ok: true as const, reach, weakest, sourceVoltageV, sourceCurrentA, volts };
    });
    return thrown.ok ? thrown : null;
  }

  /** The lowest node, by number among equals. */
  #lowestNode(factor: Factor, changed: Int32Array, reach: ReachChange): PlaceVoltage | null {
    const { start, items } = this.#children;
    let node = -1;
    let volts = Number.POSITIVE_INFINITY;
    const look = (j: number): void => {
      const here = this.#volts[j]!;
      const v = this.#nodeAt[j]!;
      if (here > volts || (here === volts && v > node) || !this.#isReached(v, reach)) return;
      volts = here;
      node = v;
    };
    const waiting: number[] = [];
    let first = 0;
    let lowest = Number.POSITIVE_INFINITY;
    for (const j of changed) {
      look(j);
      for (let i = start[j]!; i < start[j + 1]!; i++) {
        const child = items[i]!;
        if (this.#changedIn[child] === this.#round || this.#isDead(child, reach)) continue;
        const bound = this.#leastVolts(child);
        if (bound < lowest) {
          lowest = bound;
          first = waiting.length;
        }
        waiting.push(child);
      }
    }
    // The most promising part is opened first: the last in the list.
    const last = waiting.length - 1;
    if (last > 0) [waiting[first], waiting[last]] = [waiting[last]!, waiting[first]!];
    for (let j = waiting.pop(); j !== undefined; j = waiting.pop()) {
      if (this.#isDead(j, reach) || this.#leastVolts(j) * SLACK > volts) continue;
      this.#readColumn(factor, j);
      look(j);
      for (let i = start[j]!; i < start[j + 1]!; i++) waiting.push(items[i]!);
    }
    return node < 0 ? null : { place: { on: 'node', node }, volts };
  }

  /** The lowest place inside a run where one reads lower than the lowest node, else that node. See `weakestPlace`. */
  #lowestInRings(factor: Factor, changed: Int32Array, reach: ReachChange, lowestNode: PlaceVoltage): PlaceVoltage {
    const { spans } = this.#prepared.circuit;
    const { colStart, rowOf, positionOf } = this.#prepared.plan;
    const below = lowestNode.volts * CLEARLY_LOWER;
    const lowestIn = (span: number) => {
      const { from, to } = spans[span]!;
      return lowestInSpan(spans[span]!, this.#volts[positionOf[from]!]!, this.#volts[positionOf[to]!]!);
    };
    const found: number[] = [];
    const look = (j: number): void => {
      for (let i = this.#ringRuns.start[j]!; i < this.#ringRuns.start[j + 1]!; i++) {
        const span = this.#ringRuns.items[i]!;
        const lowest = lowestIn(span);
        if (lowest && lowest.volts < below && this.#isReached(spans[span]!.from, reach)) found.push(span);
      }
    };
    const waiting: number[] = [];
    const openBelow = (j: number): void => {
      const { start, items } = this.#children;
      for (let i = start[j]!; i < start[j + 1]!; i++) {
        const child = items[i]!;
        if (this.#sag[child] === 0 || this.#changedIn[child] === this.#round || this.#isDead(child, reach)) continue;
        let least = this.#leastVolts(child);
        for (let t = colStart[child]!; t < colStart[child + 1]!; t++) least = Math.min(least, this.#volts[rowOf[t]!]!);
        if (least * this.#sag[child]! * SLACK > below) continue;
        this.#readColumn(factor, child);
        look(child);
        waiting.push(child);
      }
    };
    for (const j of changed) {
      look(j);
      openBelow(j);
    }
    for (let j = waiting.pop(); j !== undefined; j = waiting.pop()) openBelow(j);
    let weakest = lowestNode;
    for (const span of found.sort((a, b) => a - b)) {
      const { distanceM, volts } = lowestIn(span)!;
      if (volts < weakest.volts * CLEARLY_LOWER) weakest = { place: { on: 'span', span, distanceM }, volts };
    }
    return weakest;
  }

  #voltsAt(factor: Factor, place: CircuitPlace): number {
    const { circuit, plan } = this.#prepared;
    const nodeV = (node: number): number => {
      const unread: number[] = [];
      for (let j = plan.positionOf[node]!; this.#readIn[j] !== this.#round; ) {
        unread.push(j);
        if (plan.colStart[j] === plan.colStart[j + 1]) break;
        j = plan.rowOf[plan.colStart[j]!]!;
      }
      for (const j of unread.reverse()) this.#readColumn(factor, j);
      return this.#volts[plan.positionOf[node]!]!;
    };
    if (place.on === 'node') return nodeV(place.node);
    const span = circuit.spans[place.span]!;
    return voltageAlongSpan(span, nodeV(span.from), nodeV(span.to), place.distanceM);
  }

  #readColumn(factor: Factor, j: number): void {
    readColumn(this.#prepared.plan, factor, j, this.#volts);
    this.#readIn[j] = this.#round;
  }

  #isReached(node: number, reach: ReachChange): boolean {
    return this.#reach.isReached(this.#reach.numberOf(node), reach);
  }

  /** Whether nothing in the part has a way to the energiser. */
  #isDead(j: number, { first, end, gains }: ReachChange): boolean {
    const [from, to] = [this.#firstNumber[j]!, this.#lastNumber[j]!];
    if (from > to) return true;
    if (from >= first && to < end) return !gains;
    return from >= this.#reach.reachedCount && (!gains || to < first || from >= end);
  }

  /** No node of the part reads less; what it hangs on is read. */
  #leastVolts(j: number): number {
    const { colStart, rowOf } = this.#prepared.plan;
    const end = colStart[j + 1]!;
    let least = Number.POSITIVE_INFINITY;
    for (let t = colStart[j]!; t < end; t++) least = Math.min(least, this.#volts[rowOf[t]!]!);
    let bound = this.#leastSum[j]! * least;
    for (let t = colStart[j]!; t < end; t++) bound += this.#leastWeight[t]! * (this.#volts[rowOf[t]!]! - least);
    return bound;
  }

  /** What is kept of the part from a column down; the columns that hang on it are described already. */
  #describePart(j: number): void {
    const { plan, factor, circuit } = this.#prepared;
    const { colStart, rowOf } = plan;
    const { weight, entryS } = factor;
    const [begin, end] = [colStart[j]!, colStart[j + 1]!];
    let sum = 0;
    // A node that conducts to nothing later is dead as long as nothing below it is thrown: it doesn't count.
    let counts = false;
    for (let t = begin; t < end; t++) {
      sum += weight[t]!;
      counts ||= entryS[t]! > 0;
    }
    for (let t = begin; t < end; t++) this.#leastWeight[t] = counts ? weight[t]! : Number.POSITIVE_INFINITY;
    let leastSum = counts ? sum : Number.POSITIVE_INFINITY;
    const number = this.#reach.numberOf(this.#nodeAt[j]!);
    let [first, last] = counts ? [number, number] : [plan.nodeCount, -1];
    let sag = Number.POSITIVE_INFINITY;
    const [children, ringRuns] = [this.#children, this.#ringRuns];
    for (let i = ringRuns.start[j]!; i < ringRuns.start[j + 1]!; i++) {
      sag = Math.min(sag, sagOf(circuit.spans[ringRuns.items[i]!]!));
    }
    for (let i = children.start[j]!; i < children.start[j + 1]!; i++) {
      const child = children.items[i]!;
      if (this.#sag[child]! > 0) sag = Math.min(sag, this.#sag[child]!);
      const [from, to] = [colStart[child]!, colStart[child + 1]!];
      if (this.#firstNumber[child]! > this.#lastNumber[child]! || (to - from === 1 && !counts)) continue;
      // The child's rows are this column and some of this column's rows, both ascending.
      const through = this.#leastWeight[from]!;
      let u = from + 1;
      for (let t = begin; t < end; t++) {
        let least = through * weight[t]!;
        if (u < to && rowOf[u] === rowOf[t]) least += this.#leastWeight[u++]!;
        if (least < this.#leastWeight[t]!) this.#leastWeight[t] = least;
      }
      leastSum = Math.min(leastSum, this.#leastSum[child]! * Math.min(1, sum));
      first = Math.min(first, this.#firstNumber[child]!);
      last = Math.max(last, this.#lastNumber[child]!);
    }
    let sumOfLeast = 0;
    for (let t = begin; t < end; t++) sumOfLeast += this.#leastWeight[t]!;
    this.#leastSum[j] = Math.max(leastSum, sumOfLeast);
    this.#firstNumber[j] = first;
    this.#lastNumber[j] = last;
    this.#sag[j] = sag < Number.POSITIVE_INFINITY ? sag : 0;
  }
}

/** Runs that both ends of which can be fed with every link closed; elsewhere a run reads least at an end. */
function runsInRings({ circuit, branches }: PreparedVoltage): (span: number) => boolean {
  const { from, to } = branches;
  const { foundBy, onlyWay } = conductingWalk(circuit.nodeCount, branches, circuit.source.node, () => true);
  const hangs = (node: number, b: number): boolean => foundBy[node] === b && onlyWay[node] === 1;
  return (b) => !hangs(from[b]!, b) && !hangs(to[b]!, b);
}

/** What share of its lower end's voltage a run reads at the least, fed from both ends: see `lowestInSpan`. */
function sagOf({ lengthM, ohmPerKm, leakageOhmKm }: Span): number {
  return 1 / Math.cosh((Math.sqrt(ohmPerKm / leakageOhmKm) * (lengthM / 1000)) / 2);
}

/** Numbers in groups: group g's are `items[start[g]] .. items[start[g + 1] - 1]`, ascending. */
interface Groups {
  readonly start: Int32Array;
  readonly items: Int32Array;
}

/** `groupOf` says -1 of what is in no group. */
function grouped(groups: number, count: number, groupOf: (item: number) => number): Groups {
  const start = new Int32Array(groups + 1);
  const of = Int32Array.from({ length: count }, (_, i) => groupOf(i));
  for (const group of of) if (group >= 0) start[group + 1]!++;
  for (let g = 0; g < groups; g++) start[g + 1]! += start[g]!;
  const fill = start.slice(0, groups);
  const items = new Int32Array(start[groups]!);
  for (let i = 0; i < count; i++) if (of[i]! >= 0) items[fill[of[i]!]!++] = i;
  return { start, items };
}
