import Flatbush from 'flatbush';
import { boxAround } from './plane/box.ts';
import { type NodedLines, nodeLines } from './plane/nodeLines.ts';
import { pointInRing } from './plane/pointInRing.ts';
import { signedRingArea } from './plane/signedRingArea.ts';
import { xyDistanceM } from './plane/xyDistance.ts';
import type { Xy } from './types.ts';

/** A piece of land closed in by lines. */
export interface Face {
  /** The boundary, anticlockwise, the first vertex not repeated. */
  readonly shell: readonly Xy[];
  /** What lies inside it and does not belong to it, clockwise. */
  readonly holes: readonly (readonly Xy[])[];
  /** Indices of the lines that bound it, ascending. */
  readonly lines: readonly number[];
}

/**
 * The smallest pieces of land that lines close in: paddocks. Lines that touch within `snapM` close a boundary, and so
 * do lines that merely cross, though no wire joins there: stock cannot pass either. Loose ends and lines that lead from
 * one boundary to another inside the same piece of land bound nothing. Pieces narrower than `snapM` on average are
 * slips of the hand, not land. Areas in m² or ha: `geodesic.ts`.
 *
 * The boundary walk is our own rather than @turf/polygonize, which wants its lines cut at every meeting beforehand
 * (most of the work), gives the land of an island twice (as a face of its own and once more within), throws on some
 * arrangements of squares that share corners, does not say which lines bound a face, and is no faster: see the bench.
 */
export function facesOfLines(lines: readonly (readonly Xy[])[], snapM = 0.3): Face[] {
  const graph = createGraph(nodeLines(lines, snapM));
  pruneLooseEnds(graph);
  pruneBridges(graph);
  const { shells, islands } = ringsOf(graph, walkFaces(graph), snapM);
  assignIslands(shells, islands);
  return shells.map(({ ring, holes, lines }) => ({
    shell: ring,
    holes: holes.map((hole) => hole.ring),
    lines: [...new Set([lines, ...holes.map((hole) => hole.lines)].flat())].sort((m, n) => m - n),
  }));
}

/** Edge `e` is the half-edges `2e` (from -> to) and `2e + 1` (back). */
interface Graph {
  readonly noded: NodedLines;
  readonly alive: Uint8Array;
  /** Outgoing half-edges of each node, anticlockwise. */
  readonly outgoing: number[][];
}

function createGraph(noded: NodedLines): Graph {
  const outgoing: number[][] = noded.nodes.map(() => []);
  const angles = new Float64Array(2 * noded.edges.length);
  for (const [edge, { from, to }] of noded.edges.entries()) {
    const [ax, ay] = noded.nodes[from]!;
    const [bx, by] = noded.nodes[to]!;
    angles[2 * edge] = Math.atan2(by - ay, bx - ax);
    angles[2 * edge + 1] = Math.atan2(ay - by, ax - bx);
    outgoing[from]!.push(2 * edge);
    outgoing[to]!.push(2 * edge + 1);
  }
  for (const halfEdges of outgoing) halfEdges.sort((g, h) => angles[g]! - angles[h]!);
  return { noded, alive: new Uint8Array(noded.edges.length).fill(1), outgoing };
}

function startOf({ noded }: Graph, halfEdge: number): number {
  const { from, to } = noded.edges[halfEdge >> 1]!;
  return halfEdge & 1 ? to : from;
}

function endOf(graph: Graph, halfEdge: number): number {
  return startOf(graph, halfEdge ^ 1);
}

function dropEdge(graph: Graph, edge: number): void {
  graph.alive[edge] = 0;
  for (const halfEdge of [2 * edge, 2 * edge + 1]) {
    const halfEdges = graph.outgoing[startOf(graph, halfEdge)]!;
    halfEdges.splice(halfEdges.indexOf(halfEdge), 1);
  }
}

/** Takes away edges that end nowhere, over and over. */
function pruneLooseEnds(graph: Graph): void {
  const ends = graph.outgoing.flatMap((halfEdges, node) => (halfEdges.length === 1 ? [node] : []));
  for (let node = ends.pop(); node !== undefined; node = ends.pop()) {
    const [only, more] = graph.outgoing[node]!;
    if (only === undefined || more !== undefined) continue;
    ends.push(endOf(graph, only));
    dropEdge(graph, only >> 1);
  }
}

/** Takes away edges with the same face on both sides. */
function pruneBridges(graph: Graph): void {
  const faceOf = new Int32Array(2 * graph.alive.length).fill(-1);
  for (const [face, walk] of walkFaces(graph).entries()) for (const halfEdge of walk) faceOf[halfEdge] = face;
  for (let edge = 0; edge < graph.alive.length; edge++) {
    if (graph.alive[edge] && faceOf[2 * edge] === faceOf[2 * edge + 1]) dropEdge(graph, edge);
  }
  pruneLooseEnds(graph);
}

