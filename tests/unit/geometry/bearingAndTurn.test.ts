import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { turnAngleDeg, xyBearingDeg, xyDistanceM } from '../../../core/geometry/vector.ts';

describe('bearings of the plane', () => {
  it.each([
    [[0, 1], 0],
    [[1, 1], 45],
    [[1, 0], 90],
    [[0, -1], 180],
    [[-1, 0], 270],
    [[0, 0], 0],
    [[-1e-17, 1], 0],
  ] as const)('to %j is %d degrees', (to, expected) => {
    const bearing = xyBearingDeg([0, 0], to);
    expect(bearing).toBeCloseTo(expected, 12);
    expect(bearing).toBeLessThan(360);
  });

  it('lead to the point and back', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 359.9, noNaN: true }),
        fc.double({ min: 0.01, max: 1e5, noNaN: true }),
        (bearing, lengthM) => {
          const radians = (bearing * Math.PI) / 180;
          const to = [100 + lengthM * Math.sin(radians), -50 + lengthM * Math.cos(radians)] as const;
          expect(xyDistanceM([100, -50], to)).toBeCloseTo(lengthM, 6);
          expect(Math.abs(((xyBearingDeg([100, -50], to) - bearing + 540) % 360) - 180)).toBeLessThan(1e-8);
        },
      ),
      { seed: 31 },
    );
  });
});

describe('turnAngleDeg', () => {
  it.each([
    ['straight on', [2, 0], 0],
    ['left', [1, 1], 90],
    ['right', [1, -1], -90],
    ['sharp left', [0, 1], 135],
    ['back', [0, 0], 180],
    ['nowhere', [1, 0], 0],
  ] as const)('%s', (_, after, expected) => {
    expect(turnAngleDeg([0, 0], [1, 0], after)).toBeCloseTo(expected, 12);
  });
});
