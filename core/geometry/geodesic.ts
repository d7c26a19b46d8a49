/**
 * How long and how big: the one module that measures on the earth. Everything shown to a user as a length, a bearing
 * or an area comes from here.
 *
 * Lines between vertices are geodesics of the WGS 84 ellipsoid, solved by GeographicLib (C. F. F. Karney, "Algorithms
 * for geodesics", Journal of Geodesy 87, 2013), good to about 15 nanometres in a length.
 * Longitudes may be given on either side of the 180 meridian; a line takes the short way round.
 */
import geographiclib from 'geographiclib-geodesic';
import { createLocalPlane } from './localPlane.ts';
import { signedRingArea } from './ring.ts';
import type { LonLat } from './types.ts';

const { Geodesic } = geographiclib;
const wgs84 = Geodesic.WGS84;

/**
 * Rings that stay this near to their first vertex are measured in a plane laid at that vertex: the plane is wrong by
 * (r/R)²/6, under 1e-8 at 1 km, while the ellipsoidal sum carries a fixed noise of some 0.05 m², too much for a yard.
 */
const planeRingRadiusM = 1000;

/** Length of the geodesic from `a` to `b`, metres. */
export function distanceM(a: LonLat, b: LonLat): number {
  return wgs84.Inverse(a[1], a[0], b[1], b[0], Geodesic.DISTANCE).s12!;
}

/** Lengths of the segments of a path, metres: one fewer than it has vertices. Doubled vertices give zeros. */
export function segmentLengthsM(path: readonly LonLat[]): number[] {
  const lengths: number[] = [];
  for (let i = 1; i < path.length; i++) lengths.push(distanceM(path[i - 1]!, path[i]!));
  return lengths;
}

/** Length of a path, metres: the sum of its segments; 0 for fewer than two vertices. */
export function pathLengthM(path: readonly LonLat[]): number {
  let total = 0;
  for (let i = 1; i < path.length; i++) total += distanceM(path[i - 1]!, path[i]!);
  return total;
}

/** True bearing at `from` of the geodesic to `to`: degrees clockwise from north, 0 <= b < 360; 0 where the points coincide. */
export function bearingDeg(from: LonLat, to: LonLat): number {
  if (from[0] === to[0] && from[1] === to[1]) return 0;
  return clockwiseFromNorth(wgs84.Inverse(from[1], from[0], to[1], to[0], Geodesic.AZIMUTH).azi1!);
}

/** The point `lengthM` metres from `from` along the geodesic that leaves it at `bearing` degrees; longitude in [-180, 180]. */
export function destination(from: LonLat, bearing: number, lengthM: number): LonLat {
  const end = wgs84.Direct(from[1], from[0], bearing, lengthM, Geodesic.LATITUDE | Geodesic.LONGITUDE);
  return [end.lon2!, end.lat2!];
}

/**
 * Area inside a ring of geodesics, square metres, never negative, whichever way round it runs. The last vertex may
 * repeat the first or not. A ring that crosses itself has no meaningful area: its loops cancel each other.
 */
export function ringAreaM2(ring: readonly LonLat[]): number {
  if (ring.length < 3) return 0;
  const origin = ring[0]!;
  const plane = createLocalPlane(origin);
  const xy = ring.map(plane.toXy);
  if (xy.every(([x, y]) => Math.hypot(x, y) <= planeRingRadiusM)) return Math.abs(signedRingArea(xy));
  const polygon = wgs84.Polygon(false);
  for (const [lon, lat] of ring) polygon.AddPoint(lat, lon);
  return Math.abs(polygon.Compute(false, true).area!);
}

/** Length of a ring's boundary, metres. The last vertex may repeat the first or not. */
export function ringPerimeterM(ring: readonly LonLat[]): number {
  const first = ring[0];
  const last = ring.at(-1);
  return first && last ? pathLengthM(ring) + distanceM(last, first) : 0;
}

function clockwiseFromNorth(azimuthDeg: number): number {
  const turned = azimuthDeg < 0 ? azimuthDeg + 360 : azimuthDeg;
  return turned === 360 ? 0 : turned + 0;
}
