import { describe, expect, it } from 'vitest';
import type { FitQuality } from '../../core/geometry/controlPoint.ts';
import { fitAffine } from '../../core/geometry/fitAffine.ts';
import { fitSimilarity } from '../../core/geometry/fitSimilarity.ts';
import type { Xy } from '../../core/geometry/types.ts';
import { inEnglish } from '../support/english.ts';
import { referenceData } from './data.ts';

interface Case {
  id: string;
  model: 'similarity' | 'affine';
  points: { pixel: Xy; map: Xy }[];
  expected: {
    refused: boolean;
    reason?: string;
    parameters?: Record<string, number>;
    scale_m_per_px?: number;
    rotation_deg?: number;
    pixel_area_m2?: number;
    residuals?: { dE: number; dN: number; length: number }[];
    rms_m?: number;
    rms_per_axis_m?: number;
    sigma0_m?: number | null;
    predict?: { pixel: Xy; map: Xy }[];
  };
}

/** Source: least squares at 50 digits with mpmath, checked against numpy, as the file says. */
const { cases } = referenceData<{ cases: Case[] }>('georef.json');
const toleranceM = 1e-6;

describe('placing a picture against least squares at 50 digits', () => {
  it('has cases', () => expect(cases.length).toBeGreaterThan(0));

  for (const { id, model, points, expected } of cases) {
    it(id, () => {
      const fit = model === 'similarity' ? fitSimilarity(points) : fitAffine(points);
      expect(fit.refused).toBe(expected.refused);
      if (fit.refused) {
        expect(inEnglish(fit.message)).not.toBe('');
        if (/too few/.test(expected.reason ?? '')) expect(fit.reason).toBe('tooFewPoints');
        else expect(['coincide', 'inOneLine']).toContain(fit.reason);
        return;
      }
      for (const { pixel, map } of expected.predict!) expectNear(fit.predict(pixel), map);
      checkQuality(fit, expected);
      for (const [name, value] of Object.entries(expected.parameters!)) {
        expect(Math.abs((fit as unknown as Record<string, number>)[name]! - value)).toBeLessThan(
          1e-9 * (1 + Math.abs(value)),
        );
      }
      if ('metresPerPixel' in fit) {
        expect(fit.metresPerPixel).toBeCloseTo(expected.scale_m_per_px!, 10);
        expect(fit.rotationDeg).toBeCloseTo(expected.rotation_deg!, 9);
      } else if (expected.pixel_area_m2 !== undefined) expect(fit.pixelAreaM2).toBeCloseTo(expected.pixel_area_m2, 9);
    });
  }
});

function checkQuality({ residuals, rmsM, rmsPerAxisM, sigma0M }: FitQuality, expected: Case['expected']): void {
  expect(residuals).toHaveLength(expected.residuals!.length);
  for (const [i, { dE, dN, length }] of expected.residuals!.entries()) {
    expectNear([residuals[i]!.eastM, residuals[i]!.northM], [dE, dN]);
    expect(Math.abs(residuals[i]!.lengthM - length)).toBeLessThan(toleranceM);
  }
  expect(Math.abs(rmsM - expected.rms_m!)).toBeLessThan(toleranceM);
  expect(Math.abs(rmsPerAxisM - expected.rms_per_axis_m!)).toBeLessThan(toleranceM);
  if (expected.sigma0_m === null) expect(sigma0M).toBeNull();
  else expect(Math.abs(sigma0M! - expected.sigma0_m!)).toBeLessThan(toleranceM);
}

/** The file prints places to the micrometre. */
function expectNear([x, y]: Xy, [expectedX, expectedY]: Xy): void {
  expect(Math.abs(x - expectedX)).toBeLessThan(toleranceM);
  expect(Math.abs(y - expectedY)).toBeLessThan(toleranceM);
}
