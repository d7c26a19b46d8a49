import { boxAround } from './box.ts';
import { boxTree } from './boxTree.ts';
import { type NodedLines, nodeLines } from './nodeLines.ts';
import { pointInRing, signedRingArea } from './ring.ts';
import type { Xy } from './types.ts';
import { xyDistanceM } from './vector.ts';

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
  const walks = walkFaces(graph);
  const { shells, islands } = ringsOf(graph, pruneBridges(graph, walks) ? walkFaces(graph) : walks, snapM);
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
  const { nodes, edges } = noded;
  const degree = new Int32Array(nodes.length);
  for (const { from, to } of edges) {
    degree[from]!++;
    degree[to]!++;
  }
  const outgoing = Array.from(degree, (count) => new Array<number>(count));
  for (let edge = edges.length - 1; edge >= 0; edge--) {
    const { from, to } = edges[edge]!;
    outgoing[to]![--degree[to]!] = 2 * edge + 1;
    outgoing[from]![--degree[from]!] = 2 * edge;
  }
  const graph = { noded, alive: new Uint8Array(edges.length).fill(1), outgoing };
  // Two come in turn either way.
  for (const halfEdges of outgoing) if (halfEdges.length > 2) sortByAngle(graph, halfEdges);
  return graph;
}

function sortByAngle(graph: Graph, halfEdges: number[]): void {
  const angles = new Map(
    halfEdges.map((halfEdge) => {
      const [ax, ay] = graph.noded.nodes[startOf(graph, halfEdge)]!;
      const [bx, by] = graph.noded.nodes[endOf(graph, halfEdge)]!;
      return [halfEdge, Math.atan2(by - ay, bx - ax)];
    }),
  );
  halfEdges.sort((g, h) => angles.get(g)! - angles.get(h)!);
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
  const ends: number[] = [];
  for (let node = 0; node < graph.outgoing.length; node++) if (graph.outgoing[node]!.length === 1) ends.push(node);
  for (let node = ends.pop(); node !== undefined; node = ends.pop()) {
    const [only, more] = graph.outgoing[node]!;
    if (only === undefined || more !== undefined) continue;
    ends.push(endOf(graph, only));
    dropEdge(graph, only >> 1);
  }
}

/** Takes away edges with the same face on both sides; tells whether there were any. */
function pruneBridges(graph: Graph, walks: readonly (readonly number[])[]): boolean {
  const faceOf = new Int32Array(2 * graph.alive.length).fill(-1);
  for (let face = 0; face < walks.length; face++) for (const halfEdge of walks[face]!) faceOf[halfEdge] = face;
  let any = false;
  for (let edge = 0; edge < graph.alive.length; edge++) {
    if (!graph.alive[edge] || faceOf[2 * edge] !== faceOf[2 * edge + 1]) continue;
    dropEdge(graph, edge);
    any = true;
  }
  if (any) pruneLooseEnds(graph);
  return any;
}

/** All boundary walks with the face on their left: at each node on along the next half-edge clockwise. */
function walkFaces(graph: Graph): number[][] {
  const walked = new Uint8Array(2 * graph.alive.length);
  const walks: number[][] = [];
  const placeOf = new Int32Array(2 * graph.alive.length);
  for (const halfEdges of graph.outgoing) {
    for (let place = 0; place < halfEdges.length; place++) placeOf[halfEdges[place]!] = place;
  }
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
  const placeOf = new Int32Array(graph.outgoing.length).fill(-1);
  for (const walk of walks) {
    const rings = splitAtPinches(graph, walk, placeOf).map((loop) => ringOf(graph, loop, connected));
    const outer = rings.find(({ areaM2 }) => areaM2 > 0);
    const inner = rings.filter(({ areaM2 }) => areaM2 < 0);
    if (!outer) for (const island of inner) islands.push(island);
    else if (isLand(outer, snapM)) shells.push({ ...outer, holes: inner });
  }
  return { shells, islands };
}

function isLand({ ring, areaM2 }: Ring, snapM: number): boolean {
  const perimeterM = ring.reduce((sum, vertex, i) => sum + xyDistanceM(ring.at(i - 1)!, vertex), 0);
  return (2 * areaM2) / perimeterM >= snapM;
}

/** Where a boundary passes a node twice it is two loops that touch there. `placeOf` holds -1 for each node, and will again. */
function splitAtPinches(graph: Graph, walk: readonly number[], placeOf: Int32Array): number[][] {
  const loops: number[][] = [];
  const path: number[] = [];
  for (const halfEdge of walk) {
    placeOf[startOf(graph, halfEdge)] = path.length;
    path.push(halfEdge);
    const place = placeOf[endOf(graph, halfEdge)]!;
    if (place === -1) continue;
    const loop = path.splice(place);
    for (const taken of loop) placeOf[startOf(graph, taken)] = -1;
    loops.push(loop);
  }
  return loops;
}

function ringOf(graph: Graph, loop: readonly number[], connected: Int32Array): Ring {
  const ring = loop.map((halfEdge) => graph.noded.nodes[startOf(graph, halfEdge)]!);
  const lines = new Set<number>();
  for (const halfEdge of loop) for (const line of graph.noded.edges[halfEdge >> 1]!.lines) lines.add(line);
  return {
    ring,
    lines: [...lines],
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
  const tree = boxTree(shells.length, (add) => {
    for (const { ring } of shells) add(...boxAround(ring)!);
  });
  for (const island of islands) {
    const [x, y] = island.ring[0]!;
    const around = tree
      .search([x, y, x, y])
      .map((index) => shells[index]!)
      .filter((shell) => shell.connected !== island.connected && pointInRing([x, y], shell.ring))
      .sort((m, n) => m.areaM2 - n.areaM2)[0];
    around?.holes.push(island);
  }
}
