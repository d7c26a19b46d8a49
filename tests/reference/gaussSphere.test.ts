import { describe, expect, it } from 'vitest';
import { earthAt } from '../../core/geometry/earth.ts';
import { bearingDeg, destination, distanceM, pathLengthM } from '../../core/geometry/geodesic.ts';
import type { LonLat } from '../../core/geometry/types.ts';

/**
 * Turf on the Gauss conformal sphere against GeographicLib on the ellipsoid, out to 100 km from the origin. Degrees hold
 * a place to some nanometres, and so does every answer.
 */
const latitudes = [0, -38, 50, -50, 65, -65, 80, -80];
const reachesM = [10, 1000, 20_000, 50_000, 100_000];
const share = 1e-7;
const holdsM = 3e-8;

/** A small seeded generator of numbers from 0 to 1. */
function generator(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

/** Pairs along and across the meridian at all sides of the origin, and pairs at random. */
function pairs(origin: LonLat, reachM: number, seed: number): (readonly [LonLat, LonLat])[] {
  const random = generator(seed);
  const round = Array.from({ length: 8 }, (_, i) => destination(origin, i * 45, reachM));
  const structured = round.flatMap((a, i): (readonly [LonLat, LonLat])[] => [
    [origin, a],
    [a, origin],
    [a, round[(i + 4) % 8]!],
    [a, round[(i + 1) % 8]!],
    [a, destination(a, 137 * i, reachM / 100)],
  ]);
  const place = () => destination(origin, random() * 360, reachM * Math.sqrt(random()));
  return [...structured, ...Array.from({ length: 300 }, () => [place(), place()] as const)];
}

describe('lengths, bearings and places on the Gauss sphere against GeographicLib', () => {
  for (const latitude of latitudes) {
    for (const reachM of reachesM) {
      it(`latitude ${latitude}, to ${reachM / 1000} km from the origin`, () => {
        const origin: LonLat = [latitude % 2 === 0 ? 179.9 : -71.3, latitude];
        const earth = earthAt(origin);
        for (const [a, b] of pairs(origin, reachM, 1 + Math.abs(latitude) + reachM)) {
          const trueM = distanceM(a, b);
          const offM = share * trueM + holdsM;
          expect(Math.abs(earth.distanceM(a, b) - trueM)).toBeLessThanOrEqual(offM);
          const trueDeg = bearingDeg(a, b);
          const turnDeg = ((((earth.bearingDeg(a, b) - trueDeg + 540) % 360) + 360) % 360) - 180;
          expect(Math.abs((turnDeg * Math.PI) / 180) * trueM).toBeLessThanOrEqual(offM);
          expect(distanceM(earth.destination(a, trueDeg, trueM), b)).toBeLessThanOrEqual(offM);
          const back = earth.destination(b, earth.bearingDeg(b, a), earth.distanceM(b, a));
          expect(distanceM(back, a)).toBeLessThanOrEqual(holdsM);
          const onward = destination(a, trueDeg, 0.37 * trueM);
          expect(distanceM(earth.along([a, b], 0.37 * trueM), onward)).toBeLessThanOrEqual(offM);
          expect(distanceM(earth.midpoint(a, b), destination(a, trueDeg, trueM / 2))).toBeLessThanOrEqual(offM);
        }
      });
    }

    it(`latitude ${latitude}, slices and arcs`, () => {
      const origin: LonLat = [17.5, latitude];
      const earth = earthAt(origin);
      const random = generator(7);
      for (const awayM of [0, 5000, 90_000]) {
        const start = destination(origin, 360 * random(), awayM);
        const path = [start];
        for (let i = 0; i < 12; i++) path.push(destination(path.at(-1)!, 360 * random(), 700 * random()));
        const lengthM = pathLengthM(path);
        const offM = share * lengthM + 20 * holdsM;
        const [fromM, toM] = [0.21 * lengthM, 0.83 * lengthM];
        const piece = earth.slice(path, fromM, toM);
        expect(Math.abs(pathLengthM(piece) - (toM - fromM))).toBeLessThanOrEqual(offM);
        expect(distanceM(piece[0]!, earth.along(path, fromM))).toBeLessThanOrEqual(holdsM);
        expect(distanceM(piece.at(-1)!, earth.along(path, toM))).toBeLessThanOrEqual(holdsM);
        expect(piece.slice(1, -1).every((vertex) => path.includes(vertex))).toBe(true);
        for (const [radiusM, fromDeg, toDeg] of [
          [3.2, 350, 75],
          [40, 90, 270],
          [2500, 10, 12],
        ] as const) {
          const turnDeg = (toDeg - fromDeg + 360) % 360;
          for (const [i, at] of earth.arc(start, radiusM, fromDeg, toDeg, 8).entries()) {
            const expected = destination(start, fromDeg + (turnDeg * i) / 8, radiusM);
            expect(distanceM(at, expected)).toBeLessThanOrEqual(share * radiusM + holdsM);
          }
        }
      }
    });
  }
});
