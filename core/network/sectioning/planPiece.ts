import type { Steps } from '../../model/steps.ts';
import { CheapestCuts } from './cheapestCuts.ts';
import type { CutGraph } from './contract.ts';
import { costOf, longestPart, partsWithout } from './cutCosts.ts';
import { greedyMerge } from './greedyMerge.ts';
import { NeighbourRework } from './reworkNeighbours.ts';
import { RingCore } from './ringCore.ts';
import { shortestLongest } from './shortestLongest.ts';
import { buildSkeleton, type Skeleton } from './skeleton.ts';
import { treePlan } from './treePlan.ts';
import { HardBlock, type Work } from './work.ts';

/** A plan for one connected network, in units of its graph. */
export interface PieceAnswer {
  readonly cut: Uint8Array;
  readonly cost: number;
  readonly lowerBound: number;
  readonly longestProven: boolean;
}

/** Work that one ring block may take before it counts as hard: at most this, or that share of what is left. */
const BLOCK_STEPS = 1_000_000;
const BLOCK_SHARE = 1 / 16;
/** Blocks with a wider frontier than this count as hard at once. */
const WIDE = 10;
/** How many times hard blocks are looked for; after that all ring blocks count as hard. */
const HARD_TRIES = 4;
/** How many states are kept when looking for plans without proof: for a first plan, then for cheaper ones. */
const FIRST_BEAM = 10;
const BEAMS = [60, 600];
/** In how many steps the bound is moved up when the proof does not succeed at once. */
const BOUND_STEPS = 8;
/** Steps for each section that reworking gets before a proof is tried: about as many as gain most. */
const QUICK_REWORK = 6000;

/**
 * Plans one connected network, better and better: each answer is at least as good as the one before (no dearer, its bound
 * no lower), until the plan is proven or the work allowed is used up.
 *
 * Trees are planned exactly, and networks whose ring blocks are each easy are, block by block (cheapestCuts.ts).
 * Otherwise the first plan is that of a spanning tree (treePlan.ts) or of merging greedily (greedyMerge.ts), and the
 * hard blocks are gathered into a core (ringCore.ts). The plan is made cheaper few sections at a time
 * (reworkNeighbours.ts) and by a search of the most promising states only; then the search is run in full for anything
 * cheaper, which proves the plan or finds the best. Where the work allowed is too little for that, the bound is moved up
 * as far as it reaches.
 */
export class PiecePlanning {
  readonly #graph: CutGraph;
  readonly #costStep: number;
  readonly #work: Work;
  readonly #skeleton: Skeleton | null;
  readonly #told: () => void;
  #cuts: CheapestCuts | undefined;
  #cut: Uint8Array;
  #cost = Number.POSITIVE_INFINITY;
  #lowerBound = 0;
  #longestProven = false;
  /** Plans to start from, as far as they are reworked. */
  #starts: NeighbourRework[] | undefined;

  /** `told` is called whenever there is a better answer. */
  constructor(graph: CutGraph, costStep: number, work: Work, told: () => void) {
    this.#graph = graph;
    this.#costStep = costStep;
    this.#work = work;
    this.#told = told;
    this.#cut = new Uint8Array(graph.edgeA.length);
    // A vertex alone (there may be thousands, between switches that are there whatever is planned) is its own plan.
    const isAlone = graph.edgeA.length === 0;
    this.#skeleton = isAlone ? null : buildSkeleton(graph);
    if (!isAlone) return;
    this.#cost = 0;
    this.#longestProven = true;
  }

  get hasRings(): boolean {
    return this.#skeleton !== null && this.#skeleton.blocks.length > 0;
  }

