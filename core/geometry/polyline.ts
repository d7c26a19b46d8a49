import { bboxClip } from '@turf/turf';
import type { Box } from './box.ts';
import { segmentIntersection } from './segments.ts';
import type { Xy } from './types.ts';
import { add, between, cross, dot, scale, subtract, turnLeft, unit, xyBearingDeg, xyDistanceM } from './vector.ts';

/** The station of every vertex: metres along the path from its start. As many as there are vertices; the last is the length. */
export function cumulativeLengthsM(path: readonly Xy[]): number[] {
  let station = 0;
  return path.map((vertex, i) => {
    if (i > 0) station += xyDistanceM(path[i - 1]!, vertex);
    return station;
  });
}

export interface PointAtStation {
  readonly point: Xy;
  readonly segment: number;
  /** How far along that segment, 0 to 1. */
  readonly fraction: number;
  /** The path's direction there: degrees clockwise from grid north. */
  readonly bearingDeg: number;
}

/**
 * The point `stationM` metres along a path from its start. Stations before the start or past the end give the end
 * vertex. At a vertex the answer lies on the segment that arrives there.
 * @throws RangeError for a path with fewer than two vertices or a station that is not a number.
 */
export function pointAtStation(path: readonly Xy[], stationM: number): PointAtStation {
  if (path.length < 2) throw new RangeError('A point along a path needs a path of at least two vertices.');
  if (Number.isNaN(stationM)) throw new RangeError('The station along the path is not a number.');
  let leftM = stationM;
  const last = lastSegmentWithLength(path);
  for (let segment = 0; ; segment++) {
    const a = path[segment]!;
    const b = path[segment + 1]!;
    const lengthM = xyDistanceM(a, b);
    if ((leftM <= lengthM && lengthM > 0) || segment === last) {
      const fraction = lengthM === 0 ? 0 : Math.min(1, Math.max(0, leftM / lengthM));
      return { point: between(a, b, fraction), segment, fraction, bearingDeg: xyBearingDeg(a, b) };
    }
    leftM -= lengthM;
  }
}

/** The last segment of all where none has any length. */
function lastSegmentWithLength(path: readonly Xy[]): number {
  for (let segment = path.length - 2; segment >= 0; segment--) {
    if (xyDistanceM(path[segment]!, path[segment + 1]!) > 0) return segment;
  }
  return path.length - 2;
}

/**
 * The piece of a path between two stations, metres from its start, clipped to the path; it runs backwards where
 * `fromM` is larger than `toM`. A piece without length is one point twice.
 * @throws RangeError for a path with fewer than two vertices or a station that is not a number.
 */
export function slicePolyline(path: readonly Xy[], fromM: number, toM: number): Xy[] {
  if (fromM > toM) return slicePolyline(path, toM, fromM).reverse();
  const start = pointAtStation(path, fromM);
  const end = pointAtStation(path, toM);
  const inner = path.slice(start.segment + 1, end.segment + 1);
  while (inner[0] && same(inner[0], start.point)) inner.shift();
  while (inner.length > 0 && same(inner.at(-1)!, end.point)) inner.pop();
  return [start.point, ...inner, end.point];
}

function same(a: Xy, b: Xy): boolean {
  return a[0] === b[0] && a[1] === b[1];
}

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

/** Sharper corners than this many offsets from the vertex are cut square. */
const mitreLimit = 4;

/**
 * A path beside a path: `offsetM` metres to its left (negative: to its right), with mitred corners, those sharper
 * than the mitre limit cut square. Doubled vertices are dropped. Where the path bends tighter than the offset the
 * result loops over itself: good for drawing a line beside a line, not as a buffer.
 */
export function offsetPolyline(path: readonly Xy[], offsetM: number): Xy[] {
  const vertices = path.filter((vertex, i) => i === 0 || xyDistanceM(path[i - 1]!, vertex) > 0);
  const normals = vertices.slice(1).map((end, i) => turnLeft(unit(subtract(end, vertices[i]!))));
  return vertices.flatMap((vertex, i) => {
    const before = normals[i - 1] ?? normals[i];
    const after = normals[i] ?? before;
    if (!before || !after) return [];
    return corner(before, after, offsetM).map((shift) => add(vertex, shift));
  });
}

/** From a vertex to its offset corner: one shift, or two where the corner is cut. */
function corner(before: Xy, after: Xy, offsetM: number): Xy[] {
  const cosine = dot(before, after);
  if (cosine > 1 - 1e-12) return [scale(after, offsetM)];
  // A mitre reaches sqrt(2 / (1 + cos turn)) offsets from the vertex.
  if (1 + cosine <= 2 / mitreLimit ** 2) return squareCut(before, after, offsetM);
  return [scale(add(before, after), offsetM / (1 + cosine))];
}

/** Both offset lines run on (or stop short) by one offset, then join. On the inner side they simply stop at the vertex. */
function squareCut(before: Xy, after: Xy, offsetM: number): Xy[] {
  const outer = cross(before, after) * offsetM <= 0;
  const run = outer ? Math.abs(offsetM) : 0;
  const onward: Xy = scale(turnLeft(before), -run);
  const back: Xy = scale(turnLeft(after), run);
  return [add(scale(before, offsetM), onward), add(scale(after, offsetM), back)];
}

/** The pieces of a path inside a box, in order, each with at least two vertices. */
export function clipPolylineToBox(path: readonly Xy[], box: Box): Xy[][] {
  if (path.length < 2) return [];
  const line = { type: 'LineString', coordinates: path as [number, number][] } as const;
  const { type, coordinates } = bboxClip(line, [...box]).geometry;
  const pieces = (type === 'LineString' ? [coordinates] : coordinates) as readonly unknown[] as Xy[][];
  // A path that only touches the box leaves one point, doubled.
  return pieces.filter((piece) => piece.length > 2 || (piece.length === 2 && !same(piece[0]!, piece[1]!)));
}

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
