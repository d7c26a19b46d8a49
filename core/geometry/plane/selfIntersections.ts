import type { Xy } from '../types.ts';
import { type SegmentIntersection, segmentIntersection } from './segmentIntersection.ts';
import { xyDistanceM } from './xyDistance.ts';

export interface SelfIntersection {
  /** The two segments, numbered from 0 along the path as given, the earlier one first. */
  readonly segments: readonly [number, number];
  readonly meeting: Exclude<SegmentIntersection, { kind: 'apart' }>;
}

/**
 * Where a path meets itself: crosses, touches, or doubles back along itself. Neighbours that merely share their
 * vertex don't count, nor do the two ends of a closed path; doubled vertices are passed over.
 */
export function selfIntersections(path: readonly Xy[], toleranceM = 1e-6): SelfIntersection[] {
  const segments = segmentsWithLength(path, toleranceM);
  const last = segments.length - 1;
  const closed = last > 1 && xyDistanceM(segments[0]!.a, segments[last]!.b) <= toleranceM;
  const byWest = segments.map((_, i) => i).sort((i, j) => segments[i]!.west - segments[j]!.west);
  const found: SelfIntersection[] = [];
  for (let p = 0; p < byWest.length; p++) {
    const east = segments[byWest[p]!]!.east + toleranceM;
    for (let q = p + 1; q < byWest.length && segments[byWest[q]!]!.west <= east; q++) {
      const i = Math.min(byWest[p]!, byWest[q]!);
      const j = Math.max(byWest[p]!, byWest[q]!);
      const first = segments[i]!;
      const second = segments[j]!;
      const meeting = segmentIntersection(first.a, first.b, second.a, second.b, toleranceM);
      if (meeting.kind === 'apart') continue;
      const neighbours = j === i + 1 || (closed && i === 0 && j === last);
      if (neighbours && meeting.kind === 'touch') continue;
      found.push({ segments: [first.index, second.index], meeting });
    }
  }
  return found.sort((m, n) => m.segments[0] - n.segments[0] || m.segments[1] - n.segments[1]);
}

interface Segment {
  readonly index: number;
  readonly a: Xy;
  readonly b: Xy;
  readonly west: number;
  readonly east: number;
}

function segmentsWithLength(path: readonly Xy[], toleranceM: number): Segment[] {
  const segments: Segment[] = [];
  let a = path[0];
  for (let i = 1; i < path.length && a; i++) {
    const b = path[i]!;
    if (xyDistanceM(a, b) <= toleranceM) continue;
    segments.push({ index: i - 1, a, b, west: Math.min(a[0], b[0]), east: Math.max(a[0], b[0]) });
    a = b;
  }
  return segments;
}
