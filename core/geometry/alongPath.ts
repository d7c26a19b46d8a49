/**
 * Places along a path on the earth, by geodesic distance from its first vertex (`atM` throughout the model). Distances
 * before the start or past the end give the end vertex.
 */
import { bearingDeg, destination, segmentLengthsM } from './geodesic.ts';
import type { LonLat } from './types.ts';

export interface PlaceAlongPath {
  readonly at: LonLat;
  readonly segment: number;
  /** How far along that segment, 0 to 1. */
  readonly fraction: number;
  /** The path's true bearing there, degrees clockwise from north. */
  readonly bearingDeg: number;
}

/**
 * The place `atM` metres along a path. At a vertex the answer lies on the segment that arrives there. Pass the
 * `lengthsM` of the segments where they are already known.
 * @throws RangeError for a path with fewer than two vertices or a distance that is not a number.
 */
export function placeAlongPath(
  path: readonly LonLat[],
  atM: number,
  lengthsM: readonly number[] = segmentLengthsM(path),
): PlaceAlongPath {
  if (path.length < 2) throw new RangeError('A place along a path needs a path of at least two vertices.');
  if (Number.isNaN(atM)) throw new RangeError('The distance along the path is not a number.');
  const last = Math.max(
    0,
    lengthsM.findLastIndex((lengthM) => lengthM > 0),
  );
  let segment = 0;
  let leftM = atM;
  while (segment < last && (leftM > lengthsM[segment]! || lengthsM[segment] === 0)) leftM -= lengthsM[segment++]!;
  const [a, b, lengthM] = [path[segment]!, path[segment + 1]!, lengthsM[segment]!];
  const fraction = lengthM === 0 ? 0 : Math.min(1, Math.max(0, leftM / lengthM));
  if (fraction === 0) return { at: a, segment, fraction, bearingDeg: bearingDeg(a, b) };
  if (fraction === 1) return { at: b, segment, fraction, bearingDeg: (bearingDeg(b, a) + 180) % 360 };
  const at = destination(a, bearingDeg(a, b), fraction * lengthM);
  return { at, segment, fraction, bearingDeg: bearingDeg(at, b) };
}

/** The piece of a path between two distances along it; backwards where `fromM` is larger. Errors as for a place. */
export function sliceAlongPath(
  path: readonly LonLat[],
  fromM: number,
  toM: number,
  lengthsM: readonly number[] = segmentLengthsM(path),
): LonLat[] {
  if (fromM > toM) return sliceAlongPath(path, toM, fromM, lengthsM).reverse();
  const start = placeAlongPath(path, fromM, lengthsM);
  const end = placeAlongPath(path, toM, lengthsM);
  const inner = path.slice(start.segment + 1, end.segment + 1);
  while (inner[0] && same(inner[0], start.at)) inner.shift();
  while (inner.length > 0 && same(inner.at(-1)!, end.at)) inner.pop();
  return [start.at, ...inner, end.at];
}

function same(a: LonLat, b: LonLat): boolean {
  return a[0] === b[0] && a[1] === b[1];
}
