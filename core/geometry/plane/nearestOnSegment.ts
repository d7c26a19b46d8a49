import type { Xy } from '../types.ts';
import { between, dot, subtract } from './vector.ts';
import { xyDistanceM } from './xyDistance.ts';

export interface NearestOnSegment {
  readonly point: Xy;
  /** How far along from `a` to `b`, 0 to 1. */
  readonly fraction: number;
  readonly distanceM: number;
}

/** The point of the segment from `a` to `b` nearest to `target`. A segment without length is the point `a`. */
export function nearestOnSegment(target: Xy, a: Xy, b: Xy): NearestOnSegment {
  const along = subtract(b, a);
  const lengthSquared = dot(along, along);
  const raw = lengthSquared === 0 ? 0 : dot(subtract(target, a), along) / lengthSquared;
  const fraction = Math.min(1, Math.max(0, raw));
  const point = between(a, b, fraction);
  return { point, fraction, distanceM: xyDistanceM(target, point) };
}