/** All boundary walks with the face on their left: at each node on along the next half-edge clockwise. */
function walkFaces(graph: Graph): number[][] {
  const walked = new Uint8Array(2 * graph.alive.length);
  const walks: number[][] = [];
  const placeOf = new Int32Array(2 * graph.alive.length);
  for (const halfEdges of graph.outgoing)
    for (const [place, halfEdge] of halfEdges.entries()) placeOf[halfEdge] = place;
  for (let first = 0; first < walked.length; first++) {
    if (!graph.alive[first >> 1] || walked[first]) continue;
    const walk: number[] = [];
    for (let halfEdge = first; !walked[halfEdge]; ) {
      walked[halfEdge] = 1;
      walk.push(halfEdge);
      const around = graph.outgoing[endOf(graph, halfEdge)]!;
      halfEdge = around[(placeOf[halfEdge ^ 1]! + around.length - 1) % around.length]!;
    }
    walks.push(walk);
  }
  return walks;
}

interface Ring {
  readonly ring: readonly Xy[];
  readonly lines: readonly number[];
  readonly areaM2: number;
  readonly connected: number;
}

interface Shell extends Ring {
  readonly holes: Ring[];
}

/** Boundaries of faces, and outer boundaries of whatever hangs together: islands in a face, if in any. */
function ringsOf(graph: Graph, walks: readonly number[][], snapM: number): { shells: Shell[]; islands: Ring[] } {
  const connected = connectedParts(graph);
  const shells: Shell[] = [];
  const islands: Ring[] = [];
  for (const walk of walks) {
    const rings = splitAtPinches(graph, walk).map((loop) => ringOf(graph, loop, connected));
    const outer = rings.find(({ areaM2 }) => areaM2 > 0);
    const inner = rings.filter(({ areaM2 }) => areaM2 < 0);
    if (!outer) islands.push(...inner);
    else if (isLand(outer, snapM)) shells.push({ ...outer, holes: inner });
  }
  return { shells, islands };
}

function isLand({ ring, areaM2 }: Ring, snapM: number): boolean {
  const perimeterM = ring.reduce((sum, vertex, i) => sum + xyDistanceM(ring.at(i - 1)!, vertex), 0);
  return (2 * areaM2) / perimeterM >= snapM;
}

/** Where a boundary passes a node twice it is two loops that touch there. */
function splitAtPinches(graph: Graph, walk: readonly number[]): number[][] {
  const loops: number[][] = [];
  const path: number[] = [];
  const placeOf = new Map<number, number>();
  for (const halfEdge of walk) {
    placeOf.set(startOf(graph, halfEdge), path.length);
    path.push(halfEdge);
    const place = placeOf.get(endOf(graph, halfEdge));
    if (place === undefined) continue;
    const loop = path.splice(place);
    for (const taken of loop) placeOf.delete(startOf(graph, taken));
    loops.push(loop);
  }
  return loops;
}

function ringOf(graph: Graph, loop: readonly number[], connected: Int32Array): Ring {
  const ring = loop.map((halfEdge) => graph.noded.nodes[startOf(graph, halfEdge)]!);
  return {
    ring,
    lines: [...new Set(loop.flatMap((halfEdge) => graph.noded.edges[halfEdge >> 1]!.lines))],
    areaM2: signedRingArea(ring),
    connected: connected[startOf(graph, loop[0]!)]!,
  };
}

/** A number for each node, the same for nodes that edges connect. */
function connectedParts(graph: Graph): Int32Array {
  const partOf = new Int32Array(graph.outgoing.length).fill(-1);
  for (let first = 0; first < partOf.length; first++) {
    if (partOf[first] !== -1) continue;
    partOf[first] = first;
    const open = [first];
    for (let node = open.pop(); node !== undefined; node = open.pop()) {
      for (const halfEdge of graph.outgoing[node]!) {
        const next = endOf(graph, halfEdge);
        if (partOf[next] !== -1) continue;
        partOf[next] = first;
        open.push(next);
      }
    }
  }
  return partOf;
}

/** Gives each island to the smallest shell around it. */
function assignIslands(shells: readonly Shell[], islands: readonly Ring[]): void {
  if (shells.length === 0) return;
  const tree = new Flatbush(shells.length);
  for (const { ring } of shells) tree.add(...boxAround(ring)!);
  tree.finish();
  for (const island of islands) {
    const [x, y] = island.ring[0]!;
    const around = tree
      .search(x, y, x, y)
      .map((index) => shells[index]!)
      .filter((shell) => shell.connected !== island.connected && pointInRing([x, y], shell.ring))
      .sort((m, n) => m.areaM2 - n.areaM2)[0];
    around?.holes.push(island);
  }
}
