import type { LocalPlane } from '../geometry/localPlane.ts';
import { cumulativeLengthsM, nearestOnPolyline } from '../geometry/polyline.ts';
import type { Xy } from '../geometry/types.ts';
import { largestOf } from '../model/extremes.ts';
import type { Project } from '../model/project.ts';
import type { CrossingRecord } from '../model/recordThings.ts';
import type { CrossingFigures, GatewayShape } from '../shapes/types.ts';
import type { Survey } from '../survey/types.ts';
import type { Basis, Certainty } from './certainty.ts';
import { type Courses, coursesOf } from './courses.ts';
import { type CrossingSource, crossingSource } from './crossingSource.ts';
import { isCrossingInTheGround } from './inTheGround.ts';
import { type SolvedPoint, solvePoint } from './ties.ts';

/**
 * Where a crossing can lie, by its record as far as there is one, and as drawn for the rest. This is the one answer that
 * maps, sheets, checks and exports read.
 */
export interface CrossingAsBuilt extends Omit<Courses, 'complete'> {
  readonly figures: CrossingFigures;
  readonly shape: GatewayShape;
  readonly record: CrossingRecord | null;
  readonly plane: LocalPlane;
  /** How far its gate's posts are drawn from where they stood when it was dug; 0: there, or no longer. Metres. */
  readonly movedM: number;
  /** False: only planned, so nothing lies there as far as the file knows. */
  readonly inGround: boolean;
  readonly points: readonly SolvedPoint[];
  /** Of `path`. */
  readonly lengthM: number;
  readonly startFoot: Xy;
  readonly endFoot: Xy;
  /** Of the whole, seen from `path`. */
  readonly certainty: Certainty;
}

/** Kept, as maps and lists ask for the same crossings again and again: of each survey, for the project that it was asked with last. */
const kept = new WeakMap<Survey, { readonly project: Project; readonly found: Map<string, CrossingAsBuilt | null> }>();

/** Works out where the crossing of a gateway lies; null where it has none, or an overhead one. */
export function crossingAt(project: Project, survey: Survey, gatewayId: string): CrossingAsBuilt | null {
  let known = kept.get(survey);
  if (known?.project !== project) {
    known = { project, found: new Map() };
    kept.set(survey, known);
  }
  let crossing = known.found.get(gatewayId);
  if (crossing === undefined) {
    const source = crossingSource(project, survey, gatewayId);
    crossing = source && crossingAsBuilt(source);
    known.found.set(gatewayId, crossing);
  }
  return crossing;
}

/** Works out where a crossing can lie. */
export function crossingAsBuilt(source: CrossingSource): CrossingAsBuilt {
  const { figures, shape, record, plane, movedM } = source;
  const points = source.points.map((point) => solvePoint(point, source));
  const found = coursesOf(source, points);
  const { path } = found;
  return {
    figures,
    shape,
    record,
    plane,
    movedM,
    inGround: isCrossingInTheGround(figures.crossing, record, source.points),
    points,
    ...found,
    lengthM: cumulativeLengthsM(path).at(-1) ?? 0,
    startFoot: path[0]!,
    endFoot: path.at(-1)!,
    certainty: { basis: basisOf(points, found, figures), withinM: withinOf(found) },
  };
}

/** As sure as the least sure point of the whole. */
function basisOf(points: readonly SolvedPoint[], { complete }: Courses, { bowAssumed }: CrossingFigures): Basis {
  if (points.some(({ basis }) => basis === 'contradictory')) return 'contradictory';
  if (points.some(({ basis }) => basis === 'ambiguous')) return 'ambiguous';
  if (complete) return 'measured';
  return points.some(({ places }) => places.length > 0) || !bowAssumed ? 'partly' : 'drawn';
}

/** From the path that is shown over all that may be: every course, and every measured point that they pass by. */
function withinOf({ path, courses, spots }: Courses): number {
  const off = (xy: Xy) => nearestOnPolyline(xy, path)?.distanceM ?? 0;
  const only = courses.length === 1;
  const reach = courses.map((course) => course.withinM + (only ? 0 : largestOf(course.path.map(off))));
  const passedBy = spots.flatMap(({ xy, withinM, measured }) => (measured ? [off(xy) + withinM] : []));
  return Math.max(largestOf(reach), largestOf(passedBy));
}
