import type { Xy } from '../types.ts';
import { nearestOnSegment } from './nearestOnSegment.ts';
import { between, cross, subtract } from './vector.ts';
import { xyDistanceM } from './xyDistance.ts';

/** A point that two segments share, and how far along each it lies (0 to 1; exactly 0 or 1 at an end). */
export interface SharedPoint {
  readonly point: Xy;
  readonly t: number;
  readonly u: number;
}

/** How two segments meet: not at all, through each other, with an end of one on the other, or along a common stretch. */
export type SegmentIntersection =
  | { readonly kind: 'apart' }
  | ({ readonly kind: 'cross' } & SharedPoint)
  | ({ readonly kind: 'touch' } & SharedPoint)
  | { readonly kind: 'overlap'; readonly from: SharedPoint; readonly to: SharedPoint };

/**
 * How the segments `a`-`b` and `c`-`d` meet. An end within `toleranceM` of the other segment touches it; two such
 * places further apart than that are an overlap, given in the order of the first segment. Segments without length
 * count as points.
 */
export function segmentIntersection(a: Xy, b: Xy, c: Xy, d: Xy, toleranceM = 1e-6): SegmentIntersection {
  const touches = endTouches(a, b, c, d, toleranceM);
  const from = touches[0];
  const to = touches.at(-1);
  if (from && to) {
    if (xyDistanceM(from.point, to.point) > toleranceM) return { kind: 'overlap', from, to };
    return { kind: 'touch', ...from };
  }
  const r = subtract(b, a);
  const s = subtract(d, c);
  const turn = cross(r, s);
  if (turn === 0) return { kind: 'apart' };
  const t = cross(subtract(c, a), s) / turn;
  const u = cross(subtract(c, a), r) / turn;
  if (t <= 0 || t >= 1 || u <= 0 || u >= 1) return { kind: 'apart' };
  return { kind: 'cross', point: between(a, b, t), t, u };
}

/** Ends of either segment that lie on the other, in the order of the first segment. */
function endTouches(a: Xy, b: Xy, c: Xy, d: Xy, toleranceM: number): SharedPoint[] {
  const touches: SharedPoint[] = [];
  for (const [end, u] of [[c, 0] as const, [d, 1] as const]) {
    const near = nearestOnSegment(end, a, b);
    if (near.distanceM <= toleranceM) touches.push({ point: end, t: atEnd(end, a, b, toleranceM) ?? near.fraction, u });
  }
  for (const [end, t] of [[a, 0] as const, [b, 1] as const]) {
    const near = nearestOnSegment(end, c, d);
    if (near.distanceM <= toleranceM) touches.push({ point: end, t, u: atEnd(end, c, d, toleranceM) ?? near.fraction });
  }
  return touches.sort((p, q) => p.t - q.t);
}

function atEnd(point: Xy, a: Xy, b: Xy, toleranceM: number): 0 | 1 | null {
  if (xyDistanceM(point, a) <= toleranceM) return 0;
  return xyDistanceM(point, b) <= toleranceM ? 1 : null;
}
