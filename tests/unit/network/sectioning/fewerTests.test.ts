import { describe, expect, it } from 'vitest';
import { allAtOnce } from '../../../../core/model/steps.ts';
import { planSections, type SectioningNetwork, sectionsWith } from '../../../../core/network/sectioning/index.ts';
import { withReducedTests } from '../../../../core/network/sectioning/reduceTests.ts';

// A long run, then five short ones of which at most two go into a section. Of the three cheapest plans, all with the
// long run as their longest section, the one in hand takes the most tests: lengths 300, 400, 500 behind the long run
// (the best search of a line of three, its middle section b, takes 1200 + min(a + b, b + c) of the total).
const lengths = [1000, 300, 300, 100, 300, 200];
const network: SectioningNetwork = {
  runs: lengths.map((lengthM, i) => ({ id: `r${i}`, lengthM })),
  candidates: lengths.slice(1).map((_, i) => ({ id: `c${i}`, a: `r${i}`, b: `r${i + 1}`, cost: 1 })),
  source: 'r0',
  maxSectionM: 1000,
  forced: ['c0'],
  maxRunsPerSection: 2,
};

function planWith(chosen: readonly string[]) {
  const sections = sectionsWith(network, chosen);
  return { chosen, sections, longestSectionM: Math.max(...sections.map(({ lengthM }) => lengthM)) };
}

describe('among plans that are equally good otherwise', () => {
  it('moves a switch where that saves tests, and keeps cost, limits and longest section', () => {
    const inHand = planWith(['c0', 'c1', 'c3']);
    expect(inHand.sections.map(({ lengthM }) => lengthM)).toEqual([1000, 300, 400, 500]);
    const better = allAtOnce(withReducedTests(network, inHand));
    expect(better.sections.map(({ lengthM }) => lengthM)).toEqual([1000, 600, 100, 500]);
    expect(better.chosen).toEqual(['c0', 'c2', 'c3']);
    expect(better.longestSectionM).toBe(1000);
  });

  it('is what planSections ends with', () => {
    const plan = planSections(network);
    if (plan.outcome !== 'plan') throw new Error(plan.outcome);
    expect(plan).toMatchObject({ cost: 3, longestSectionM: 1000 });
    expect(allAtOnce(withReducedTests(network, plan))).toEqual(plan);
    expect(plan.chosen).not.toEqual(['c0', 'c1', 'c3']);
  });

  it('leaves forced switches where they are', () => {
    const inHand = planWith(['c0', 'c1', 'c3']);
    expect(allAtOnce(withReducedTests({ ...network, forced: ['c0', 'c1', 'c3'] }, inHand))).toBe(inHand);
  });
});
