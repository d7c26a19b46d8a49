import { type Project, propertyOf } from '../model/project.ts';
import type { CutOutSwitch } from '../model/things.ts';
import { buildNetwork } from '../network/buildNetwork.ts';
import { DisjointSets } from '../network/sectioning/disjointSets.ts';
import type { SectioningNetwork } from '../network/sectioning/types.ts';
import { shortestWays } from '../network/shortestWays.ts';
import type { Network, Run } from '../network/types.ts';
import type { SwitchCandidate } from './types.ts';

/** What hangs together once a switch stands at every candidate. */
export interface Pieces {
  readonly network: Network;
  /** By id. */
  readonly pieces: ReadonlyMap<string, Piece>;
  /** By candidate key: the pieces that it parts; only candidates within reach of an energiser that part anything. */
  readonly endsOf: ReadonlyMap<string, readonly [string, string]>;
  /** By candidate key: the longer of the ways from the energiser to its two sides, metres. */
  readonly farM: ReadonlyMap<string, number>;
  readonly source: string;
}

export interface Piece {
  readonly runs: Run[];
  lengthM: number;
  gateways: number;
}

/**
 * The drawing with its things by id. An undo puts what it brings back at the end of its table: without this, of two plans
 * that are equally good now the one and now the other would be found.
 */
export function inFixedOrder(project: Project): Project {
  const byId = <T>(things: ReadonlyMap<string, T>): ReadonlyMap<string, T> =>
    new Map([...things].sort(([a], [b]) => (a < b ? -1 : 1)));
  return {
    ...project,
    fenceType: byId(project.fenceType),
    fenceLine: byId(project.fenceLine),
    post: byId(project.post),
    gateway: byId(project.gateway),
    crossing: byId(project.crossing),
    switch: byId(project.switch),
    energiser: byId(project.energiser),
    leadOut: byId(project.leadOut),
    switchCandidate: byId(project.switchCandidate),
  };
}

/** Null where no energiser touches a fence. */
export function piecesBetween(project: Project, candidates: readonly SwitchCandidate[]): Pieces | null {
  const everywhere = candidates.map(({ key, place }): [string, CutOutSwitch] => [key, switchAt(key, place)]);
  const network = buildNetwork({ ...project, switch: new Map(everywhere) });
  const sourceNode = network.sources.find(({ node }) => node !== null)?.node ?? null;
  if (sourceNode === null) return null;
  const { distanceM } = shortestWays(network);
  const joined = new DisjointSets(network.nodes.length);
  for (const { kind, from, to } of network.edges) if (kind !== 'switch') joined.join(from, to);
  const pieceOf = (node: number): string => String(joined.find(node));
  const pieces = new Map<string, Piece>();
  for (const [node, awayM] of distanceM.entries()) {
    if (awayM < Infinity) pieces.set(pieceOf(node), { runs: [], lengthM: 0, gateways: 0 });
  }
  const endsOf = new Map<string, readonly [string, string]>();
  const farM = new Map<string, number>();
  for (const edge of network.edges) {
    if (distanceM[edge.from] === Infinity) continue;
    const id = pieceOf(edge.from);
    const piece = pieces.get(id)!;
    if (edge.kind === 'switch') {
      const other = pieceOf(edge.to);
      if (other === id) continue;
      endsOf.set(edge.switchId, [id, other]);
      farM.set(edge.switchId, Math.max(distanceM[edge.from]!, distanceM[edge.to]!));
    } else if (edge.kind === 'crossing') piece.gateways++;
    else if (edge.kind === 'run') {
      piece.lengthM += edge.lengthM;
      piece.runs.push(edge);
    }
  }
  return { network, pieces, endsOf, farM, source: pieceOf(sourceNode) };
}

/** The problem that the pieces and the user's requests make. */
export function sectioningProblem(
  project: Project,
  { pieces, endsOf, source }: Pieces,
  candidates: readonly SwitchCandidate[],
): SectioningNetwork {
  const { maxSectionM, maxGateways } = propertyOf(project).divide;
  const inReach = candidates.filter(({ key }) => endsOf.has(key));
  const forced = inReach.filter((candidate) => candidate.rule === 'forced' || stays(project, candidate));
  return {
    runs: [...pieces].map(([id, { lengthM, gateways }]) => ({ id, lengthM, gateways })),
    candidates: inReach.map(({ key, cost }) => {
      const [a, b] = endsOf.get(key)!;
      return { id: key, a, b, cost };
    }),
    source,
    maxSectionM,
    maxGateways,
    forced: forced.map(({ key }) => key),
    forbidden: inReach.filter((candidate) => isBarred(project, candidate)).map(({ key }) => key),
  };
}

/** Whether no switch may ever stand there. */
export function isBarred(project: Project, candidate: SwitchCandidate): boolean {
  return candidate.rule === 'forbidden' && !stays(project, candidate);
}

/** Pinned or built switches are kept where they stand. */
export function isKept({ pinned, status }: CutOutSwitch): boolean {
  return pinned || status === 'built';
}

function stays(project: Project, { switchIds }: SwitchCandidate): boolean {
  return switchIds.some((id) => isKept(project.switch.get(id)!));
}

function switchAt(id: string, place: CutOutSwitch['place']): CutOutSwitch {
  return { kind: 'switch', id, name: id, place, normally: 'closed', pinned: false, status: 'planned', note: '' };
}
