import { boxTree } from './boxTree.ts';
import { nearestOnSegment } from './polyline.ts';
import type { Xy } from './types.ts';
import { between, cross, subtract, xyDistanceM } from './vector.ts';

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

/**
 * How often some lines cross themselves and one another, counted no further than to `most` (and what is found with the
 * last one): that many are too many, whatever the number. Ends that touch are no crossings.
 */
export function countCrossings(lines: readonly (readonly Xy[])[], most: number): number {
  const segments = lines.reduce((sum, { length }) => sum + Math.max(0, length - 1), 0);
  if (segments < 2) return 0;
  const ends = new Float64Array(4 * segments);
  let filled = 0;
  const tree = boxTree(segments, (add) => {
    for (const line of lines) {
      for (let i = 1; i < line.length; i++) {
        const [[ax, ay], [bx, by]] = [line[i - 1]!, line[i]!];
        ends.set([ax, ay, bx, by], 4 * filled++);
        add(Math.min(ax, bx), Math.min(ay, by), Math.max(ax, bx), Math.max(ay, by));
      }
    }
  });
  let found = 0;
  for (let i = 0; i < segments && found <= most; i++) {
    const [ax, ay, bx, by] = ends.subarray(4 * i, 4 * i + 4) as unknown as [number, number, number, number];
    tree.search([Math.min(ax, bx), Math.min(ay, by), Math.max(ax, bx), Math.max(ay, by)], (j) => {
      if (j > i && found <= most && crosses(ends, i, j)) found++;
      return false;
    });
  }
  return found;
}

/** Whether two segments go through each other. */
function crosses(ends: Float64Array, i: number, j: number): boolean {
  const side = (of: number, end: number) => {
    const [ax, ay, bx, by] = [ends[4 * of]!, ends[4 * of + 1]!, ends[4 * of + 2]!, ends[4 * of + 3]!];
    return (bx - ax) * (ends[end + 1]! - ay) - (by - ay) * (ends[end]! - ax);
  };
  return side(i, 4 * j) * side(i, 4 * j + 2) < 0 && side(j, 4 * i) * side(j, 4 * i + 2) < 0;
}
