import type { Box } from '../../geometry/plane/box.ts';
import { type SegmentIntersection, segmentIntersection } from '../../geometry/plane/segmentIntersection.ts';
import type { LineShape } from '../../registers/types.ts';
import type { WireIndex } from './wireIndex.ts';

/** Where two live lines cross without a joint, or lie on each other. */
export interface Meeting {
  readonly a: LineShape;
  readonly b: LineShape;
  readonly segmentA: number;
  readonly segmentB: number;
  readonly meeting: Extract<SegmentIntersection, { kind: 'cross' | 'overlap' }>;
}

/** Ends within `toleranceM` of the other line are joined, and no meeting. */
export function meetingsOf(wires: WireIndex, toleranceM: number): Meeting[] {
  const found: Meeting[] = [];
  for (const [i, { wire, segment }] of wires.segments.entries()) {
    if (!wire.shape) continue;
    const [p, q] = [wire.xy[segment]!, wire.xy[segment + 1]!];
    const box: Box = [Math.min(p[0], q[0]), Math.min(p[1], q[1]), Math.max(p[0], q[0]), Math.max(p[1], q[1])];
    for (const j of wires.search(box, toleranceM)) {
      const other = wires.segments[j]!;
      if (j <= i || !other.wire.shape || other.wire === wire) continue;
      const [r, s] = [other.wire.xy[other.segment]!, other.wire.xy[other.segment + 1]!];
      // Most pairs merely share a corner.
      if (sameCorner(p, r) || sameCorner(p, s) || sameCorner(q, r) || sameCorner(q, s)) {
        if (!nearlyAlong(p, q, r, s)) continue;
      }
      const meeting = segmentIntersection(p, q, r, s, toleranceM);
      if (meeting.kind !== 'cross' && meeting.kind !== 'overlap') continue;
      const [a, b] = [wire.shape, other.wire.shape];
      found.push({ a, b, segmentA: segment, segmentB: other.segment, meeting });
    }
  }
  return found;
}

type Point = readonly [number, number];

function sameCorner(a: Point, b: Point): boolean {
  return a[0] === b[0] && a[1] === b[1];
}

/** Within some six degrees of the same direction. */
function nearlyAlong(p: Point, q: Point, r: Point, s: Point): boolean {
  const [ax, ay, bx, by] = [q[0] - p[0], q[1] - p[1], s[0] - r[0], s[1] - r[1]];
  return Math.abs(ax * by - ay * bx) < 0.1 * Math.hypot(ax, ay) * Math.hypot(bx, by);
}
