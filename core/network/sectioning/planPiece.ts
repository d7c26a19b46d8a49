import { CheapestCuts } from './cheapestCuts.ts';
import type { CutGraph } from './contract.ts';
import { DisjointSets } from './disjointSets.ts';
import { greedyMerge } from './greedyMerge.ts';
import { reworkNeighbours } from './reworkNeighbours.ts';
import { RingCore } from './ringCore.ts';
import { shortestLongest } from './shortestLongest.ts';
import { buildSkeleton } from './skeleton.ts';
import { HardBlock, type Work } from './work.ts';

/** A plan for one connected network, in units of its graph. */
export interface PiecePlan {
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

/**
 * Plans one connected network.
 *
 * Trees, and networks whose ring blocks are each easy, are planned exactly by the block-by-block programme
 * (cheapestCuts.ts). Otherwise the hard blocks are gathered into a core (ringCore.ts). A first plan (greedyMerge.ts) is
 * made cheaper few sections at a time (reworkNeighbours.ts) and by a search of the most promising states only; then the
 * search is run in full for anything cheaper, which proves the plan or finds the best. Where the work allowed is too
 * little for that, the bound is moved up as far as it reaches.
 */
export function planPiece(graph: CutGraph, costStep: number, work: Work): PiecePlan {
  const skeleton = buildSkeleton(graph);
  const { blocks } = skeleton;
  if (blocks.length === 0) return planByBlocks(graph, new CheapestCuts(graph, skeleton, work));
  const blockSteps = Math.min(BLOCK_STEPS, work.left * BLOCK_SHARE);
  const cuts = new CheapestCuts(graph, skeleton, work, { blockSteps });
  const difficulty = cuts.blockDifficulty();
  let hard = difficulty.map(({ width }) => width > WIDE);
  for (let tries = 0; tries < HARD_TRIES; tries++) {
    try {
      if (!hard.includes(true)) return planByBlocks(graph, cuts);
      return planCore(graph, new RingCore(graph, skeleton, hard, work, blockSteps), costStep, work);
    } catch (error) {
      if (!(error instanceof HardBlock)) throw error;
      const found = difficulty[blocks.findIndex(({ edges }) => edges.includes(error.edge))]!;
      hard = difficulty.map(({ burden }, block) => hard[block]! || burden >= found.burden);
    }
  }
  hard.fill(true);
  return planCore(graph, new RingCore(graph, skeleton, hard, work, blockSteps), costStep, work);
}

function planByBlocks(graph: CutGraph, cuts: CheapestCuts): PiecePlan {
  const limit = graph.limits[0]!;
  const cost = cuts.cost(0, limit);
  const longest = shortestLongest(cuts, 0, cost, longestVertex(graph), limit);
  cuts.cost(0, longest);
  const cut = new Uint8Array(graph.edgeA.length);
  cuts.trace(0, cut);
  return { cut, cost, lowerBound: cost, longestProven: true };
}

function planCore(graph: CutGraph, core: RingCore, costStep: number, work: Work): PiecePlan {
  const limit = graph.limits[0]!;
  let lowerBound = core.bound(limit);
  let best = greedyMerge(graph);
  let cost = costOf(graph, best);
  if (core.searchable) work.attempt(work.left / 2, () => look(FIRST_BEAM));
  cost = reworkNeighbours(graph, best, work.left / 4, work);
  let longestProven = false;
  if (core.searchable) {
    for (const most of BEAMS) if (lowerBound < cost) work.attempt(work.left / 6, () => look(most));
    if (lowerBound < cost) work.attempt(work.left / 2, () => prove(cost - costStep));
    if (lowerBound < cost) work.attempt(work.left, raiseBound);
    if (lowerBound === cost) longestProven = work.attempt(work.left, shorten) === true;
  }
  return { cut: best, cost, lowerBound, longestProven };

  /** Looks for a cheaper plan among the most promising states. */
  function look(most: number): void {
    const found = core.within(cost - costStep, limit, undefined, most);
    if (!found) return;
    best = found.cut;
    cost = found.cost;
  }

  /** Settles whether any plan costs at most `ceiling`; if so, the cheapest is it. */
  function prove(ceiling: number): boolean {
    if (lowerBound > ceiling) return false;
    const found = core.within(ceiling, limit);
    if (found) {
      best = found.cut;
      cost = found.cost;
    }
    lowerBound = found ? cost : ceiling + costStep;
    return found !== undefined;
  }

  /** Moves the bound up from below, in steps, as far as the work reaches. */
  function raiseBound(): void {
    const step = Math.max(costStep, Math.floor((cost - lowerBound) / BOUND_STEPS / costStep) * costStep);
    while (lowerBound < cost) if (prove(Math.min(cost, lowerBound + step) - costStep)) return;
  }

  /** Finds, among the plans of this cost, one with the shortest longest section. */
  function shorten(): true {
    let lowest = longestVertex(graph);
    let holds = longestPart(graph, best);
    let stride = 1;
    let falling = true;
    while (lowest < holds) {
      const trial = Math.max(lowest, falling ? holds - stride : Math.floor((lowest + holds) / 2));
      const range = { kept: 0, refused: Number.POSITIVE_INFINITY };
      const found = core.within(cost, trial, range);
      if (found) {
        best = found.cut;
        holds = Math.max(lowest, longestPart(graph, best));
        stride *= 8;
      } else {
        lowest = Math.min(holds, Math.max(trial + 1, range.refused));
        falling = false;
      }
    }
    return true;
  }
}

function costOf(graph: CutGraph, cut: Uint8Array): number {
  let cost = 0;
  for (let e = 0; e < cut.length; e++) if (cut[e]) cost += graph.edgeCost[e]!;
  return cost;
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

/** The longest section that holds no vertex over a limit by itself. */
function longestPart(graph: CutGraph, cut: Uint8Array): number {
  const together = new DisjointSets(graph.vertexCount);
  for (let e = 0; e < cut.length; e++) if (!cut[e]) together.join(graph.edgeA[e]!, graph.edgeB[e]!);
  const { setOf, count } = together.number();
  const length = new Float64Array(count);
  const exempt = new Uint8Array(count);
  for (let v = 0; v < setOf.length; v++) {
    length[setOf[v]!]! += graph.weights[v * graph.limits.length]!;
    if (graph.exempt[v]) exempt[setOf[v]!] = 1;
  }
  let longest = 0;
  for (let p = 0; p < count; p++) if (!exempt[p]) longest = Math.max(longest, length[p]!);
  return longest;
}
