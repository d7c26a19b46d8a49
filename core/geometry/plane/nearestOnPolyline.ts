import type { Xy } from '../types.ts';
import { nearestOnSegment } from './nearestOnSegment.ts';
import { cross, subtract } from './vector.ts';
import { xyDistanceM } from './xyDistance.ts';

export interface NearestOnPolyline {
  readonly point: Xy;
  /** The segment the point lies on, from 0. */
  readonly segment: number;
  /** How far along that segment, 0 to 1. */
  readonly fraction: number;
  /** Distance along the path from its start, metres. */
  readonly stationM: number;
  readonly distanceM: number;
  /** Which hand the target lies on, looking along that segment; null when it is on the segment's line. */
  readonly side: 'left' | 'right' | null;
}

/** The point of a path nearest to `target`; the first of equals. Null for a path without vertices. */
export function nearestOnPolyline(target: Xy, path: readonly Xy[]): NearestOnPolyline | null {
  const first = path[0];
  if (!first) return null;
  let best: NearestOnPolyline = {
    point: first,
    segment: 0,
    fraction: 0,
    stationM: 0,
    distanceM: xyDistanceM(target, first),
    side: null,
  };
  let startM = 0;
  for (let segment = 0; segment + 1 < path.length; segment++) {
    const a = path[segment]!;
    const b = path[segment + 1]!;
    const lengthM = xyDistanceM(a, b);
    const here = nearestOnSegment(target, a, b);
    if (here.distanceM < best.distanceM || segment === 0) {
      const turn = cross(subtract(b, a), subtract(target, a));
      const side = turn > 0 ? 'left' : turn < 0 ? 'right' : null;
      best = { ...here, segment, stationM: startM + here.fraction * lengthM, side };
    }
    startM += lengthM;
  }
  return best;
}
