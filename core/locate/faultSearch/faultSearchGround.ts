import { sourceNodes } from '../../network/feed.ts';
import { DisjointSets } from '../../network/sectioning/disjointSets.ts';
import { edgeLengthM, shortestWays } from '../../network/shortestWays.ts';
import type { Network } from '../../network/types.ts';
import type { Survey } from '../../survey/types.ts';

/** What stays joined with all switches open, as far as looking for a fault goes: a section, or cable between switches. */
export interface FaultSearchPiece {
  /** Position in `survey.sections`; null: a lead-out, or what lies between two switches. */
  readonly section: number | null;
  /** Fence and cable; at least 1, so that every piece is worth a test. */
  readonly lengthM: number;
}

export interface FaultSearchSwitch {
  readonly id: string;
  /** Pieces on its two sides. */
  readonly a: number;
  readonly b: number;
  /** On foot along the fence to it and back to the energiser. */
  readonly walkM: number;
}

/** What one energiser feeds, as pieces and the switches between them. */
export interface FaultSearchGround {
  readonly energiserId: string;
  readonly pieces: readonly FaultSearchPiece[];
  /** Those that normally stand closed; the others stay open throughout. */
  readonly switches: readonly FaultSearchSwitch[];
  /** The piece at the energiser. */
  readonly source: number;
}

/** Null where the energiser touches no live fence. */
export function faultSearchGround(survey: Survey, energiserId: string): FaultSearchGround | null {
  const { network, sections } = survey;
  const sourceNode = network.sources.find((source) => source.energiserId === energiserId)?.node ?? null;
  if (sourceNode === null) return null;
  const joined = new DisjointSets(network.nodes.length);
  for (const { kind, from, to } of network.edges) if (kind !== 'switch') joined.join(from, to);
  const { setOf, count } = joined.number();
  const sectionOf = new Int32Array(count).fill(-1);
  for (const { index, nodes } of sections) for (const node of nodes) sectionOf[setOf[node]!] = index;
  const lengths = new Float64Array(count);
  for (const edge of network.edges) lengths[setOf[edge.from]!]! += edgeLengthM(edge);
  const switches = closedSwitches(network, setOf);
  const reached = reachedFrom(setOf[sourceNode]!, switches);
  const order = [...reached];
  const numberOf = new Map(order.map((piece, n) => [piece, n]));
  return {
    energiserId,
    pieces: order.map((piece) => ({
      section: sectionOf[piece]! < 0 ? null : sectionOf[piece]!,
      lengthM: Math.max(1, lengths[piece]!),
    })),
    switches: switches
      .filter(({ a }) => reached.has(a))
      .map((each) => ({ ...each, a: numberOf.get(each.a)!, b: numberOf.get(each.b)! })),
    source: 0,
  };
}

function closedSwitches(network: Network, setOf: Int32Array): FaultSearchSwitch[] {
  const { distanceM } = shortestWays(network);
  return network.edges.flatMap((edge): FaultSearchSwitch[] => {
    if (edge.kind !== 'switch' || edge.normally === 'open') return [];
    const [a, b] = [setOf[edge.from]!, setOf[edge.to]!];
    if (a === b) return [];
    return [{ id: edge.switchId, a, b, walkM: 2 * Math.min(distanceM[edge.from]!, distanceM[edge.to]!) }];
  });
}

function reachedFrom(source: number, switches: readonly FaultSearchSwitch[]): Set<number> {
  const at = new Map<number, number[]>();
  for (const { a, b } of switches) {
    at.set(a, [...(at.get(a) ?? []), b]);
    at.set(b, [...(at.get(b) ?? []), a]);
  }
  const reached = new Set([source]);
  for (const piece of reached) for (const next of at.get(piece) ?? []) reached.add(next);
  return reached;
}

/** Energisers that feed some fence, in the order they were drawn. */
export function energisersToSearch({ network }: Survey): string[] {
  const fed = sourceNodes(network);
  return network.sources.flatMap(({ energiserId, node }) => (node !== null && fed.has(node) ? [energiserId] : []));
}

/** Pieces that are live with these switches open. */
export function livePieces({ pieces, switches, source }: FaultSearchGround, open: ReadonlySet<string>): Set<number> {
  const at: number[][] = pieces.map(() => []);
  for (const { id, a, b } of switches) {
    if (open.has(id)) continue;
    at[a]!.push(b);
    at[b]!.push(a);
  }
  const live = new Set([source]);
  for (const piece of live) for (const next of at[piece]!) live.add(next);
  return live;
}
