import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { FenceCircuit } from '../../../core/electrical/circuit/circuit.ts';
import { spanLeakageSlope } from '../../../core/electrical/circuit/spanLeakageSlope.ts';
import { spanTwoPort } from '../../../core/electrical/circuit/spanTwoPort.ts';
import { choleskyInverse } from '../../../core/electrical/fit/choleskyInverse.ts';
import { fitLeakage, type LeakageFit } from '../../../core/electrical/fit/fitLeakage.ts';
import { leakageSlopes, withLeakage } from '../../../core/electrical/fit/leakageModel.ts';
import type { VoltageReading } from '../../../core/electrical/fit/reading.ts';
import { symmetricEigen } from '../../../core/electrical/fit/symmetricEigen.ts';
import { prepareVoltage } from '../../../core/electrical/preparedVoltage.ts';
import { solveVoltage } from '../../../core/electrical/solveVoltage.ts';
import { inEnglish } from '../../support/english.ts';
import { randomNumbers } from '../../support/random.ts';
import { fenceLikeCircuit } from '../../support/randomElectrical.ts';

/** A trunk 0-1-2-3-4 of four sections with a spur 2-5 as the fifth; a switch in front of the spur. */
const circuit: FenceCircuit = {
  nodeCount: 7,
  spans: [
    { from: 0, to: 1, lengthM: 2000, ohmPerKm: 39, leakageOhmKm: 50_000 },
    { from: 1, to: 2, lengthM: 2500, ohmPerKm: 39, leakageOhmKm: 50_000 },
    { from: 2, to: 3, lengthM: 1800, ohmPerKm: 39, leakageOhmKm: 50_000 },
    { from: 3, to: 4, lengthM: 3000, ohmPerKm: 39, leakageOhmKm: 50_000 },
    { from: 5, to: 6, lengthM: 2200, ohmPerKm: 39, leakageOhmKm: 50_000 },
  ],
  links: [{ from: 2, to: 5, ohm: 0, open: false }],
  faults: [],
  source: { node: 0, openCircuitV: 8500, internalOhm: 200 },
};
const sections = circuit.spans.map((_, i) => ({ name: `Section ${'ABCDE'[i]}`, spans: [i] }));

function readAt(truth: readonly number[], nodes: readonly number[], sigmaV: number, openLinks: number[] = []) {
  const leaking = withLeakage(circuit, sections, truth);
  const links = leaking.links.map((link, i) => ({ ...link, open: link.open || openLinks.includes(i) }));
  const solution = solveVoltage({ ...leaking, links });
  if (!solution.ok) throw new Error('refused');
  return nodes.map((node): VoltageReading => ({ node, volts: solution.nodeVoltageV[node]!, sigmaV, openLinks }));
}

function fitted(readings: readonly VoltageReading[]): LeakageFit {
  const fit = fitLeakage(circuit, sections, readings);
  if (!fit.ok) throw new Error(fit.messages.map((said) => inEnglish(said)).join(' '));
  return fit;
}

