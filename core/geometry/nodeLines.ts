import { boxOfSegment, boxPairs } from './box.ts';
import { createPlaceNumbers } from './placeNumbers.ts';
import { nearestOnSegment } from './polyline.ts';
import type { Xy } from './types.ts';
import { between, cross, subtract, xyDistanceM } from './vector.ts';

/** Lines cut at every place they share: a planar graph, each edge once, none without length. */
export interface NodedLines {
  readonly nodes: readonly Xy[];
  readonly edges: readonly NodedEdge[];
}

export interface NodedEdge {
  /** Indices into `nodes`. */
  readonly from: number;
  readonly to: number;
  /** Indices of the lines given that run along it, ascending. */
  readonly lines: readonly number[];
}

/** After snapping, lines may cross anew at the places that moved: they are cut again, exactly, at most so often. */
const mostRounds = 4;
const exactM = 1e-6;

/**
 * Cuts lines at all places where they touch within `snapM`, cross, or lie along each other. Vertices that touch become
 * one of them; a vertex that touches a segment moves on to it. Lines that cross without a vertex are cut at the crossing.
 */
export function nodeLines(lines: readonly (readonly Xy[])[], snapM: number): NodedLines {
  let { noded, moved } = nodeOnce(
    lines.map((path, line) => ({ path, lines: [line] })),
    snapM,
  );
  for (let round = 1; moved && round < mostRounds; round++) {
    const pieces = noded.edges.map(({ from, to, lines }) => ({ path: [noded.nodes[from]!, noded.nodes[to]!], lines }));
    ({ noded, moved } = nodeOnce(pieces, exactM));
  }
  return noded;
}

interface Piece {
  readonly path: readonly Xy[];
  readonly lines: readonly number[];
}

interface Segment {
  readonly a: number;
  readonly b: number;
  readonly piece: number;
  /** Metres along the piece where the segment starts. */
  readonly startM: number;
}

interface Cut {
  readonly node: number;
  readonly fraction: number;
}

function nodeOnce(pieces: readonly Piece[], snapM: number): { noded: NodedLines; moved: boolean } {
  const drawing = readDrawing(pieces);
  const { points, segments } = drawing;
  if (segments.length === 0) return { noded: { nodes: [], edges: [] }, moved: false };
  const near = boxPairs(drawing.boxes, snapM);

  const touches = findTouches(drawing, near, snapM);
  const nodeOf = mergePoints(points, touches.pairs, snapM);
  const nodes: Xy[] = points.slice();
  const cuts = new Map<number, Cut[]>();
  const cut = (segment: number, node: number, fraction: number) => {
    const list = cuts.get(segment);
    if (list) list.push({ node, fraction });
    else cuts.set(segment, [{ node, fraction }]);
  };
  let moved = touches.pairs.some(({ distanceM }) => distanceM > exactM);
  const settled = new Set<number>();
  for (const { point, segment, foot, fraction, distanceM } of touches.onSegments) {
    const node = nodeOf[point]!;
    const { a, b } = segments[segment]!;
    if (node === nodeOf[a] || node === nodeOf[b]) continue;
    cut(segment, node, fraction);
    if (distanceM <= exactM || settled.has(node)) continue;
    nodes[node] = foot;
    settled.add(node);
    moved = true;
  }
  const crossings = findCrossings(drawing, near, nodeOf, cuts, snapM);
  for (const crossing of joinCrossings(crossings.found, snapM)) {
    const node = nodes.push(crossing.at) - 1;
    for (const { first, second, t, u } of crossing.of) {
      cut(first, node, t);
      cut(second, node, u);
    }
    moved ||= crossing.of.some(({ at }) => xyDistanceM(at, crossing.at) > exactM);
  }
  return { noded: edgesOf(pieces, segments, nodes, nodeOf, cuts), moved: moved || crossings.skipped };
}

interface Drawing {
  /** Vertices, each place once. */
  readonly points: readonly Xy[];
  readonly segments: readonly Segment[];
  /** West, south, east, north of each segment. */
  readonly boxes: Float64Array;
  /** Where a point is a vertex. */
  readonly placesOf: (point: number) => readonly PlaceOnPiece[];
}

interface PlaceOnPiece {
  readonly piece: number;
  readonly atM: number;
}

