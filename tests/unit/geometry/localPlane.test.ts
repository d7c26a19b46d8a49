import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bearingDeg, distanceM } from '../../../core/geometry/geodesic.ts';
import { createLocalPlane } from '../../../core/geometry/localPlane.ts';
import type { LonLat, Xy } from '../../../core/geometry/types.ts';

const origin = fc.tuple(
  fc.double({ min: -180, max: 180, noNaN: true }),
  fc.double({ min: -75, max: 75, noNaN: true }),
) as fc.Arbitrary<LonLat>;
const metres = fc.double({ min: -70_000, max: 70_000, noNaN: true });

describe('createLocalPlane', () => {
  it('returns the same degrees after a round trip', () => {
    fc.assert(
      fc.property(origin, metres, metres, (at, x, y) => {
        const plane = createLocalPlane(at);
        const place = plane.toLonLat([x, y]);
        const [backX, backY] = plane.toXy(place);
        expect(Math.abs(backX - x)).toBeLessThan(1e-6);
        expect(Math.abs(backY - y)).toBeLessThan(1e-6);
        const [lon, lat] = plane.toLonLat([backX, backY]);
        expect(Math.abs(((lon - place[0] + 540) % 360) - 180)).toBeLessThan(1e-9);
        expect(Math.abs(lat - place[1])).toBeLessThan(1e-9);
      }),
      { seed: 3, numRuns: 300 },
    );
  });

  it('keeps distance and bearing from its origin', () => {
    const at: LonLat = [171.8, -43.5];
    const place: LonLat = [171.93, -43.41];
    const [x, y] = createLocalPlane(at).toXy(place);
    expect(Math.hypot(x, y)).toBeCloseTo(distanceM(at, place), 6);
    expect((Math.atan2(x, y) * 180) / Math.PI).toBeCloseTo(bearingDeg(at, place), 9);
  });

  it('runs on across the 180 meridian', () => {
    const plane = createLocalPlane([179.99, -43.9]);
    const [x, y] = plane.toXy([-179.99, -43.9]);
    expect(x).toBeCloseTo(distanceM([179.99, -43.9], [-179.99, -43.9]), 1);
    expect(Math.abs(y)).toBeLessThan(1);
    expect(plane.toXy([180.01, -43.9])[0]).toBeCloseTo(x, 6);
  });

  it('stretches no length within 50 km of its origin by more than 1 in 80,000', () => {
    fc.assert(
      fc.property(
        origin,
        fc.double({ min: -35_000, max: 35_000, noNaN: true }),
        fc.double({ min: -35_000, max: 35_000, noNaN: true }),
        fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }),
        (at, x, y, way) => {
          const plane = createLocalPlane(at);
          const end: Xy = [x + 1000 * Math.cos(way), y + 1000 * Math.sin(way)];
          const lengthM = distanceM(plane.toLonLat([x, y]), plane.toLonLat(end));
          expect(Math.abs(lengthM / 1000 - 1)).toBeLessThan(1 / 80_000);
        },
      ),
      { seed: 4, numRuns: 200 },
    );
  });

  it('goes the same way there and back where the reach of its sphere ends', () => {
    fc.assert(
      fc.property(
        origin,
        fc.double({ min: 199_990, max: 200_010, noNaN: true }),
        fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }),
        (at, awayM, way) => {
          const plane = createLocalPlane(at);
          const [x, y] = [awayM * Math.cos(way), awayM * Math.sin(way)];
          const [backX, backY] = plane.toXy(plane.toLonLat([x, y]));
          expect(Math.hypot(backX - x, backY - y)).toBeLessThan(1e-5);
        },
      ),
      { seed: 5, numRuns: 2000 },
    );
  });

  it('has its origin at zero', () => {
    const plane = createLocalPlane([10, 50]);
    expect(plane.toXy([10, 50])).toEqual([0, 0]);
    const [lon, lat] = plane.toLonLat([0, 0]);
    expect(lon).toBeCloseTo(10, 12);
    expect(lat).toBeCloseTo(50, 12);
  });
});
