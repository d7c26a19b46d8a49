import { arcPath, bowThrough } from '../geometry/arc.ts';
import type { LocalPlane } from '../geometry/localPlane.ts';
import { cumulativeLengthsM } from '../geometry/plane/cumulativeLengths.ts';
import { xyDistanceM } from '../geometry/plane/xyDistance.ts';
import type { Xy } from '../geometry/types.ts';
import type { Project } from '../model/project.ts';
import type { BuriedRole, CrossingRecord } from '../model/recordThings.ts';
import type { CrossingFigures, GatewayShape, Survey } from '../registers/types.ts';
import { type CrossingSource, crossingSource } from './crossingSource.ts';
import { type SolvedPoint, solvePoint } from './ties.ts';

/** Where a crossing lies, by its record as far as there is one, and as drawn for the rest. */
export interface CrossingAsBuilt {
  readonly figures: CrossingFigures;
  readonly shape: GatewayShape;
  readonly record: CrossingRecord | null;
  readonly plane: LocalPlane;
  readonly points: readonly SolvedPoint[];
  /** Plan of the trench from the start post's riser foot to the end post's. */
  readonly path: readonly Xy[];
  readonly lengthM: number;
  readonly startFoot: Xy;
  readonly endFoot: Xy;
  /** The feet, the bend or the points were measured; false where the path is only drawn. */
  readonly measured: boolean;
  /** The largest standard error of the measured points, metres; null where none is known. */
  readonly seM: number | null;
}

/** A trench does not bow more than this share of the distance between its feet. */
const mostBowShare = 2;

/** Works out where the crossing of a gateway lies; null where it has none, or an overhead one. */
export function crossingAt(project: Project, survey: Survey, gatewayId: string): CrossingAsBuilt | null {
  const source = crossingSource(project, survey, gatewayId);
  return source && crossingAsBuilt(source);
}

/** Works out where a crossing lies. */
export function crossingAsBuilt(source: CrossingSource): CrossingAsBuilt {
  const { figures, shape, record, plane } = source;
  const points = source.points.map((point) => solvePoint(point, source));
  const placed = (role: BuriedRole) => points.find(({ point, xy }) => point.role === role && xy)?.xy ?? null;
  const startFoot = placed('startFoot') ?? shape.startPost;
  const endFoot = placed('endFoot') ?? shape.endPost;
  const path = routeOf(record, points, startFoot, endFoot, figures);
  const errors = points.flatMap(({ xy, seM }) => (xy && seM !== null ? [seM] : []));
  return {
    figures,
    shape,
    record,
    plane,
    points,
    path,
    lengthM: cumulativeLengthsM(path).at(-1) ?? 0,
    startFoot,
    endFoot,
    measured: points.some(({ xy }) => xy !== null) || !figures.bowAssumed,
    seM: errors.length > 0 ? Math.max(...errors) : null,
  };
}

function routeOf(
  record: CrossingRecord | null,
  points: readonly SolvedPoint[],
  startFoot: Xy,
  endFoot: Xy,
  { crossing, bowM }: CrossingFigures,
): readonly Xy[] {
  const between = points.filter(({ point }) => point.role === 'bend' || point.role === 'point');
  if (record?.route === 'points') {
    const via = between.flatMap(({ xy }) => (xy ? [xy] : []));
    return [startFoot, ...via, endFoot];
  }
  const bend = between.find(({ point, xy }) => point.role === 'bend' && xy)?.xy;
  if (!bend) return arcPath(startFoot, endFoot, crossing.bowSide === 'left' ? bowM : -bowM);
  const signedBowM = bowThrough(startFoot, endFoot, bend, Infinity);
  // A bend beyond the feet lies on no arc that anybody digs.
  const widestM = mostBowShare * xyDistanceM(startFoot, endFoot);
  return Math.abs(signedBowM) <= widestM ? arcPath(startFoot, endFoot, signedBowM) : [startFoot, bend, endFoot];
}

/**
 * Depth at a place along the trench: as measured there, in a straight line between measured places, and the nearest
 * one's beyond the first and last. Without measurements the crossing's own.
 */
export function depthAtM({ record, figures }: CrossingAsBuilt, alongM: number): number {
  const depths = [...(record?.depths ?? [])].sort((a, b) => a.alongM - b.alongM);
  const after = depths.findIndex((depth) => depth.alongM >= alongM);
  if (after === -1) return depths.at(-1)?.depthM ?? figures.crossing.depthM;
  const [a, b] = [depths[after - 1], depths[after]!];
  if (!a || b.alongM === a.alongM) return b.depthM;
  return a.depthM + ((b.depthM - a.depthM) * (alongM - a.alongM)) / (b.alongM - a.alongM);
}
