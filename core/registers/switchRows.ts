import type { LocalPlane } from '../geometry/localPlane.ts';
import { scale } from '../geometry/plane/vector.ts';
import { byName } from '../model/byName.ts';
import type { Project } from '../model/project.ts';
import type { CutOutSwitch } from '../model/things.ts';
import { type Feed, passesNormally } from '../network/feed.ts';
import { DisjointSets } from '../network/sectioning/disjointSets.ts';
import type { Network, SwitchEdge } from '../network/types.ts';
import type { SectionsFound } from './sections.ts';
import { placeInWords, switchSpot } from './switchPlaces.ts';
import type { SwitchRow } from './types.ts';

export interface FedNetwork {
  readonly network: Network;
  /** With every switch in its normal position. */
  readonly feed: Feed;
  readonly found: SectionsFound;
}

/**
 * The switch register, by name; those whose place is gone are left out. What each cuts
 * off comes from one walk of the network for all of them. A switch that stands open is told by what it keeps dead.
 */
export function switchRows(project: Project, plane: LocalPlane, fed: FedNetwork): SwitchRow[] {
  const beyond = createBeyond(fed);
  const behindOpen = createBehindOpen(fed);
  const bridged = new Set<string>();
  for (const edge of fed.network.edges) if (edge.kind === 'crossing') bridged.add(edge.gatewayId);
  const rows: SwitchRow[] = [];
  for (const cutOut of project.switch.values()) {
    const spot = switchSpot(project, plane, cutOut.place);
    if (!spot) continue;
    const index = fed.network.edgeOfSwitch.get(cutOut.id);
    const edge = index === undefined ? undefined : (fed.network.edges[index] as SwitchEdge);
    const way = index === undefined ? unfed : wayThrough(fed, index);
    const letter = (node: number | undefined): string | null => {
      return node === undefined ? null : (fed.found.sections[fed.found.ofNode[node]!]?.letter ?? null);
    };
    const supplyIsFrom = way.supply !== undefined && way.supply === edge?.from;
    rows.push({
      switch: cutOut,
      xy: spot.xy,
      at: spot.at,
      along: way.supply === undefined || supplyIsFrom ? spot.along : scale(spot.along, -1),
      placeText: placeInWords(project, cutOut.place, linesAt(fed.network, edge)),
      between: [letter(edge?.from), letter(edge?.to)],
      supplySection: letter(way.supply),
      farSection: letter(way.far),
      cutsOff: cutsOff(way, beyond, behindOpen),
      inRing: way.inRing,
      wrongSide: isWrongSide(cutOut, bridged, way, edge),
    });
  }
  return rows.sort((a, b) => byName(a.switch, b.switch));
}

interface Way {
  /** Node on the side that is fed without this switch; undefined where neither or both are. */
  readonly supply: number | undefined;
  readonly far: number | undefined;
  readonly inRing: boolean;
  readonly open: boolean;
}

const unfed: Way = { supply: undefined, far: undefined, inRing: false, open: false };

function wayThrough({ network, feed }: FedNetwork, index: number): Way {
  const { from, to, normally } = network.edges[index] as SwitchEdge;
  const [fromFed, toFed] = [feed.positionOf[from] !== -1, feed.positionOf[to] !== -1];
  if (normally === 'open') {
    if (fromFed && toFed) return { ...unfed, inRing: true, open: true };
    if (!fromFed && !toFed) return { ...unfed, open: true };
    return { supply: fromFed ? from : to, far: fromFed ? to : from, inRing: false, open: true };
  }
  if (!fromFed) return unfed;
  if (!feed.onlyWay[index]) return { ...unfed, inRing: true };
  const far = feed.edgeInto[to] === index ? to : from;
  return { supply: far === to ? from : to, far, inRing: false, open: false };
}

/** The supply comes through the crossing, so that opening the switch leaves the cable live. */
function isWrongSide(
  { place }: CutOutSwitch,
  bridged: ReadonlySet<string>,
  way: Way,
  edge: SwitchEdge | undefined,
): boolean {
  return place.on === 'gateway' && bridged.has(place.gatewayId) && edge !== undefined && way.supply === edge.to;
}

