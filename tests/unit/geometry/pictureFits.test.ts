import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ControlPoint } from '../../../core/geometry/controlPoint.ts';
import { fitAffine } from '../../../core/geometry/fitAffine.ts';
import { fitSimilarity } from '../../../core/geometry/fitSimilarity.ts';
import type { Xy } from '../../../core/geometry/types.ts';

const point = (px: number, py: number, east: number, north: number): ControlPoint => ({
  pixel: [px, py],
  map: [east, north],
});
const pixel: fc.Arbitrary<Xy> = fc.tuple(fc.integer({ min: 0, max: 4000 }), fc.integer({ min: 0, max: 3000 }));

describe('fitSimilarity', () => {
  it('finds an exact placing again', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(pixel, { minLength: 2, maxLength: 8, selector: String }),
        fc.double({ min: 0.01, max: 5, noNaN: true }),
        fc.double({ min: -3, max: 3, noNaN: true }),
        (pixels, metresPerPixel, turn) => {
          const [a, b] = [metresPerPixel * Math.cos(turn), metresPerPixel * Math.sin(turn)];
          const place = ([x, y]: Xy): Xy => [a * x + b * y + 1_570_000, b * x - a * y + 5_180_000];
          const fit = fitSimilarity(pixels.map((at) => ({ pixel: at, map: place(at) })));
          if (fit.refused) throw new Error(fit.message.code);
          expect(fit.rmsM).toBeLessThan(1e-6);
          expect(fit.metresPerPixel).toBeCloseTo(metresPerPixel, 5);
        },
      ),
      { seed: 81 },
    );
  });

  it.each([
    ['tooFewPoints', [point(0, 0, 0, 0)]],
    ['coincide', [point(5, 5, 0, 0), point(5, 5, 9, 9)]],
    ['coincide', [point(0, 0, 9, 9), point(5, 5, 9, 9)]],
    ['notANumber', [point(0, 0, 0, 0), point(5, 5, Number.NaN, 9)]],
  ] as const)('refuses: %s', (reason, points) => {
    expect(fitSimilarity(points)).toMatchObject({ refused: true, reason });
  });
});

describe('fitAffine', () => {
  it('finds an exact stretch again', () => {
    const place = ([x, y]: Xy): Xy => [0.3 * x - 0.1 * y + 100, 0.05 * x - 0.4 * y + 7];
    const pixels: Xy[] = [
      [10, 10],
      [2000, 30],
      [1500, 1900],
      [40, 1700],
    ];
    const fit = fitAffine(pixels.map((at) => ({ pixel: at, map: place(at) })));
    if (fit.refused) throw new Error(fit.message.code);
    expect([fit.a, fit.b, fit.c, fit.d, fit.e, fit.f]).toEqual(
      [0.3, -0.1, 100, 0.05, -0.4, 7].map((value) => expect.closeTo(value, 9)),
    );
    expect(fit.pixelAreaM2).toBeCloseTo(0.115, 9);
  });

  it('leaves residuals without sum and without trend: the normal equations', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(pixel, pixel), { minLength: 4, maxLength: 9 }), (pairs) => {
        const points = pairs.map(([at, map]) => ({ pixel: at, map }));
        const fit = fitAffine(points);
        if (fit.refused) return;
        for (const weight of [() => 1, ({ pixel }: ControlPoint) => pixel[0], ({ pixel }: ControlPoint) => pixel[1]]) {
          const sum = fit.residuals.reduce((total, { eastM }, i) => total + eastM * weight(points[i]!), 0);
          expect(Math.abs(sum)).toBeLessThan(1e-2);
        }
      }),
      { seed: 82 },
    );
  });

  it.each([
    ['tooFewPoints', [point(0, 0, 0, 0), point(1, 0, 1, 0)]],
    ['inOneLine', [point(0.1, 0.1, 0, 0), point(0.2, 0.2, 1, 1), point(0.3, 0.3, 2, 5), point(1.7, 1.7, 4, 4)]],
    ['inOneLine', [point(0, 0, 0, 0), point(1, 0, 1, 1), point(0, 1, 2, 2)]],
    ['inOneLine', [point(0, 0, 0, 0), point(0, 0, 1, 0), point(9, 7, 5, 2)]],
    ['coincide', [point(3, 3, 0, 0), point(3, 3, 1, 0), point(3, 3, 0, 1)]],
    ['notANumber', [point(0, Infinity, 0, 0), point(1, 0, 1, 0), point(0, 1, 0, 1)]],
  ] as const)('refuses: %s', (reason, points) => {
    expect(fitAffine(points)).toMatchObject({ refused: true, reason });
  });
});
