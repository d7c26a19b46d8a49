import type { Xy } from '../types.ts';
import { nearestOnSegment } from './nearestOnSegment.ts';
import { segmentIntersection } from './segmentIntersection.ts';

/** The shortest way between two paths. */
export interface PolylineGap {
  /** Metres; 0 where the paths meet. */
  readonly distanceM: number;
  readonly onFirst: Xy;
  readonly onSecond: Xy;
}

/** The gap between two paths, where they come nearest. A path of one vertex is a point. Null where either is empty. */
export function polylineGap(first: readonly Xy[], second: readonly Xy[]): PolylineGap | null {
  let best: PolylineGap | null = null;
  for (const [a, b] of segmentsOf(first)) {
    for (const [c, d] of segmentsOf(second)) {
      const meeting = segmentIntersection(a, b, c, d, 0);
      if (meeting.kind === 'cross') return { distanceM: 0, onFirst: meeting.point, onSecond: meeting.point };
      for (const [end, from, to, endIsOnFirst] of [
        [a, c, d, true],
        [b, c, d, true],
        [c, a, b, false],
        [d, a, b, false],
      ] as const) {
        const near = nearestOnSegment(end, from, to);
        if (best && near.distanceM >= best.distanceM) continue;
        const [onFirst, onSecond] = endIsOnFirst ? [end, near.point] : [near.point, end];
        best = { distanceM: near.distanceM, onFirst, onSecond };
      }
    }
  }
  return best;
}

function segmentsOf(path: readonly Xy[]): (readonly [Xy, Xy])[] {
  const only = path[0];
  if (path.length === 1 && only) return [[only, only]];
  return path.slice(1).map((end, i) => [path[i]!, end] as const);
}
