import type { LocalPlane } from '../geometry/localPlane.ts';
import { cumulativeLengthsM } from '../geometry/plane/cumulativeLengths.ts';
import { nearestOnPolyline } from '../geometry/plane/nearestOnPolyline.ts';
import type { Xy } from '../geometry/types.ts';
import type { Project } from '../model/project.ts';
import type { CrossingRecord } from '../model/recordThings.ts';
import type { CrossingFigures, GatewayShape, Survey } from '../registers/types.ts';
import type { Basis, Certainty } from './certainty.ts';
import { type Course, type Courses, coursesOf, type Stop } from './courses.ts';
import { type CrossingSource, crossingSource } from './crossingSource.ts';
import { isCrossingInTheGround } from './inTheGround.ts';
import { type SolvedPoint, solvePoint } from './ties.ts';

/**
 * Where a crossing can lie, by its record as far as there is one, and as drawn for the rest. This is the one answer that
 * maps, sheets, checks and exports read.
 */
export interface CrossingAsBuilt {
  readonly figures: CrossingFigures;
  readonly shape: GatewayShape;
  readonly record: CrossingRecord | null;
  readonly plane: LocalPlane;
  /** How far its gate's posts are drawn from where they stood when it was dug; 0: there, or no longer. Metres. */
  readonly movedM: number;
  /** False: only planned, so nothing lies there as far as the file knows. */
  readonly inGround: boolean;
  readonly points: readonly SolvedPoint[];
  /**
   * Every stretch of ground where the trench may run, each with its own error: one whole trench where nothing is left
   * open. None of them counts less than another.
   */
  readonly courses: readonly Course[];
  /** Places of points that no course leads through, each with its own error: cable may lie there too. */
  readonly spots: readonly Stop[];
  /** Plan of one whole trench from the start post's riser foot to the end post's: of several the one nearest to the drawing. */
  readonly path: readonly Xy[];
  readonly lengthM: number;
  /** Of the longest trench that it may be. */
  readonly longestM: number;
  readonly startFoot: Xy;
  readonly endFoot: Xy;
  /** The bow of `path` is the default share of the width: nobody measured it. */
  readonly bowAssumed: boolean;
  /** Of the whole, seen from `path`. */
  readonly certainty: Certainty;
}

/** Works out where the crossing of a gateway lies; null where it has none, or an overhead one. */
export function crossingAt(project: Project, survey: Survey, gatewayId: string): CrossingAsBuilt | null {
  const source = crossingSource(project, survey, gatewayId);
  return source && crossingAsBuilt(source);
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
  const reach = courses.map((course) => course.withinM + (only ? 0 : Math.max(...course.path.map(off))));
  const passedBy = spots.flatMap(({ xy, withinM, measured }) => (measured ? [off(xy) + withinM] : []));
  return Math.max(...reach, ...passedBy);
}
