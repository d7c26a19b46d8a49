import { type Project, propertyOf } from '../model/project.ts';
import { allAtOnce, type Steps } from '../model/steps.ts';
import type { CutOutSwitch } from '../model/things.ts';
import { DisjointSets } from '../network/sectioning/disjointSets.ts';
import { type Planning, startPlanning } from '../network/sectioning/planning.ts';
import type { PlannedSection, SectioningPlan } from '../network/sectioning/types.ts';
import { byName, compareNames } from '../words/text.ts';
import { switchCandidates } from './candidates.ts';
import { inFixedOrder, isKept, type Pieces, piecesBetween, sectioningProblem } from './dividePieces.ts';
import { stretchesOf } from './overLimit.ts';
import type { DividePlan, PlanChange, Survey, SwitchCandidate } from './types.ts';

/** A plan in the making: see `Planning`. */
export interface DividePlanning {
  readonly planning: Planning;
  /** The best so far, as the window shows it; null until there is one. */
  plan(): DividePlan | null;
}

/**
 * Begins the suggested division of the fence that the energisers reach with all switches closed, by
 * `core/network/sectioning`. Switches that are pinned or built are kept where they stand; the others are free to go. Null
 * where no energiser touches a fence. The same drawing gives the same plan, in whatever order its things were drawn.
 */
export function* startDividePlan(
  project: Project,
  survey: Pick<Survey, 'plane' | 'lines'>,
): Steps<DividePlanning | null> {
  const fixed = inFixedOrder(project);
  const candidates = switchCandidates(fixed, survey);
  yield;
  const pieces = piecesBetween(fixed, candidates);
  if (!pieces) return null;
  yield;
  const planning = startPlanning(sectioningProblem(fixed, pieces, candidates), { bestEffort: true });
  if ('outcome' in planning) throw new Error(`The division is ${planning.outcome}: ${planning.reason}.`);
  const inReach = candidates.filter(({ key }) => pieces.endsOf.has(key)).sort(asListed);
  return {
    planning,
    plan: () => planning.plan && dividePlanOf(project, pieces, inReach, planning.plan),
  };
}

/** The plan when all that may be done for it is done. */
export function dividePlan(project: Project, survey: Pick<Survey, 'plane' | 'lines'>): DividePlan | null {
  const started = allAtOnce(startDividePlan(project, survey));
  if (!started) return null;
  while (started.planning.step());
  return started.plan();
}

const reasons: readonly SwitchCandidate['why'][] = ['gateway', 'takeOff', 'strainer', 'added', 'existing'];

function asListed(a: SwitchCandidate, b: SwitchCandidate): number {
  return reasons.indexOf(a.why) - reasons.indexOf(b.why) || compareNames(namesIn(a), namesIn(b));
}

/** What is named in a candidate's label: by that they go, so that their order is the same in every language. */
function namesIn({ label }: SwitchCandidate): string {
  return Object.values(label.values).flat().map(String).join(' ');
}

function dividePlanOf(
  project: Project,
  pieces: Pieces,
  candidates: readonly SwitchCandidate[],
  plan: SectioningPlan,
): DividePlan {
  const chosen = new Set(plan.chosen);
  const inPlan = candidates.filter(({ key }) => chosen.has(key));
  const surplus = surplusSwitches(project, candidates, chosen);
  return {
    candidates,
    chosen: inPlan.map(({ key }) => key),
    cost: plan.cost,
    longestSectionM: plan.longestSectionM,
    sections: plan.sections.map(({ lengthM, gateways }) => ({ lengthM, gateways })),
    optimal: plan.optimal,
    costBound: plan.lowerBoundCost,
    complete: plan.complete,
    overLimit: stretchesOf(project, pieces, candidates, plan.overLimit),
    missing: inPlan.filter(({ switchIds }) => switchIds.length === 0),
    surplus: surplus.map(({ id }) => id),
    mayStandOpen: ringClosers(pieces, plan),
    changes: [...leavingOut(project, pieces, inPlan, plan), ...keeping(candidates, surplus)],
  };
}

/** Drawn switches, neither pinned nor built, that stand where the plan wants none; of two at one place the later by name. */
function surplusSwitches(
  project: Project,
  candidates: readonly SwitchCandidate[],
  chosen: ReadonlySet<string>,
): CutOutSwitch[] {
  return candidates
    .flatMap(({ key, switchIds }) => {
      const here = switchIds.map((id) => project.switch.get(id)!).sort(byName);
      const needed = chosen.has(key) ? (here.find(isKept) ?? here[0]) : undefined;
      return here.filter((cutOut) => cutOut !== needed && !isKept(cutOut));
    })
    .sort(byName);
}

function keeping(candidates: readonly SwitchCandidate[], surplus: readonly CutOutSwitch[]): PlanChange[] {
  const costOf = new Map(candidates.flatMap(({ switchIds, cost }) => switchIds.map((id) => [id, cost] as const)));
  return surplus.map(({ id, name }) => {
    return { kind: 'keep', switchId: id, name, cost: costOf.get(id)! };
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
  inPlan: readonly SwitchCandidate[],
  { sections }: SectioningPlan,
): PlanChange[] {
  const { maxSectionM, maxGateways } = propertyOf(project).divide;
  const sectionOf = sectionsByPiece(sections);
  return inPlan.flatMap(({ key, label }): PlanChange[] => {
    const [a, b] = endsOf.get(key)!.map((piece) => sectionOf.get(piece)!);
    if (!a || !b || a === b) return [];
    const lengthM = a.lengthM + b.lengthM;
    const gateways = a.gateways + b.gateways;
    return [
      {
        kind: 'leaveOut',
        candidateKey: key,
        label,
        lengthM,
        gateways,
        overByM: Math.max(0, lengthM - maxSectionM),
        overByGateways: maxGateways === null ? 0 : Math.max(0, gateways - maxGateways),
      },
    ];
  });
}
