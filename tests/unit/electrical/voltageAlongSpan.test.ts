import { describe, expect, test } from 'vitest';
import { solveVoltage } from '../../../core/electrical/solveVoltage.ts';
import { voltageAlongSpan } from '../../../core/electrical/voltageAlongSpan.ts';

const span = (lengthM: number, ohmPerKm: number, leakageOhmKm: number) => ({
  from: 0,
  to: 1,
  lengthM,
  ohmPerKm,
  leakageOhmKm,
});

describe('inside a run', () => {
  test('a cut in the middle of the same run finds the same voltage', () => {
    const whole = span(4000, 35, 3000);
    const source = { node: 0, openCircuitV: 7000, internalOhm: 100 };
    const faults = [{ node: 1, ohm: 400 }];
    const one = solveVoltage({ nodeCount: 2, spans: [whole], links: [], faults, source });
    const spans = [
      { ...whole, lengthM: 1300, to: 2 },
      { ...whole, from: 2, lengthM: 2700 },
    ];
    const two = solveVoltage({ nodeCount: 3, spans, links: [], faults, source });
    if (!one.ok || !two.ok) throw new Error('refused');
    const inside = voltageAlongSpan(whole, one.nodeVoltageV[0]!, one.nodeVoltageV[1]!, 1300);
    expect(inside).toBeCloseTo(two.nodeVoltageV[2]!, 8);
  });

  test('a straight line without leakage, the ends exact, a distance beyond them taken to the end', () => {
    const dry = span(200, 35, Infinity);
    expect(voltageAlongSpan(dry, 100, 60, 50)).toBe(90);
    const wet = span(200, 35, 500);
    expect(voltageAlongSpan(wet, 100, 60, 0)).toBe(100);
    expect(voltageAlongSpan(wet, 100, 60, 200)).toBe(60);
    expect(voltageAlongSpan(wet, 100, 60, -5)).toBe(100);
    expect(voltageAlongSpan(wet, 100, 60, 900)).toBe(60);
    expect(voltageAlongSpan(span(0, 35, 500), 100, 100, 0)).toBe(100);
  });

  test('no overflow in a run that kills everything', () => {
    const hopeless = span(9e6, 200, 0.01);
    expect(voltageAlongSpan(hopeless, 5000, 0, 4.5e6)).toBe(0);
    expect(voltageAlongSpan(hopeless, 5000, 0, 0)).toBe(5000);
  });
});
