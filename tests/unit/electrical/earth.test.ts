import { describe, expect, test } from 'vitest';
import { dwightRodOhm } from '../../../core/electrical/earth/dwightRod.ts';
import { earthFieldOhm } from '../../../core/electrical/earth/earthFieldOhm.ts';
import { earthTestVerdict } from '../../../core/electrical/earth/earthTest.ts';
import { MOST_TABULATED_RODS, multipleRodFactor } from '../../../core/electrical/earth/multipleRodFactor.ts';
import { rodsForTarget } from '../../../core/electrical/earth/rodsForTarget.ts';
import { rodsByRuleOfThumb } from '../../../core/electrical/earth/ruleOfThumb.ts';
import { soilClasses } from '../../../core/electrical/earth/soilClasses.ts';
import { earthFieldVoltage, sourceThroughEarth } from '../../../core/electrical/earth/sourceThroughEarth.ts';
import { spacingRemark } from '../../../core/electrical/earth/spacingRemark.ts';
import { solveVoltage } from '../../../core/electrical/solveVoltage.ts';
import { inEnglish } from '../../support/english.ts';

const rod = { rodLengthM: 1.8, rodDiameterMm: 16 };

describe('rods', () => {
  test('one 2 m rod of 10 mm in 100 ohm m, by hand: 100 / 4 pi (ln 1600 - 1)', () => {
    expect(dwightRodOhm(100, 2, 0.005)).toBeCloseTo((100 / (4 * Math.PI)) * (7.377758908227872 - 1), 10);
  });

  test('a rod more always brings the estimate down, also between and beyond the tabulated counts', () => {
    let before = Infinity;
    for (let rods = 1; rods <= 40; rods++) {
      const { ohm } = earthFieldOhm({ ...rod, rods }, 100);
      expect(ohm).toBeLessThan(before);
      before = ohm;
    }
  });

  test('counts that the source does not cover are marked, and lie between their neighbours', () => {
    expect(multipleRodFactor(4).coverage).toBe('table');
    const six = multipleRodFactor(6);
    expect(six.coverage).toBe('between');
    expect(six.factor).toBeGreaterThan(1.36);
    expect(six.factor).toBeLessThan(1.68);
    expect(multipleRodFactor(30).coverage).toBe('beyond');
    expect(multipleRodFactor(30).factor).toBeGreaterThan(2.16);
    expect(() => multipleRodFactor(2.5)).toThrow(/whole number of rods/);
  });

  test('the fewest rods for a target: one fewer misses it; out of reach is said, not guessed', () => {
    const found = rodsForTarget(rod, 100, 12)!;
    expect(found.ohm).toBeLessThanOrEqual(12);
    expect(earthFieldOhm({ ...rod, rods: found.rods - 1 }, 100).ohm).toBeGreaterThan(12);
    expect(rodsForTarget(rod, 100, 60)!.rods).toBe(1);
    expect(rodsForTarget(rod, 5000, 10)).toBeNull();
    expect(MOST_TABULATED_RODS).toBe(24);
  });

  test('rule of thumb: 0.9 m a joule', () => {
    expect(rodsByRuleOfThumb(6, 1.8)).toEqual({ rodInGroundM: 5.4, rods: 3 });
    expect(rodsByRuleOfThumb(2, 1.8).rods).toBe(1);
    expect(rodsByRuleOfThumb(2.1, 1.8).rods).toBe(2);
    expect(rodsByRuleOfThumb(0.1, 1.8).rods).toBe(1);
  });

  test('spacing', () => {
    expect(spacingRemark(1, 1.8, 0)).toBeNull();
    expect(inEnglish(spacingRemark(3, 1.8, 1))).toMatch(/closer than their length/);
    expect(inEnglish(spacingRemark(3, 1.8, 1.8))).toMatch(/over 3 m/);
    expect(inEnglish(spacingRemark(3, 1.8, 5))).toMatch(/no higher/);
    expect(spacingRemark(3, 3.1, 3.1)).toBeNull();
    expect(inEnglish(spacingRemark(3, 1.8, 1.8), 'imperial')).toBe(
      'Rods 5.91 ft apart fit the estimate; the published rule of thumb asks for over 10 ft.',
    );
  });
});

test('soil classes: each mean inside its range, from best to worst', () => {
  for (const { meanOhmM, lowestOhmM, highestOhmM } of soilClasses) {
    expect(lowestOhmM).toBeLessThan(meanOhmM);
    expect(meanOhmM).toBeLessThan(highestOhmM);
  }
  const means = soilClasses.map((soil) => soil.meanOhmM);
  expect(means).toEqual([...means].sort((a, b) => a - b));
});

test('earth test: 200 V and under is good, over 300 V means more rods', () => {
  expect([0, 200, 201, 300, 301].map(earthTestVerdict)).toEqual([
    'good',
    'good',
    'borderline',
    'borderline',
    'moreRods',
  ]);
});

test('the earth field takes its share: fence and field together make up what the energiser gives', () => {
  const source = { node: 0, openCircuitV: 8000, internalOhm: 120 };
  const spans = [{ from: 0, to: 1, lengthM: 5000, ohmPerKm: 35, leakageOhmKm: 4000 }];
  const circuit = { nodeCount: 2, spans, links: [], faults: [] };
  const earthed = solveVoltage({ ...circuit, source: sourceThroughEarth(source, 40) });
  const perfect = solveVoltage({ ...circuit, source });
  if (!earthed.ok || !perfect.ok) throw new Error('refused');
  expect(earthed.sourceVoltageV).toBeLessThan(perfect.sourceVoltageV);
  const total = earthed.sourceVoltageV + earthFieldVoltage(40, earthed.sourceCurrentA) + 120 * earthed.sourceCurrentA;
  expect(total).toBeCloseTo(8000, 8);
});
