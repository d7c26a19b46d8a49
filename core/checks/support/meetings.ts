import { type SegmentIntersection, segmentIntersection } from '../../geometry/segments.ts';
import type { Xy } from '../../geometry/types.ts';
import { keptForPair } from '../../model/memo.ts';
import type { LineShape } from '../../shapes/types.ts';
import { segmentBox, segmentsNear } from './segmentIndex.ts';
import type { WireIndex } from './wireIndex.ts';

interface SegmentMeeting {
  readonly segmentA: number;
  readonly segmentB: number;
  readonly meeting: Extract<SegmentIntersection, { kind: 'cross' | 'overlap' }>;
}

/** Where two live lines cross without a joint, or lie on each other. */
export interface Meeting extends SegmentMeeting {
  readonly a: LineShape;
  readonly b: LineShape;
}

/** Ends within `toleranceM` of the other line are joined, and no meeting. */
export function meetingsOf(wires: WireIndex, toleranceM: number): Meeting[] {
  const found: Meeting[] = [];
  for (const [{ shape: a }, { shape: b }] of wires.pairs(toleranceM)) {
    if (!a || !b) continue;
    for (const meeting of meetingsBetween(a.xy, b.xy, toleranceM)) found.push({ a, b, ...meeting });
  }
  return found;
}

const meetingsBetween = keptForPair(
  (a: readonly Xy[], b: readonly Xy[], toleranceM: number): readonly SegmentMeeting[] => {
    // The longer of the two is the one that is looked up.
    if (a.length > b.length) {
      return meetingsBetween(b, a, toleranceM).map(({ segmentA, segmentB, meeting }) => {
        return { segmentA: segmentB, segmentB: segmentA, meeting: exchanged(meeting) };
      });
    }
    const found: SegmentMeeting[] = [];
    for (let i = 0; i + 1 < a.length; i++) {
      const [p, q] = [a[i]!, a[i + 1]!];
      for (const j of segmentsNear(b, segmentBox(p, q, toleranceM))) {
        const [r, s] = [b[j]!, b[j + 1]!];
        if (shareCorner(p, q, r, s) && !nearlyAlong(p, q, r, s)) continue;
        const meeting = segmentIntersection(p, q, r, s, toleranceM);
        if (meeting.kind === 'cross' || meeting.kind === 'overlap') found.push({ segmentA: i, segmentB: j, meeting });
      }
    }
    return found;
  },
);

function exchanged(meeting: SegmentMeeting['meeting']): SegmentMeeting['meeting'] {
  const turn = <T extends { readonly t: number; readonly u: number }>(shared: T): T => {
    return { ...shared, t: shared.u, u: shared.t };
  };
  return meeting.kind === 'cross' ? turn(meeting) : { kind: 'overlap', from: turn(meeting.from), to: turn(meeting.to) };
}

/** Most pairs merely share a corner. */
function shareCorner(p: Xy, q: Xy, r: Xy, s: Xy): boolean {
  return same(p, r) || same(p, s) || same(q, r) || same(q, s);
}

function same(a: Xy, b: Xy): boolean {
  return a[0] === b[0] && a[1] === b[1];
}

/** Within some six degrees of the same direction. */
function nearlyAlong(p: Xy, q: Xy, r: Xy, s: Xy): boolean {
  const [ax, ay, bx, by] = [q[0] - p[0], q[1] - p[1], s[0] - r[0], s[1] - r[1]];
  return Math.abs(ax * by - ay * bx) < 0.1 * Math.hypot(ax, ay) * Math.hypot(bx, by);
}
