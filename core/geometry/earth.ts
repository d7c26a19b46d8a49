/**
 * How long, which way and how big: the one module that measures on the earth. Everything shown to a user as a length, a
 * bearing or an area comes from here, and what is set out by a length or a bearing too.
 *
 * Turf measures and constructs, on the Gauss conformal sphere at the property's origin (`gaussSphere.ts`): there its
 * spherical formulas agree with the WGS 84 geodesic to 1e-9 in a length within 50 km of the origin and to 5e-8 within
 * 200 km, while on its own sphere they are off by up to 6e-3. Turf gives lengths for a sphere of its `earthRadius`
 * (6,371,008.8 m, the mean radius of GRS 80); they are multiplied by our sphere's radius over that one. What reaches
 * beyond 200 km of the origin, or has its origin within 5 degrees of a pole, is a geodesic of the ellipsoid. Areas are
 * always of the ellipsoid: Turf's are off by up to 7e-4 at 20 km.
 * Longitudes may be given on either side of the 180 meridian; a line takes the short way round.
 */
import {
  earthRadius,
  lineArc,
  lineSliceAlong,
  lineString,
  along as turfAlong,
  bearing as turfBearing,
  destination as turfDestination,
  distance as turfDistance,
  midpoint as turfMidpoint,
} from '@turf/turf';
import { gaussSphereAt } from './gaussSphere.ts';
import * as geodesic from './geodesic.ts';
import type { LonLat } from './types.ts';

/** Measures round one origin. */
export interface Earth {
  readonly origin: LonLat;
  /** Length of the straight line from `a` to `b`, metres. */
  readonly distanceM: (a: LonLat, b: LonLat) => number;
  /** Lengths of the segments of a path, metres: one fewer than it has vertices. Doubled vertices give zeros. */
  readonly segmentLengthsM: (path: readonly LonLat[]) => number[];
  /** Length of a path, metres: the sum of its segments; 0 for fewer than two vertices. */
  readonly pathLengthM: (path: readonly LonLat[]) => number;
  /** True bearing at `from` of the line to `to`: degrees clockwise from north, 0 <= b < 360; 0 where the points coincide. */
  readonly bearingDeg: (from: LonLat, to: LonLat) => number;
  /** The point `lengthM` metres from `from` along the line that leaves it at `bearing` degrees; longitude in [-180, 180]. */
  readonly destination: (from: LonLat, bearing: number, lengthM: number) => LonLat;
  /** The point half way from `a` to `b`. */
  readonly midpoint: (a: LonLat, b: LonLat) => LonLat;
  /** The point `stationM` metres along a path from its start; the ends' own coordinates before and past them. */
  readonly along: (path: readonly LonLat[], stationM: number) => LonLat;
  /** The piece of a path between two stations, `fromM < toM`, clipped to it; its own vertices keep their coordinates. */
  readonly slice: (path: readonly LonLat[], fromM: number, toM: number) => LonLat[];
  /** Points at even steps on a circle round `centre`, clockwise from one bearing to another, both ends included. */
  readonly arc: (centre: LonLat, radiusM: number, fromDeg: number, toDeg: number, steps: number) => LonLat[];
  /**
   * Area inside a ring, square metres, never negative, whichever way round it runs; geodesic, by GeographicLib. The last
   * vertex may repeat the first or not.
   */
  readonly ringAreaM2: (ring: readonly LonLat[]) => number;
}

const kept: Earth[] = [];
const mostKept = 8;

/** The measures round an origin: the property's, or a place near what is to be measured. The same origin gives the same object. */
export function earthAt(origin: LonLat): Earth {
  const known = kept.find((earth) => earth.origin[0] === origin[0] && earth.origin[1] === origin[1]);
  if (known) return known;
  const earth = createEarth(origin);
  kept.unshift(earth);
  kept.length = Math.min(kept.length, mostKept);
  return earth;
}

type Position = [number, number];

const metres = { units: 'meters' } as const;