function readDrawing(pieces: readonly Piece[]): Drawing {
  const vertexCount = pieces.reduce((sum, { path }) => sum + path.length, 0);
  const { places: points, numberOf } = createPlaceNumbers(vertexCount);
  const segments: Segment[] = [];
  const pieceOf = new Int32Array(vertexCount);
  const stationM = new Float64Array(vertexCount);
  // The vertices at each point as a chain: the last that was read, and for each vertex the one before it.
  const lastAt = new Int32Array(vertexCount).fill(-1);
  const before = new Int32Array(vertexCount);
  let vertex = 0;
  for (let piece = 0; piece < pieces.length; piece++) {
    let atM = 0;
    let a = -1;
    for (const place of pieces[piece]!.path) {
      if (!Number.isFinite(place[0]) || !Number.isFinite(place[1])) continue;
      const b = numberOf(place);
      if (b === a) continue;
      if (a >= 0) {
        segments.push({ a, b, piece, startM: atM });
        atM += xyDistanceM(points[a]!, place);
      }
      pieceOf[vertex] = piece;
      stationM[vertex] = atM;
      before[vertex] = lastAt[b]!;
      lastAt[b] = vertex++;
      a = b;
    }
  }
  return {
    points,
    segments,
    boxes: boxesOf(points, segments),
    placesOf(point) {
      const places: PlaceOnPiece[] = [];
      for (let at = lastAt[point]!; at !== -1; at = before[at]!)
        places.push({ piece: pieceOf[at]!, atM: stationM[at]! });
      return places;
    },
  };
}

function boxesOf(points: readonly Xy[], segments: readonly Segment[]): Float64Array {
  const boxes = new Float64Array(4 * segments.length);
  for (let i = 0; i < segments.length; i++) {
    const { a, b } = segments[i]!;
    boxes.set(boxOfSegment(points[a]!, points[b]!), 4 * i);
  }
  return boxes;
}

interface Touches {
  /** The nearest first, as `onSegments`. */
  readonly pairs: readonly Pair[];
  readonly onSegments: readonly OnSegment[];
}

/** Two points, `p < q`. */
interface Pair {
  readonly p: number;
  readonly q: number;
  readonly distanceM: number;
}

interface OnSegment {
  readonly point: number;
  readonly segment: number;
  readonly foot: Xy;
  readonly fraction: number;
  readonly distanceM: number;
}

/** `near` holds the segments that come within `snapM` of each other, two by two. */
function findTouches(drawing: Drawing, near: readonly number[], snapM: number): Touches {
  const { points, segments, boxes, placesOf } = drawing;
  const pairs = new Map<number, Pair>();
  const onSegments = new Map<number, OnSegment>();
  /** A vertex does not touch its own line a step further on. */
  const sameStretch = (point: number, piece: number, atM: number) =>
    placesOf(point).some((place) => place.piece === piece && Math.abs(place.atM - atM) < 4 * snapM);
  const pair = (m: number, n: number) => {
    if (m === n) return;
    const [p, q] = m < n ? [m, n] : [n, m];
    const key = p * points.length + q;
    const distanceM = xyDistanceM(points[p]!, points[q]!);
    if (distanceM > snapM || pairs.has(key) || placesOf(q).some(({ piece, atM }) => sameStretch(p, piece, atM))) return;
    pairs.set(key, { p, q, distanceM });
  };
  const touch = (point: number, segment: number) => {
    const { a, b, piece, startM } = segments[segment]!;
    if (point === a || point === b || !isNear(boxes, segment, points[point]!, snapM)) return;
    pair(point, a);
    pair(point, b);
    const start = points[a]!;
    const end = points[b]!;
    const { point: foot, fraction, distanceM } = nearestOnSegment(points[point]!, start, end);
    if (distanceM > snapM || fraction === 0 || fraction === 1) return;
    if (sameStretch(point, piece, startM + fraction * xyDistanceM(start, end))) return;
    onSegments.set(point * segments.length + segment, { point, segment, foot, fraction, distanceM });
  };
  for (let i = 0; i < near.length; i += 2) {
    const [first, second] = [near[i]!, near[i + 1]!];
    touch(segments[first]!.a, second);
    touch(segments[first]!.b, second);
    touch(segments[second]!.a, first);
    touch(segments[second]!.b, first);
  }
  return {
    pairs: [...pairs.values()].sort((m, n) => m.distanceM - n.distanceM || m.p - n.p || m.q - n.q),
    onSegments: [...onSegments.values()].sort(
      (m, n) => m.distanceM - n.distanceM || m.point - n.point || m.segment - n.segment,
    ),
  };
}

function isNear(boxes: Float64Array, segment: number, [x, y]: Xy, reachM: number): boolean {
  const at = 4 * segment;
  if (x < boxes[at]! - reachM || x > boxes[at + 2]! + reachM) return false;
  return y >= boxes[at + 1]! - reachM && y <= boxes[at + 3]! + reachM;
}

/**
 * Which point stands for each point. The closest pairs join first, and only into groups no wider than `snapM`: the
 * vertices of a finely drawn curve must not swallow each other.
 */
