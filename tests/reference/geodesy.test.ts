import { describe, expect, it } from 'vitest';
import { earthAt } from '../../core/geometry/earth.ts';
import { pathLengthM, ringAreaM2, ringPerimeterM, segmentLengthsM } from '../../core/geometry/geodesic.ts';
import type { LonLat } from '../../core/geometry/types.ts';
import { referenceData } from './data.ts';

type Case =
  | {
      id: string;
      type: 'polyline';
      coordinates: LonLat[];
      expected: { length_m: number; segment_lengths_m: number[] };
    }
  | {
      id: string;
      type: 'polygon';
      coordinates: LonLat[][];
      expected: { area_m2: number; perimeter_m: number };
    };

/** Source: GeographicLib's own command-line tools, as the file says; it prints lengths to the micrometre. */
const { cases } = referenceData<{ cases: Case[] }>('geodesy.json');
const printedLengthM = 1e-6;
const printedAreaM2 = 0.05;
/** What the product itself measures by: Turf on the Gauss sphere at the first vertex or the last. */
const byTurf = 1e-7;

describe('lengths and areas against GeographicLib', () => {
  it('has cases', () => expect(cases.length).toBeGreaterThan(0));

  for (const { id, type, coordinates, expected } of cases) {
    it(id, () => {
      if (type === 'polyline') {
        expectLength(pathLengthM(coordinates), expected.length_m);
        const lengths = segmentLengthsM(coordinates);
        expect(lengths).toHaveLength(expected.segment_lengths_m.length);
        for (const [i, lengthM] of lengths.entries()) expectLength(lengthM, expected.segment_lengths_m[i]!);
        for (const origin of [coordinates[0]!, coordinates.at(-1)!]) {
          const earth = earthAt(origin);
          expectLength(earth.pathLengthM(coordinates), expected.length_m, byTurf);
          for (const [i, lengthM] of earth.segmentLengthsM(coordinates).entries()) {
            expectLength(lengthM, expected.segment_lengths_m[i]!, byTurf);
          }
        }
      } else {
        const ring = coordinates[0]!;
        for (const way of [ring, ring.toReversed(), ring.slice(0, -1)]) {
          expectLength(ringPerimeterM(way), expected.perimeter_m);
          expectLength(earthAt(ring[0]!).pathLengthM(ring), expected.perimeter_m, byTurf);
          const errorM2 = Math.abs(ringAreaM2(way) - expected.area_m2);
          expect(errorM2).toBeLessThanOrEqual(Math.max(1e-4 * expected.area_m2, printedAreaM2));
          expect(errorM2).toBeLessThanOrEqual(1e-7 * expected.area_m2 + printedAreaM2);
        }
      }
    });
  }
});

function expectLength(lengthM: number, expectedM: number, share = 1e-9): void {
  expect(Math.abs(lengthM - expectedM)).toBeLessThanOrEqual(share * expectedM + printedLengthM);
}
