import { type Box, boxAround } from '../geometry/box.ts';
import { segmentLengthsM } from '../geometry/geodesic.ts';
import type { LocalPlane } from '../geometry/localPlane.ts';
import type { LonLat, Xy } from '../geometry/types.ts';
import { between, xyDistanceM } from '../geometry/vector.ts';
import { isPlaceOnEarth } from './workingPlane.ts';

/** Shorter than this is no length at all: a path this short is a point, and ends this near close a line. */
export const leastLengthM = 0.001;

/** A drawn path in the working plane, with its geodesic stations. */
export interface PathGeometry {
  readonly path: readonly LonLat[];
  readonly plane: LocalPlane;
  readonly xy: readonly Xy[];
  /** Geodesic distance from the first vertex to each vertex, metres. */
  readonly stationsM: readonly number[];
  readonly lengthM: number;
  /** It ends where it began, and is no mere way there and back. */
  readonly closed: boolean;
  readonly box: Box;
}

/** A place along a path: the segment, and how far along it (0 to 1). */
export interface PathPlace {
  readonly segment: number;
  readonly fraction: number;
}

const geometries = new WeakMap<LocalPlane, WeakMap<readonly LonLat[], PathGeometry | null>>();

/**
 * The geometry of a path, worked out once for each path and plane. Null where it has fewer than two vertices or any of
 * them is no place on earth.
 */
export function pathGeometry(path: readonly LonLat[], plane: LocalPlane): PathGeometry | null {
  let ofPlane = geometries.get(plane);
  if (!ofPlane) {
    ofPlane = new WeakMap();
    geometries.set(plane, ofPlane);
  }
  let geometry = ofPlane.get(path);
  if (geometry === undefined) {
    geometry = measure(path, plane);
    ofPlane.set(path, geometry);
  }
  return geometry;
}

function measure(path: readonly LonLat[], plane: LocalPlane): PathGeometry | null {
  if (path.length < 2 || !path.every(isPlaceOnEarth)) return null;
  const xy = path.map(plane.toXy);
  const stationsM = [0];
  for (const lengthM of segmentLengthsM(path)) stationsM.push(stationsM.at(-1)! + lengthM);
  const lengthM = stationsM.at(-1)!;
  const closed = path.length > 3 && lengthM > leastLengthM && xyDistanceM(xy[0]!, xy.at(-1)!) <= leastLengthM;
  return { path, plane, xy, stationsM, lengthM, closed, box: boxAround(xy)! };
}

/** The place at a station; stations before the start or past the end give the ends. */
export function placeAt({ stationsM }: Pick<PathGeometry, 'stationsM'>, stationM: number): PathPlace {
  const last = stationsM.length - 1;
  if (!(stationM > 0)) return { segment: 0, fraction: 0 };
  if (stationM >= stationsM[last]!) return { segment: last - 1, fraction: 1 };
  let low = 0;
  let high = last;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (stationsM[middle]! <= stationM) low = middle;
    else high = middle;
  }
  return { segment: low, fraction: (stationM - stationsM[low]!) / (stationsM[high]! - stationsM[low]!) };
}

/** The station of a place. */
export function stationOf({ stationsM }: PathGeometry, { segment, fraction }: PathPlace): number {
  const startM = stationsM[segment]!;
  return startM + fraction * (stationsM[segment + 1]! - startM);
}

/** The point at a station, linear in the plane between vertices. */
export function xyAt(geometry: Pick<PathGeometry, 'stationsM' | 'xy'>, stationM: number): Xy {
  const { segment, fraction } = placeAt(geometry, stationM);
  return between(geometry.xy[segment]!, geometry.xy[segment + 1]!, fraction);
}

const placesOnEarth = new WeakMap<PathGeometry, Map<number, LonLat>>();
const mostPlacesKept = 4096;

/** The point at a station in degrees; a vertex gives its own coordinates. Kept, as the same stations come again. */
export function lonLatAt(geometry: PathGeometry, stationM: number): LonLat {
  let places = placesOnEarth.get(geometry);
  if (!places || places.size >= mostPlacesKept) {
    places = new Map();
    placesOnEarth.set(geometry, places);
  }
  let at = places.get(stationM);
  if (!at) {
    const { segment, fraction } = placeAt(geometry, stationM);
    if (fraction === 0) at = geometry.path[segment]!;
    else if (fraction === 1) at = geometry.path[segment + 1]!;
    else at = geometry.plane.toLonLat(between(geometry.xy[segment]!, geometry.xy[segment + 1]!, fraction));
    places.set(stationM, at);
  }
  return at;
}

/** Direction of the path at a station, as a unit vector; `[0, 0]` for a path without length. */
export function directionAt(geometry: PathGeometry, stationM: number): Xy {
  let { segment } = placeAt(geometry, stationM);
  while (segment > 0 && geometry.stationsM[segment + 1] === geometry.stationsM[segment]) segment--;
  const [ax, ay] = geometry.xy[segment]!;
  const [bx, by] = geometry.xy[segment + 1]!;
  const length = Math.hypot(bx - ax, by - ay);
  return length === 0 ? [0, 0] : [(bx - ax) / length, (by - ay) / length];
}
