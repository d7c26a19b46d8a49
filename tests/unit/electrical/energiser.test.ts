import { describe, expect, test } from 'vitest';
import { energiserInternalOhm } from '../../../core/electrical/energiser/internalOhm.ts';
import { labelProblems } from '../../../core/electrical/energiser/labelProblems.ts';
import { openCircuitNeeded } from '../../../core/electrical/energiser/openCircuitNeeded.ts';
import { stockMinimums } from '../../../core/electrical/energiser/stockMinimum.ts';
import { solveVoltage } from '../../../core/electrical/solveVoltage.ts';
import { inEnglish } from '../../support/english.ts';

const label = { openCircuitV: 8500, into500OhmV: 6200, storedJ: 8, outputJ: 6 };
const clean = (openCircuitV: number, internalOhm: number, ohm: number) =>
  solveVoltage({
    nodeCount: 1,
    spans: [],
    links: [],
    faults: [{ node: 0, ohm }],
    source: { node: 0, openCircuitV, internalOhm },
  });

test('the resistance found from a label gives the label’s peak back on 500 ohm', () => {
  const solution = clean(8500, energiserInternalOhm(8500, 6200), 500);
  expect(solution.ok && solution.nodeVoltageV[0]).toBeCloseTo(6200, 9);
});

test('the open-circuit peak needed lifts the weakest place to the minimum exactly', () => {
  const before = clean(6000, 200, 300);
  const weakest = before.ok ? before.nodeVoltageV[0]! : 0;
  const after = clean(openCircuitNeeded(6000, weakest, 4500), 200, 300);
  expect(after.ok && after.nodeVoltageV[0]).toBeCloseTo(4500, 9);
  expect(openCircuitNeeded(6000, 0, 4500)).toBe(Infinity);
});

describe('label figures', () => {
  test('a sound label has nothing to say', () => {
    expect(labelProblems(label)).toEqual([]);
    expect(labelProblems({ ...label, storedJ: null, outputJ: null })).toEqual([]);
  });

  test.each<[string, Partial<typeof label>, string, 'error' | 'doubt', RegExp]>([
    ['peaks swapped', { openCircuitV: 6200, into500OhmV: 8500 }, 'into500OhmV', 'error', /other way round/],
    ['peaks equal', { into500OhmV: 8500 }, 'into500OhmV', 'doubt', /Both outputs are the same/],
    ['kilovolts', { openCircuitV: 8.5, into500OhmV: 6.2 }, 'openCircuitV', 'doubt', /enter 8500/],
    ['nothing entered', { openCircuitV: 0 }, 'openCircuitV', 'error', /above 0/],
    ['not a number', { into500OhmV: Number.NaN }, 'into500OhmV', 'error', /above 0/],
    ['more out than in', { outputJ: 9 }, 'outputJ', 'error', /can't come from 8 J stored/],
    ['negative energy', { storedJ: -1 }, 'storedJ', 'error', /in joules/],
  ])('%s', (_, wrong, field, severity, message) => {
    const problem = labelProblems({ ...label, ...wrong }).find((p) => p.field === field);
    expect(problem?.severity).toBe(severity);
    expect(inEnglish(problem?.message)).toMatch(message);
  });
});

test('stock minimums rise with the pressure and are all common practice', () => {
  for (const { fromV, toV, basis } of stockMinimums) {
    expect(fromV).toBeLessThanOrEqual(toV);
    expect(basis.mark).toBe('commonPractice');
  }
});
