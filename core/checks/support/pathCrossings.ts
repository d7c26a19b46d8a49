import { segmentIntersection } from '../../geometry/segments.ts';
import type { Xy } from '../../geometry/types.ts';
import { keptForPair } from '../../model/memo.ts';
import { segmentBox, segmentsNear } from './segmentIndex.ts';

/** Where two paths cross or touch. */
export interface PathCrossing {
  readonly point: Xy;
  readonly segment: number;
  readonly fraction: number;
  /** The angle between the two there, 0 to 90 degrees. */
  readonly angleDeg: number;
}

/** Every place where `path` crosses `other`; `segment` and `fraction` are those of `path`. */
export function pathCrossings(path: readonly Xy[], other: readonly Xy[]): readonly PathCrossing[] {
  return found(path, other);
}

const found = keptForPair((path: readonly Xy[], other: readonly Xy[]): readonly PathCrossing[] => {
  const crossings: PathCrossing[] = [];
  for (let i = 0; i + 1 < path.length; i++) {
    const [a, b] = [path[i]!, path[i + 1]!];
    for (const j of segmentsNear(other, segmentBox(a, b))) {
      const [c, d] = [other[j]!, other[j + 1] ?? other[j]!];
      const meeting = segmentIntersection(a, b, c, d);
      if (meeting.kind !== 'cross' && meeting.kind !== 'touch') continue;
      const { point, t: fraction } = meeting;
      crossings.push({ point, segment: i, fraction, angleDeg: angleBetweenDeg(a, b, c, d) });
    }
  }
  return crossings;
});

function angleBetweenDeg(a: Xy, b: Xy, c: Xy, d: Xy): number {
  const [ux, uy, vx, vy] = [b[0] - a[0], b[1] - a[1], d[0] - c[0], d[1] - c[1]];
  const degrees = (Math.atan2(Math.abs(ux * vy - uy * vx), Math.abs(ux * vx + uy * vy)) * 180) / Math.PI;
  return degrees;
}
