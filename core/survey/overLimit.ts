import { type Project, propertyOf } from '../model/project.ts';
import { contractNetwork } from '../network/sectioning/contract.ts';
import { overLimitGroups } from '../network/sectioning/overLimit.ts';
import type { OverLimitGroup } from '../network/sectioning/types.ts';
import { formatLength, type Units } from '../words/numbers/write.ts';
import { byName, counted, listed } from '../words/text.ts';
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

/** Names in a list before it is cut short. */
const mostNames = 4;

/** Which fence is over the limits whatever is chosen, and why: what reads the same together, in the order given. */
export function overLimitInWords(project: Project, stretches: readonly OverLimitStretch[]): OverLimitLine[] {
  const { units, divide } = propertyOf(project);
  const equal = Map.groupBy(stretches, (stretch) => {
    return `${howFar(stretch, divide, units, '')} ${whyNot(stretch)}`;
  });
  return [...equal.values()].map((group) => {
    const [first] = group as [OverLimitStretch];
    const lineIds = [...new Set(group.flatMap((stretch) => stretch.lineIds))];
    const lines = lineIds.flatMap((id) => project.fenceLine.get(id) ?? []).sort(byName);
    const names = lines.map(({ name }) => name);
    const where = names.length === 0 ? 'Here' : listed(names, mostNames);
    const what = group.length > 1 ? `${group.length} stretches` : 'a stretch';
    const far = howFar(first, divide, units, group.length > 1 ? ' each' : '');
    return { text: `${where}: ${what} ${far}, ${whyNot(first)}.`, lineIds };
  });
}

/** "of 1.20 km each, 900 m over the limit". */
function howFar(
  { lengthM, gateways, overByM, overByGateways }: OverLimitStretch,
  { maxGateways }: { readonly maxGateways: number | null },
  units: Units,
  each: string,
): string {
  const long = `of ${formatLength(lengthM, units)}${each}, ${formatLength(overByM, units)} over the limit`;
  const many = `with ${counted(gateways, 'gateway')}${each}, the limit being ${maxGateways}`;
  return [overByM > 0 ? long : '', overByGateways > 0 ? many : ''].filter((part) => part !== '').join(', and ');
}

function whyNot({ barred }: OverLimitStretch): string {
  return barred.length === 0
    ? 'without a place for a switch'
    : `with a switch ruled out at ${listed(barred, mostNames)}`;
}
