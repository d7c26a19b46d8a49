import { describe, expect, test } from 'vitest';
import { cableOhm } from '../../../core/electrical/conductors/cableOhm.ts';
import { conductorById, conductorLibrary } from '../../../core/electrical/conductors/conductorLibrary.ts';
import { leakageClasses, leakageOhmKm } from '../../../core/electrical/conductors/leakage.ts';
import { ohmPerKmInParallel, ohmPerKmOfRoundWire } from '../../../core/electrical/conductors/ohmPerKm.ts';
import { crossingDefaults, newCrossing, newFenceType, newGateway } from '../../../core/model/defaults.ts';

describe('conductors', () => {
  test('zinc-coated steel at 9 % IACS (IEC 60888): about 39 and 95 ohm/km, as the handbook figure comes to', () => {
    expect(conductorById('steel-2.5', [])!.ohmPerKm).toBeCloseTo(39.03, 2);
    expect(conductorById('steel-1.6', [])!.ohmPerKm).toBeCloseTo(95.29, 2);
  });

  test('copper of 2.5 mm2 by IEC 60028: 6.8964 ohm/km', () => {
    expect(conductorById('cable-copper-2.5mm2', [])!.ohmPerKm).toBeCloseTo(6.8964, 4);
  });

  test('trade figures stand beside, lower, and are marked as common practice', () => {
    for (const { ohmPerKm, trade } of conductorLibrary) {
      if (trade === undefined) continue;
      expect(trade.ohmPerKm).toBeLessThan(ohmPerKm);
      expect(trade.basis.mark).toBe('common practice, no source');
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
    expect(conductorById('tape', [own])).toMatchObject({ name: 'Tape on the reel', kind: 'own', ohmPerKm: 310 });
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
    for (const { basis } of leakageClasses) expect(basis.source).toMatch(/^common practice, no source: /);
  });
});