function createEarth(origin: LonLat): Earth {
  const { radiusM, toSphere, fromSphere } = gaussSphereAt(origin);
  const ours = radiusM / earthRadius;
  const onSphere = (lonLat: LonLat): Position | null => toSphere(lonLat) as Position | null;
  const onEarth = ({ geometry }: { geometry: { coordinates: number[] } }): LonLat =>
    fromSphere(geometry.coordinates as Position);

  /** All places on the sphere, or null where one of them is too far. */
  const allOnSphere = (path: readonly LonLat[]): Position[] | null => {
    const positions: Position[] = [];
    for (const lonLat of path) {
      const position = onSphere(lonLat);
      if (!position) return null;
      positions.push(position);
    }
    return positions;
  };

  const distanceM = (a: LonLat, b: LonLat): number => {
    const [from, to] = [onSphere(a), onSphere(b)];
    return from && to ? turfDistance(from, to, metres) * ours : geodesic.distanceM(a, b);
  };

  const segmentLengthsM = (path: readonly LonLat[]): number[] => {
    const lengths: number[] = [];
    let before = path[0] ? onSphere(path[0]) : null;
    for (let i = 1; i < path.length; i++) {
      const here = onSphere(path[i]!);
      const near = before && here;
      lengths.push(near ? turfDistance(before!, here, metres) * ours : geodesic.distanceM(path[i - 1]!, path[i]!));
      before = here;
    }
    return lengths;
  };

  const pathLengthM = (path: readonly LonLat[]): number =>
    segmentLengthsM(path).reduce((total, lengthM) => total + lengthM, 0);

  const bearingDeg = (from: LonLat, to: LonLat): number => {
    if (from[0] === to[0] && from[1] === to[1]) return 0;
    const [a, b] = [onSphere(from), onSphere(to)];
    return a && b ? geodesic.clockwiseFromNorth(turfBearing(a, b)) : geodesic.bearingDeg(from, to);
  };

  const destination = (from: LonLat, bearing: number, lengthM: number): LonLat => {
    const start = onSphere(from);
    const end = start && onEarth(turfDestination(start, lengthM / ours, bearing, metres));
    return end && onSphere(end) ? end : geodesic.destination(from, bearing, lengthM);
  };

  /** The segment of a station and the way along it. */
  const segmentAt = (path: readonly LonLat[], stationM: number) => {
    const lengths = segmentLengthsM(path);
    let segment = 0;
    let leftM = stationM;
    while (segment < lengths.length - 1 && leftM > lengths[segment]!) leftM -= lengths[segment++]!;
    return { segment, leftM, lengthM: lengths[segment] ?? 0 };
  };

  const along = (path: readonly LonLat[], stationM: number): LonLat => {
    if (!(stationM > 0) || path.length < 2) return path[0]!;
    const positions = allOnSphere(path);
    if (positions) {
      const line = lineString(positions);
      const at = turfAlong(line, stationM / ours, metres).geometry.coordinates as Position;
      const last = positions.at(-1)!;
      return at[0] === last[0] && at[1] === last[1] ? path.at(-1)! : fromSphere(at);
    }
    const { segment, leftM, lengthM } = segmentAt(path, stationM);
    if (leftM >= lengthM) return path[segment + 1]!;
    return geodesic.destination(path[segment]!, geodesic.bearingDeg(path[segment]!, path[segment + 1]!), leftM);
  };

  const slice = (path: readonly LonLat[], fromM: number, toM: number): LonLat[] => {
    if (path.length < 2) return [...path];
    const positions = allOnSphere(path);
    if (!positions) {
      const [first, last] = [segmentAt(path, Math.max(0, fromM)), segmentAt(path, toM)];
      return [along(path, fromM), ...path.slice(first.segment + 1, last.segment + 1), along(path, toM)];
    }
    const vertexAt = new Map(positions.map((position, i) => [position, path[i]!] as const));
    const piece = lineSliceAlong(lineString(positions), Math.max(0, fromM) / ours, toM / ours, metres);
    return piece.geometry.coordinates.map((at) => vertexAt.get(at as Position) ?? fromSphere(at as Position));
  };

  return {
    origin,
    distanceM,
    segmentLengthsM,
    pathLengthM,
    bearingDeg,
    destination,
    midpoint: (a, b) => {
      const [from, to] = [onSphere(a), onSphere(b)];
      return from && to
        ? onEarth(turfMidpoint(from, to))
        : geodesic.destination(a, geodesic.bearingDeg(a, b), geodesic.distanceM(a, b) / 2);
    },
    along,
    slice,
    arc: (centre, radius, fromDeg, toDeg, steps) => {
      const middle = onSphere(centre);
      if (middle) {
        const line = lineArc(middle, radius / ours, fromDeg, toDeg, { ...metres, steps });
        return line.geometry.coordinates.map((at) => fromSphere(at as Position));
      }
      const turnDeg = (((toDeg - fromDeg) % 360) + 360) % 360 || 360;
      return Array.from({ length: steps + 1 }, (_, i) =>
        geodesic.destination(centre, fromDeg + (turnDeg * i) / steps, radius),
      );
    },
    ringAreaM2: geodesic.ringAreaM2,
  };
}
