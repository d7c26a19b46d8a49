import type { SectioningNetwork, SectioningRun, SwitchCandidate } from '../../core/network/sectioning/types.ts';
import { randomNumbers } from './random.ts';

const SWITCH_COSTS = [1, 1, 1, 1.3, 1.3, 2] as const;

/** A fence with no rings: long lines with branches, each run of 80 to 900 m joined to one that was built not long before. */
export function fenceTree(runCount: number, seed: number, maxSectionM = 5000): SectioningNetwork {
  return fenceWithRings(runCount, 0, seed, maxSectionM);
}

/** The same with `ringCount` more joins, each closing a ring between runs that were built at about the same time. */
export function fenceWithRings(
  runCount: number,
  ringCount: number,
  seed: number,
  maxSectionM = 5000,
): SectioningNetwork {
  const random = randomNumbers(seed);
  const runs: SectioningRun[] = [];
  const candidates: SwitchCandidate[] = [];
  const near = (i: number, reach: number): number => Math.max(0, i - 1 - Math.floor(random() * reach));
  const join = (a: number, b: number): void => {
    const cost = SWITCH_COSTS[Math.floor(random() * SWITCH_COSTS.length)]!;
    candidates.push({ id: `c${candidates.length + 1}`, a: `r${a + 1}`, b: `r${b + 1}`, cost });
  };
  for (let i = 0; i < runCount; i++) {
    runs.push({ id: `r${i + 1}`, lengthM: 80 + Math.floor(random() * 820), gateways: random() < 0.4 ? 1 : 0 });
    if (i > 0) join(random() < 0.6 ? i - 1 : near(i, 30), i);
  }
  for (let k = 0; k < ringCount; k++) {
    const a = 1 + Math.floor(random() * (runCount - 1));
    join(a, near(a, 30));
  }
  return { runs, candidates, source: 'r1', maxSectionM };
}

/**
 * A farm of paddocks: `columns` x `rows` of them side by side, some dividing fences left out, each fence between two
 * corners of one to three runs with gateways between. Corners are junctions of no length; a run leaves a corner through
 * a take-off.
 */
export function paddocks(columns: number, rows: number, seed: number, maxSectionM = 5000): SectioningNetwork {
  const random = randomNumbers(seed);
  const runs: SectioningRun[] = [];
  const candidates: SwitchCandidate[] = [];
  const corner = (x: number, y: number): string => `k${x}.${y}`;
  const join = (a: string, b: string, cost: number): void => {
    candidates.push({ id: `c${candidates.length + 1}`, a, b, cost });
  };
  const fence = (from: string, to: string): void => {
    const pieces = 1 + Math.floor(random() * 3);
    let last = from;
    for (let p = 0; p < pieces; p++) {
      const id = `r${runs.length + 1}`;
      runs.push({ id, lengthM: 80 + Math.floor(random() * 400), gateways: p > 0 ? 1 : 0 });
      join(last, id, p === 0 ? 1.3 : 1);
      last = id;
    }
    join(last, to, 1.3);
  };
  for (let x = 0; x <= columns; x++) for (let y = 0; y <= rows; y++) runs.push({ id: corner(x, y), lengthM: 0 });
  for (let x = 0; x <= columns; x++) {
    for (let y = 0; y <= rows; y++) {
      const boundaryX = y === 0 || y === rows;
      const boundaryY = x === 0 || x === columns;
      if (x < columns && (boundaryX || random() < 0.75)) fence(corner(x, y), corner(x + 1, y));
      if (y < rows && (boundaryY || random() < 0.75)) fence(corner(x, y), corner(x, y + 1));
    }
  }
  return { runs, candidates, source: corner(0, 0), maxSectionM };
}
