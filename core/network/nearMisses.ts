import { type Box, growBox } from '../geometry/box.ts';
import { type BoxTree, boxTree } from '../geometry/boxTree.ts';
import { nearestOnSegment } from '../geometry/polyline.ts';
import { segmentIntersection } from '../geometry/segments.ts';
import type { LonLat, Xy } from '../geometry/types.ts';
import { xyDistanceM } from '../geometry/vector.ts';
import { type Project, propertyOf } from '../model/project.ts';
import { lonLatAt, type MeasuredPath, measuredPath, stationOf } from '../shapes/measuredPath.ts';
import { segmentsNear } from '../shapes/segmentsNear.ts';
import { workingPlane } from '../shapes/workingPlane.ts';
import type { Network, Run } from './types.ts';

/** An end this near to another line was probably meant to touch it; an assumption of this project. */
export const nearMissM = 5;

/** Two parts of the network that come near each other, or cross, without joining. */
export interface NearMiss {
  readonly a: MissSide;
  readonly b: MissSide;
  /** 0 where they cross. */
  readonly gapM: number;
  readonly crosses: boolean;
  readonly at: LonLat;
}

interface MissSide {
  /** -1: fed. */
  readonly part: number;
  readonly lineId: string;
}

/**
 * Where parts that `wanted` picks out end near another part, are ended at by one, or cross one. `partOf` tells the part
 * of each node, -1 for all that is fed.
 */
export function nearMisses(
  project: Project,
  network: Network,
  partOf: Int32Array,
  wanted: (part: number) => boolean,
): NearMiss[] {
  const near = new Neighbourhood(project, network, partOf);
  const misses: NearMiss[] = [];
  for (const [node, { roles, xy, at }] of network.nodes.entries()) {
    if (!roles.includes('lineEnd')) continue;
    const own = near.sideOfNode(node);
    if (!own) continue;
    for (const { part, lineId, gapM } of near.partsNear(xy)) {
      if (part === own.part || !(wanted(part) || wanted(own.part))) continue;
      misses.push({ a: own, b: { part, lineId }, gapM, crosses: false, at });
    }
  }
  for (const miss of near.crossings(wanted)) misses.push(miss);
  return misses;
}

class Neighbourhood {
  readonly #network: Network;
  readonly #partOf: Int32Array;
  readonly #lines: { readonly id: string; readonly geometry: MeasuredPath; readonly runs: readonly Run[] }[] = [];
  readonly #tree: BoxTree;

