import type { Xy } from '../types.ts';
import { between } from './vector.ts';
import { xyBearingDeg } from './xyBearing.ts';
import { xyDistanceM } from './xyDistance.ts';

export interface PointAtStation {
  readonly point: Xy;
  readonly segment: number;
  /** How far along that segment, 0 to 1. */
  readonly fraction: number;
  /** The path's direction there: degrees clockwise from grid north. */
  readonly bearingDeg: number;
}

/**
 * The point `stationM` metres along a path from its start. Stations before the start or past the end give the end
 * vertex. At a vertex the answer lies on the segment that arrives there.
 * @throws RangeError for a path with fewer than two vertices or a station that is not a number.
 */
export function pointAtStation(path: readonly Xy[], stationM: number): PointAtStation {
  if (path.length < 2) throw new RangeError('A point along a path needs a path of at least two vertices.');
  if (Number.isNaN(stationM)) throw new RangeError('The station along the path is not a number.');
  let leftM = stationM;
  const last = lastSegmentWithLength(path);
  for (let segment = 0; ; segment++) {
    const a = path[segment]!;
    const b = path[segment + 1]!;
    const lengthM = xyDistanceM(a, b);
    if ((leftM <= lengthM && lengthM > 0) || segment === last) {
      const fraction = lengthM === 0 ? 0 : Math.min(1, Math.max(0, leftM / lengthM));
      return { point: between(a, b, fraction), segment, fraction, bearingDeg: xyBearingDeg(a, b) };
    }
    leftM -= lengthM;
  }
}

/** The last segment of all where none has any length. */
function lastSegmentWithLength(path: readonly Xy[]): number {
  for (let segment = path.length - 2; segment >= 0; segment--) {
    if (xyDistanceM(path[segment]!, path[segment + 1]!) > 0) return segment;
  }
  return path.length - 2;
}
