import { booleanPointInPolygon, buffer, earthRadius, lineString } from '@turf/turf';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { stretchesWithin } from '../../../core/checks/support/zones.ts';
import { cumulativeLengthsM, nearestOnPolyline, pointAtStation } from '../../../core/geometry/polyline.ts';
import type { Xy } from '../../../core/geometry/types.ts';
import { stretchInZone } from '../../../core/geometry/zone.ts';

const place = fc
  .tuple(fc.integer({ min: -400, max: 400 }), fc.integer({ min: -400, max: 400 }))
  .map(([x, y]): Xy => [x / 4, y / 4]);
const path = fc.array(place, { minLength: 2, maxLength: 8 });
const withinM = fc.constantFrom(0.5, 8, 15, 40);
const centimetre = 0.01;

describe('the stretches of a path in the zone round another', () => {
  it('end where the distance is the zone’s, by a distance worked out apart: in a centimetre within, out a centimetre beyond', () => {
    fc.assert(
      fc.property(path, fc.oneof(path, fc.tuple(place)), withinM, (xy, other, reachM) => {
        const stationsM = cumulativeLengthsM(xy);
        const lengthM = stationsM.at(-1)!;
        const stretches = stretchesWithin({ xy, stationsM }, other, reachM);
        const offM = (atM: number) => nearestOnPolyline(pointAtStation(xy, atM).point, other)!.distanceM;
        const isIn = (atM: number) => stretches.some(({ fromM, toM }) => atM >= fromM - 1e-6 && atM <= toM + 1e-6);
        for (const { fromM, toM } of stretches) {
          if (fromM > 1e-6) expect(offM(fromM)).toBeCloseTo(reachM, 6);
          if (toM < lengthM - 1e-6) expect(offM(toM)).toBeCloseTo(reachM, 6);
        }
        for (let i = 0; i <= 200; i++) {
          const atM = (lengthM * i) / 200;
          if (offM(atM) < reachM - centimetre) expect(isIn(atM)).toBe(true);
          if (offM(atM) > reachM + centimetre) expect(isIn(atM)).toBe(false);
        }
        for (const [i, next] of stretches.slice(1).entries()) expect(next.fromM).toBeGreaterThan(stretches[i]!.toM);
      }),
    );
  });

  // Its round ends are of 256 corners here, 3 mm inside of a circle of 40 m.
  it('are those of Turf’s buffer, to 2 cm', () => {
    const metresPerDegree = (earthRadius * Math.PI) / 180;
    const asDegrees = (points: readonly Xy[]) => points.map(([x, y]) => [x / metresPerDegree, y / metresPerDegree]);
    fc.assert(
      fc.property(path, path, withinM, (xy, other, reachM) => {
        if (new Set(other.map(String)).size < 2) return;
        const zone = buffer(lineString(asDegrees(other)), reachM, { units: 'meters', steps: 64 })!;
        const stationsM = cumulativeLengthsM(xy);
        const stretches = stretchesWithin({ xy, stationsM }, other, reachM);
        for (let i = 0; i <= 40; i++) {
          const atM = (stationsM.at(-1)! * i) / 40;
          const { point } = pointAtStation(xy, atM);
          if (Math.abs(nearestOnPolyline(point, other)!.distanceM - reachM) < 0.02) continue;
          const isIn = stretches.some(({ fromM, toM }) => atM >= fromM - 1e-6 && atM <= toM + 1e-6);
          expect(booleanPointInPolygon(asDegrees([point])[0]!, zone)).toBe(isIn);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('have round ends, and are one where two pieces of the other meet', () => {
    expect(stretchInZone([0, 0], [100, 0], [50, 6], [50, 30], 10)).toEqual([0.42, 0.58]);
    expect(stretchInZone([0, 0], [100, 0], [50, 11], [50, 30], 10)).toBeNull();
    expect(stretchInZone([5, 0], [5, 0], [0, 3], [10, 3], 3)).toEqual([0, 1]);
    const fence = {
      xy: [
        [0, 0],
        [100, 0],
      ] as Xy[],
      stationsM: [0, 101],
    };
    const way: Xy[] = [
      [20, 3],
      [50, 3],
      [80, 3],
    ];
    const [only, ...others] = stretchesWithin(fence, way, 5);
    expect(others).toEqual([]);
    expect(only!.fromM).toBeCloseTo(16 * 1.01, 9);
    expect(only!.toM).toBeCloseTo(84 * 1.01, 9);
  });
});