describe('recovery', () => {
  test('exact readings at every node give every section back', () => {
    const truth = [0.3, 6, 1, 12, 2.5];
    const fit = fitted(readAt(truth, [0, 1, 2, 3, 4, 6], 2));
    expect(fit.converged).toBe(true);
    expect(fit.notToldApart).toEqual([]);
    fit.sections.forEach((section, s) => {
      expect(section.timesAssumed / truth[s]!).toBeCloseTo(1, 5);
      expect(section.leakageOhmKm).toBeCloseTo(50_000 / truth[s]!, -1);
      expect(section.verdict).toBe('told');
    });
    expect(fit.mostLeaking).toBe(3);
    expect(fit.misfit).toBeLessThan(1e-3);
  });

  test('any truth within a factor of twenty either way, from readings with the switch open too', () => {
    const times = fc.double({ min: -3, max: 3, noNaN: true }).map(Math.exp);
    fc.assert(
      fc.property(fc.tuple(times, times, times, times, times), (truth) => {
        const closed = readAt(truth, [0, 1, 2, 3, 4, 6], 0.05);
        const open = readAt(truth, [0, 2, 4, 6], 0.05, [0]);
        const fit = fitted([...closed, ...open]);
        expect(fit.residualV.at(-1)).toBeNull();
        fit.sections.forEach((section, s) => {
          expect(Math.abs(Math.log(section.timesAssumed / truth[s]!))).toBeLessThan(0.01);
        });
      }),
      { seed: 5, numRuns: 60 },
    );
  });

  test('with noise the truth lies within four standard errors, and the misfit is about 1', () => {
    const random = randomNumbers(31);
    const normal = (): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
    const truth = [2, 5, 8, 4, 6];
    let squares = 0;
    let count = 0;
    for (let trial = 0; trial < 40; trial++) {
      const exact = [0, 1, 2, 3, 4, 6, 0, 1, 2, 3, 4, 6].flatMap((node) => readAt(truth, [node], 10));
      const fit = fitted(exact.map((reading) => ({ ...reading, volts: reading.volts + 10 * normal() })));
      expect(fit.converged).toBe(true);
      expect(fit.misfit).toBeGreaterThan(0.2);
      expect(fit.misfit).toBeLessThan(2);
      fit.sections.forEach(({ timesAssumed, errorFactor }, s) => {
        const standardised = Math.log(timesAssumed / truth[s]!) / Math.log(errorFactor);
        expect(Math.abs(standardised)).toBeLessThan(4);
        squares += standardised ** 2;
        count++;
      });
    }
    expect(count).toBe(200);
    expect(squares / count).toBeGreaterThan(0.4);
    expect(squares / count).toBeLessThan(1.8);
  });

  test('currents: the leaks together are what the energiser gives', () => {
    const fit = fitted(readAt([1, 2, 3, 4, 5], [0, 1, 2, 3, 4, 6], 5));
    const solution = solveVoltage(fit.circuit);
    const leaks = fit.sections.reduce((sum, { leakA }) => sum + leakA, 0);
    expect(solution.ok && solution.sourceCurrentA).toBeCloseTo(leaks, 9);
  });
});

describe('too little to go by', () => {
  test('one reading at the energiser: all sections lean on their class and cannot be told apart', () => {
    const fit = fitted(readAt([4, 4, 4, 4, 4], [0], 5));
    expect(fit.notToldApart).toEqual([[0, 1, 2, 3, 4]]);
    for (const { verdict, errorFactor } of fit.sections) {
      expect(verdict).toBe('leaning');
      expect(errorFactor).toBeGreaterThan(1.5);
    }
    expect(Math.abs(fit.residualV[0]!)).toBeLessThan(5);
  });

  test('no readings at all: the growth class stands', () => {
    const fit = fitted([]);
    for (const { timesAssumed } of fit.sections) expect(timesAssumed).toBeCloseTo(1, 9);
    expect(fit.notToldApart).toHaveLength(5);
  });

  test('a section that is dead in every reading says nothing, the others are told', () => {
    const fit = fitted(readAt([5, 6, 7, 8, 9], [0, 1, 2, 3, 4], 1, [0]));
    expect(fit.notToldApart).toEqual([[4]]);
    expect(fit.sections.map((s) => s.verdict)).toEqual(['told', 'told', 'told', 'told', 'leaning']);
    // What a normal belief, log 10 shared and log 3 each, expects of a fifth when four are known (conditional mean).
    const share = Math.log(10) ** 2 / (Math.log(3) ** 2 + 4 * Math.log(10) ** 2);
    expect(fit.sections[4]!.timesAssumed).toBeCloseTo(Math.exp(share * Math.log(5 * 6 * 7 * 8)), 2);
  });

  test('a reading above anything the energiser can do ends at the limit, with a misfit that shows it', () => {
    const fit = fitted([0, 1, 2, 3, 4, 6].map((node) => ({ node, volts: 9900, sigmaV: 20 })));
    expect(fit.misfit).toBeGreaterThan(10);
    for (const { timesAssumed } of fit.sections) expect(timesAssumed).toBeLessThan(0.05);
  });
});

