import type { Steps } from '../../model/steps.ts';
import { type Adjacency, adjacencyOf, type Subgraph, subgraph } from './adjacency.ts';
import { type ContractedNetwork, contractNetwork } from './contract.ts';
import { overLimitGroups, tooLongRuns } from './overLimit.ts';
import { PiecePlanning } from './planPiece.ts';
import { withReducedTests } from './reduceTests.ts';
import { chosenCandidates, listSections, partsOf, unfedRuns } from './sections.ts';
import type {
  OverLimitGroup,
  SectioningImpossible,
  SectioningNetwork,
  SectioningOptions,
  SectioningPlan,
} from './types.ts';
import { Work } from './work.ts';

/** Steps of work, unless told: ten seconds' or so, where a network takes them all. */
const DEFAULT_WORK = 2e8;

interface Piece {
  readonly part: Subgraph;
  readonly planning: PiecePlanning;
}

/**
 * A plan in the making: it is gone on with step by step, has an answer soon, and better ones later. What it finds depends
 * on the input and the work allowed alone, never on when it is gone on with.
 */
export class Planning {
  /** How many answers there were so far; each is no dearer than the one before, or is proven to be nearer the best. */
  answers = 0;
  readonly #network: SectioningNetwork;
  readonly #contracted: ContractedNetwork;
  readonly #overLimit: readonly OverLimitGroup[];
  readonly #mustSeparate: boolean;
  readonly #work: Work;
  readonly #pieces: Piece[] = [];
  readonly #steps: Steps<void>;
  #hasFirst = false;
  #planned = 0;
  #end: SectioningPlan | null = null;

  constructor(
    network: SectioningNetwork,
    contracted: ContractedNetwork,
    overLimit: readonly OverLimitGroup[],
    options: SectioningOptions,
  ) {
    this.#network = network;
    this.#contracted = contracted;
    this.#overLimit = overLimit;
    this.#mustSeparate = options.forcedMustSeparate === true;
    this.#work = new Work(options.workBudget ?? DEFAULT_WORK);
    this.#steps = this.#planAll();
  }

  /** Works on for a moment, about a millisecond. False when there is nothing more to do. */
  step(): boolean {
    return this.#steps.next().done !== true;
  }

  get isDone(): boolean {
    return this.#end !== null;
  }

  /** How far it is: the share of the work allowed that is spent, or of the network that is planned; 1 when it is done. */
  get progress(): number {
    if (this.#end) return 1;
    const settled = this.#planned / Math.max(1, this.#contracted.graph.vertexCount);
    return settled + (1 - settled) * this.#work.spent;
  }

  /** The best plan so far; null until there is one. */
  get plan(): SectioningPlan | null {
    if (this.#end) return this.#end;
    return this.#hasFirst ? this.#described(false) : null;
  }

  *#planAll(): Steps<void> {
    const { graph, costStep } = this.#contracted;
    const told = (): void => {
      if (this.#hasFirst) this.answers++;
    };
    const adjacency = adjacencyOf(graph);
    const place = new Int32Array(graph.vertexCount).fill(-1);
    // Connected pieces have nothing to do with each other: each is planned by itself.
    for (const vertices of connectedPieces(graph.vertexCount, adjacency)) {
      const part = subgraph(graph, adjacency, vertices, place);
      const planning = new PiecePlanning(part.graph, costStep, this.#work, told);
      this.#pieces.push({ part, planning });
      yield* planning.first();
    }
    this.#hasFirst = true;
    told();
    yield;
    let ringed = this.#pieces.filter(({ planning }) => planning.hasRings).length;
    for (const { part, planning } of this.#pieces) {
      yield* this.#work.attempt(this.#work.left / Math.max(1, planning.hasRings ? ringed-- : 1), () => planning.rest());
      this.#planned += part.graph.vertexCount;
    }
    const plan = this.#described(true);
    const isPlain = this.#overLimit.length === 0 && !this.#mustSeparate;
    this.#end = isPlain ? yield* withReducedTests(this.#network, plan) : plan;
    told();
  }

  #described(complete: boolean): SectioningPlan {
    const network = this.#network;
    const contracted = this.#contracted;
    const { graph, paid, costPerUnit, cheapestCost } = contracted;
    const cut = new Uint8Array(graph.edgeA.length);
    let cost = 0;
    let lowerBound = 0;
    let longestProven = true;
    for (const { part, planning } of this.#pieces) {
      const { answer } = planning;
      for (let e = 0; e < part.edges.length; e++) cut[part.edges[e]!] = answer.cut[e]!;
      cost += answer.cost;
      lowerBound += answer.lowerBound;
      longestProven &&= answer.longestProven;
    }
    const { partOf, count } = partsOf(contracted, cut);
    const sections = listSections(network, contracted, partOf, count);
    const costMore = (cost - lowerBound) / costPerUnit;
    return {
      outcome: 'plan',
      chosen: chosenCandidates(network, contracted, cut),
      cost: (paid + cost) / costPerUnit,
      sections,
      longestSectionM: sections.reduce((longest, section) => Math.max(longest, section.lengthM), 0),
      optimal: lowerBound === cost,
      lowerBoundCost: (paid + lowerBound) / costPerUnit,
      longestProven,
      complete,
      bound: { costMore, switchesMore: cheapestCost > 0 ? Math.max(0, Math.ceil(costMore / cheapestCost - 1e-9)) : 0 },
      overLimit: this.#overLimit,
      unfedRuns: unfedRuns(network, contracted),
    };
  }
}

/**
 * Begins to divide a network into sections: the switches of least total cost such that no section is over a limit and
 * every section is cut off from its neighbours by switches; among those, the plan whose longest section is shortest; among
 * those, for small plans, one in which a fault is found in few tests (see reduceTests.ts).
 *
 * Trees of any size are planned exactly, near linear in their size; so are networks with rings, as far as the work
 * allowed reaches (see planPiece.ts). Where it does not, the plan is good but not proven, and `lowerBoundCost` tells
 * what no plan can go below.
 *
 * Runs over a limit by themselves make it impossible, or with `bestEffort` are named and left as sections of their own.
 * For them the longest section can't be shortened: then the longest of the others is.
 *
 * @throws RangeError when the input contradicts itself (a run that isn't there, a length that is no number).
 */
export function startPlanning(
  network: SectioningNetwork,
  options: SectioningOptions = {},
): Planning | SectioningImpossible {
  const contracted = contractNetwork(network, options);
  const overLimit = overLimitGroups(network, contracted);
  const { forcedCannotSeparate } = contracted;
  if (forcedCannotSeparate.length > 0 || (overLimit.length > 0 && !options.bestEffort)) {
    return {
      outcome: 'impossible',
      reason: overLimit.length > 0 ? 'runsOverLimit' : 'forcedCannotSeparate',
      tooLongRuns: tooLongRuns(network, overLimit),
      overLimit,
      forcedCannotSeparate,
    };
  }
  return new Planning(network, contracted, overLimit, options);
}

function* connectedPieces(vertexCount: number, { start, other }: Adjacency): Generator<number[]> {
  const seen = new Uint8Array(vertexCount);
  for (let first = 0; first < vertexCount; first++) {
    if (seen[first]) continue;
    seen[first] = 1;
    const piece = [first];
    for (let i = 0; i < piece.length; i++) {
      const v = piece[i]!;
      for (let j = start[v]!; j < start[v + 1]!; j++) {
        const w = other[j]!;
        if (seen[w]) continue;
        seen[w] = 1;
        piece.push(w);
      }
    }
    yield piece;
  }
}
