import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { FenceCircuit } from '../../../core/electrical/circuit/circuit.ts';
import { type PreparedVoltage, prepareVoltage } from '../../../core/electrical/preparedVoltage.ts';
import { solveVoltage } from '../../../core/electrical/solveVoltage.ts';
import type { Voltages } from '../../../core/electrical/voltageResult.ts';
import { inEnglish } from '../../support/english.ts';
import { anyCircuit, fenceLikeCircuit } from '../../support/randomElectrical.ts';

const SEED = 77;

function prepared(circuit: FenceCircuit): PreparedVoltage {
  const result = prepareVoltage(circuit);
  if (!result.ok) throw new Error(inEnglish(result.problems[0]!.message));
  return result;
}

function same(found: ReturnType<PreparedVoltage['vary']>, circuit: FenceCircuit): void {
  const fresh = solveVoltage(circuit);
  expect(found.ok).toBe(fresh.ok);
  if (!found.ok || !fresh.ok) return;
  expect([...found.reached]).toEqual([...fresh.reached]);
  const tolerance = 1e-10 * circuit.source.openCircuitV;
  found.nodeVoltageV.forEach((volts, v) => {
    expect(Math.abs(volts - fresh.nodeVoltageV[v]!)).toBeLessThanOrEqual(tolerance);
  });
}

test('any switches thrown and faults added read the same as a circuit solved from scratch, again and again', () => {
  const variation = fc.record({
    open: fc.array(fc.nat(), { maxLength: 3 }),
    close: fc.array(fc.nat(), { maxLength: 3 }),
    faults: fc.array(fc.record({ node: fc.nat(), ohm: fc.constantFrom(0, 40, 900, 15000) }), { maxLength: 2 }),
  });
  fc.assert(
    fc.property(
      anyCircuit({ extremes: true }),
      fc.array(variation, { minLength: 1, maxLength: 4 }),
      (circuit, list) => {
        const ready = prepared(circuit);
        for (const asked of list) {
          const count = circuit.links.length;
          const open = count === 0 ? [] : asked.open.map((i) => i % count);
          const close = count === 0 ? [] : asked.close.map((i) => i % count);
          const faults = asked.faults.map(({ node, ohm }) => ({ node: node % circuit.nodeCount, ohm }));
          const links = circuit.links.map((link, i) => ({
            ...link,
            open: close.includes(i) ? false : open.includes(i) || link.open,
          }));
          same(ready.vary({ open, close, faults }), { ...circuit, links, faults: [...circuit.faults, ...faults] });
        }
        same(ready.vary({}), circuit);
      },
    ),
    { seed: SEED, numRuns: 1500 },
  );
});

test('opening each of many switches on a large network, one after the other', () => {
  const circuit = fenceLikeCircuit(3000, 5, 0.05);
  const ready = prepared(circuit);
  for (let link = 0; link < circuit.links.length; link += 17) {
    const links = circuit.links.map((l, i) => (i === link ? { ...l, open: true } : l));
    same(ready.withOpen(link), { ...circuit, links });
  }
  same(ready.asIs, circuit);
});

test('an open ring switch can be closed without a new plan', () => {
  const circuit = fenceLikeCircuit(500, 9, 0.02);
  const ring = { from: 40, to: 460, ohm: 0, open: true };
  const ready = prepared({ ...circuit, links: [...circuit.links, ring] });
  const closed = { ...circuit, links: [...circuit.links, { ...ring, open: false }] };
  same(ready.vary({ close: [circuit.links.length] }), closed);
});

test('other figures on the same topology, and another topology', () => {
  const circuit = fenceLikeCircuit(400, 11, 0.05);
  const ready = prepared(circuit);
  const heavier = { ...circuit, spans: circuit.spans.map((s) => ({ ...s, leakageOhmKm: s.leakageOhmKm / 9 })) };
  const other = { ...circuit, source: { ...circuit.source, node: 17 } };
  for (const next of [heavier, other, fenceLikeCircuit(300, 2)]) {
    const refigured = ready.refigured(next);
    if (!refigured.ok) throw new Error('refused');
    same(refigured.asIs, next);
  }
});

test('the response to one ampere is what the voltages change by, and is symmetric', () => {
  const circuit = fenceLikeCircuit(200, 13, 0.1);
  const ready = prepared(circuit);
  const base = ready.asIs as Voltages;
  const ohm = 5000;
  for (const node of [3, 50, 177]) {
    const response = ready.responseTo(node);
    const faulted = ready.vary({ faults: [{ node, ohm }] }) as Voltages;
    const drawnA = faulted.nodeVoltageV[node]! / ohm;
    base.nodeVoltageV.forEach((volts, v) => {
      expect(Math.abs(volts - response[v]! * drawnA - faulted.nodeVoltageV[v]!)).toBeLessThan(1e-8);
    });
    expect(ready.responseTo(120)[node]! / response[120]!).toBeCloseTo(1, 10);
  }
});

test('asking for a switch or a node that is not there says so', () => {
  const ready = prepared(fenceLikeCircuit(50, 1));
  const noLink = ready.withOpen(999);
  expect(noLink.ok ? '' : inEnglish(noLink.problems[0]!.message)).toMatch(/no link 999/);
  const noNode = ready.vary({ faults: [{ node: 50, ohm: 1 }] });
  expect(noNode.ok ? '' : inEnglish(noNode.problems[0]!.message)).toMatch(/Fault 0 is at node 50/);
});
