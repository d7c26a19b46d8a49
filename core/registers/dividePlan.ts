import { type Project, propertyOf } from '../model/project.ts';
import type { CutOutSwitch } from '../model/things.ts';
import { buildNetwork } from '../network/buildNetwork.ts';
import { DisjointSets } from '../network/sectioning/disjointSets.ts';
import { planSections } from '../network/sectioning/plan.ts';
import type { PlannedSection, SectioningNetwork, SectioningPlan, Watch } from '../network/sectioning/types.ts';
import { shortestWays } from '../network/shortestWays.ts';
import type { Network, Run } from '../network/types.ts';
import { switchCandidates } from './candidates.ts';
import type { DividePlan, PlanChange, Survey, SwitchCandidate } from './types.ts';

/**
 * The suggested division of the fence that the energisers reach with all switches closed, by `core/network/sectioning`.
 * Switches that are pinned or built are kept where they stand; the others are free to go. Null where no energiser
 * touches a fence, and where `watch` stopped the work.
 */
export function dividePlan(
  project: Project,
  survey: Pick<Survey, 'plane' | 'lines'>,
  watch?: Watch,
): DividePlan | null {
  const candidates = switchCandidates(project, survey);
  const pieces = piecesBetween(project, candidates);
  if (!pieces) return null;
  const inReach = candidates.filter(({ key }) => pieces.endsOf.has(key));
  const problem = sectioningProblem(project, pieces, inReach);
  const plan = planSections(problem, { bestEffort: true, ...(watch ? { watch } : {}) });
  if (plan.outcome !== 'plan') return null;
  return dividePlanOf(project, pieces, inReach, plan);
}

/** What hangs together once a switch stands at every candidate. */
interface Pieces {
  readonly network: Network;
  readonly pieceOf: (node: number) => string;
  readonly lengthM: ReadonlyMap<string, number>;
  readonly gateways: ReadonlyMap<string, number>;
  readonly longestRun: ReadonlyMap<string, Run>;
  /** By candidate key: the pieces that it parts; only candidates within reach of an energiser that part anything. */
  readonly endsOf: ReadonlyMap<string, readonly [string, string]>;
  /** By candidate key: the longer of the ways from the energiser to its two sides, metres. */
  readonly farM: ReadonlyMap<string, number>;
  readonly source: string;
}

function piecesBetween(project: Project, candidates: readonly SwitchCandidate[]): Pieces | null {
  const everywhere = candidates.map(({ key, place }): [string, CutOutSwitch] => [key, switchAt(key, place)]);
  const network = buildNetwork({ ...project, switch: new Map(everywhere) });
  const sourceNode = network.sources.find(({ node }) => node !== null)?.node ?? null;
  if (sourceNode === null) return null;
  const { distanceM } = shortestWays(network);
  const joined = new DisjointSets(network.nodes.length);
  for (const { kind, from, to } of network.edges) if (kind !== 'switch') joined.join(from, to);
  const pieceOf = (node: number): string => `piece ${joined.find(node)}`;
  const lengthM = new Map<string, number>();
  const gateways = new Map<string, number>();
  const longestRun = new Map<string, Run>();
  const endsOf = new Map<string, readonly [string, string]>();
  const farM = new Map<string, number>();
  for (const [node, awayM] of distanceM.entries()) if (awayM < Infinity) lengthM.set(pieceOf(node), 0);
  for (const edge of network.edges) {
    if (distanceM[edge.from] === Infinity) continue;
    const piece = pieceOf(edge.from);
    if (edge.kind === 'switch') {
      const other = pieceOf(edge.to);
      if (other === piece) continue;
      endsOf.set(edge.switchId, [piece, other]);
      farM.set(edge.switchId, Math.max(distanceM[edge.from]!, distanceM[edge.to]!));
    } else if (edge.kind === 'crossing') gateways.set(piece, (gateways.get(piece) ?? 0) + 1);
    else if (edge.kind === 'run') {
      lengthM.set(piece, lengthM.get(piece)! + edge.lengthM);
      if (edge.lengthM > (longestRun.get(piece)?.lengthM ?? 0)) longestRun.set(piece, edge);
    }
  }
  return { network, pieceOf, lengthM, gateways, longestRun, endsOf, farM, source: pieceOf(sourceNode) };
}

function switchAt(id: string, place: CutOutSwitch['place']): CutOutSwitch {
  return { kind: 'switch', id, name: id, place, normally: 'closed', pinned: false, status: 'planned', note: '' };
}

function sectioningProblem(
  project: Project,
  { lengthM, gateways, endsOf, source }: Pieces,
  candidates: readonly SwitchCandidate[],
): SectioningNetwork {
  const { maxSectionM, maxGateways } = propertyOf(project).divide;
  const forced = candidates.filter((candidate) => candidate.rule === 'forced' || stays(project, candidate));
  const forbidden = candidates.filter((candidate) => candidate.rule === 'forbidden' && !stays(project, candidate));
  return {
    runs: [...lengthM].map(([id, length]) => ({ id, lengthM: length, gateways: gateways.get(id) ?? 0 })),
    candidates: candidates.map(({ key, cost }) => {
      const [a, b] = endsOf.get(key)!;
      return { id: key, a, b, cost };
    }),
    source,
    maxSectionM,
    maxGateways,
    forced: forced.map(({ key }) => key),
    forbidden: forbidden.map(({ key }) => key),
  };
}

