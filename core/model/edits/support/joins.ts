/** What touches what in the drawing: joins are places, not records. */
import { nearestOnSegment } from '../../../geometry/polyline.ts';
import { planeOf } from '../../../shapes/workingPlane.ts';
import { type Project, propertyOf } from '../../project.ts';
import type { LonLat } from '../../things.ts';
import { couldBeWithin } from './path.ts';

export interface LineVertex {
  readonly lineId: string;
  readonly index: number;
}

/** Whether two points are near enough to count as joined. */
export function joins(project: Project, a: LonLat, b: LonLat): boolean {
  const toleranceM = propertyOf(project).snapToleranceM;
  return couldBeWithin(a, b, toleranceM) && planeOf(project).earth.distanceM(a, b) <= toleranceM;
}

/** All fence-line vertices that join a point. */
export function verticesAt(project: Project, at: LonLat): LineVertex[] {
  const vertices: LineVertex[] = [];
  for (const line of project.fenceLine.values()) {
    for (const [index, vertex] of line.path.entries()) {
      if (joins(project, at, vertex)) vertices.push({ lineId: line.id, index });
    }
  }
  return vertices;
}

/** The share of the segment from `a` to `b` at which a point touches it, or null where it does not. */
export type TouchShare = (point: LonLat) => number | null;

/** Asks many points whether they touch one segment; points that join its ends are told by 0 and 1. */
export function touching(project: Project, a: LonLat, b: LonLat): TouchShare {
  const { snapToleranceM } = propertyOf(project);
  const plane = planeOf(project);
  const [from, to] = [plane.toXy(a), plane.toXy(b)];
  const reachM = plane.earth.distanceM(a, b) + snapToleranceM;
  return (point) => {
    if (!couldBeWithin(a, point, reachM)) return null;
    const near = nearestOnSegment(plane.toXy(point), from, to);
    return near.distanceM <= snapToleranceM ? near.fraction : null;
  };
}
