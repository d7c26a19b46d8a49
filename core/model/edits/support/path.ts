/** Fence paths on the earth: stations along them (geodesic metres from the start), and the places at those stations. */
import { distanceM, segmentLengthsM } from '../../../geometry/geodesic.ts';
import { createLocalPlane } from '../../../geometry/localPlane.ts';
import { nearestOnPolyline } from '../../../geometry/polyline.ts';
import { between } from '../../../geometry/vector.ts';
import { type Project, propertyOf } from '../../project.ts';
import type { LonLat } from '../../things.ts';

export type Path = readonly LonLat[];

/** Vertices nearer than this are the same vertex. */
export const sameVertexM = 0.001;

/** The station of every vertex; the last is the length. */
export function vertexStationsM(path: Path): number[] {
  let stationM = 0;
  return [0, ...segmentLengthsM(path).map((lengthM) => (stationM += lengthM))];
}

export function isClosed(path: Path): boolean {
  return path.length > 3 && sameVertex(path[0]!, path.at(-1)!);
}

export function sameVertex(a: LonLat, b: LonLat): boolean {
  return (a[0] === b[0] && a[1] === b[1]) || (couldBeWithin(a, b, sameVertexM) && distanceM(a, b) <= sameVertexM);
}

/** A path without the vertices that merely double the one before. */
export function withoutDoubles(path: Path): LonLat[] {
  return path.filter((vertex, i) => i === 0 || !sameVertex(path[i - 1]!, vertex));
}

export interface PlaceOnPath {
  readonly segment: number;
  /** How far along that segment, 0 to 1. */
  readonly fraction: number;
}

/** The segment of a station and the share along it; stations off the path fall to its ends. */
export function placeOnPath(stationsM: readonly number[], atM: number): PlaceOnPath {
  const last = stationsM.length - 2;
  let segment = 0;
  while (segment < last && atM > stationsM[segment + 1]!) segment++;
  const lengthM = stationsM[segment + 1]! - stationsM[segment]!;
  const fraction = lengthM > 0 ? (atM - stationsM[segment]!) / lengthM : 0;
  return { segment, fraction: Math.min(1, Math.max(0, fraction)) };
}

/** The point at a station, on the straight line of the working plane between two vertices. */
export function pointOnPath(project: Project, path: Path, atM: number): LonLat {
  const { segment, fraction } = placeOnPath(vertexStationsM(path), atM);
  return pointOnSegment(project, path[segment]!, path[segment + 1]!, fraction);
}

/** The point a share of the way from `a` to `b`, straight in the working plane; exactly `a` and `b` at the ends. */
export function pointOnSegment(project: Project, a: LonLat, b: LonLat, fraction: number): LonLat {
  if (fraction <= 0) return a;
  if (fraction >= 1) return b;
  const plane = createLocalPlane(propertyOf(project).origin);
  return plane.toLonLat(between(plane.toXy(a), plane.toXy(b), fraction));
}

export interface NearestOnPath extends PlaceOnPath {
  readonly atM: number;
  readonly distanceM: number;
  readonly point: LonLat;
}

/** The place on a path nearest to a point, or null for a path without vertices. */
export function nearestOnPath(project: Project, path: Path, target: LonLat): NearestOnPath | null {
  const plane = createLocalPlane(propertyOf(project).origin);
  const near = nearestOnPolyline(plane.toXy(target), path.map(plane.toXy));
  if (!near) return null;
  const { segment, fraction } = near;
  const stationsM = vertexStationsM(path);
  const startM = stationsM[segment]!;
  const endM = stationsM[segment + 1] ?? startM;
  return {
    segment,
    fraction,
    atM: startM + fraction * (endM - startM),
    distanceM: near.distanceM,
    point: plane.toLonLat(near.point),
  };
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