/** A pinned or built switch stands there. */
function stays(project: Project, { switchIds }: SwitchCandidate): boolean {
  return switchIds.some((id) => isKept(project.switch.get(id)!));
}

function isKept({ pinned, status }: CutOutSwitch): boolean {
  return pinned || status === 'built';
}

function dividePlanOf(
  project: Project,
  pieces: Pieces,
  candidates: readonly SwitchCandidate[],
  plan: SectioningPlan,
): DividePlan {
  const chosen = new Set(plan.chosen);
  const missing = candidates.filter(({ key, switchIds }) => chosen.has(key) && switchIds.length === 0);
  const surplus = surplusSwitches(project, candidates, chosen);
  return {
    candidates,
    chosen: plan.chosen,
    cost: plan.cost,
    longestSectionM: plan.longestSectionM,
    sections: plan.sections.map(({ lengthM, gateways }) => ({ lengthM, gateways })),
    optimal: plan.optimal,
    costBound: plan.lowerBoundCost,
    tooLong: tooLongRuns(project, pieces),
    missing,
    surplus: surplus.map(({ id }) => id),
    mayStandOpen: ringClosers(pieces, plan),
    changes: [
      ...leavingOut(project, pieces, candidates, plan),
      ...surplus.map(({ id, name, place }): PlanChange => {
        const cost = candidates.find(({ switchIds }) => switchIds.includes(id))?.cost;
        return { kind: 'keep', switchId: id, label: name, cost: cost ?? costAlone(project, place) };
      }),
    ],
  };
}

/** Drawn switches, neither pinned nor built, that stand where the plan wants none; of two at one place the later. */
function surplusSwitches(
  project: Project,
  candidates: readonly SwitchCandidate[],
  chosen: ReadonlySet<string>,
): CutOutSwitch[] {
  const needed = new Set<string>();
  const free = (id: string): boolean => !isKept(project.switch.get(id)!);
  const inReach = new Set<string>();
  for (const { key, switchIds } of candidates) {
    for (const id of switchIds) inReach.add(id);
    const first = switchIds.find((id) => !free(id)) ?? switchIds[0];
    if (chosen.has(key) && first !== undefined) needed.add(first);
  }
  return [...project.switch.values()].filter(({ id }) => inReach.has(id) && free(id) && !needed.has(id));
}

function costAlone(project: Project, place: CutOutSwitch['place']): number {
  const { costs } = propertyOf(project).divide;
  if (place.on === 'gateway') return costs.gateway;
  return place.on === 'line' ? costs.alongRun : costs.takeOff;
}

function tooLongRuns(project: Project, { network, lengthM, longestRun }: Pieces): DividePlan['tooLong'] {
  const { maxSectionM } = propertyOf(project).divide;
  return [...lengthM].flatMap(([piece, length]) => {
    const run = longestRun.get(piece);
    if (length <= maxSectionM || !run) return [];
    return [{ lineId: run.lineId, lengthM: length, at: network.nodes[run.from]!.at }];
  });
}

/** Joins the sections from the energiser outward; a switch between two that are joined already closes a ring. */
function ringClosers({ endsOf, farM }: Pieces, { chosen, sections }: SectioningPlan): string[] {
  const sectionOf = sectionsByPiece(sections);
  const joined = new DisjointSets(sections.length);
  const indexOf = new Map(sections.map((section, index) => [section, index]));
  return [...chosen]
    .sort((a, b) => farM.get(a)! - farM.get(b)!)
    .filter((key) => {
      const [a, b] = endsOf.get(key)!.map((piece) => indexOf.get(sectionOf.get(piece)!)!);
      return a !== b && !joined.join(a!, b!);
    });
}

function sectionsByPiece(sections: readonly PlannedSection[]): ReadonlyMap<string, PlannedSection> {
  return new Map(sections.flatMap((section) => section.runs.map((piece) => [piece, section])));
}

function leavingOut(
  project: Project,
  { endsOf }: Pieces,
  candidates: readonly SwitchCandidate[],
  { chosen, sections }: SectioningPlan,
): PlanChange[] {
  const { maxSectionM, maxGateways } = propertyOf(project).divide;
  const sectionOf = sectionsByPiece(sections);
  const byKey = new Map(candidates.map((candidate) => [candidate.key, candidate]));
  return chosen.flatMap((key): PlanChange[] => {
    const [a, b] = endsOf.get(key)!.map((piece) => sectionOf.get(piece)!);
    if (!a || !b || a === b) return [];
    const lengthM = a.lengthM + b.lengthM;
    const gateways = a.gateways + b.gateways;
    return [
      {
        kind: 'leaveOut',
        candidateKey: key,
        label: byKey.get(key)!.label,
        lengthM,
        gateways,
        overByM: Math.max(0, lengthM - maxSectionM),
        overByGateways: maxGateways === null ? 0 : Math.max(0, gateways - maxGateways),
      },
    ];
  });
}
