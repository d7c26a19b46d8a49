/**
 * A path on the earth with a measure along it. Everything that is asked of a line "so many metres along" is answered
 * here, in one kind of metres: a station is the geodesic distance from the first vertex, the `atM` of the file. What is
 * drawn lies straight in the working plane between vertices (`xyAt`); what is set out on the earth, for the file or for
 * other programs, is Turf's (`lonLatAt`, `slice`). The two lie within a millimetre of each other: a straight of L
 * metres in the plane, r metres from the property's origin, bows by at most L² r / (12 R²), 0.1 mm for a kilometre at
 * 50 km.
 */
import { type Box, boxAround } from '../geometry/box.ts';
import type { LocalPlane } from '../geometry/localPlane.ts';
import { nearestOnPolyline } from '../geometry/polyline.ts';
import type { LonLat, Xy } from '../geometry/types.ts';
import { between, subtract, unit, xyDistanceM } from '../geometry/vector.ts';
import { keptFor, keptForPair } from '../model/memo.ts';
import { isPlaceOnEarth } from './workingPlane.ts';

/** Shorter than this is no length at all: a path this short is a point, and ends this near close a line. */
export const leastLengthM = 0.001;

export interface MeasuredPath {
  readonly path: readonly LonLat[];
  readonly plane: LocalPlane;
  readonly xy: readonly Xy[];
  /** The station of each vertex: metres from the first. Turf would add them up anew for each question. */
  readonly stationsM: readonly number[];
  readonly lengthM: number;
  /** It ends where it began, and is no mere way there and back. */
  readonly closed: boolean;
  readonly box: Box;
}

/** As much of a path as its stations need. */
type Stations = Pick<MeasuredPath, 'stationsM'>;
type InPlane = Pick<MeasuredPath, 'stationsM' | 'xy'>;

/** A place along a path: the segment, and how far along it (0 to 1). */
export interface PathPlace {
  readonly segment: number;
  readonly fraction: number;
}

/**
 * A path measured, once for each path and plane. Null where it has fewer than two vertices or any of them is no place on
 * earth.
 */
export function measuredPath(path: readonly LonLat[], plane: LocalPlane): MeasuredPath | null {
  return path.length >= 2 && path.every(isPlaceOnEarth) ? measured(plane, path) : null;
}

/** The same of a path that is known to be sound, or that an edit has just made. */
export const measured = keptForPair((plane: LocalPlane, path: readonly LonLat[]): MeasuredPath => {
  const xy = path.map(plane.toXy);
  const stationsM = [0];
  for (const lengthM of plane.earth.segmentLengthsM(path)) stationsM.push(stationsM.at(-1)! + lengthM);
  const lengthM = stationsM.at(-1)!;
  const closed = path.length > 3 && lengthM > leastLengthM && xyDistanceM(xy[0]!, xy.at(-1)!) <= leastLengthM;
  return { path, plane, xy, stationsM, lengthM, closed, box: boxAround(xy) ?? [0, 0, 0, 0] };
});

/** The place at a station; stations before the start or past the end give the ends. A vertex begins its segment. */
export function placeAt({ stationsM }: Stations, stationM: number): PathPlace {
  const last = stationsM.length - 1;
  if (!(stationM > 0)) return { segment: 0, fraction: 0 };
  if (stationM >= stationsM[last]!) return { segment: Math.max(0, last - 1), fraction: 1 };
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
export function stationOf({ stationsM }: Stations, { segment, fraction }: PathPlace): number {
  const startM = stationsM[segment]!;
  return startM + fraction * ((stationsM[segment + 1] ?? startM) - startM);
}

/** The point at a station, linear in the plane between vertices. */
export function xyAt(path: InPlane, stationM: number): Xy {
  const { segment, fraction } = placeAt(path, stationM);
  return between(path.xy[segment]!, path.xy[segment + 1] ?? path.xy[segment]!, fraction);
}

/** The piece between two stations, `fromM < toM`, in the plane; a whole path is its own vertices. */
export function xySlice(path: InPlane, fromM: number, toM: number): readonly Xy[] {
  const { xy, stationsM } = path;
  if (fromM <= 0 && toM >= stationsM.at(-1)!) return xy;
  const piece: Xy[] = [xyAt(path, fromM)];
  for (let i = placeAt(path, fromM).segment + 1; i < xy.length && stationsM[i]! < toM; i++) {
    if (stationsM[i]! > fromM) piece.push(xy[i]!);
  }
  piece.push(xyAt(path, toM));
  return piece;
}

const mostPlacesKept = 4096;

/** Places along a path that were asked for; the same stations come again. */
const placesOf = keptFor((_: MeasuredPath['stationsM']) => new Map<number, LonLat>());

/** The point at a station in degrees; a vertex gives its own coordinates. */
export function lonLatAt(
  { path, plane, stationsM }: Pick<MeasuredPath, 'path' | 'plane' | 'stationsM'>,
  stationM: number,
): LonLat {
  const { segment, fraction } = placeAt({ stationsM }, stationM);
  if (fraction === 0) return path[segment]!;
  if (fraction === 1) return path[segment + 1] ?? path[segment]!;
  const places = placesOf(stationsM);
  let at = places.get(stationM);
  if (!at) {
    if (places.size >= mostPlacesKept) places.clear();
    at = plane.earth.along([path[segment]!, path[segment + 1]!], stationM - stationsM[segment]!);
    places.set(stationM, at);
  }
  return at;
}

/** The piece between two stations, `fromM < toM`, on the earth; its own vertices keep their coordinates. */
export function slice({ path, plane }: MeasuredPath, fromM: number, toM: number): readonly LonLat[] {
  return plane.earth.slice(path, fromM, toM);
}

/** Direction of the path at a station, as a unit vector; `[0, 0]` for a path without length. */
export function directionAt({ stationsM, xy }: InPlane, stationM: number): Xy {
  let { segment } = placeAt({ stationsM }, stationM);
  while (segment > 0 && stationsM[segment + 1] === stationsM[segment]) segment--;
  return unit(subtract(xy[segment + 1] ?? xy[segment]!, xy[segment]!));
}

export interface NearestOnPath extends PathPlace {
  readonly stationM: number;
  readonly distanceM: number;
  readonly xy: Xy;
  /** Which hand the target lies on, looking along that segment; null when it is on the segment's line. */
  readonly side: 'left' | 'right' | null;
}

/** The place of a path nearest to a point of the plane; the first of equals. */
export function nearestOn(path: InPlane, target: Xy): NearestOnPath {
  const { segment, fraction, distanceM, point, side } = nearestOnPolyline(target, path.xy)!;
  return { segment, fraction, stationM: stationOf(path, { segment, fraction }), distanceM, xy: point, side };
}

/** The station within a line of one that may lie past its closing vertex. */
export function wrapStation(stationM: number, { lengthM, closed }: Pick<MeasuredPath, 'lengthM' | 'closed'>): number {
  if (!closed) return stationM;
  if (stationM < 0) return stationM + lengthM;
  return stationM > lengthM ? stationM - lengthM : stationM;
}
