import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { destination, distanceM, pathLengthM } from '../../../core/geometry/geodesic.ts';
import { createLocalPlane } from '../../../core/geometry/localPlane.ts';
import type { LonLat, Xy } from '../../../core/geometry/types.ts';
import { xyDistanceM } from '../../../core/geometry/vector.ts';
import {
  directionAt,
  lonLatAt,
  measured,
  measuredPath,
  nearestOn,
  placeAt,
  slice,
  stationOf,
  xyAt,
  xySlice,
} from '../../../core/shapes/measuredPath.ts';

/** An L, 100 m east and 50 m north; its stations run a little longer than the plane, as they do far from its centre. */
const bent = {
  xy: [
    [0, 0],
    [100, 0],
    [100, 50],
  ] as Xy[],
  stationsM: [0, 101, 151.5],
};

describe('a measured path in the plane', () => {
  it('gives the point at the same share of the segment', () => {
    expect(xyAt(bent, 50.5)).toEqual([50, 0]);
    expect(xyAt(bent, 126.25)).toEqual([100, 25]);
    expect(xyAt(bent, -5)).toEqual([0, 0]);
    expect(xyAt(bent, 999)).toEqual([100, 50]);
  });

  it('tells the station of a segment and a share', () => {
    expect(stationOf(bent, { segment: 0, fraction: 0.5 })).toBe(50.5);
    expect(stationOf(bent, { segment: 1, fraction: 0.5 })).toBe(126.25);
  });

  it('finds the segment of a station', () => {
    expect([-1, 0, 100.9, 101, 151.5, 500].map((atM) => placeAt(bent, atM).segment)).toEqual([0, 0, 0, 1, 1, 1]);
  });

  it('is cut to a piece with the corners in it', () => {
    expect(xySlice(bent, 50.5, 126.25)).toEqual([
      [50, 0],
      [100, 0],
      [100, 25],
    ]);
    expect(xySlice(bent, 10.1, 20.2)).toEqual([
      [10, 0],
      [20, 0],
    ]);
    expect(xySlice(bent, 0, 101)).toEqual([
      [0, 0],
      [100, 0],
    ]);
    expect(xySlice(bent, 0, 151.5)).toBe(bent.xy);
  });

  it('has a direction at every station, past doubled vertices too', () => {
    expect(directionAt(bent, 50)).toEqual([1, 0]);
    expect(directionAt(bent, 101)).toEqual([0, 1]);
    const doubled = {
      xy: [
        [0, 0],
        [0, 10],
        [0, 10],
      ] as Xy[],
      stationsM: [0, 10, 10],
    };
    expect(directionAt(doubled, 10)).toEqual([0, 1]);
  });

  it('has a nearest place with its station, on the one hand or the other', () => {
    expect(nearestOn(bent, [50, 3])).toEqual({
      segment: 0,
      fraction: 0.5,
      stationM: 50.5,
      distanceM: 3,
      xy: [50, 0],
      side: 'left',
    });
  });
});

const latitude = fc.constantFrom(0, -38, 50, 65, -80);
const legs = fc.array(
  fc.record({
    bearing: fc.integer({ min: 0, max: 359 }),
    lengthM: fc.integer({ min: 0, max: 1000 }),
  }),
  { minLength: 1, maxLength: 12 },
);

describe('a measured path on the earth', () => {
  it('means the same by a station everywhere: the geodesic from the first vertex', () => {
    fc.assert(
      fc.property(latitude, fc.integer({ min: 0, max: 50_000 }), fc.nat(359), legs, (lat, awayM, toward, ways) => {
        const plane = createLocalPlane([179.99, lat]);
        const path: LonLat[] = [destination(plane.origin, toward, awayM)];
        for (const { bearing, lengthM } of ways) path.push(destination(path.at(-1)!, bearing, lengthM));
        const whole = measuredPath(path, plane)!;
        const lengthM = pathLengthM(path);
        expect(Math.abs(whole.lengthM - lengthM)).toBeLessThanOrEqual(1e-7 * lengthM + 1e-6);
        for (const share of [0, 0.123, 0.5, 0.77, 1]) {
          const atM = share * whole.lengthM;
          const { segment } = placeAt(whole, atM);
          const at = lonLatAt(whole, atM);
          const alongM = whole.stationsM[segment]! + distanceM(path[segment]!, at);
          expect(Math.abs(alongM - atM)).toBeLessThanOrEqual(1e-7 * lengthM + 1e-6);
          // What is drawn and what is set out lie together, to less than a millimetre.
          expect(xyDistanceM(plane.toXy(at), xyAt(whole, atM))).toBeLessThan(0.0005);
          const near = nearestOn(whole, xyAt(whole, atM));
          expect(near.distanceM).toBeLessThan(1e-6);
          expect(xyDistanceM(xyAt(whole, near.stationM), xyAt(whole, atM))).toBeLessThan(1e-6);
        }
        if (lengthM < 1) return;
        const [fromM, toM] = [0.2 * whole.lengthM, 0.7 * whole.lengthM];
        const piece = slice(whole, fromM, toM);
        expect(Math.abs(pathLengthM(piece) - (toM - fromM))).toBeLessThanOrEqual(1e-7 * lengthM + 1e-6);
        expect(distanceM(piece[0]!, lonLatAt(whole, fromM))).toBeLessThan(1e-6);
        expect(distanceM(piece.at(-1)!, lonLatAt(whole, toM))).toBeLessThan(1e-6);
        const drawn = xySlice(whole, fromM, toM);
        expect(drawn.length).toBe(piece.length);
      }),
    );
  });

  it('keeps what a straight in the plane bows from the geodesic to what it says', () => {
    for (const lat of [0, -38, 65]) {
      const plane = createLocalPlane([10, lat]);
      for (const [awayM, lengthM] of [
        [5000, 3000],
        [50_000, 1000],
        [50_000, 10_000],
      ] as const) {
        for (let bearing = 0; bearing < 180; bearing += 15) {
          const start = destination(plane.origin, 0, awayM);
          const whole = measured(plane, [start, destination(start, bearing, lengthM)]);
          const bowM = xyDistanceM(plane.toXy(lonLatAt(whole, lengthM / 2)), xyAt(whole, lengthM / 2));
          const farthestM = awayM + lengthM;
          expect(bowM).toBeLessThan((lengthM ** 2 * farthestM) / (10 * 6_371_000 ** 2) + 1e-6);
        }
      }
    }
  });

  it('is worked out once for each path and plane, and not at all where there is none', () => {
    const plane = createLocalPlane([10, 50]);
    const path: LonLat[] = [
      [10, 50],
      [10.01, 50],
    ];
    expect(measuredPath(path, plane)).toBe(measuredPath(path, plane));
    expect(measuredPath(path, createLocalPlane([10, 50.1]))).not.toBe(measuredPath(path, plane));
    expect(measuredPath([[10, 50]], plane)).toBeNull();
    expect(measuredPath([...path, [Number.NaN, 50]], plane)).toBeNull();
    const ring: LonLat[] = [...path, [10, 50.01], [10, 50]];
    expect(measuredPath(ring, plane)!.closed).toBe(true);
    expect(measuredPath([path[0]!, path[1]!, path[0]!], plane)!.closed).toBe(false);
  });
});
