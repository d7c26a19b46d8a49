import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { FenceCircuit, Span } from '../../../core/electrical/circuit/circuit.ts';
import { solveVoltage, type VoltageSolution } from '../../../core/electrical/solveVoltage.ts';
import { denseVoltage } from '../../support/denseVoltage.ts';
import { inEnglish } from '../../support/english.ts';
import { anyCircuit, anyTree, fenceLikeCircuit } from '../../support/randomElectrical.ts';

const SEED = 20240611;

function solved(circuit: FenceCircuit): VoltageSolution {
  const solution = solveVoltage(circuit);
  if (!solution.ok) throw new Error(solution.problems.map((p) => inEnglish(p.message)).join(' '));
  return solution;
}

const source = { node: 0, openCircuitV: 8000, internalOhm: 200 };
const run = (from: number, to: number, lengthM: number, ohmPerKm = 35, leakageOhmKm = 20000): Span => ({
  from,
  to,
  lengthM,
  ohmPerKm,
  leakageOhmKm,
});

/** Open-ended line behind a source: V(x) = Vin cosh(k (L - x)) / cosh(k L), telegrapher's equations at DC, any circuit textbook. */
function closedForm(lengthKm: number, xKm: number, ohmPerKm: number, leakageOhmKm: number): number {
  const k = Math.sqrt(ohmPerKm / leakageOhmKm);
  const inputOhm = Math.sqrt(ohmPerKm * leakageOhmKm) / Math.tanh(k * lengthKm);
  const vin = (source.openCircuitV * inputOhm) / (inputOhm + source.internalOhm);
  return (vin * Math.cosh(k * (lengthKm - xKm))) / Math.cosh(k * lengthKm);
}

describe('against the closed form of one leaky line', () => {
  test.each([
    { lengthKm: 0.05, leakageOhmKm: 1e6 },
    { lengthKm: 1, leakageOhmKm: 35 / 0.0099 },
    { lengthKm: 1, leakageOhmKm: 35 / 0.0101 },
    { lengthKm: 12, leakageOhmKm: 8000 },
    { lengthKm: 60, leakageOhmKm: 5000 },
    { lengthKm: 300, leakageOhmKm: 2000 },
  ])('$lengthKm km over $leakageOhmKm ohm km, in 1 and in 50 pieces, to 1e-9', ({ lengthKm, leakageOhmKm }) => {
    for (const pieces of [1, 50]) {
      const spans = Array.from({ length: pieces }, (_, i) =>
        run(i, i + 1, (1000 * lengthKm) / pieces, 35, leakageOhmKm),
      );
      const { nodeVoltageV } = solved({ nodeCount: pieces + 1, spans, links: [], faults: [], source });
      for (let i = 0; i <= pieces; i++) {
        const expected = closedForm(lengthKm, (lengthKm * i) / pieces, 35, leakageOhmKm);
        expect(Math.abs(nodeVoltageV[i]! / expected - 1)).toBeLessThan(1e-9);
      }
    }
  });

  test('100,000 pieces of one line still agree to 1e-9', () => {
    const pieces = 100_000;
    const spans = Array.from({ length: pieces }, (_, i) => run(i, i + 1, 0.4, 35, 9000));
    const { nodeVoltageV } = solved({ nodeCount: pieces + 1, spans, links: [], faults: [], source });
    expect(Math.abs(nodeVoltageV[pieces]! / closedForm(40, 40, 35, 9000) - 1)).toBeLessThan(1e-9);
  });
});