  constructor(project: Project, network: Network, partOf: Int32Array) {
    this.#network = network;
    this.#partOf = partOf;
    const plane = workingPlane(propertyOf(project));
    for (const [id, runs] of network.runsOfLine) {
      const geometry = measuredPath(project.fenceLine.get(id)!.path, plane)!;
      this.#lines.push({ id, geometry, runs: runs.map((run) => network.edges[run] as Run) });
    }
    this.#tree = boxTree(this.#lines.length, (add) => {
      for (const { geometry } of this.#lines) add(...geometry.box);
    });
  }

  sideOfNode(node: number): MissSide | null {
    const run = this.#network.edgesAt[node]!.map((edge) => this.#network.edges[edge]!).find(
      ({ kind }) => kind === 'run',
    );
    return run ? { part: this.#partOf[node]!, lineId: (run as Run).lineId } : null;
  }

  /** Each part with a run within reach of a point, and how near. */
  partsNear(point: Xy): { readonly part: number; readonly lineId: string; readonly gapM: number }[] {
    const nearest = new Map<number, { readonly part: number; readonly lineId: string; readonly gapM: number }>();
    for (const i of this.#linesNear([...point, ...point], nearMissM)) {
      const { id: lineId, geometry, runs } = this.#lines[i]!;
      for (const segment of segmentsNear(geometry, point, nearMissM)) {
        const { distanceM, fraction } = nearestOnSegment(point, geometry.xy[segment]!, geometry.xy[segment + 1]!);
        if (distanceM > nearMissM) continue;
        const { run, gapM } = this.#nearestRun(runs, stationOf(geometry, { segment, fraction }), point, distanceM);
        const part = this.#partOf[run.from]!;
        if (gapM <= nearMissM && gapM < (nearest.get(part)?.gapM ?? Infinity))
          nearest.set(part, { part, lineId, gapM });
      }
    }
    return [...nearest.values()];
  }

  /** Where lines of different parts cross without a joint. */
  crossings(wanted: (part: number) => boolean): NearMiss[] {
    const found: NearMiss[] = [];
    for (const [i, a] of this.#lines.entries()) {
      if (!a.runs.some((run) => wanted(this.#partOf[run.from]!))) continue;
      for (const j of this.#linesNear(a.geometry.box, 0)) {
        const b = this.#lines[j]!;
        if (i !== j) this.#crossingsOf(a, b, wanted, found);
      }
    }
    return found;
  }

  #crossingsOf(
    a: { readonly id: string; readonly geometry: MeasuredPath; readonly runs: readonly Run[] },
    b: { readonly id: string; readonly geometry: MeasuredPath; readonly runs: readonly Run[] },
    wanted: (part: number) => boolean,
    found: NearMiss[],
  ): void {
    for (let segment = 0; segment + 1 < a.geometry.xy.length; segment++) {
      const [p, q] = [a.geometry.xy[segment]!, a.geometry.xy[segment + 1]!];
      const middle: Xy = [(p[0] + q[0]) / 2, (p[1] + q[1]) / 2];
      const reachM = Math.max(Math.abs(q[0] - p[0]), Math.abs(q[1] - p[1])) / 2;
      for (const other of segmentsNear(b.geometry, middle, reachM)) {
        const meeting = segmentIntersection(p, q, b.geometry.xy[other]!, b.geometry.xy[other + 1]!);
        if (meeting.kind !== 'cross') continue;
        const onA = stationOf(a.geometry, { segment, fraction: meeting.t });
        const runA = runAt(a.runs, onA);
        const runB = runAt(b.runs, stationOf(b.geometry, { segment: other, fraction: meeting.u }));
        if (!runA || !runB) continue;
        const [partA, partB] = [this.#partOf[runA.from]!, this.#partOf[runB.from]!];
        if (partA === partB || !(wanted(partA) || wanted(partB))) continue;
        const sides = { a: { part: partA, lineId: a.id }, b: { part: partB, lineId: b.id } };
        found.push({ ...sides, gapM: 0, crosses: true, at: lonLatAt(a.geometry, onA) });
      }
    }
  }

  /** The run at a station; in an opening the one that ends nearest to the point. */
  #nearestRun(runs: readonly Run[], stationM: number, point: Xy, gapM: number): { run: Run; gapM: number } {
    const run = runAt(runs, stationM);
    if (run) return { run, gapM };
    let best = { run: runs[0]!, gapM: Infinity };
    for (const candidate of runs) {
      if (candidate.fromM > stationM + nearMissM || candidate.toM < stationM - nearMissM) continue;
      for (const node of [candidate.from, candidate.to]) {
        const endM = xyDistanceM(point, this.#network.nodes[node]!.xy);
        if (endM < best.gapM) best = { run: candidate, gapM: endM };
      }
    }
    return best;
  }

  #linesNear(box: Box, reachM: number): number[] {
    return this.#tree.search(growBox(box, reachM));
  }
}

/** The run that covers a station, by halving; undefined in an opening. */
function runAt(runs: readonly Run[], stationM: number): Run | undefined {
  let low = 0;
  let high = runs.length - 1;
  while (low <= high) {
    const middle = (low + high) >> 1;
    const run = runs[middle]!;
    if (stationM < run.fromM) high = middle - 1;
    else if (stationM > run.toM) low = middle + 1;
    else return run;
  }
  return undefined;
}