test('bad input is named', () => {
  const insulated = { ...circuit, spans: circuit.spans.map((s) => ({ ...s, leakageOhmKm: Infinity })) };
  const refused = fitLeakage(insulated, sections, []);
  expect(refused.ok ? '' : inEnglish(refused.messages[0])).toMatch(/Section A has no run that leaks/);
  const twice = fitLeakage(circuit, [...sections, { name: 'Section F', spans: [0] }], [{ node: 99, volts: -1 }]);
  expect(twice.ok ? '' : twice.messages.map((said) => inEnglish(said)).join(' ')).toMatch(
    /Run 0 is in Section A and in Section F.*node 99.*-1 V/,
  );
});

describe('slopes', () => {
  test.each([0.001, 0.05, 0.6, 4, 40])('of a run against its leakage, beside differences (%d km)', (km) => {
    const span = { from: 0, to: 1, lengthM: 1000 * km, ohmPerKm: 39, leakageOhmKm: 3000 };
    const leakS = km / 3000;
    const step = 1e-5;
    const at = (share: number) => spanTwoPort({ ...span, leakageOhmKm: 3000 / share });
    const slope = spanLeakageSlope(span);
    const up = at(1 + step);
    const down = at(1 - step);
    expect((up.shuntS - down.shuntS) / (2 * step * leakS) / slope.shunt).toBeCloseTo(1, 6);
    const scale = Math.max(Math.abs(slope.series), 1e-6 / (39 * km));
    const difference = (up.seriesS - down.seriesS) / (2 * step * leakS);
    expect(Math.abs(difference - slope.series) / scale).toBeLessThan(km < 0.01 ? 0.5 : 1e-3);
  });

  test('of the voltages, beside differences, on a network with rings', () => {
    const network = fenceLikeCircuit(300, 4, 0.1);
    const three = [0, 1, 2].map((k) => ({
      name: `S${k}`,
      spans: network.spans.map((_, i) => i).filter((i) => i % 3 === k),
    }));
    const ready = prepareVoltage(network);
    if (!ready.ok || !ready.asIs.ok) throw new Error('refused');
    for (const node of [5, 120, 299]) {
      const slopes = leakageSlopes(ready, ready.asIs.nodeVoltageV, node, three);
      slopes.forEach((slope, s) => {
        const at = (u: number): number => {
          const times = three.map((_, k) => (k === s ? Math.exp(u) : 1));
          const solution = solveVoltage(withLeakage(network, three, times));
          return solution.ok ? solution.nodeVoltageV[node]! : Number.NaN;
        };
        expect((at(1e-4) - at(-1e-4)) / 2e-4 / slope).toBeCloseTo(1, 5);
      });
    }
  });
});

describe('small matrices', () => {
  const random = randomNumbers(8);
  const square = Array.from({ length: 6 }, () => Array.from({ length: 6 }, () => random() - 0.5));
  const positive = square.map((a, i) =>
    square.map((b, j) => a.reduce((sum, x, k) => sum + x * b[k]!, i === j ? 0.1 : 0)),
  );

  test('inverse times matrix is 1; a matrix that is not positive definite has none', () => {
    const inverse = choleskyInverse(positive)!;
    inverse.forEach((row, i) => {
      positive.forEach((_, j) => {
        expect(row.reduce((sum, x, k) => sum + x * positive[k]![j]!, 0)).toBeCloseTo(i === j ? 1 : 0, 10);
      });
    });
    expect(
      choleskyInverse([
        [1, 2],
        [2, 1],
      ]),
    ).toBeNull();
  });

  test('eigenvectors: A v = lambda v, of length 1', () => {
    const { values, vectors } = symmetricEigen(positive);
    vectors.forEach((vector, k) => {
      expect(Math.hypot(...vector)).toBeCloseTo(1, 12);
      positive.forEach((row, i) => {
        expect(row.reduce((sum, x, j) => sum + x * vector[j]!, 0)).toBeCloseTo(values[k]! * vector[i]!, 10);
      });
    });
  });
});
