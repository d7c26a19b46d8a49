import type { LonLat } from '../geometry/types.ts';
import type { Project } from '../model/project.ts';
import type { Feed } from './feed.ts';
import { type NearMiss, nearMisses } from './nearMisses.ts';
import type { DeadReason, Network } from './types.ts';

/** The dead parts of a network by number: `partOf` each node, -1 where it is fed or part of no piece of fence. */
export interface DeadPieces {
  readonly feed: Feed;
  readonly partOf: Int32Array;
  readonly count: number;
}

export interface FoundReason {
  readonly why: DeadReason;
  /** Null: anywhere in the part. */
  readonly at: LonLat | null;
}

/**
 * Why each dead part is dead, with the place to look; undefined where nothing near it explains it. A part that would
 * be fed through another dead part is told what parts it from that one: an open switch first, then a gateway without a
 * crossing, then a gap or an unjoined crossing of lines.
 */
export function deadReasons(
  project: Project,
  network: Network,
  pieces: DeadPieces,
): readonly (FoundReason | undefined)[] {
  if (pieces.count === 0) return [];
  const noSource = withoutSource(project, network);
  if (noSource) {
    return Array.from({ length: pieces.count }, () => noSource);
  }
  const reasons = Array.from({ length: pieces.count }, (): FoundReason | undefined => undefined);
  spread(pieces, reasons, linksOf(network, pieces));
  if (reasons.includes(undefined)) {
    const unexplained = (part: number): boolean => part >= 0 && !reasons[part];
    const misses = nearMisses(project, network, pieces.partOf, unexplained);
    spread(pieces, reasons, [...linksOf(network, pieces), ...misses.map(linkOf)]);
  }
  return reasons;
}

function withoutSource(project: Project, network: Network): FoundReason | null {
  if (network.sources.some(({ node }) => node !== null)) return null;
  const [energiser] = project.energiser.values();
  if (!energiser) return { why: { code: 'noEnergiser' }, at: null };
  return { why: { code: 'energiserTouchesNothing', energiserId: energiser.id }, at: energiser.at };
}

/** Fed things count as one piece. */
const fed = -1;

/** What would join two pieces if it were repaired. */
interface Link {
  readonly a: number;
  readonly b: number;
  /** Lower is told first. */
  readonly rank: number;
  readonly reason: (fromPart: number) => FoundReason;
  readonly id: string | null;
}

/** Explains pieces outward from what is fed, one link at a time. */
function spread({ count }: DeadPieces, reasons: (FoundReason | undefined)[], links: readonly Link[]): void {
  const linksAt: Link[][] = Array.from({ length: count + 1 }, () => []);
  for (const link of links) {
    linksAt[link.a + 1]!.push(link);
    linksAt[link.b + 1]!.push(link);
  }
  const explained = new Set([fed]);
  let front = [fed];
  while (front.length > 0) {
    const found = new Map<number, Link[]>();
    for (const piece of front) {
      for (const link of linksAt[piece + 1]!) {
        const other = link.a === piece ? link.b : link.a;
        if (explained.has(other)) continue;
        const known = found.get(other);
        if (known) known.push(link);
        else found.set(other, [link]);
      }
    }
    for (const [piece, ways] of found) {
      explained.add(piece);
      reasons[piece] ??= together(ways, piece);
    }
    front = [...found.keys()];
  }
}

/** All switches, or all gateways, of the first kind of link; else the nearest of the misses. */
function together(ways: readonly Link[], part: number): FoundReason {
  const first = ways.reduce((a, b) => (b.rank < a.rank ? b : a));
  const { why, at } = first.reason(part);
  const ids = [...new Set(ways.flatMap(({ rank, id }) => (rank === first.rank && id !== null ? [id] : [])))];
  if (why.code === 'openSwitch') return { why: { code: 'openSwitch', switchIds: ids }, at };
  if (why.code === 'noCrossing') return { why: { code: 'noCrossing', gatewayIds: ids }, at };
  return { why, at };
}

function linksOf({ nodes, edges, postsOfGateway }: Network, { feed, partOf }: DeadPieces): Link[] {
  const links: Link[] = [];
  const add = (from: number, to: number, rank: number, id: string, why: DeadReason): void => {
    if (isNothing(from) || isNothing(to) || partOf[from] === partOf[to]) return;
    const reason = { why, at: nodes[from]!.at };
    links.push({ a: partOf[from]!, b: partOf[to]!, rank, id, reason: () => reason });
  };
  const isNothing = (node: number): boolean => partOf[node] === -1 && feed.positionOf[node] === -1;
  for (const edge of edges) {
    if (edge.kind !== 'switch' || edge.normally === 'closed') continue;
    add(edge.from, edge.to, 0, edge.switchId, { code: 'openSwitch', switchIds: [edge.switchId] });
  }
  for (const [gatewayId, [start, end]] of postsOfGateway) {
    add(start, end, 1, gatewayId, { code: 'noCrossing', gatewayIds: [gatewayId] });
  }
  return links;
}

/** A miss ranks after switches and gateways, the nearest first. */
function linkOf(miss: NearMiss): Link {
  return {
    a: miss.a.part,
    b: miss.b.part,
    rank: 2 + miss.gapM,
    id: null,
    reason: (part) => {
      const { lineId } = part === miss.a.part ? miss.b : miss.a;
      const why: DeadReason = miss.crosses
        ? { code: 'crossesUnjoined', lineId }
        : { code: 'gap', gapM: miss.gapM, lineId };
      return { why, at: miss.at };
    },
  };
}