describe('figures at their limits', () => {
  test('a network that does not leak stands at the open-circuit voltage and draws nothing', () => {
    const spans = [run(0, 1, 900, 35, Infinity), run(1, 2, 900, 35, Infinity), run(2, 0, 10, 35, Infinity)];
    const s = solved({ nodeCount: 3, spans, links: [], faults: [], source });
    expect([...s.nodeVoltageV]).toEqual([8000, 8000, 8000]);
    expect(s.sourceCurrentA).toBe(0);
    expect(s.fenceOhm).toBe(Infinity);
  });

  test('a leak so small that 1 + it rounds to 1 still takes its current', () => {
    const s = solved({ nodeCount: 2, spans: [run(0, 1, 1000, 35, 1e18)], links: [], faults: [], source });
    expect(s.sourceCurrentA / (8000 / 1e18)).toBeCloseTo(1, 12);
  });

  test('far beyond where sinh overflows the far end is 0 V, not NaN, and still counts as reached', () => {
    const s = solved({ nodeCount: 2, spans: [run(0, 1, 9e6, 200, 0.01)], links: [], faults: [], source });
    expect(s.nodeVoltageV[1]).toBe(0);
    expect([...s.reached]).toEqual([1, 1]);
    expect(s.nodeVoltageV[0]).toBeGreaterThan(0);
  });

  test('perfect joints, runs of no length and parallel joints make nodes equal to the last bit', () => {
    const s = solved({
      nodeCount: 5,
      spans: [run(0, 1, 800), run(2, 3, 0), run(3, 3, 500), run(3, 4, 700)],
      links: [
        { from: 1, to: 2, ohm: 0, open: false },
        { from: 2, to: 1, ohm: 0, open: false },
        { from: 1, to: 3, ohm: 0.3, open: false },
      ],
      faults: [{ node: 4, ohm: 900 }],
      source,
    });
    expect(s.nodeVoltageV[2]).toBe(s.nodeVoltageV[1]);
    expect(s.nodeVoltageV[3]).toBe(s.nodeVoltageV[1]);
    expect(s.imbalanceA).toBeLessThan(1e-9);
    expect(s.linkA[0]! + -s.linkA[1]!).toBeCloseTo(s.spanFromA[1]!, 9);
  });

  test('a run from a node to itself leaks like two halves and joins nothing', () => {
    const loop = solved({ nodeCount: 2, spans: [run(0, 1, 800), run(1, 1, 600)], links: [], faults: [], source });
    const halves = solved({
      nodeCount: 4,
      spans: [run(0, 1, 800), run(1, 2, 300), run(1, 3, 300)],
      links: [],
      faults: [],
      source,
    });
    expect(loop.nodeVoltageV[1]).toBeCloseTo(halves.nodeVoltageV[1]!, 8);
  });

  test('dead shorts: 0 V there and behind, the current that Ohm gives, shared where joined perfectly', () => {
    const s = solved({
      nodeCount: 4,
      spans: [run(0, 1, 1000, 50, Infinity), run(2, 3, 1000)],
      links: [{ from: 1, to: 2, ohm: 0, open: false }],
      faults: [
        { node: 1, ohm: 0 },
        { node: 2, ohm: 0 },
        { node: 2, ohm: 700 },
      ],
      source,
    });
    expect([...s.nodeVoltageV.subarray(1)]).toEqual([0, 0, 0]);
    expect([...s.reached]).toEqual([1, 1, 1, 1]);
    expect(s.sourceCurrentA).toBeCloseTo(8000 / 250, 12);
    expect(s.faultA[0]).toBeCloseTo(16, 12);
    expect(s.faultA[1]).toBeCloseTo(16, 12);
    expect(s.faultA[2]).toBe(0);
  });

  test('pieces with no closed path to the energiser are dead, also where they meet an open switch', () => {
    const s = solved({
      nodeCount: 5,
      spans: [run(0, 1, 500), run(2, 3, 500)],
      links: [{ from: 1, to: 2, ohm: 0, open: true }],
      faults: [],
      source,
    });
    expect([...s.reached]).toEqual([1, 1, 0, 0, 0]);
    expect([...s.nodeVoltageV.subarray(2)]).toEqual([0, 0, 0]);
  });

  test('a source of no resistance holds its node at the open-circuit peak', () => {
    const ideal = { ...source, internalOhm: 0 };
    const s = solved({ nodeCount: 2, spans: [run(0, 1, 500)], links: [], faults: [], source: ideal });
    expect(s.nodeVoltageV[0]).toBe(8000);
    expect(s.sourceCurrentA).toBeGreaterThan(0);
  });
});

