import { DisjointSets } from './disjointSets.ts';
import type { SectioningNetwork, SectioningOptions } from './types.ts';
import { costScale, greatestCommonDivisor, lengthScale } from './wholeNumbers.ts';

/**
 * The network reduced to what can be decided: runs joined for good are one vertex, parallel candidates one edge that
 * costs their sum, and a switch that is put in whatever happens is no edge at all (its cost is `paid`).
 */
export interface CutGraph {
  readonly vertexCount: number;
  /** Limited quantities: length, then gateways and runs where they have a limit. */
  readonly limits: Float64Array;
  /** `limits.length` numbers a vertex. */
  readonly weights: Float64Array;
  /** 1 where a vertex is over a limit by itself: it may be joined only by what adds nothing. */
  readonly exempt: Uint8Array;
  readonly edgeA: Int32Array;
  readonly edgeB: Int32Array;
  /** Whole numbers of cost units. */
  readonly edgeCost: Float64Array;
  /** 1 where the two ends must lie in different sections. */
  readonly mustCut: Uint8Array;
}

/** A `CutGraph` with the way back to the network it was made from. */
export interface ContractedNetwork {
  readonly graph: CutGraph;
  readonly vertexOfRun: Int32Array;
  readonly sourceRun: number;
  /** -1 for a candidate that is no edge. */
  readonly edgeOfCandidate: Int32Array;
  readonly forced: Uint8Array;
  /** Cost units of the switches that are put in whatever happens. */
  readonly paid: number;
  readonly costPerUnit: number;
  readonly metresPerUnit: number;
  /** Every plan's cost is a whole multiple of this many units (0: all costs are 0). */
  readonly costStep: number;
  readonly cheapestCost: number;
  readonly forcedCannotSeparate: readonly string[];
  /** Pairs of vertices with a forced switch between them that is no edge. */
  readonly forcedEnds: readonly (readonly [number, number])[];
}

/** @throws RangeError naming the run, candidate or limit that makes no sense. */
export function contractNetwork(network: SectioningNetwork, options: SectioningOptions = {}): ContractedNetwork {
  const { runs, candidates } = network;
  const runIndex = indexRuns(network);
  const forced = markCandidates(network, 'forced');
  const forbidden = markCandidates(network, 'forbidden');
  const ends = candidateEnds(network, runIndex);

  const joined = new DisjointSets(runs.length);
  for (const [a, b] of network.joints ?? []) joined.join(runOf(runIndex, a, 'joint'), runOf(runIndex, b, 'joint'));
  for (let c = 0; c < candidates.length; c++) {
    if (!forbidden[c]) continue;
    if (forced[c]) throw new RangeError(`Candidate ${candidates[c]!.id} is both forced and forbidden; keep one.`);
    joined.join(ends[2 * c]!, ends[2 * c + 1]!);
  }
  const { setOf: vertexOfRun, count: vertexCount } = joined.number();

  const unitsPerCost = costScale(candidates.map((candidate) => candidate.cost));
  const mustSeparate = options.forcedMustSeparate === true;
  const edgeOfCandidate = new Int32Array(candidates.length).fill(-1);
  const forcedCannotSeparate: string[] = [];
  const forcedEnds: [number, number][] = [];
  const edgeEnds: number[] = [];
  let paid = 0;
  let cheapestCost = Number.POSITIVE_INFINITY;
  const units = new Float64Array(candidates.length);
  for (let c = 0; c < candidates.length; c++) {
    const candidate = candidates[c]!;
    units[c] = Math.round(candidate.cost * unitsPerCost);
    if (candidate.cost > 0 && candidate.cost < cheapestCost) cheapestCost = candidate.cost;
    const a = vertexOfRun[ends[2 * c]!]!;
    const b = vertexOfRun[ends[2 * c + 1]!]!;
    if (forced[c]) {
      paid += units[c]!;
      if (!mustSeparate) {
        forcedEnds.push([a, b]);
        continue;
      }
      if (a === b) forcedCannotSeparate.push(candidate.id);
    }
    if (a === b) continue;
    edgeOfCandidate[c] = edgeEnds.length / 2;
    edgeEnds.push(Math.min(a, b), Math.max(a, b));
  }
  const { edgeOf, edgeA, edgeB } = mergeParallel(edgeEnds, vertexCount);
  const edgeCost = new Float64Array(edgeA.length);
  const mustCut = new Uint8Array(edgeA.length);
  for (let c = 0; c < candidates.length; c++) {
    if (edgeOfCandidate[c]! < 0) continue;
    const edge = edgeOf[edgeOfCandidate[c]!]!;
    edgeOfCandidate[c] = edge;
    if (forced[c]) mustCut[edge] = 1;
    else edgeCost[edge]! += units[c]!;
  }

  return {
    graph: { vertexCount, edgeA, edgeB, edgeCost, mustCut, ...vertexWeights(network, vertexOfRun, vertexCount) },
    vertexOfRun,
    sourceRun: runOf(runIndex, network.source, 'source'),
    edgeOfCandidate,
    forced,
    paid,
    costPerUnit: unitsPerCost,
    metresPerUnit: lengthScale(totalLengthM(network)),
    costStep: greatestCommonDivisor(units),
    cheapestCost: Number.isFinite(cheapestCost) ? cheapestCost : 0,
    forcedCannotSeparate,
    forcedEnds,
  };
}

