import { describe, expect, it } from 'vitest';
import { boxAround, boxesMeet, growBox } from '../../../core/geometry/box.ts';
import { interiorPoint, pointInRing, signedRingArea } from '../../../core/geometry/ring.ts';
import type { Xy } from '../../../core/geometry/types.ts';

const square = (x: number, y: number, side: number): Xy[] => [
  [x, y],
  [x + side, y],
  [x + side, y + side],
  [x, y + side],
];

describe('signedRingArea', () => {
  it('is positive anticlockwise, closed or not, far from the origin too', () => {
    const ring = square(1e6, 5e6, 10);
    expect(signedRingArea(ring)).toBe(100);
    expect(signedRingArea(ring.toReversed())).toBe(-100);
    expect(signedRingArea([...ring, ring[0]!])).toBe(100);
    expect(signedRingArea([])).toBe(0);
  });
});

describe('pointInRing', () => {
  it('tells inside from outside, in a hollow too', () => {
    const hook: Xy[] = [
      [0, 0],
      [9, 0],
      [9, 9],
      [6, 9],
      [6, 3],
      [3, 3],
      [3, 9],
      [0, 9],
    ];
    expect(pointInRing([1, 5], hook)).toBe(true);
    expect(pointInRing([4.5, 5], hook)).toBe(false);
    expect(pointInRing([4.5, 1], [...hook, hook[0]!])).toBe(true);
    expect(pointInRing([-1, 3], hook)).toBe(false);
  });
});

describe('interiorPoint', () => {
  it('is the middle of a square', () => {
    const { point, depthM } = interiorPoint(square(0, 0, 100), [], 0.1)!;
    expect(point[0]).toBeCloseTo(50, 0);
    expect(depthM).toBeGreaterThan(49.9);
  });

  it('stays in the land where the middle of the box is not', () => {
    const hook: Xy[] = [
      [0, 0],
      [90, 0],
      [90, 90],
      [60, 90],
      [60, 30],
      [30, 30],
      [30, 90],
      [0, 90],
    ];
    const { point, depthM } = interiorPoint(hook, [], 0.1)!;
    expect(pointInRing(point, hook)).toBe(true);
    // The largest circle, middle (r, r), touches both outer sides and the inner corner: (30 - r) sqrt(2) = r.
    expect(depthM).toBeGreaterThan((30 * Math.SQRT2) / (1 + Math.SQRT2) - 0.1);
    expect(depthM).toBeLessThan((30 * Math.SQRT2) / (1 + Math.SQRT2) + 0.1);
  });

  it('keeps out of holes', () => {
    const hole = square(40, 40, 20);
    const { point } = interiorPoint(square(0, 0, 100), [hole], 0.1)!;
    expect(pointInRing(point, hole)).toBe(false);
  });

  it('is none without area', () => {
    expect(interiorPoint([])).toBeNull();
    expect(
      interiorPoint([
        [0, 0],
        [5, 0],
        [9, 0],
      ]),
    ).toBeNull();
  });

  it('manages a long strip', () => {
    const strip: Xy[] = [
      [0, 0],
      [10_000, 0],
      [10_000, 2],
      [0, 2],
    ];
    expect(interiorPoint(strip, [], 0.1)!.depthM).toBeGreaterThan(0.9);
  });
});

describe('boxes', () => {
  it('go around points, meet at edges and measure distance', () => {
    expect(
      boxAround([
        [3, 1],
        [0, 5],
      ]),
    ).toEqual([0, 1, 3, 5]);
    expect(boxAround([])).toBeNull();
    expect(growBox([0, 1, 3, 5], 1)).toEqual([-1, 0, 4, 6]);
    expect(boxesMeet([0, 0, 1, 1], [1, 1, 2, 2])).toBe(true);
    expect(boxesMeet([0, 0, 1, 1], [1.1, 0, 2, 2])).toBe(false);
  });
});
