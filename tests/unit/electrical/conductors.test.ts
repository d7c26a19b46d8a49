import { describe, expect, test } from 'vitest';
import { cableOhm } from '../../../core/electrical/conductors/cableOhm.ts';
import {
  buildingWires,
  conductorById,
  conductorLibrary,
} from '../../../core/electrical/conductors/conductorLibrary.ts';
import { isBuildingWire } from '../../../core/electrical/conductors/fenceCable.ts';
import { leakageClasses, leakageOhmKm } from '../../../core/electrical/conductors/leakage.ts';
import { ohmPerKmInParallel, ohmPerKmOfRoundWire } from '../../../core/electrical/conductors/ohmPerKm.ts';
import { coilLengthM, kgPerM } from '../../../core/electrical/conductors/wireMass.ts';
import { crossingDefaults, newCrossing, newFenceType, newGateway } from '../../../core/model/defaults.ts';
import { plainWords } from '../../../core/words/figures.ts';
import { inEnglish } from '../../support/english.ts';

describe('conductors', () => {
  test('zinc-coated steel at 9 % IACS (IEC 60888): about 39 and 95 ohm/km, as the handbook figure comes to', () => {
    expect(conductorById('steel-2.5', [])!.ohmPerKm).toBeCloseTo(39.03, 2);
    expect(conductorById('steel-1.6', [])!.ohmPerKm).toBeCloseTo(95.29, 2);
  });

  test('copper cores of 1.6 and 2.5 mm by IEC 60028: 17.241 / (pi/4 d2) = 8.5750 and 3.5123 ohm/km', () => {
    expect(conductorById('cable-copper-1.6', [])!.ohmPerKm).toBeCloseTo(8.575, 3);
    expect(conductorById('cable-copper-2.5', [])!.ohmPerKm).toBeCloseTo(3.5123, 4);
  });

  test('every cable is fence lead-out cable by core, diameter and rating; no size of building wire is offered', () => {
    const cables = conductorLibrary.filter(({ kind }) => kind === 'cable');
    expect(cables.length).toBeGreaterThan(3);
    for (const { name } of cables) {
      expect(inEnglish(name)).toMatch(
        /^Fence lead-out cable, (steel|aluminium|copper) core \d\.\d mm, rated 10 kV or more$/,
      );
    }
    expect(conductorLibrary.some(({ name }) => inEnglish(name).includes('mm²'))).toBe(false);
    expect(plainWords().power.conductors.ratingCaution).toContain('10 kV');
  });

  test('files that name the building wire of older versions compute with it as before, and it says what it is', () => {
    // 17.241 / 2.5 and 17.241 / 6.
    expect(conductorById('cable-copper-2.5mm2', [])!.ohmPerKm).toBeCloseTo(6.8964, 4);
    expect(conductorById('cable-copper-6mm2', [])!.ohmPerKm).toBeCloseTo(2.8735, 4);
    for (const { id, name } of buildingWires) {
      expect(isBuildingWire(id)).toBe(true);
      expect(inEnglish(name)).toMatch(/^Building wire, .*not made for a fence$/);
    }
    expect(isBuildingWire('cable-copper-2.5')).toBe(false);
  });

  test('25 kg of steel wire: 25 / (7,850 kg/m3 x area), about 1,585, 1,014, 649 and 253 m', () => {
    const lengths = [1.6, 2, 2.5, 4].map((diameterMm) => Math.round(coilLengthM(25, 'zincCoatedSteel', diameterMm)));
    // 1,583.96 m for 1.6 mm: the table of facts says about 1,585.
    expect(lengths).toEqual([1584, 1014, 649, 253]);
    expect(coilLengthM(10, 'aluminium', 2.5)).toBeCloseTo(753.7, 1);
    expect(kgPerM('zincCoatedSteel', 2.5)).toBeCloseTo(0.03853, 5);
  });

  test('trade figures stand beside, lower, and are marked as common practice', () => {
    for (const { ohmPerKm, trade } of conductorLibrary) {
      if (trade === undefined) continue;
      expect(trade.ohmPerKm).toBeLessThan(ohmPerKm);
      expect(trade.basis.mark).toBe('commonPractice');
    }
  });

  test('ids are unique; every figure has a source; the model’s defaults name conductors that exist', () => {
    expect(new Set(conductorLibrary.map((c) => c.id)).size).toBe(conductorLibrary.length);
    for (const { ohmPerKm, basis } of conductorLibrary) {
      expect(ohmPerKm).toBeGreaterThan(0);
      expect(basis.source).not.toBeNull();
    }
    const gateway = newGateway({ id: 'g', name: 'G1', lineId: 'l', atM: 9 });
    expect(conductorById(newFenceType('t', 'T').wireId, [])).toBeDefined();
    expect(conductorById(newCrossing('c', gateway, crossingDefaults).cableId, [])).toBeDefined();
  });

  test('the user’s own conductor, and one nobody knows', () => {
    const own = { kind: 'conductor', id: 'tape', name: 'Tape on the reel', ohmPerKm: 310, note: '' } as const;
    expect(conductorById('tape', [own])).toMatchObject({ kind: 'own', ohmPerKm: 310 });
    expect(inEnglish(conductorById('tape', [own])!.name)).toBe('Tape on the reel');
    expect(conductorById('gone', [own])).toBeUndefined();
  });

  test('wires in parallel, twice the diameter, cable with joints', () => {
    expect(ohmPerKmInParallel(39, 3)).toBe(13);
    expect(ohmPerKmOfRoundWire(0.1916, 5)).toBeCloseTo(ohmPerKmOfRoundWire(0.1916, 2.5) / 4, 12);
    expect(cableOhm({ lengthM: 8, ohmPerKm: 39 })).toBeCloseTo(0.312, 12);
    expect(cableOhm({ lengthM: 8, ohmPerKm: 39, joints: 3, ohmPerJoint: 0.5 })).toBeCloseTo(1.812, 12);
  });
});

describe('leakage', () => {
  test('more growth leaks more, more wires leak more, an own figure is taken as it is', () => {
    expect(leakageOhmKm('clean', 1)).toBeGreaterThan(leakageOhmKm('light', 1));
    expect(leakageOhmKm('light', 1)).toBeGreaterThan(leakageOhmKm('heavy', 1));
    expect(leakageOhmKm('heavy', 2)).toBe(leakageOhmKm('heavy', 1) / 2);
    expect(leakageOhmKm({ leakageOhmKm: 12000 }, 3)).toBe(4000);
  });

  test('every class says that it is common practice and why', () => {
    for (const { basis } of leakageClasses)
      expect(plainWords().power.basis(basis)).toMatch(/^common practice, no source: \w/);
  });
});
