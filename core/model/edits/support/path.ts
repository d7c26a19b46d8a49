import { type MeasuredPath, measured } from '../../../shapes/measuredPath.ts';
import { planeOf } from '../../../shapes/workingPlane.ts';
import type { Project } from '../../project.ts';
import type { LonLat } from '../../things.ts';

export type Path = readonly LonLat[];

/** Vertices nearer than this are the same vertex. */
export const sameVertexM = 0.001;

/** A path of a drawing, as it is or as an edit makes it, with its measure. */
export function pathIn(project: Project, path: Path): MeasuredPath {
  return measured(planeOf(project), path);
}

export function sameVertex(project: Project, a: LonLat, b: LonLat): boolean {
  if (a[0] === b[0] && a[1] === b[1]) return true;
  return couldBeWithin(a, b, sameVertexM) && planeOf(project).earth.distanceM(a, b) <= sameVertexM;
}

/** A path without the vertices that merely double the one before. */
export function withoutDoubles(project: Project, path: Path): LonLat[] {
  return path.filter((vertex, i) => i === 0 || !sameVertex(project, path[i - 1]!, vertex));
}

/** The point a share of the way from `a` to `b`; exactly `a` and `b` at the ends. */
export function pointBetween(project: Project, a: LonLat, b: LonLat, fraction: number): LonLat {
  if (fraction <= 0) return a;
  if (fraction >= 1) return b;
  const { earth } = planeOf(project);
  return earth.along([a, b], fraction * earth.distanceM(a, b));
}

const leastMetresPerDegree = 110_500;

/** A quick look in degrees that passes over most pairs: false means that the points are surely further apart. */
export function couldBeWithin(a: LonLat, b: LonLat, marginM: number): boolean {
  const marginDeg = marginM / leastMetresPerDegree;
  if (Math.abs(a[1] - b[1]) > marginDeg) return false;
  const apartDeg = Math.abs(a[0] - b[0]);
  const lonDeg = apartDeg > 180 ? 360 - apartDeg : apartDeg;
  return lonDeg * Math.cos(((Math.abs(a[1]) + marginDeg) * Math.PI) / 180) <= marginDeg;
}