  /** The best so far, once `first` is through. */
  get answer(): PieceAnswer {
    return { cut: this.#cut, cost: this.#cost, lowerBound: this.#lowerBound, longestProven: this.#longestProven };
  }

  /** Comes to a first answer: for a tree one that is proven cheapest. */
  *first(): Steps<void> {
    if (!this.#skeleton) return;
    if (!this.hasRings) {
      this.#cuts = new CheapestCuts(this.#graph, this.#skeleton, this.#work);
      yield* this.#cheapest(this.#cuts);
      return;
    }
    const { cut, cost, lowerBound } = yield* treePlan(this.#graph, this.#work);
    this.#raise(lowerBound);
    if (cut) return this.#take(cut, cost);
    const merged = yield* greedyMerge(this.#graph, this.#work);
    this.#take(merged, costOf(this.#graph, merged));
  }

  /** Goes on from there to the end. */
  *rest(): Steps<void> {
    if (this.#cuts) yield* this.#shortest(this.#cuts);
    else if (this.#skeleton) yield* this.#byRings(this.#skeleton);
    this.#cuts = undefined;
  }

  *#byRings(skeleton: Skeleton): Steps<void> {
    const [graph, work] = [this.#graph, this.#work];
    const { blocks } = skeleton;
    const blockSteps = Math.min(BLOCK_STEPS, work.left * BLOCK_SHARE);
    const cuts = new CheapestCuts(graph, skeleton, work, { blockSteps });
    const difficulty = cuts.blockDifficulty();
    let hard = difficulty.map(({ width }) => width > WIDE);
    for (let tries = 0; tries < HARD_TRIES; tries++) {
      try {
        if (hard.includes(true)) return yield* this.#byCore(new RingCore(graph, skeleton, hard, work, blockSteps));
        yield* this.#cheapest(cuts);
        return yield* this.#shortest(cuts);
      } catch (error) {
        if (!(error instanceof HardBlock)) throw error;
        const found = difficulty[blocks.findIndex(({ edges }) => edges.includes(error.edge))]!;
        hard = difficulty.map(({ burden }, block) => hard[block]! || burden >= found.burden);
      }
    }
    hard.fill(true);
    yield* this.#byCore(new RingCore(graph, skeleton, hard, work, blockSteps));
  }

  /** A cheapest plan, block by block. @throws HardBlock */
  *#cheapest(cuts: CheapestCuts): Steps<void> {
    const cost = yield* cuts.cost(0, this.#graph.limits[0]!);
    const cut = new Uint8Array(this.#cut.length);
    yield* cuts.trace(0, cut);
    this.#raise(cost);
    this.#take(cut, cost);
  }

  /** Of the cheapest plans the one with the shortest longest section, block by block; as it is where the work runs out. */
  *#shortest(cuts: CheapestCuts): Steps<void> {
    const graph = this.#graph;
    const cost = this.#cost;
    const cut = new Uint8Array(this.#cut.length);
    const found = yield* this.#work.attempt(this.#work.left, function* () {
      const longest = yield* shortestLongest(cuts, 0, cost, longestVertex(graph), graph.limits[0]!);
      yield* cuts.cost(0, longest);
      yield* cuts.trace(0, cut);
      return true;
    });
    if (!found) return;
    this.#longestProven = true;
    this.#take(cut, cost);
  }

  /** @throws HardBlock, before anything else is done. */
  *#byCore(core: RingCore): Steps<void> {
    const work = this.#work;
    this.#raise(yield* core.bound(this.#graph.limits[0]!));
    const search = core.searchable;
    if (search) yield* work.attempt(work.left / 2, () => this.#look(core, FIRST_BEAM));
    const sections = partsWithout(this.#graph, this.#cut).number().count;
    yield* this.#reworkEach(Math.min(work.left / 8, QUICK_REWORK * sections));
    if (search) {
      for (const most of BEAMS) yield* work.attempt(work.left / 6, () => this.#look(core, most));
      yield* work.attempt(work.left / 2, () => this.#prove(core, this.#cost - this.#costStep));
    }
    yield* this.#reworkOn(search ? work.left / 2 : work.left);
    if (!search) return;
    yield* work.attempt(work.left, () => this.#raiseBound(core));
    if (this.#lowerBound === this.#cost) yield* work.attempt(work.left, () => this.#shorten(core));
  }

  /** Reworks what there is to start from, for an equal number of steps each. */
  *#reworkEach(steps: number): Steps<void> {
    if (this.#lowerBound >= this.#cost) return;
    this.#starts ??= [new NeighbourRework(this.#graph, yield* greedyMerge(this.#graph, this.#work))];
    if (this.#starts.every(({ cost }) => cost > this.#cost)) {
      this.#starts.push(new NeighbourRework(this.#graph, this.#cut.slice()));
    }
    for (const start of this.#starts) yield* this.#reworkOne(start, steps / this.#starts.length);
  }

  /** Reworks each for a while, then the cheapest to the end, then the others as long as there are steps left. */
  *#reworkOn(steps: number): Steps<void> {
    const end = this.#work.left - steps;
    yield* this.#reworkEach(steps / 4);
    for (const start of [...(this.#starts ?? [])].sort((a, b) => a.cost - b.cost)) {
      if (this.#lowerBound >= this.#cost) return;
      yield* this.#reworkOne(start, Math.max(0, this.#work.left - end));
    }
  }

  *#reworkOne(start: NeighbourRework, steps: number): Steps<void> {
    const offer = (): void => {
      if (start.cost < this.#cost) this.#take(start.cut.slice(), start.cost);
    };
    offer();
    yield* start.run(steps, this.#work, offer);
  }

  /** Looks for a cheaper plan among the most promising states. */
  *#look(core: RingCore, most: number): Steps<void> {
    if (this.#lowerBound >= this.#cost) return;
    const found = yield* core.within(this.#cost - this.#costStep, this.#graph.limits[0]!, undefined, most);
    if (found) this.#take(found.cut, found.cost);
  }

  /** Settles whether any plan costs at most `ceiling`; if so, the cheapest is it. */
  *#prove(core: RingCore, ceiling: number): Steps<boolean> {
    if (this.#lowerBound >= this.#cost || this.#lowerBound > ceiling) return false;
    const found = yield* core.within(ceiling, this.#graph.limits[0]!);
    this.#raise(found ? found.cost : ceiling + this.#costStep);
    if (found) this.#take(found.cut, found.cost);
    return found !== undefined;
  }

  /** Moves the bound up from below, in steps, as far as the work reaches. */
  *#raiseBound(core: RingCore): Steps<void> {
    const costStep = this.#costStep;
    const apart = Math.floor((this.#cost - this.#lowerBound) / BOUND_STEPS / costStep) * costStep;
    const step = Math.max(costStep, apart);
    while (this.#lowerBound < this.#cost) {
      if (yield* this.#prove(core, Math.min(this.#cost, this.#lowerBound + step) - costStep)) return;
    }
  }

  /** Finds, among the plans of this cost, one with the shortest longest section. */
  *#shorten(core: RingCore): Steps<void> {
    const graph = this.#graph;
    let lowest = longestVertex(graph);
    let holds = longestPart(graph, this.#cut);
    let stride = 1;
    let falling = true;
    while (lowest < holds) {
      const trial = Math.max(lowest, falling ? holds - stride : Math.floor((lowest + holds) / 2));
      const range = { kept: 0, refused: Number.POSITIVE_INFINITY };
      const found = yield* core.within(this.#cost, trial, range);
      if (found) {
        this.#take(found.cut, found.cost);
        holds = Math.max(lowest, longestPart(graph, found.cut));
        stride *= 8;
      } else {
        lowest = Math.min(holds, Math.max(trial + 1, range.refused));
        falling = false;
      }
    }
    this.#longestProven = true;
    this.#told();
  }

  #raise(lowerBound: number): void {
    if (lowerBound <= this.#lowerBound) return;
    this.#lowerBound = lowerBound;
    if (this.#cost < Number.POSITIVE_INFINITY) this.#told();
  }

  #take(cut: Uint8Array, cost: number): void {
    this.#cut = cut;
    this.#cost = cost;
    this.#told();
  }
}

/**
 * The longest vertex that is not over a limit by itself; at least one unit, as under a limit of nothing those that are
 * over it would weigh nothing either and could be joined.
 */
function longestVertex(graph: CutGraph): number {
  let longest = 1;
  for (let v = 0; v < graph.vertexCount; v++) {
    if (!graph.exempt[v]) longest = Math.max(longest, graph.weights[v * graph.limits.length]!);
  }
  return longest;
}
