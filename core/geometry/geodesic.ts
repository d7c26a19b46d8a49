/**
 * Geodesics of the WGS 84 ellipsoid, solved by GeographicLib (C. F. F. Karney, "Algorithms for geodesics", Journal of
 * Geodesy 87, 2013), good to about 15 nanometres in a length. What the product measures goes through `earth.ts`, which
 * comes here for areas, for the working plane and for places too far from the property's origin; the tests come here
 * for what is true.
 * Longitudes may be given on either side of the 180 meridian; a line takes the short way round.
 */
import geographiclib from 'geographiclib-geodesic';
import { gaussSphereAt } from './gaussSphere.ts';
import { signedRingArea } from './ring.ts';
import type { LonLat, Xy } from './types.ts';

const { Geodesic } = geographiclib;
const wgs84 = Geodesic.WGS84;
const radiansPerDegree = Math.PI / 180;

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

/** Metres east and north of `origin`, along the geodesic from it: the azimuthal equidistant plane. */
export function eastNorthM(origin: LonLat, [lon, lat]: LonLat): Xy {
  const { s12, azi1 } = wgs84.Inverse(origin[1], origin[0], lat, lon, Geodesic.DISTANCE | Geodesic.AZIMUTH);
  const azimuth = azi1! * radiansPerDegree;
  return [s12! * Math.sin(azimuth) + 0, s12! * Math.cos(azimuth) + 0];
}

/**
 * Area inside a ring of geodesics, square metres, never negative, whichever way round it runs. The last vertex may
 * repeat the first or not. A ring that crosses itself has no meaningful area: its loops cancel each other.
 */
export function ringAreaM2(ring: readonly LonLat[]): number {
  if (ring.length < 3) return 0;
  const inPlane = smallRing(ring);
  if (inPlane) return Math.abs(signedRingArea(inPlane));
  const polygon = wgs84.Polygon(false);
  for (const [lon, lat] of ring) polygon.AddPoint(lat, lon);
  return Math.abs(polygon.Compute(false, true).area!);
}

/** The ring in the plane at its first vertex; null where it reaches too far from it. */
function smallRing(ring: readonly LonLat[]): Xy[] | null {
  const { toPlane } = gaussSphereAt(ring[0]!);
  const inPlane: Xy[] = [];
  for (const vertex of ring) {
    const xy = toPlane(vertex);
    if (!xy || xy[0] ** 2 + xy[1] ** 2 > planeRingRadiusM ** 2) return null;
    inPlane.push(xy);
  }
  return inPlane;
}

/** Length of a ring's boundary, metres. The last vertex may repeat the first or not. */
export function ringPerimeterM(ring: readonly LonLat[]): number {
  const [first, last] = [ring[0], ring.at(-1)];
  return first && last ? pathLengthM(ring) + distanceM(last, first) : 0;
}

/** Degrees clockwise from north, 0 <= b < 360, of an azimuth in [-180, 180]. */
export function clockwiseFromNorth(azimuthDeg: number): number {
  const turned = azimuthDeg < 0 ? azimuthDeg + 360 : azimuthDeg;
  return turned === 360 ? 0 : turned + 0;
}
