import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { earthAt } from '../../../core/geometry/earth.ts';
import { gaussReachM } from '../../../core/geometry/gaussSphere.ts';
import { bearingDeg, destination, distanceM, pathLengthM, segmentLengthsM } from '../../../core/geometry/geodesic.ts';
import type { LonLat } from '../../../core/geometry/types.ts';

const anywhere = fc.tuple(
  fc.double({ min: -180, max: 180, noNaN: true }),
  fc.double({ min: -90, max: 90, noNaN: true }),
) as fc.Arbitrary<LonLat>;
const farm = fc.tuple(
  fc.double({ min: -180, max: 180, noNaN: true }),
  fc.double({ min: -84, max: 84, noNaN: true }),
) as fc.Arbitrary<LonLat>;
const way = (mostM: number) =>
  fc.record({
    bearing: fc.double({ min: 0, max: 360, noNaN: true }),
    lengthM: fc.double({ min: 0, max: mostM, noNaN: true }),
  });

describe('measures round an origin', () => {
  it('agree with the geodesic to 1e-7 within 100 km of any origin', () => {
    fc.assert(
      fc.property(
        farm,
        way(100_000),
        way(100_000),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (origin, p, q, share) => {
          const earth = earthAt(origin);
          const a = destination(origin, p.bearing, p.lengthM);
          const b = destination(origin, q.bearing, q.lengthM);
          const trueM = distanceM(a, b);
          const offM = 1e-7 * trueM + 5e-8;
          expect(Math.abs(earth.distanceM(a, b) - trueM)).toBeLessThanOrEqual(offM);
          const there = earth.destination(a, bearingDeg(a, b), trueM);
          expect(distanceM(there, b)).toBeLessThanOrEqual(offM);
          const on = earth.along([a, b], share * trueM);
          expect(Math.abs(distanceM(a, on) - share * trueM)).toBeLessThanOrEqual(offM);
          expect(Math.abs(distanceM(on, b) - (1 - share) * trueM)).toBeLessThanOrEqual(offM);
        },
      ),
    );
  });

  it('are right to 1e-7 between any two places on earth, whatever the origin', () => {
    fc.assert(
      fc.property(anywhere, anywhere, anywhere, (origin, a, b) => {
        const earth = earthAt(origin);
        const trueM = distanceM(a, b);
        expect(Math.abs(earth.distanceM(a, b) - trueM)).toBeLessThanOrEqual(1e-7 * trueM + 5e-8);
        const bearing = earth.bearingDeg(a, b);
        expect(bearing >= 0 && bearing < 360).toBe(true);
        for (const at of [earth.destination(a, bearing, 1000), earth.midpoint(a, b), earth.along([a, b], trueM / 3)]) {
          expect(Math.abs(at[0])).toBeLessThanOrEqual(180);
          expect(Math.abs(at[1])).toBeLessThanOrEqual(90);
        }
      }),
    );
  });

  it('give the piece of a path between two stations, wherever it lies', () => {
    fc.assert(
      fc.property(farm, way(300_000), fc.array(way(5000), { minLength: 1, maxLength: 8 }), (origin, start, ways) => {
        const path = [destination(origin, start.bearing, start.lengthM)];
        for (const { bearing, lengthM } of ways) path.push(destination(path.at(-1)!, bearing, lengthM));
        const lengthM = pathLengthM(path);
        if (lengthM < 1) return;
        const earth = earthAt(origin);
        const piece = earth.slice(path, lengthM / 4, lengthM / 2);
        expect(Math.abs(pathLengthM(piece) - lengthM / 4)).toBeLessThanOrEqual(1e-7 * lengthM + 1e-6);
        expect(distanceM(piece[0]!, earth.along(path, lengthM / 4))).toBeLessThanOrEqual(1e-6);
        expect(earth.slice(path, 0, lengthM + 1)).toEqual(path.filter((v, i) => i === 0 || v !== path[i - 1]));
      }),
    );
  });

  it('have no jump where the sphere ends and the ellipsoid takes over', () => {
    for (const latitude of [0, -38, 60, 84]) {
      const origin: LonLat = [20, latitude];
      const earth = earthAt(origin);
      for (let bearing = 0; bearing < 360; bearing += 15) {
        const [near, far] = [-1, 1].map((step) => destination(origin, bearing, gaussReachM + step * 500)) as [
          LonLat,
          LonLat,
        ];
        expect(Math.abs(earth.distanceM(origin, far) - earth.distanceM(origin, near) - 1000)).toBeLessThan(0.02);
        expect(Math.abs(earth.distanceM(near, far) - 1000)).toBeLessThan(0.001);
      }
    }
  });

  it('hold at the origin, at the poles and across the 180 meridian', () => {
    const dateLine = earthAt([179.99, -17]);
    const [west, east]: [LonLat, LonLat] = [
      [179.995, -17.001],
      [-179.995, -17.002],
    ];
    expect(dateLine.distanceM(west, east)).toBeCloseTo(distanceM(west, east), 6);
    expect(dateLine.distanceM([180.001, -17], [-179.999, -17])).toBeCloseTo(0, 6);
    expect(dateLine.destination(west, 90, 1000)[0]).toBeLessThan(-179.9);
    expect(dateLine.distanceM(dateLine.origin, dateLine.origin)).toBe(0);
    expect(dateLine.bearingDeg(dateLine.origin, dateLine.origin)).toBe(0);
    const pole = earthAt([0, 90]);
    for (const [a, b] of [
      [
        [0, 90],
        [120, 89.9],
      ],
      [
        [10, 89.99],
        [-170, 89.99],
      ],
      [
        [0, -90],
        [0, 90],
      ],
    ] as [LonLat, LonLat][]) {
      expect(pole.distanceM(a, b)).toBeCloseTo(distanceM(a, b), 6);
      expect(earthAt([5, 84.9]).distanceM(a, b)).toBeCloseTo(distanceM(a, b), 6);
    }
    const near = earthAt([5, 85]);
    const across = near.destination([5, 86.5], 0, 600_000);
    expect(distanceM(across, destination([5, 86.5], 0, 600_000))).toBeLessThan(0.001);
  });

  it('measure each segment of a path with doubled vertices, and say nothing of a single one', () => {
    const earth = earthAt([10, 45]);
    const path: LonLat[] = [
      [10, 45],
      [10, 45],
      [10.01, 45.02],
    ];
    const lengths = earth.segmentLengthsM(path);
    expect(lengths[0]).toBe(0);
    expect(lengths[1]).toBeCloseTo(segmentLengthsM(path)[1]!, 6);
    expect(earth.pathLengthM([[10, 45]])).toBe(0);
    expect(earth.along(path, -5)).toBe(path[0]);
    expect(earth.along(path, 1e6)).toBe(path[2]);
  });
});
