import { segmentIntersection } from '../../geometry/plane/segmentIntersection.ts';
import type { Xy } from '../../geometry/types.ts';

/** Where two paths cross or touch. */
export interface PathCrossing {
  readonly point: Xy;
  readonly segment: number;
  readonly fraction: number;
  /** The angle between the two there, 0 to 90 degrees. */
  readonly angleDeg: number;
}

/** Every place where `path` crosses `other`; `segment` and `fraction` are those of `path`. */
export function pathCrossings(path: readonly Xy[], other: readonly Xy[]): PathCrossing[] {
  const found: PathCrossing[] = [];
  for (let i = 0; i + 1 < path.length; i++) {
    const [a, b] = [path[i]!, path[i + 1]!];
    for (let j = 0; j + 1 < other.length; j++) {
      const [c, d] = [other[j]!, other[j + 1]!];
      if (Math.max(c[0], d[0]) < Math.min(a[0], b[0]) || Math.min(c[0], d[0]) > Math.max(a[0], b[0])) continue;
      if (Math.max(c[1], d[1]) < Math.min(a[1], b[1]) || Math.min(c[1], d[1]) > Math.max(a[1], b[1])) continue;
      const meeting = segmentIntersection(a, b, c, d);
      if (meeting.kind !== 'cross' && meeting.kind !== 'touch') continue;
      const { point, t: fraction } = meeting;
      found.push({ point, segment: i, fraction, angleDeg: angleBetweenDeg(a, b, c, d) });
    }
  }
  return found;
}

function angleBetweenDeg(a: Xy, b: Xy, c: Xy, d: Xy): number {
  const [ux, uy, vx, vy] = [b[0] - a[0], b[1] - a[1], d[0] - c[0], d[1] - c[1]];
  const degrees = (Math.atan2(Math.abs(ux * vy - uy * vx), Math.abs(ux * vx + uy * vy)) * 180) / Math.PI;
  return degrees;
}
