import type { LocalPlane } from '../geometry/localPlane.ts';
import { scale } from '../geometry/vector.ts';
import type { Project } from '../model/project.ts';
import type { CutOutSwitch } from '../model/things.ts';
import { type Feed, passesNormally } from '../network/feed.ts';
import { DisjointSets } from '../network/sectioning/disjointSets.ts';
import type { Network, SwitchEdge } from '../network/types.ts';
import { byName } from '../words/text.ts';
import type { SectionsFound } from './sections.ts';
import { placeInWords, switchSpot } from './switchPlaces.ts';
import type { SwitchFeed, SwitchRow } from './types.ts';

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
    const way = index === undefined ? null : wayThrough(fed, index);
    const letter = (node: number): string | null => fed.found.sections[fed.found.ofNode[node]!]?.letter ?? null;
    rows.push({
      switch: cutOut,
      xy: spot.xy,
      at: spot.at,
      along: way?.from === 'oneSide' && way.supply === edge?.to ? scale(spot.along, -1) : spot.along,
      where: placeInWords(project, cutOut.place, linesAt(fed.network, edge)),
      feed: feedThrough(cutOut, way, edge, letter),
      cutsOff: cutsOff(way, edge, beyond, behindOpen),
      wrongSide: isWrongSide(cutOut, bridged, way, edge),
    });
  }
  return rows.sort((a, b) => byName(a.switch, b.switch));
}

type Way =
  /** `supply`: the node on the side that is fed without this switch. */
  | { readonly from: 'oneSide'; readonly supply: number; readonly far: number }
  | { readonly from: 'bothSides' }
  | { readonly from: 'nowhere' };

function wayThrough({ network, feed }: FedNetwork, index: number): Way {
  const { from, to, normally } = network.edges[index] as SwitchEdge;
  const [fromFed, toFed] = [feed.positionOf[from] !== -1, feed.positionOf[to] !== -1];
  if (!fromFed && !toFed) return { from: 'nowhere' };
  if (normally === 'open') {
    if (fromFed && toFed) return { from: 'bothSides' };
    return { from: 'oneSide', supply: fromFed ? from : to, far: fromFed ? to : from };
  }
  if (!feed.onlyWay[index]) return { from: 'bothSides' };
  const far = feed.edgeInto[to] === index ? to : from;
  return { from: 'oneSide', supply: far === to ? from : to, far };
}

function feedThrough(
  { normally }: CutOutSwitch,
  way: Way | null,
  edge: SwitchEdge | undefined,
  letter: (node: number) => string | null,
): SwitchFeed {
  const off = normally === 'open';
  if (!way || !edge) return { from: 'notInFence', off };
  if (way.from === 'oneSide') return { from: 'oneSide', supply: letter(way.supply), far: letter(way.far), off };
  return { from: way.from, sides: [letter(edge.from), letter(edge.to)], off };
}

/** The supply comes through the crossing, so that opening the switch leaves the cable live. */
function isWrongSide(
  { place }: CutOutSwitch,
  bridged: ReadonlySet<string>,
  way: Way | null,
  edge: SwitchEdge | undefined,
): boolean {
  if (place.on !== 'gateway' || !bridged.has(place.gatewayId)) return false;
  return way?.from === 'oneSide' && way.supply === edge?.to;
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

function cutsOff(
  way: Way | null,
  edge: SwitchEdge | undefined,
  beyond: (node: number) => CutsOff,
  behindOpen: (node: number) => CutsOff,
): CutsOff {
  if (way?.from !== 'oneSide') return nothing;
  return edge?.normally === 'open' ? behindOpen(way.far) : beyond(way.far);
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