describe('no answer rather than a wrong one', () => {
  const good: FenceCircuit = { nodeCount: 2, spans: [run(0, 1, 500)], links: [], faults: [], source };
  test.each<[string, FenceCircuit, RegExp]>([
    ['no such node', { ...good, spans: [run(0, 2, 500)] }, /Run 0 joins nodes 0 and 2; nodes go from 0 to 1/],
    ['length not a number', { ...good, spans: [run(0, 1, Number.NaN)] }, /Run 0 is NaN m long/],
    ['negative resistance', { ...good, spans: [run(0, 1, 5, -1)] }, /-1 ohm\/km/],
    ['no leakage resistance', { ...good, spans: [run(0, 1, 5, 35, 0)] }, /0 ohm km; give a figure above 0/],
    ['wrong unit by far', { ...good, spans: [run(0, 1, 1e300, 35, 10)] }, /check their units/],
    ['switch resistance', { ...good, links: [{ from: 0, to: 1, ohm: Infinity, open: false }] }, /mark it open/],
    ['fault', { ...good, faults: [{ node: 0, ohm: -3 }] }, /Fault 0 has -3 ohm/],
    ['energiser node', { ...good, source: { ...source, node: 7 } }, /energiser is at node 7/],
    ['no nodes', { ...good, nodeCount: 0 }, /at least one node/],
    [
      'a dead short across a source of no resistance',
      { ...good, faults: [{ node: 0, ohm: 0 }], source: { ...source, internalOhm: 0 } },
      /no internal resistance/,
    ],
  ])('%s', (_, circuit, message) => {
    const result = solveVoltage(circuit);
    expect(result.ok).toBe(false);
    if (!result.ok) expect(inEnglish(result.problems[0]!.message)).toMatch(message);
  });

  test('thousands of bad runs give a short list', () => {
    const spans = Array.from({ length: 5000 }, () => run(0, 1, -1));
    const result = solveVoltage({ ...good, spans });
    expect(result.ok ? 0 : result.problems.length).toBe(20);
  });
});

