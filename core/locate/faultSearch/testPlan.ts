import { planFaultSearch, type SearchTree } from '../../network/faultSearch/index.ts';
import type { FaultSearchGround } from './faultSearchGround.ts';

export type SearchAim = 'tests' | 'walking';

/** The order of tests for some pieces that are in question, and what it takes. */
export interface TestPlan {
  readonly tree: SearchTree;
  /** Ring switches to open before the first test; only of a whole ground. */
  readonly openFirst: readonly string[];
}

/** What is still to be done from a place in the order of tests on. */
export interface TestsLeft {
  readonly most: number;
  /** Each piece as likely as it is long. */
  readonly expected: number;
}

const wholes = new WeakMap<FaultSearchGround, Map<string, TestPlan>>();

/** For everything that the energiser feeds. `openedFirst`: ring switches that stand open already. */
export function planWhole(ground: FaultSearchGround, openedFirst: readonly string[], saves: SearchAim): TestPlan {
  const kept = wholes.get(ground) ?? new Map<string, TestPlan>();
  wholes.set(ground, kept);
  const key = [saves, ...openedFirst].join(' ');
  const known = kept.get(key) ?? plan(ground, new Set(ground.pieces.keys()), ground.source, openedFirst, saves);
  kept.set(key, known);
  return known;
}

/** For the pieces still in question, which must hang together below `top`. */
export function planRest(
  ground: FaultSearchGround,
  inQuestion: ReadonlySet<number>,
  top: number,
  openedFirst: readonly string[],
  saves: SearchAim,
): SearchTree {
  if (inQuestion.size === 1) return { fault: String(top) };
  return plan(ground, inQuestion, top, openedFirst, saves).tree;
}

function plan(
  ground: FaultSearchGround,
  inQuestion: ReadonlySet<number>,
  top: number,
  openedFirst: readonly string[],
  saves: SearchAim,
): TestPlan {
  const switches = ground.switches.filter(({ a, b }) => inQuestion.has(a) && inQuestion.has(b));
  const { tree, openFirst } = planFaultSearch(
    {
      sections: [...inQuestion].map((piece) => ({ id: String(piece), lengthM: ground.pieces[piece]!.lengthM })),
      switches: switches.map(({ id, a, b, walkM }) => ({ id, a: String(a), b: String(b), cost: walkM })),
      source: String(top),
      normallyOpen: openedFirst.filter((id) => switches.some((each) => each.id === id)),
    },
    saves === 'walking' ? 'expectedCost' : 'expectedTests',
  );
  return { tree, openFirst };
}

export function testsLeft(ground: FaultSearchGround, tree: SearchTree): TestsLeft {
  const { most, sumM, lengthM } = walked(ground, tree);
  return { most, expected: lengthM > 0 ? sumM / lengthM : 0 };
}

function walked(ground: FaultSearchGround, tree: SearchTree): { most: number; sumM: number; lengthM: number } {
  if ('fault' in tree) return { most: 0, sumM: 0, lengthM: ground.pieces[Number(tree.fault)]!.lengthM };
  const far = walked(ground, tree.ifRecovers);
  const near = walked(ground, tree.ifNot);
  const lengthM = far.lengthM + near.lengthM;
  return { most: 1 + Math.max(far.most, near.most), sumM: lengthM + far.sumM + near.sumM, lengthM };
}
