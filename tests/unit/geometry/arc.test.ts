import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arcFigures, arcOffsetM, arcPath, bowThrough, pointOnArc } from '../../../core/geometry/arc.ts';
import { nearestOnPolyline } from '../../../core/geometry/polyline.ts';
import type { Xy } from '../../../core/geometry/types.ts';
import { xyDistanceM } from '../../../core/geometry/vector.ts';

const chord = fc.double({ min: 0.5, max: 30, noNaN: true });
const share = fc.double({ min: -1.5, max: 1.5, noNaN: true });
const coordinate = fc.double({ min: -1000, max: 1000, noNaN: true });

describe('arcFigures', () => {
  it('is the chord where there is no bow', () => {
    expect(arcFigures(4, 0)).toEqual({ radiusM: Infinity, centralAngleDeg: 0, lengthM: 4 });
  });

  it('is a semicircle where the bow is half the chord', () => {
    const { radiusM, centralAngleDeg, lengthM } = arcFigures(5, -2.5);
    expect(radiusM).toBeCloseTo(2.5, 12);
    expect(centralAngleDeg).toBeCloseTo(180, 12);
    expect(lengthM).toBeCloseTo(Math.PI * 2.5, 12);
  });

  it('is a whole circle where the feet coincide', () => {
    expect(arcFigures(0, 2).lengthM).toBeCloseTo(Math.PI * 2, 12);
  });

  it('comes smoothly to the straight line: arc = chord (1 + 8/3 (s/w)²) for a slight bow', () => {
    for (const bowM of [1e-2, 1e-4, 1e-6, 1e-8]) {
      expect(arcFigures(4, bowM).lengthM).toBeCloseTo(4 * (1 + (8 / 3) * (bowM / 4) ** 2), 9);
    }
  });

  it('refuses figures that are none', () => {
    expect(() => arcFigures(-1, 0)).toThrow('0 m or more');
    expect(() => arcFigures(Number.NaN, 0)).toThrow(RangeError);
    expect(() => arcFigures(4, Infinity)).toThrow('bow');
  });
});

describe('arcOffsetM', () => {
  it('is 0 at the feet of an arc up to a semicircle, and the bow in the middle', () => {
    expect(arcOffsetM(4, 1, 0)).toBeCloseTo(0, 12);
    expect(arcOffsetM(4, 1, 4)).toBeCloseTo(0, 12);
    expect(arcOffsetM(4, -1, 2)).toBeCloseTo(-1, 12);
    expect(arcOffsetM(4, 0, 1)).toBe(0);
  });

  it('refuses a place beyond the feet', () => {
    expect(() => arcOffsetM(4, 1, 4.1)).toThrow('beyond its ends');
  });
});

describe('arcPath', () => {
  it('keeps both feet, even steps and the tolerance', () => {
    fc.assert(
      fc.property(coordinate, coordinate, chord, share, (x, y, chordM, bowShare) => {
        const from: Xy = [x, y];
        const to: Xy = [x + chordM * 0.6, y + chordM * 0.8];
        const bowM = bowShare * chordM;
        const path = arcPath(from, to, bowM, 0.01);
        expect(path[0]).toBe(from);
        expect(path.at(-1)).toBe(to);
        const { lengthM } = arcFigures(xyDistanceM(from, to), bowM);
        for (let i = 0; i <= 100; i++) {
          const near = nearestOnPolyline(pointOnArc(from, to, bowM, i / 100), path)!;
          expect(near.distanceM).toBeLessThan(0.01 + 1e-9);
        }
        const pathM = path.slice(1).reduce((sum, point, i) => sum + xyDistanceM(path[i]!, point), 0);
        expect(pathM).toBeLessThanOrEqual(lengthM + 1e-9);
      }),
      { seed: 11, numRuns: 200 },
    );
  });

  it('bows to the left for a positive bow', () => {
    expect(pointOnArc([0, 0], [0, 4], 1, 0.5)[0]).toBeCloseTo(-1, 12);
    expect(arcPath([0, 0], [0, 4], 1)).toContainEqual(pointOnArc([0, 0], [0, 4], 1, 0.5));
  });

  it('is two points where there is no bow', () => {
    expect(arcPath([0, 0], [4, 0], 0)).toEqual([
      [0, 0],
      [4, 0],
    ]);
  });
});

describe('bowThrough', () => {
  it('finds the bow again from any point of the arc', () => {
    fc.assert(
      fc.property(chord, share, fc.double({ min: 0.05, max: 0.95, noNaN: true }), (chordM, bowShare, fraction) => {
        fc.pre(Math.abs(bowShare) > 0.01);
        const to: Xy = [100 - chordM * 0.8, 20 + chordM * 0.6];
        const bowM = chordM * bowShare;
        const dragged = pointOnArc([100, 20], to, bowM, fraction);
        expect(bowThrough([100, 20], to, dragged, Infinity)).toBeCloseTo(bowM, 6);
      }),
      { seed: 12 },
    );
  });

  it('is straight for a point on the line between the feet, and stops at a semicircle', () => {
    expect(bowThrough([0, 0], [4, 0], [1, 0])).toBe(0);
    expect(bowThrough([0, 0], [4, 0], [2, 9])).toBe(2);
    expect(bowThrough([0, 0], [4, 0], [2, -9])).toBe(-2);
    expect(bowThrough([0, 0], [4, 0], [6, -0.001])).toBe(-2);
    expect(bowThrough([1, 1], [1, 1], [6, 2])).toBe(0);
  });

  it('gives the arc nearest to a point beyond reach', () => {
    const dragged: Xy = [4.5, 0.7];
    const gap = (bowM: number) => nearestOnPolyline(dragged, arcPath([0, 0], [4, 0], bowM, 1e-5))!.distanceM;
    const chosen = gap(bowThrough([0, 0], [4, 0], dragged));
    for (let bowM = -2; bowM <= 2; bowM += 0.125) expect(chosen).toBeLessThanOrEqual(gap(bowM) + 1e-4);
  });
});