describe('on any circuit', () => {
  test('agrees with a dense solve', () => {
    fc.assert(
      fc.property(anyCircuit({ extremes: true }), (circuit) => {
        const { nodeVoltageV } = solved(circuit);
        const dense = denseVoltage(circuit);
        dense.forEach((volts, v) => {
          expect(Math.abs(nodeVoltageV[v]! - volts)).toBeLessThanOrEqual(1e-6 + 1e-7 * circuit.source.openCircuitV);
        });
      }),
      { seed: SEED, numRuns: 2000 },
    );
  });

  test('agrees with a dense solve to nine figures where no figure is at its limit', () => {
    fc.assert(
      fc.property(anyCircuit({ extremes: false }), (circuit) => {
        const { nodeVoltageV } = solved(circuit);
        denseVoltage(circuit).forEach((volts, v) => {
          expect(Math.abs(nodeVoltageV[v]! - volts)).toBeLessThanOrEqual(1e-9 * circuit.source.openCircuitV);
        });
      }),
      { seed: SEED, numRuns: 1000 },
    );
  });

  test('no voltage above the source, none below 0, none NaN; every node off the source has a neighbour at least as high', () => {
    fc.assert(
      fc.property(anyCircuit({ extremes: true }), (circuit) => {
        const s = solved(circuit);
        const highest = new Float64Array(circuit.nodeCount).fill(-1);
        const see = (u: number, v: number): void => {
          if (u === v) return;
          highest[u] = Math.max(highest[u]!, s.nodeVoltageV[v]!);
          highest[v] = Math.max(highest[v]!, s.nodeVoltageV[u]!);
        };
        for (const { from, to } of circuit.spans) see(from, to);
        for (const { from, to, open } of circuit.links) if (!open) see(from, to);
        const rounding = 1e-12 * circuit.source.openCircuitV;
        s.nodeVoltageV.forEach((volts, v) => {
          expect(volts).toBeGreaterThanOrEqual(0);
          expect(volts).toBeLessThanOrEqual(circuit.source.openCircuitV);
          if (s.reached[v] === 0) expect(volts).toBe(0);
          else if (v !== circuit.source.node) expect(volts).toBeLessThanOrEqual(highest[v]! + rounding);
        });
      }),
      { seed: SEED, numRuns: 1000 },
    );
  });

  test('currents balance at every node, faults and perfect joints included', () => {
    fc.assert(
      fc.property(anyCircuit({ extremes: true }), (circuit) => {
        const s = solved(circuit);
        const leaving = new Float64Array(circuit.nodeCount);
        leaving[circuit.source.node]! -= (circuit.source.openCircuitV - s.sourceVoltageV) / circuit.source.internalOhm;
        circuit.spans.forEach(({ from, to }, i) => {
          leaving[from]! += s.spanFromA[i]!;
          leaving[to]! += s.spanToA[i]!;
        });
        circuit.links.forEach(({ from, to, open }, i) => {
          if (open) expect(s.linkA[i]).toBe(0);
          leaving[from]! += s.linkA[i]!;
          leaving[to]! -= s.linkA[i]!;
        });
        circuit.faults.forEach(({ node }, i) => {
          leaving[node]! += s.faultA[i]!;
        });
        const scale = circuit.source.openCircuitV / circuit.source.internalOhm;
        for (const ampere of leaving) expect(Math.abs(ampere)).toBeLessThan(1e-7 * (1 + scale));
      }),
      { seed: SEED, numRuns: 1000 },
    );
  });

  test('figures of any size at all: an answer within bounds or a refusal, never NaN', () => {
    const size = fc.oneof(
      fc.double({ min: -320, max: 300, noNaN: true }).map((exponent) => 10 ** exponent),
      fc.constantFrom(0, 1, Infinity),
    );
    const node = fc.integer({ min: 0, max: 5 });
    const wild = fc.record({
      nodeCount: fc.constant(6),
      spans: fc.array(fc.record({ from: node, to: node, lengthM: size, ohmPerKm: size, leakageOhmKm: size }), {
        maxLength: 5,
      }),
      links: fc.array(fc.record({ from: node, to: node, ohm: size, open: fc.boolean() }), { maxLength: 8 }),
      faults: fc.array(fc.record({ node, ohm: size }), { maxLength: 3 }),
      source: fc.record({ node, openCircuitV: fc.constantFrom(0, 8000), internalOhm: fc.constantFrom(0, 150) }),
    });
    let answered = 0;
    fc.assert(
      fc.property(wild, (circuit) => {
        const s = solveVoltage(circuit);
        if (!s.ok) {
          expect(s.problems.length).toBeGreaterThan(0);
          return;
        }
        answered++;
        for (const volts of s.nodeVoltageV) expect(volts >= 0 && volts <= circuit.source.openCircuitV).toBe(true);
        for (const list of [s.spanFromA, s.spanToA, s.linkA, s.faultA]) expect(list.some(Number.isNaN)).toBe(false);
        expect(s.sourceCurrentA).toBeGreaterThanOrEqual(0);
        expect(s.imbalanceA).not.toBeNaN();
      }),
      { seed: SEED, numRuns: 5000 },
    );
    expect(answered).toBeGreaterThan(500);
  });

  test('a fault more never raises any voltage', () => {
    const ohm = fc.oneof(fc.constant(0), fc.double({ min: 1, max: 20000, noNaN: true }));
    fc.assert(
      fc.property(anyCircuit({ extremes: true }), fc.nat(), ohm, (circuit, at, faultOhm) => {
        const before = solved(circuit);
        const fault = { node: at % circuit.nodeCount, ohm: faultOhm };
        const after = solved({ ...circuit, faults: [...circuit.faults, fault] });
        after.nodeVoltageV.forEach((volts, v) => {
          expect(volts).toBeLessThanOrEqual(before.nodeVoltageV[v]! * (1 + 1e-12));
        });
      }),
      { seed: SEED, numRuns: 1000 },
    );
  });

  test('on a tree the voltage falls along every path away from the energiser', () => {
    fc.assert(
      fc.property(anyTree(), ({ circuit, parentOf }) => {
        const { nodeVoltageV } = solved(circuit);
        for (let v = 1; v < circuit.nodeCount; v++) {
          const above = nodeVoltageV[parentOf[v]!]!;
          if (above > 0) expect(nodeVoltageV[v]!).toBeLessThan(above);
          else expect(nodeVoltageV[v]).toBe(0);
        }
      }),
      { seed: SEED, numRuns: 500 },
    );
  });
});

test('a large property balances at every node', () => {
  for (const rings of [0, 0.02, 0.1]) {
    const s = solved(fenceLikeCircuit(20_000, 3, rings));
    expect(s.imbalanceA).toBeLessThan(1e-6);
    expect(s.nodeVoltageV.every((v) => v >= 0 && v <= 8500)).toBe(true);
  }
});

test('a plain square mesh, nothing to fold, agrees with the dense solve', () => {
  const side = 14;
  const spans: Span[] = [];
  for (let y = 0; y < side; y++) {
    for (let x = 0; x < side; x++) {
      const v = y * side + x;
      if (x + 1 < side) spans.push(run(v, v + 1, 300 + 7 * v));
      if (y + 1 < side) spans.push(run(v + side, v, 200 + 3 * v));
    }
  }
  const circuit = { nodeCount: side * side, spans, links: [], faults: [{ node: 77, ohm: 900 }], source };
  const dense = denseVoltage(circuit);
  solved(circuit).nodeVoltageV.forEach((volts, v) => {
    expect(Math.abs(volts / dense[v]! - 1)).toBeLessThan(1e-10);
  });
});
