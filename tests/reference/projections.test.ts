import { describe, expect, it } from 'vitest';
import { formatPlace } from '../../core/coordinates/formatPlace.ts';
import { projectionOf } from '../../core/coordinates/projection.ts';
import { readPlace } from '../../core/coordinates/readPlace.ts';
import { type CoordinateSystem, systemOfEpsg } from '../../core/coordinates/systems.ts';
import { distanceM } from '../../core/geometry/geodesic.ts';
import { figures } from '../../core/words/figures.ts';
import { referenceData } from './data.ts';

interface Case {
  id: string;
  crs: string;
  lng: number;
  lat: number;
  expected: { easting_m: number; northing_m: number };
}

/** Source: PROJ's cs2cs, checked against GeographicLib, as the file says. */
const { cases } = referenceData<{ cases: Case[] }>('projections.json');
const toleranceM = 0.01;

describe('projections against PROJ', () => {
  it('has cases', () => expect(cases.length).toBeGreaterThan(0));

  for (const { id, crs, lng, lat, expected } of cases) {
    const { name, definition } = systemOfEpsg(Number(crs.split(':')[1]))!;
    const system: CoordinateSystem = { kind: 'projected', id: crs, name, definition };

    it(`${id} there and back`, () => {
      const projection = projectionOf(definition).projection!;
      const [east, north] = projection.toGrid([lng, lat]);
      expect(Math.abs(east - expected.easting_m)).toBeLessThan(toleranceM);
      expect(Math.abs(north - expected.northing_m)).toBeLessThan(toleranceM);
      const back = projection.toLonLat([expected.easting_m, expected.northing_m]);
      expect(distanceM(back, [lng, lat])).toBeLessThan(toleranceM);
    });

    it(`${id} typed and shown`, () => {
      const read = readPlace(`${expected.easting_m} E, ${expected.northing_m} N`, system, null);
      expect(distanceM(read.lonLat!, [lng, lat])).toBeLessThan(toleranceM);
      const shown = readPlace(formatPlace([lng, lat], system, figures('metric')), system, null);
      expect(distanceM(shown.lonLat!, [lng, lat])).toBeLessThan(0.1);
    });
  }
});
