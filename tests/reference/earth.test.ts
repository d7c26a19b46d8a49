import { describe, expect, test } from 'vitest';
import { dwightRodOhm } from '../../core/electrical/earth/dwightRod.ts';
import { earthFieldOhm } from '../../core/electrical/earth/earthFieldOhm.ts';
import { multipleRodFactor } from '../../core/electrical/earth/multipleRodFactor.ts';
import { referenceData } from './data.ts';

/** Dwight's formula at 40 digits; IEEE Std 142 factors from memory of the table. See the file's own `source`. */
interface EarthFile {
  readonly multiplying_factors: Readonly<Record<string, number>>;
  readonly cases: readonly {
    readonly id: string;
    readonly type: 'single' | 'multiple';
    readonly rods?: number;
    readonly rho_ohm_m: number;
    readonly length_m: number;
    readonly radius_m: number;
    readonly expected: { readonly factor?: number; readonly resistance_ohm: number };
  }[];
}

const file = referenceData<EarthFile>('earth-rods.json');

describe.each(file.cases)('$id', ({ rods = 1, rho_ohm_m, length_m, radius_m, expected }) => {
  test('resistance to 1e-6', () => {
    const field = { rods, rodLengthM: length_m, rodDiameterMm: 2000 * radius_m };
    const estimate = earthFieldOhm(field, rho_ohm_m);
    expect(Math.abs(estimate.ohm / expected.resistance_ohm - 1)).toBeLessThan(1e-6);
    expect(estimate.singleRodOhm).toBeCloseTo(dwightRodOhm(rho_ohm_m, length_m, radius_m), 9);
    expect(estimate.factor).toBe(expected.factor ?? 1);
    expect(estimate.coverage).toBe('table');
  });
});

test('every tabulated factor', () => {
  for (const [rods, factor] of Object.entries(file.multiplying_factors)) {
    expect(multipleRodFactor(Number(rods))).toEqual({ factor, coverage: 'table' });
  }
});
