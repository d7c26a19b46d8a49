import Flatbush from 'flatbush';
import type { Xy } from '../types.ts';
import { boxOfSegment } from './box.ts';
import { nearestOnSegment } from './nearestOnSegment.ts';
import { between, cross, subtract } from './vector.ts';
import { xyDistanceM } from './xyDistance.ts';

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
  const tree = new Flatbush(segments.length);
  for (const { a, b } of segments) tree.add(...boxOfSegment(points[a]!, points[b]!));
  tree.finish();

  const touches = findTouches(drawing, tree, snapM);
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
  const crossings = findCrossings(drawing, tree, nodeOf, cuts, snapM);
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
  /** For each point, the places along pieces where it is a vertex. */
  readonly placesOf: readonly (readonly { piece: number; atM: number }[])[];
}

function readDrawing(pieces: readonly Piece[]): Drawing {
  const points: Xy[] = [];
  const segments: Segment[] = [];
  const placesOf: { piece: number; atM: number }[][] = [];
  const known = new Map<number, Map<number, number>>();
  const pointAt = ([x, y]: Xy): number => {
    const column = known.get(x) ?? new Map<number, number>();
    known.set(x, column);
    const point = column.get(y) ?? points.push([x, y]) - 1;
    column.set(y, point);
    placesOf[point] ??= [];
    return point;
  };
  for (const [piece, { path }] of pieces.entries()) {
    let atM = 0;
    let a = -1;
    for (const vertex of path) {
      if (!Number.isFinite(vertex[0]) || !Number.isFinite(vertex[1])) continue;
      const b = pointAt(vertex);
      if (b === a) continue;
      if (a >= 0) {
        segments.push({ a, b, piece, startM: atM });
        atM += xyDistanceM(points[a]!, vertex);
      }
      placesOf[b]!.push({ piece, atM });
      a = b;
    }
  }
  return { points, segments, placesOf };
}

interface Touches {
  readonly pairs: { readonly p: number; readonly q: number; readonly distanceM: number }[];
  /** The nearest first. */
  readonly onSegments: {
    readonly point: number;
    readonly segment: number;
    readonly foot: Xy;
    readonly fraction: number;
    readonly distanceM: number;
  }[];
}

function findTouches(drawing: Drawing, tree: Flatbush, snapM: number): Touches {
  const { points, segments, placesOf } = drawing;
  const touches: Touches = { pairs: [], onSegments: [] };
  const seen = new Set<number>();
  /** A vertex does not touch its own line a step further on. */
  const sameStretch = (point: number, piece: number, atM: number) =>
    placesOf[point]!.some((place) => place.piece === piece && Math.abs(place.atM - atM) < 4 * snapM);
  const pair = (p: number, q: number) => {
    const key = p < q ? p * points.length + q : q * points.length + p;
    if (p === q || seen.has(key)) return;
    seen.add(key);
    const distanceM = xyDistanceM(points[p]!, points[q]!);
    if (distanceM > snapM || placesOf[q]!.some(({ piece, atM }) => sameStretch(p, piece, atM))) return;
    touches.pairs.push({ p, q, distanceM });
  };
  for (const [point, at] of points.entries()) {
    const [x, y] = at;
    for (const segment of tree.search(x - snapM, y - snapM, x + snapM, y + snapM)) {
      const { a, b, piece, startM } = segments[segment]!;
      if (point === a || point === b) continue;
      pair(point, a);
      pair(point, b);
      const start = points[a]!;
      const end = points[b]!;
      const { point: foot, fraction, distanceM } = nearestOnSegment(at, start, end);
      if (distanceM > snapM || fraction === 0 || fraction === 1) continue;
      if (sameStretch(point, piece, startM + fraction * xyDistanceM(start, end))) continue;
      touches.onSegments.push({ point, segment, foot, fraction, distanceM });
    }
  }
  touches.onSegments.sort((m, n) => m.distanceM - n.distanceM);
  return touches;
}

/**
 * Which point stands for each point. The closest pairs join first, and only into groups no wider than `snapM`: the
 * vertices of a finely drawn curve must not swallow each other.
 */
function mergePoints(points: readonly Xy[], pairs: Touches['pairs'], snapM: number): number[] {
  const nodeOf = points.map((_, point) => point);
  const groups = new Map<number, number[]>();
  for (const { p, q } of pairs.toSorted((m, n) => m.distanceM - n.distanceM)) {
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
  drawing: Drawing,
  tree: Flatbush,
  nodeOf: readonly number[],
  cuts: ReadonlyMap<number, readonly Cut[]>,
  snapM: number,
) {
  const { points, segments } = drawing;
  const found: Crossing[] = [];
  let skipped = false;
  for (const [first, s] of segments.entries()) {
    const [a, b] = [points[s.a]!, points[s.b]!];
    for (const second of tree.search(...boxOfSegment(a, b))) {
      if (second <= first) continue;
      const o = segments[second]!;
      if (nodeOf[s.a] === nodeOf[o.a] || nodeOf[s.a] === nodeOf[o.b]) continue;
      if (nodeOf[s.b] === nodeOf[o.a] || nodeOf[s.b] === nodeOf[o.b]) continue;
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
  }
  return { found, skipped };
}

function shareACut(first: readonly Cut[] | undefined, second: readonly Cut[] | undefined): boolean {
  return first !== undefined && second !== undefined && first.some((m) => second.some((n) => m.node === n.node));
}

/** Crossings nearer to each other than `snapM` are one node. */
function joinCrossings(crossings: readonly Crossing[], snapM: number): { at: Xy; of: Crossing[] }[] {
  const joined: { at: Xy; of: Crossing[] }[] = [];
  for (const crossing of crossings.toSorted((m, n) => m.at[0] - n.at[0])) {
    const near = lastWithin(joined, crossing.at, snapM);
    if (near) near.of.push(crossing);
    else joined.push({ at: crossing.at, of: [crossing] });
  }
  return joined;
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
  nodeOf: readonly number[],
  cuts: ReadonlyMap<number, Cut[]>,
): NodedLines {
  const edges = new Map<number, { from: number; to: number; lines: Set<number> }>();
  const addEdge = (m: number, n: number, lines: readonly number[]) => {
    if (m === n) return;
    const [from, to] = m < n ? [m, n] : [n, m];
    const key = from * nodes.length + to;
    const edge = edges.get(key);
    if (!edge) edges.set(key, { from, to, lines: new Set(lines) });
    else for (const line of lines) edge.lines.add(line);
  };
  for (const [index, { a, b, piece }] of segments.entries()) {
    let from = nodeOf[a]!;
    for (const { node } of (cuts.get(index) ?? []).sort((m, n) => m.fraction - n.fraction)) {
      addEdge(from, node, pieces[piece]!.lines);
      from = node;
    }
    addEdge(from, nodeOf[b]!, pieces[piece]!.lines);
  }
  return {
    nodes,
    edges: Array.from(edges.values(), ({ from, to, lines }) => ({ from, to, lines: [...lines].sort((m, n) => m - n) })),
  };
}
