import { type Adjacency, adjacencyOf, subgraph } from './adjacency.ts';
import { type ContractedNetwork, contractNetwork } from './contract.ts';
import { withFewerTests } from './fewerTests.ts';
import { overLimitGroups, tooLongRuns } from './overLimit.ts';
import { planPiece } from './planPiece.ts';
import { chosenCandidates, listSections, partsOf, unfedRuns } from './sections.ts';
import type { SectioningNetwork, SectioningOptions, SectioningPlan, SectioningResult } from './types.ts';
import { Stopped, Work } from './work.ts';

/** Steps of work: less than a second's for a network of 10,000 runs, some seconds' for one of a few hundred. */
function defaultWork(runCount: number): number {
  return Math.max(4e6, Math.min(2e8, 4e10 / runCount));
}

/**
 * Divides a network into sections: the switches of least total cost such that no section is over a limit and every
 * section is cut off from its neighbours by switches; among those, the plan whose longest section is shortest; among
 * those, for small plans, one in which a fault is found in few tests (see fewerTests.ts).
 *
 * Trees of any size are planned exactly, near linear in their size; so are networks with rings, as far as the work
 * allowed reaches (see planPiece.ts). Where it does not, the plan is good but not proven, and `lowerBoundCost` tells
 * what no plan can go below. The answer depends on the input and the work allowed alone.
 *
 * Runs over a limit by themselves make it impossible, or with `bestEffort` are named and left as sections of their own.
 * For them the longest section can't be shortened: then the longest of the others is.
 *
 * @throws RangeError when the input contradicts itself (a run that isn't there, a length that is no number).
 */
export function planSections(network: SectioningNetwork, options: SectioningOptions = {}): SectioningResult {
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
  try {
    const cuts = planPieces(
      contracted,
      new Work(options.workBudget ?? defaultWork(network.runs.length), options.watch),
    );
    const plan = describePlan(network, contracted, cuts);
    const settled = overLimit.length > 0 || options.forcedMustSeparate ? plan : withFewerTests(network, plan);
    return { ...settled, overLimit, unfedRuns: unfedRuns(network, contracted) };
  } catch (error) {
    if (error instanceof Stopped) return { outcome: 'stopped' };
    throw error;
  }
}

interface Cuts {
  readonly cut: Uint8Array;
  readonly cost: number;
  readonly lowerBound: number;
  readonly longestProven: boolean;
}

/** Connected pieces have nothing to do with each other: each is planned by itself. */
function planPieces({ graph, costStep }: ContractedNetwork, work: Work): Cuts {
  const adjacency = adjacencyOf(graph);
  const cut = new Uint8Array(graph.edgeA.length);
  const place = new Int32Array(graph.vertexCount).fill(-1);
  let cost = 0;
  let lowerBound = 0;
  let longestProven = true;
  let planned = 0;
  for (const vertices of connectedPieces(graph.vertexCount, adjacency)) {
    const piece = subgraph(graph, adjacency, vertices, place);
    const plan = planPiece(piece.graph, costStep, work);
    for (let e = 0; e < piece.edges.length; e++) cut[piece.edges[e]!] = plan.cut[e]!;
    cost += plan.cost;
    lowerBound += plan.lowerBound;
    longestProven &&= plan.longestProven;
    planned += vertices.length;
    work.settle(planned / graph.vertexCount);
  }
  return { cut, cost, lowerBound, longestProven };
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

function describePlan(
  network: SectioningNetwork,
  contracted: ContractedNetwork,
  { cut, cost, lowerBound, longestProven }: Cuts,
): Omit<SectioningPlan, 'overLimit' | 'unfedRuns'> {
  const { partOf, count } = partsOf(contracted, cut);
  const sections = listSections(network, contracted, partOf, count);
  const { paid, costPerUnit, cheapestCost } = contracted;
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
    bound: { costMore, switchesMore: cheapestCost > 0 ? Math.max(0, Math.ceil(costMore / cheapestCost - 1e-9)) : 0 },
  };
}