function mergePoints(points: readonly Xy[], pairs: readonly Pair[], snapM: number): Int32Array {
  const nodeOf = new Int32Array(points.length);
  for (let point = 0; point < nodeOf.length; point++) nodeOf[point] = point;
  const groups = new Map<number, number[]>();
  for (const { p, q } of pairs) {
    const [keep, drop] = [Math.min(nodeOf[p]!, nodeOf[q]!), Math.max(nodeOf[p]!, nodeOf[q]!)];
    if (keep === drop) continue;
    const kept = groups.get(keep) ?? [keep];
    const dropped = groups.get(drop) ?? [drop];
    if (kept.some((m) => dropped.some((n) => xyDistanceM(points[m]!, points[n]!) > snapM))) continue;
    for (const point of dropped) nodeOf[point] = keep;
    groups.set(keep, kept.concat(dropped));
    groups.delete(drop);
  }
  return nodeOf;
}

interface Crossing {
  readonly at: Xy;
  readonly first: number;
  readonly second: number;
  readonly t: number;
  readonly u: number;
}

/** Segments that run through each other; not where a vertex that touches already joins them. */
function findCrossings(
  { points, segments }: Drawing,
  near: readonly number[],
  nodeOf: Int32Array,
  cuts: ReadonlyMap<number, readonly Cut[]>,
  snapM: number,
) {
  const found: Crossing[] = [];
  let skipped = false;
  for (let i = 0; i < near.length; i += 2) {
    const [first, second] = [near[i]!, near[i + 1]!];
    const s = segments[first]!;
    const o = segments[second]!;
    if (nodeOf[s.a] === nodeOf[o.a] || nodeOf[s.a] === nodeOf[o.b]) continue;
    if (nodeOf[s.b] === nodeOf[o.a] || nodeOf[s.b] === nodeOf[o.b]) continue;
    const [a, b] = [points[s.a]!, points[s.b]!];
    const [c, d] = [points[o.a]!, points[o.b]!];
    const along = subtract(b, a);
    const other = subtract(d, c);
    const turn = cross(along, other);
    if (turn === 0) continue;
    const t = cross(subtract(c, a), other) / turn;
    const u = cross(subtract(c, a), along) / turn;
    if (!(t > 0 && t < 1 && u > 0 && u < 1)) continue;
    const at = between(a, b, t);
    if (shareACut(cuts.get(first), cuts.get(second)) || [a, b, c, d].some((end) => xyDistanceM(end, at) <= snapM))
      skipped ||= snapM > exactM;
    else found.push({ at, first, second, t, u });
  }
  return { found, skipped };
}

function shareACut(first: readonly Cut[] | undefined, second: readonly Cut[] | undefined): boolean {
  return first !== undefined && second !== undefined && first.some((m) => second.some((n) => m.node === n.node));
}

/** Crossings nearer to each other than `snapM` are one node. */
function joinCrossings(crossings: readonly Crossing[], snapM: number): { at: Xy; of: Crossing[] }[] {
  const joined: { at: Xy; of: Crossing[] }[] = [];
  for (const crossing of crossings.toSorted(fromTheWest)) {
    const near = lastWithin(joined, crossing.at, snapM);
    if (near) near.of.push(crossing);
    else joined.push({ at: crossing.at, of: [crossing] });
  }
  return joined;
}

function fromTheWest(m: Crossing, n: Crossing): number {
  return m.at[0] - n.at[0] || m.first - n.first || m.second - n.second;
}

function lastWithin<T extends { at: Xy }>(sorted: readonly T[], at: Xy, radiusM: number): T | null {
  for (let i = sorted.length - 1; i >= 0 && at[0] - sorted[i]!.at[0] <= radiusM; i--) {
    if (xyDistanceM(sorted[i]!.at, at) <= radiusM) return sorted[i]!;
  }
  return null;
}

function edgesOf(
  pieces: readonly Piece[],
  segments: readonly Segment[],
  nodes: readonly Xy[],
  nodeOf: Int32Array,
  cuts: ReadonlyMap<number, Cut[]>,
): NodedLines {
  const edges: WritableEdge[] = [];
  const known = new Map<number, WritableEdge>();
  const addEdge = (m: number, n: number, lines: readonly number[]) => {
    if (m === n) return;
    const [from, to] = m < n ? [m, n] : [n, m];
    const key = from * nodes.length + to;
    const edge = known.get(key);
    if (edge) {
      edge.lines = merged(edge.lines, lines);
      return;
    }
    const made = { from, to, lines };
    known.set(key, made);
    edges.push(made);
  };
  for (let index = 0; index < segments.length; index++) {
    const { a, b, piece } = segments[index]!;
    const { lines } = pieces[piece]!;
    let from = nodeOf[a]!;
    for (const { node } of cuts.get(index)?.sort((m, n) => m.fraction - n.fraction) ?? []) {
      addEdge(from, node, lines);
      from = node;
    }
    addEdge(from, nodeOf[b]!, lines);
  }
  return { nodes, edges };
}

interface WritableEdge {
  readonly from: number;
  readonly to: number;
  lines: readonly number[];
}

/** Both ascending. */
function merged(a: readonly number[], b: readonly number[]): readonly number[] {
  return a === b ? a : [...new Set([...a, ...b])].sort((m, n) => m - n);
}
