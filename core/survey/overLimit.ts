import { type Project, propertyOf } from '../model/project.ts';
import { contractNetwork } from '../network/sectioning/contract.ts';
import { overLimitGroups } from '../network/sectioning/overLimit.ts';
import type { OverLimitGroup } from '../network/sectioning/types.ts';
import { byName } from '../words/text.ts';
import type { Figures } from '../words/types.ts';
import { switchCandidates } from './candidates.ts';
import { inFixedOrder, isBarred, type Pieces, piecesBetween, sectioningProblem } from './dividePieces.ts';
import type { OverLimitStretch, Survey, SwitchCandidate } from './types.ts';

/**
 * Fence that no set of switches can bring within the limits: what hangs together whatever is chosen, and is over a limit
 * by itself. Found without planning. Empty where no energiser touches a fence.
 */
export function overLimitStretches(project: Project, survey: Pick<Survey, 'plane' | 'lines'>): OverLimitStretch[] {
  const fixed = inFixedOrder(project);
  const candidates = switchCandidates(fixed, survey);
  const pieces = piecesBetween(fixed, candidates);
  if (!pieces) return [];
  const problem = sectioningProblem(fixed, pieces, candidates);
  return stretchesOf(project, pieces, candidates, overLimitGroups(problem, contractNetwork(problem)));
}

/** Groups of pieces over a limit, as fence. The worst first. */
export function stretchesOf(
  project: Project,
  { network, pieces, endsOf }: Pieces,
  candidates: readonly SwitchCandidate[],
  groups: readonly OverLimitGroup[],
): OverLimitStretch[] {
  const stretches = groups.map((group): OverLimitStretch => {
    const ids = new Set(group.runs);
    const runs = group.runs.flatMap((id) => pieces.get(id)!.runs);
    const ofLine = new Map<string, number>();
    for (const { lineId, lengthM } of runs) ofLine.set(lineId, (ofLine.get(lineId) ?? 0) + lengthM);
    const longest = runs.reduce<(typeof runs)[number] | null>((a, b) => (a && a.lengthM >= b.lengthM ? a : b), null);
    const barred = candidates.filter((candidate) => {
      return isBarred(project, candidate) && endsOf.get(candidate.key)?.every((id) => ids.has(id));
    });
    return {
      lineIds: [...ofLine].sort(([, a], [, b]) => b - a).map(([id]) => id),
      lengthM: group.lengthM,
      gateways: group.gateways,
      overByM: group.overByM,
      overByGateways: group.overByGateways,
      barred: barred.map(({ label }) => label),
      at: longest ? network.nodes[longest.from]!.at : null,
    };
  });
  return stretches.sort((a, b) => b.overByM - a.overByM || b.overByGateways - a.overByGateways);
}

/** Stretches that read the same, told once. */
export interface OverLimitLine {
  readonly text: string;
  readonly lineIds: readonly string[];
}

/** Which fence is over the limits whatever is chosen, and why: what reads the same together, in the order given. */
export function overLimitInWords(
  project: Project,
  stretches: readonly OverLimitStretch[],
  f: Figures,
): OverLimitLine[] {
  const { maxGateways } = propertyOf(project).divide;
  const text = ([first]: readonly OverLimitStretch[], lines: readonly string[], count: number) => {
    const { lengthM, gateways, overByM, overByGateways, barred } = first!;
    const each = { lengthM, gateways, overByM, overByGateways, maxGateways, barred };
    return f.words.survey.plan.overLimit({ lines, stretches: count, ...each });
  };
  const equal = Map.groupBy(stretches, (stretch) => text([stretch], [], 1));
  return [...equal.values()].map((group) => {
    const lineIds = [...new Set(group.flatMap((stretch) => stretch.lineIds))];
    const lines = lineIds.flatMap((id) => project.fenceLine.get(id) ?? []).sort(byName);
    const names = lines.map(({ name }) => name);
    return { text: text(group, names, group.length), lineIds };
  });
}