function vertexWeights(
  network: SectioningNetwork,
  vertexOfRun: Int32Array,
  vertexCount: number,
): Pick<CutGraph, 'limits' | 'weights' | 'exempt'> {
  const scale = lengthScale(totalLengthM(network));
  const { maxGateways, maxRunsPerSection } = network;
  const limits = [Math.round(limit(network.maxSectionM, 'maxSectionM') * scale)];
  const countsGateways = maxGateways !== undefined && maxGateways !== null;
  const countsRuns = maxRunsPerSection !== undefined && maxRunsPerSection !== null;
  if (countsGateways) limits.push(limit(maxGateways, 'maxGateways'));
  if (countsRuns) limits.push(limit(maxRunsPerSection, 'maxRunsPerSection'));
  const kinds = limits.length;
  const weights = new Float64Array(vertexCount * kinds);
  for (let r = 0; r < network.runs.length; r++) {
    const run = network.runs[r]!;
    const at = vertexOfRun[r]! * kinds;
    weights[at]! += Math.round(run.lengthM * scale);
    if (countsGateways) weights[at + 1]! += run.gateways ?? 0;
    if (countsRuns) weights[at + kinds - 1]! += 1;
  }
  const exempt = new Uint8Array(vertexCount);
  for (let i = 0; i < weights.length; i++) {
    if (weights[i]! > limits[i % kinds]!) exempt[(i / kinds) | 0] = 1;
  }
  return { limits: Float64Array.from(limits), weights, exempt };
}

function limit(value: number, name: string): number {
  if (!(value >= 0)) throw new RangeError(`${name} is ${value}; it must be a number of at least 0.`);
  return value;
}

function totalLengthM(network: SectioningNetwork): number {
  let total = Number.isFinite(network.maxSectionM) ? network.maxSectionM : 0;
  for (const run of network.runs) total += run.lengthM;
  return total;
}

function indexRuns(network: SectioningNetwork): Map<string, number> {
  const index = new Map<string, number>();
  for (let r = 0; r < network.runs.length; r++) {
    const { id, lengthM, gateways = 0 } = network.runs[r]!;
    if (!(lengthM >= 0 && Number.isFinite(lengthM)))
      throw new RangeError(`Run ${id} has length ${lengthM}; give metres of at least 0.`);
    if (!(gateways >= 0 && Number.isInteger(gateways)))
      throw new RangeError(`Run ${id} has ${gateways} gateways; give a whole number of at least 0.`);
    index.set(id, r);
  }
  if (index.size < network.runs.length) throw new RangeError(`Two runs have the same id; ids must differ.`);
  return index;
}

/** `named`: which candidate it is that names the run. */
function runOf(index: ReadonlyMap<string, number>, id: string, where: string, named?: string): number {
  const run = index.get(id);
  if (run === undefined) {
    const by = named === undefined ? where : `${where} ${named}`;
    throw new RangeError(`The ${by} names run ${id}, which is not among the runs.`);
  }
  return run;
}

function candidateEnds(network: SectioningNetwork, runIndex: ReadonlyMap<string, number>): Int32Array {
  const { candidates } = network;
  const ends = new Int32Array(2 * candidates.length);
  for (let c = 0; c < candidates.length; c++) {
    const { id, a, b, cost } = candidates[c]!;
    if (!(cost >= 0 && Number.isFinite(cost)))
      throw new RangeError(`Candidate ${id} costs ${cost}; give a number of at least 0.`);
    ends[2 * c] = runIndex.get(a) ?? runOf(runIndex, a, 'candidate', id);
    ends[2 * c + 1] = runIndex.get(b) ?? runOf(runIndex, b, 'candidate', id);
  }
  return ends;
}

function markCandidates(network: SectioningNetwork, list: 'forced' | 'forbidden'): Uint8Array {
  const marks = new Uint8Array(network.candidates.length);
  const wanted = new Set(network[list]);
  if (wanted.size === 0) return marks;
  for (let c = 0; c < marks.length; c++) if (wanted.delete(network.candidates[c]!.id)) marks[c] = 1;
  for (const id of wanted) throw new RangeError(`${list} names candidate ${id}, which is not among the candidates.`);
  return marks;
}

/** Edges with the same two ends become one; `edgeOf` tells which. */
function mergeParallel(ends: readonly number[], vertexCount: number) {
  const count = ends.length / 2;
  const start = new Int32Array(vertexCount + 1);
  for (let e = 0; e < count; e++) start[ends[2 * e]! + 1]!++;
  for (let v = 0; v < vertexCount; v++) start[v + 1]! += start[v]!;
  const byFirstEnd = new Int32Array(count);
  const next = start.slice(0, vertexCount);
  for (let e = 0; e < count; e++) byFirstEnd[next[ends[2 * e]!]!++] = e;
  const edgeOf = new Int32Array(count);
  const edgeA = new Int32Array(count);
  const edgeB = new Int32Array(count);
  const seenFrom = new Int32Array(vertexCount).fill(-1);
  const seenEdge = new Int32Array(vertexCount);
  let merged = 0;
  for (let v = 0; v < vertexCount; v++) {
    for (let i = start[v]!; i < start[v + 1]!; i++) {
      const edge = byFirstEnd[i]!;
      const other = ends[2 * edge + 1]!;
      if (seenFrom[other] !== v) {
        seenFrom[other] = v;
        seenEdge[other] = merged;
        edgeA[merged] = v;
        edgeB[merged++] = other;
      }
      edgeOf[edge] = seenEdge[other]!;
    }
  }
  return { edgeOf, edgeA: edgeA.slice(0, merged), edgeB: edgeB.slice(0, merged) };
}
