import type { FaultSearch, FaultSearchCheck, FaultSearchReading } from '../../model/faultSearchThings.ts';
import type { SearchTree } from '../../network/faultSearch/index.ts';
import { type Evidence, evidenceOf, inQuestion, suspectReadings } from './faultSearchEvidence.ts';
import type { FaultSearchGround } from './faultSearchGround.ts';
import { type FaultSearchTree, faultSearchTree, wayInto, waysOut } from './faultSearchTree.ts';
import { planRest, planWhole, type TestsLeft, testsLeft } from './testPlan.ts';

/** A reading that is to be taken, and how the switches must stand for it. */
export interface FaultSearchStep {
  readonly check: FaultSearchCheck;
  /** Read on the energiser's side of this switch; null: at the energiser. */
  readonly switchId: string | null;
  /** All that stand open for it, besides those opened first. */
  readonly openIds: readonly string[];
  /** What has to be changed for it since the last reading. */
  readonly toOpen: readonly string[];
  readonly toClose: readonly string[];
}

export type FaultSearchState =
  /** These ring switches come first, so that every section is fed one way. */
  | { readonly kind: 'openFirst'; readonly switchIds: readonly string[] }
  | { readonly kind: 'read'; readonly step: FaultSearchStep; readonly left: TestsLeft }
  /** The first reading was good: there is no fault to look for now. */
  | { readonly kind: 'noFault' }
  /** Readings that can't all be right, the likeliest to be wrong first; `repeat` brings one of them about again. */
  | { readonly kind: 'contradiction'; readonly suspects: readonly Evidence[]; readonly repeat: FaultSearchStep | null }
  /** One piece is left. With `step`, a reading that would make sure of it. */
  | {
      readonly kind: 'found';
      readonly piece: number;
      readonly step: FaultSearchStep | null;
      readonly confirmed: boolean;
    };

export interface FaultSearchWalk {
  readonly state: FaultSearchState;
  readonly tree: FaultSearchTree;
  /** Pieces where the fault can still be. */
  readonly inQuestion: ReadonlySet<number>;
  /** Tests taken that count. */
  readonly tested: number;
  /** Of the whole search, as planned at its beginning. */
  readonly planned: TestsLeft;
}

/**
 * Where a search stands. A switch where the reading stayed low is left open, so that what lies beyond it, sound or not,
 * has no part in any later reading: with several faults the walk still ends at one of them. One that made the reading
 * good is closed again.
 */
export function walkFaultSearch(search: FaultSearch, ground: FaultSearchGround): FaultSearchWalk {
  const whole = planWhole(ground, search.openedFirst, search.saves);
  const openedFirst = [...new Set([...search.openedFirst, ...whole.openFirst])];
  const tree = faultSearchTree(ground, openedFirst);
  const evidence = evidenceOf(search, ground);
  const left = inQuestion(ground, evidence);
  const planned = testsLeft(ground, whole.tree);
  const tests = evidence.filter(({ reading }) => reading.check === 'test');
  const common = { tree, inQuestion: left, tested: tests.length, planned };
  const missing = whole.openFirst.filter((id) => !search.openedFirst.includes(id));
  if (missing.length > 0) return { ...common, state: { kind: 'openFirst', switchIds: missing } };
  const physical = search.readings.at(-1)?.openIds ?? [];
  const start = evidence.find(({ reading }) => reading.check === 'start');
  if (!start) {
    return { ...common, state: { kind: 'read', step: stepFor('start', null, [], physical), left: planned } };
  }
  if (start.reading.result === 'good') return { ...common, state: { kind: 'noFault' } };
  if (left.size === 0) {
    const suspects = suspectReadings(search, ground, evidence);
    const again = suspects.find(({ index }) => index !== search.readings.length - 1) ?? suspects[0];
    return {
      ...common,
      state: { kind: 'contradiction', suspects, repeat: again ? stepAgain(again.reading, physical) : null },
    };
  }
  const top = topOf(tree, left);
  const way = new Set(wayInto(tree, top));
  const keptOpen = keepOpen(evidence, way);
  if (left.size === 1) {
    const { step, confirmed } = makingSure(tree, evidence, top, keptOpen, physical);
    return { ...common, state: { kind: 'found', piece: top, step, confirmed } };
  }
  const next = afterTests(whole.tree, tests) ?? planRest(ground, left, top, openedFirst, search.saves);
  const test = 'test' in next ? next.test : '';
  const step = stepFor('test', test, [...keptOpen, test], physical);
  return { ...common, state: { kind: 'read', step, left: testsLeft(ground, next) } };
}

/** The same reading once more, the switches as they stood then. */
function stepAgain({ check, switchId, openIds }: FaultSearchReading, physical: readonly string[]): FaultSearchStep {
  return stepFor(check, switchId, openIds, physical);
}

function stepFor(
  check: FaultSearchCheck,
  switchId: string | null,
  open: readonly string[],
  physical: readonly string[],
): FaultSearchStep {
  const openIds = [...new Set(open)];
  return {
    check,
    switchId,
    openIds,
    toOpen: openIds.filter((id) => !physical.includes(id)),
    toClose: physical.filter((id) => !openIds.includes(id)),
  };
}

/** What stood open at readings that stayed low, but for the switches on the way to what is in question. */
function keepOpen(evidence: readonly Evidence[], way: ReadonlySet<string>): string[] {
  const low = evidence.filter(({ reading }) => reading.result === 'low').flatMap(({ reading }) => reading.openIds);
  return [...new Set(low)].filter((id) => !way.has(id));
}

/** The piece in question that is nearest to the energiser. */
function topOf({ parent }: FaultSearchTree, left: ReadonlySet<number>): number {
  return [...left].find((piece) => !left.has(parent[piece]!)) ?? [...left][0]!;
}

/** The place in the planned order of tests; null where the search left it. */
function afterTests(tree: SearchTree, tests: readonly Evidence[]): SearchTree | null {
  let at = tree;
  for (const { reading } of tests) {
    if (!('test' in at) || at.test !== reading.switchId) return null;
    at = reading.result === 'good' ? at.ifRecovers : at.ifNot;
  }
  return 'test' in at ? at : null;
}

/** Two readings make sure of a piece: with it the fence reads low, without it good. */
function makingSure(
  tree: FaultSearchTree,
  evidence: readonly Evidence[],
  piece: number,
  keptOpen: readonly string[],
  physical: readonly string[],
): { readonly step: FaultSearchStep | null; readonly confirmed: boolean } {
  const feed = tree.through[piece]!;
  const open = [...keptOpen, ...waysOut(tree, piece)];
  const withIt = stepFor('with', feed || null, open, physical);
  // The piece at the energiser can't be cut off by a switch.
  const steps = feed === '' ? [withIt] : [withIt, stepFor('without', feed, [...open, feed], physical)];
  const isTaken = ({ check, switchId }: FaultSearchStep) =>
    evidence.some(({ reading }) => reading.check === check && reading.switchId === switchId);
  // The one that asks for the fewest changes first.
  const next = steps.filter((step) => !isTaken(step)).toSorted((p, q) => changes(p) - changes(q))[0] ?? null;
  return { step: next, confirmed: next === null };
}

function changes({ toOpen, toClose }: FaultSearchStep): number {
  return toOpen.length + toClose.length;
}
