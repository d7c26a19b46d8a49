import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  bearingDeg,
  destination,
  distanceM,
  pathLengthM,
  ringAreaM2,
  ringPerimeterM,
  segmentLengthsM,
} from '../../../core/geometry/geodesic.ts';
import type { LonLat } from '../../../core/geometry/types.ts';

const place = fc.tuple(
  fc.double({ min: -180, max: 180, noNaN: true }),
  fc.double({ min: -80, max: 80, noNaN: true }),
) as fc.Arbitrary<LonLat>;

describe('distanceM', () => {
  it('is 0.1 degree of the equator: a x 0.1 x pi/180, with a = 6378137 m (WGS 84)', () => {
    expect(distanceM([10, 0], [10.1, 0])).toBeCloseTo((6378137 * 0.1 * Math.PI) / 180, 6);
  });

  it('is the quarter meridian, 10,001,965.729 m on WGS 84, from equator to pole', () => {
    expect(distanceM([25, 0], [25, 90])).toBeCloseTo(10_001_965.729, 3);
  });

  it('takes the short way across the 180 meridian', () => {
    expect(distanceM([179.9, 0], [-179.9, 0])).toBeCloseTo(distanceM([0, 0], [0.2, 0]), 6);
    expect(distanceM([179.9, -44], [180.1, -44])).toBeCloseTo(distanceM([179.9, -44], [-179.9, -44]), 6);
  });
});

describe('paths', () => {
  it('sums segments and lets doubled vertices through', () => {
    const path: LonLat[] = [
      [170, -43],
      [170, -43],
      [170.01, -43],
      [170.01, -43.01],
    ];
    const lengths = segmentLengthsM(path);
    expect(lengths).toHaveLength(3);
    expect(lengths[0]).toBe(0);
    expect(pathLengthM(path)).toBeCloseTo(lengths[1]! + lengths[2]!, 9);
  });

  it('is 0 for a path without segments', () => {
    expect(pathLengthM([])).toBe(0);
    expect(pathLengthM([[1, 2]])).toBe(0);
    expect(segmentLengthsM([[1, 2]])).toEqual([]);
  });
});

describe('bearingDeg', () => {
  it.each([
    ['north', [20, 11], 0],
    ['east along the equator', [21, 0], 90],
    ['south', [20, -5], 180],
    ['west along the equator', [19, 0], 270],
    ['nowhere', [20, 0], 0],
  ] as const)('%s', (_, to, expected) => {
    expect(bearingDeg([20, 0], to)).toBeCloseTo(expected, 9);
  });

  it('and distance lead back to the point', () => {
    fc.assert(
      fc.property(
        place,
        fc.double({ min: 0, max: 360, maxExcluded: true, noNaN: true }),
        fc.double({ min: 1, max: 100_000, noNaN: true }),
        (from, bearing, lengthM) => {
          const to = destination(from, bearing, lengthM);
          expect(distanceM(from, to)).toBeCloseTo(lengthM, 6);
          const turned = Math.abs(((bearingDeg(from, to) - bearing + 540) % 360) - 180);
          expect((turned * Math.PI * lengthM) / 180).toBeLessThan(1e-5);
          expect(to[0]).toBeGreaterThanOrEqual(-180);
          expect(to[0]).toBeLessThanOrEqual(180);
        },
      ),
      { seed: 1 },
    );
  });
});

describe('rings', () => {
  it('is 0 for less than a triangle', () => {
    expect(ringAreaM2([])).toBe(0);
    expect(
      ringAreaM2([
        [0, 0],
        [0, 1],
      ]),
    ).toBe(0);
    expect(ringPerimeterM([])).toBe(0);
  });

  it('is a degree square at the equator, 12308778361.469 m2 (GeographicLib documentation of its polygon class, from memory: 1 in 10,000)', () => {
    const square: LonLat[] = [
      [0, 0],
      [1, 0],
      [1, 1],
      [0, 1],
    ];
    expect(ringAreaM2(square) / 12_308_778_361.469).toBeCloseTo(1, 4);
  });

  it('measures a small yard to better than the rounding noise of the sum over the ellipsoid', () => {
    const corner: LonLat = [-7.6, 53.4];
    const yard = [
      corner,
      destination(corner, 90, 12),
      destination(destination(corner, 90, 12), 0, 8),
      destination(corner, 0, 8),
    ];
    expect(ringAreaM2(yard)).toBeCloseTo(96, 3);
    expect(ringPerimeterM(yard)).toBeCloseTo(40, 4);
  });

  it('does not jump where it changes from the plane to the ellipsoid', () => {
    fc.assert(
      fc.property(place, fc.double({ min: 0, max: 90, noNaN: true }), (origin, bearing) => {
        const ring = (sideM: number) => [
          origin,
          destination(origin, bearing, sideM),
          destination(origin, bearing + 60, sideM),
        ];
        // An equilateral triangle: the area goes with the square of the side (up to the curve of the earth, 1e-8).
        const just = ringAreaM2(ring(999.999)) / 999.999 ** 2;
        const over = ringAreaM2(ring(1000.001)) / 1000.001 ** 2;
        expect(over / just).toBeCloseTo(1, 6);
      }),
      { seed: 2 },
    );
  });
});