/** Lines at the joint where a line-end switch stands. */
function linesAt(network: Network, edge: SwitchEdge | undefined): string[] {
  if (!edge) return [];
  const ids = network.edgesAt[edge.to]!.flatMap((index) => {
    const other = network.edges[index]!;
    return other.kind === 'run' ? [other.lineId] : [];
  });
  return [...new Set(ids)];
}

type CutsOff = SwitchRow['cutsOff'];
const nothing: CutsOff = { lengthM: 0, gatewayIds: [], sections: [] };

function cutsOff(way: Way, beyond: (node: number) => CutsOff, behindOpen: (node: number) => CutsOff): CutsOff {
  if (way.far === undefined) return nothing;
  return way.open ? behindOpen(way.far) : beyond(way.far);
}

/** What hangs on a node whose edge is the only way to it: a stretch of the walk, so sums and lists are cut from one. */
function createBeyond({ network, feed, found }: FedNetwork): (node: number) => CutsOff {
  const lengthAt = new Float64Array(feed.order.length);
  const gateways: { position: number; id: string }[] = [];
  for (const edge of network.edges) {
    const position = Math.max(feed.positionOf[edge.from]!, feed.positionOf[edge.to]!);
    if (position === -1) continue;
    if (edge.kind === 'run') lengthAt[position]! += edge.lengthM;
    else if (edge.kind === 'crossing') gateways.push({ position, id: edge.gatewayId });
  }
  const lengthBefore = new Float64Array(feed.order.length + 1);
  for (let at = 0; at < lengthAt.length; at++) lengthBefore[at + 1] = lengthBefore[at]! + lengthAt[at]!;
  const sections = found.sections
    .map(({ letter, nodes }) => ({ id: letter, position: firstPosition(nodes, feed) }))
    .filter(({ position }) => position !== Infinity);
  const gatewaysIn = createSlices(gateways);
  const sectionsIn = createSlices(sections);
  return (node) => {
    const [first, last] = [feed.positionOf[node]!, feed.lastOf[node]!];
    return {
      lengthM: lengthBefore[last + 1]! - lengthBefore[first]!,
      gatewayIds: gatewaysIn(first, last),
      sections: sectionsIn(first, last),
    };
  };
}

function firstPosition(nodes: readonly number[], feed: Feed): number {
  let first = Infinity;
  for (const node of nodes) if (feed.positionOf[node] !== -1) first = Math.min(first, feed.positionOf[node]!);
  return first;
}

/** Ids by position; gives those between two positions, both counted. */
function createSlices(items: { position: number; id: string }[]): (first: number, last: number) => readonly string[] {
  const sorted = items.sort((a, b) => a.position - b.position);
  const ids = sorted.map(({ id }) => id);
  const firstAtLeast = (position: number): number => {
    let low = 0;
    let high = sorted.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (sorted[middle]!.position < position) low = middle + 1;
      else high = middle;
    }
    return low;
  };
  return (first, last) => ids.slice(firstAtLeast(first), firstAtLeast(last + 1));
}

/** What closing an open switch would feed: the unfed piece at its far side. Worked out when first asked. */
function createBehindOpen({ network, feed, found }: FedNetwork): (node: number) => CutsOff {
  interface Piece {
    lengthM: number;
    readonly gatewayIds: string[];
    readonly sections: Set<string>;
  }
  let pieces: Map<number, Piece> | null = null;
  const joined = new DisjointSets(network.nodes.length);
  const collect = (): Map<number, Piece> => {
    const passes = passesNormally(network);
    for (let index = 0; index < network.edges.length; index++) {
      const { from, to } = network.edges[index]!;
      if (passes(index)) joined.join(from, to);
    }
    const made = new Map<number, Piece>();
    for (const [index, edge] of network.edges.entries()) {
      if (feed.positionOf[edge.from] !== -1 || !passes(index)) continue;
      const root = joined.find(edge.from);
      const piece = made.get(root) ?? { lengthM: 0, gatewayIds: [], sections: new Set<string>() };
      made.set(root, piece);
      if (edge.kind === 'run') piece.lengthM += edge.lengthM;
      else if (edge.kind === 'crossing') piece.gatewayIds.push(edge.gatewayId);
      const section = found.sections[found.ofEdge[index]!];
      if (section) piece.sections.add(section.letter);
    }
    return made;
  };
  return (node) => {
    pieces ??= collect();
    const piece = pieces.get(joined.find(node));
    return piece ? { ...piece, sections: [...piece.sections] } : nothing;
  };
}
