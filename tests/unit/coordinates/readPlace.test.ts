import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { formatGrid, formatPlace } from '../../../core/coordinates/formatPlace.ts';
import { projectionOf } from '../../../core/coordinates/projection.ts';
import { readGridPlace, readPlace } from '../../../core/coordinates/readPlace.ts';
import {
  type CoordinateSystem,
  decimalDegrees,
  knownSystems,
  systemOf,
  systemOfEpsg,
} from '../../../core/coordinates/systems.ts';
import { utmZoneAt } from '../../../core/coordinates/utm.ts';
import { distanceM } from '../../../core/geometry/geodesic.ts';
import type { LonLat } from '../../../core/geometry/types.ts';
import { figures } from '../../../core/words/figures.ts';
import type { Message } from '../../../core/words/message.ts';
import type { Units } from '../../../core/words/numbers/write.ts';
import { inEnglish } from '../../support/english.ts';

const nztm = knownSystems.find(({ id }) => id === 'EPSG:2193')!;
const utm = knownSystems.find(({ kind }) => kind === 'utm')!;
const home: LonLat = [174.77639, -41.28312];
const f = figures('metric');

/** What was read, its problem as an English sentence. */
function inWords<T extends { readonly problem: Message | null } | { readonly xy: unknown }>(read: T, units?: Units) {
  return 'problem' in read ? { ...read, problem: inEnglish(read.problem, units) } : read;
}

describe('degrees', () => {
  test.each([
    '-41.28312, 174.77639',
    '-41.28312 174.77639',
    '41.28312 S, 174.77639 E',
    '41.28312°S 174.77639°E',
    'S 41.28312 E 174.77639',
    '174.77639 E, 41.28312 S',
    '−41.28312°, 174.77639°',
    '41,28312 S; 174,77639 E',
    '41,28312 S, 174,77639 E',
    '-41,28312 174,77639',
    "41° 16,9872' S, 174° 46,5834' E",
    "41° 16.9872' S, 174° 46.5834' E",
    '41 16.9872 S 174 46.5834 E',
    'S41°16.9872′ E174°46.5834′',
    `41°16'59.232"S 174°46'35.004"E`,
    '-41 16 59.232, 174 46 35.004',
  ])('%s', (text) => {
    const { lonLat, problem } = readPlace(text, decimalDegrees, home);
    expect(problem).toBeNull();
    expect(lonLat![0]).toBeCloseTo(home[0], 9);
    expect(lonLat![1]).toBeCloseTo(home[1], 9);
  });

  test.each([
    ['', /Type a place/],
    ['here', /Type latitude and longitude/],
    ['41.28', /Type latitude and longitude/],
    ['41.28 S, 174.77 S', /Both figures are marked as latitude/],
    ['-41.28 S, 174.77 E', /minus sign and a letter/],
    ["41° 75' S, 174° 10' E", /fewer than 60/],
    ['95 N, 20 E', /no place on earth/],
    ['1e308, 2', /Type latitude/],
    ['Infinity, NaN', /Type latitude/],
    ['200, 300', /no place on earth/],
  ])('%s: says what is wrong', (text, words) => {
    expect(inWords(readPlace(text, decimalDegrees, home))).toMatchObject({
      lonLat: null,
      problem: expect.stringMatching(words),
    });
  });

  test('longitude first: offers to swap', () => {
    const { problem, ...rest } = readPlace('174.77639, -41.28312', decimalDegrees, null);
    expect(inEnglish(problem)).toMatch(/swapped/);
    expect(rest).toMatchObject({ lonLat: null, swapped: home });
  });

  test('swapped figures that would be a place far off are told by the property', () => {
    const near: LonLat = [36.8, -1.3];
    expect(readPlace('36.8, -1.3', decimalDegrees, near)).toMatchObject({ swapped: [36.8, -1.3] });
    expect(readPlace('36.8, -1.3', decimalDegrees, null).lonLat).toEqual([-1.3, 36.8]);
  });
});

describe('east and north', () => {
  const [east, north] = projectionOf((nztm as { definition: string }).definition).projection!.toGrid(home);

  test.each([
    `${east} E, ${north} N`,
    `${north} N ${east} E`,
    `E${east} N${north}`,
    `${east} ${north}`,
    `${east}, ${north}`,
    `${east} m E, ${north} m N`,
    `E${east}N${north}`,
    `${`${east}`.replace('.', ',')} ${`${north}`.replace('.', ',')}`,
  ])('%s', (text) => {
    const { lonLat, problem } = readPlace(text, nztm, home);
    expect(problem).toBeNull();
    expect(distanceM(lonLat!, home)).toBeLessThan(1e-3);
  });

  test('commas between thousands', () => {
    expect(readPlace('1,504,849.4 E, 5,173,296.0 N', nztm, null).lonLat).toEqual(
      readPlace('1504849.4 5173296.0', nztm, null).lonLat,
    );
  });

  test('degrees are taken in any system if they show what they are', () => {
    expect(readPlace('41.28312° S, 174.77639° E', nztm, home).lonLat![1]).toBeCloseTo(home[1], 9);
  });

  test.each(['-41.28312, 174.77639', '-41,28312; 174,77639', 'S41.28312 E174.77639', '174.77639 E, 41.28312 S'])(
    '%s is degrees in a map grid too, never metres of it',
    (text) => {
      for (const near of [home, null]) {
        for (const system of [nztm, utm]) {
          const { lonLat, problem } = readPlace(text, system, near);
          expect(problem).toBeNull();
          expect(distanceM(lonLat!, home)).toBeLessThan(1);
        }
      }
    },
  );

  test('degrees with a decimal comma and three decimals: by the property, else asked', () => {
    expect(readPlace('-41,283; 174,776', nztm, home).lonLat).toEqual([174.776, -41.283]);
    expect(inEnglish(readPlace('-41,283; 174,776', nztm, null).problem)).toMatch(
      /metres without commas.*degrees with their sign/,
    );
    expect(readPlace('1,504,849; 5,173,296', nztm, null).problem).toBeNull();
  });

  test.each([
    ['41.28312, 174.77639', decimalDegrees],
    ['-41,28', decimalDegrees],
    ['12 400', nztm],
  ] as const)('%s: a place far from the property is told of, not taken', (text, system) => {
    expect(inWords(readPlace(text, system, home))).toMatchObject({
      lonLat: null,
      problem: expect.stringMatching(/km from this property/),
    });
  });

  test('north first without letters: offers to swap', () => {
    const { lonLat, ...rest } = readPlace(`${north} ${east}`, nztm, home);
    expect(lonLat).toBeNull();
    expect(distanceM((rest as { swapped: LonLat }).swapped, home)).toBeLessThan(1e-3);
  });

  test.each([
    ['12', /Type east and north/],
    ['1 2 3', /Type east and north/],
    ['12 E, 13 E', /Both figures are marked E/],
    ['1504849 E, zzz', /Type east and north/],
    ['9e99 1', /Type east and north/],
    [`${'9'.repeat(300)} 1`, /no place on earth/],
  ])('%s: says what is wrong', (text, words) => {
    expect(inWords(readPlace(text, nztm, home))).toMatchObject({ lonLat: null, problem: expect.stringMatching(words) });
  });

  test('UTM: the zone that is typed, else the zone of the property', () => {
    const nairobi: LonLat = [36.8, -1.3];
    const shown = formatPlace(nairobi, utm, f);
    expect(shown).toMatch(/\(UTM 37 south\)$/);
    const figures = shown.replace(/ \(.*/, '');
    expect(distanceM(readPlace(figures, utm, nairobi).lonLat!, nairobi)).toBeLessThan(0.1);
    expect(distanceM(readPlace(`37S ${figures}`, utm, [20, 50]).lonLat!, nairobi)).toBeLessThan(0.1);
    expect(inEnglish(readPlace(figures, utm, null).problem)).toMatch(/Type the zone too/);
  });
});

test('what is shown can be typed again, in every known system', () => {
  const inside: Readonly<Record<string, LonLat>> = { 'EPSG:2193': [172, -42], 'EPSG:2157': [-8, 53] };
  for (const system of knownSystems) {
    const zone = /^EPSG:78(\d\d)$/.exec(system.id)?.[1];
    const middle = zone ? ([Number(zone) * 6 - 183, -30] as const) : (inside[system.id] ?? ([20, -30] as const));
    fc.assert(
      fc.property(
        fc.double({ min: -2.5, max: 2.5, noNaN: true }),
        fc.double({ min: -5, max: 5, noNaN: true }),
        (x, y) => {
          const place: LonLat = [middle[0] + x, middle[1] + y];
          const read = readPlace(formatPlace(place, system, f), system, place);
          expect(read.problem).toBeNull();
          expect(distanceM(read.lonLat!, place)).toBeLessThan(0.3);
        },
      ),
      { seed: 4, numRuns: 200 },
    );
  }
});

test('nonsense never throws, and is never taken for a place that is none', () => {
  const marks = fc.string({ unit: fc.constantFrom(...Array.from('0123456789.,;-+°\'"NSEWm \u2032e')), maxLength: 40 });
  fc.assert(
    fc.property(fc.oneof(fc.string(), marks), fc.constantFrom(...knownSystems), (text, system) => {
      const { lonLat, problem } = readPlace(text, system, home);
      if (lonLat === null) expect(inEnglish(problem)).not.toBe('');
      else expect(Math.abs(lonLat[0]) <= 180 && Math.abs(lonLat[1]) <= 90).toBe(true);
    }),
    { seed: 4, numRuns: 3000 },
  );
});

describe('a system of the user', () => {
  const own = (definition: string): CoordinateSystem =>
    systemOf({ kind: 'coordinateSettings', id: 'coordinates', system: 'own', own: { name: 'Ours', definition } });

  test('its definition is used', () => {
    const system = own('+proj=utm +zone=37 +south +datum=WGS84 +units=m +no_defs');
    expect(formatPlace([36.8, -1.3], system, f)).toBe(formatPlace([36.8, -1.3], utm, f).replace(/ \(.*/, ''));
  });

  test.each([
    ['hello', /begins with \+proj=/],
    ['+proj=nosuch +x_0=1', /can’t be worked with/],
    ['+proj=geocent +ellps=GRS80', /geocentric/],
    ['+proj=longlat +nadgrids=a.gsb', /grid file/],
    [`+proj=utm +zone=${'1'.repeat(3000)}`, /too long/],
    ['+proj=tmerc +k=0 +lon_0=0 +ellps=GRS80', /can’t be worked with/],
  ])('%s is refused', (definition, words) => {
    expect(inEnglish(projectionOf(definition).problem)).toMatch(words);
    expect(readPlace('1 2', own(definition), home).lonLat).toBeNull();
    expect(formatPlace(home, own(definition), f)).toMatch(/°/);
  });

  test('an unknown id falls back to degrees', () => {
    expect(systemOf({ kind: 'coordinateSettings', id: 'coordinates', system: 'EPSG:1', own: null })).toBe(
      decimalDegrees,
    );
    expect(systemOfEpsg(999)).toBeNull();
  });
});

test('UTM zones, also where they are exceptions', () => {
  expect(utmZoneAt([5, 60])).toEqual({ zone: 32, south: false });
  expect(utmZoneAt([2, 60])).toEqual({ zone: 31, south: false });
  expect(utmZoneAt([10, 78])).toEqual({ zone: 33, south: false });
  expect(utmZoneAt([180, -10])).toEqual({ zone: 1, south: true });
  expect(utmZoneAt([179.99, 10])).toEqual({ zone: 60, south: false });
});

describe('the blank grid', () => {
  test.each([
    ['120.4 m E, 33.2 m S', [120.4, -33.2]],
    ['33.2 m N 12 m W', [-12, 33.2]],
    ['-12, 40', [-12, 40]],
    ['1200, 1000', [1200, 1000]],
    ['1,200, 1,000', [1200, 1000]],
    ['1 200; 1 000', [1200, 1000]],
    ['12.5, 100.25', [12.5, 100.25]],
    ['12,5; 100,25', [12.5, 100.25]],
    ['0.4 km; 250', [400, 250]],
    ['1200 E, 33 S', [1200, -33]],
    ['1,204.4 m W, 7.5 m N', [-1204.4, 7.5]],
    // With a unit it is a place on the grid, however it looks.
    ['12.5 m, 100.25 m', [12.5, 100.25]],
    ['-35.404678 m, 147.665947 m', [-35.404678, 147.665947]],
    ['1200.123456, 1000.123456', [1200.123456, 1000.123456]],
  ] as const)('%s', (text, xy) => {
    expect(readGridPlace(text, 'metric')).toEqual({ xy: xy.map((figure) => expect.closeTo(figure, 9)) });
  });

  test('feet where the screen shows feet, unless a unit is typed', () => {
    expect(readGridPlace('100, 0', 'imperial')).toEqual({ xy: [30.48, 0] });
    expect(readGridPlace('100 ft E, 0 ft N', 'imperial')).toEqual({ xy: [30.48, 0] });
    expect(readGridPlace('100 m E, 0 m N', 'imperial')).toEqual({ xy: [100, 0] });
    expect(readGridPlace('100 ft E, 0 ft N', 'metric')).toEqual({ xy: [30.48, 0] });
  });

  test('what is shown can be typed again, metric and imperial', () => {
    const figure = fc.double({ min: -60_000, max: 60_000, noNaN: true });
    fc.assert(
      fc.property(figure, figure, fc.constantFrom('metric', 'imperial'), (x, y, units) => {
        const read = readGridPlace(formatGrid([x, y], units), units);
        expect(read).toEqual({ xy: [expect.closeTo(x, 0), expect.closeTo(y, 0)] });
      }),
      { seed: 5, numRuns: 500 },
    );
    expect(formatGrid([-4.25, 7.5], 'metric')).toBe('4.3 m W, 7.5 m N');
  });

  test.each([
    ['-35.404678, 147.665947', [147.665947, -35.404678]],
    ['-35.404678 147.665947', [147.665947, -35.404678]],
    ['-35,404678; 147,665947', [147.665947, -35.404678]],
    ['-35,404678 147,665947', [147.665947, -35.404678]],
    ['147.665947, -35.404678', [147.665947, -35.404678]],
    ['35.404678 S, 147.665947 E', [147.665947, -35.404678]],
    ['35.4 S, 147.7 E', [147.7, -35.4]],
    ['120.4 E, 33.2 S', [120.4, -33.2]],
    ['S 35.4 E 147.7', [147.7, -35.4]],
    ["35° 24.28' S, 147° 39.96' E", [147.666, -35.40467]],
    [`35°24'16.8"S 147°39'57.4"E`, [147.66594, -35.40467]],
    ['35 24 16.8 S, 147 39 57.4 E', [147.66594, -35.40467]],
    ['-35.4°, 147.7°', [147.7, -35.4]],
    ['geo:-35.4,147.7', [147.7, -35.4]],
    ['0.1234, 0.5', [0.5, 0.1234]],
    ['-35.404, 147.665', [147.665, -35.404]],
    ['-35,404; 47,665', [47.665, -35.404]],
    ['-35,404 47,665', [47.665, -35.404]],
    ['-35,404, 47,665', [47.665, -35.404]],
    ['-1,250; 36,817', [36.817, -1.25]],
  ] as const)('%s is latitude and longitude, and never metres', (text, [lon, lat]) => {
    expect(inWords(readGridPlace(text, 'metric'))).toEqual({
      problem: expect.stringMatching(/latitude and longitude.*place on earth.*12\.5 m E/s),
      degrees: [expect.closeTo(lon, 4), expect.closeTo(lat, 4)],
    });
  });

  test('any place on earth, in any way that the app writes it, is never taken for metres', () => {
    const degrees = knownSystems.filter(({ kind }) => kind === 'degrees');
    const place = fc.tuple(
      fc.double({ min: -180, max: 180, noNaN: true }),
      fc.double({ min: -90, max: 90, noNaN: true }),
    );
    fc.assert(
      fc.property(place, fc.constantFrom(...degrees), fc.nat(4), ([lon, lat], system, style) => {
        const plain = `${lat.toFixed(5)}${[', ', ' ', '; ', ',', ' , '][style]}${lon.toFixed(5)}`;
        for (const text of [formatPlace([lon, lat], system, f), plain]) {
          const read = readGridPlace(text, 'metric');
          expect('xy' in read, text).toBe(false);
          // One that could be read in either order may come back swapped; it is refused all the same.
          if (text !== plain) expect((read as { degrees: LonLat }).degrees[1]).toBeCloseTo(lat, 4);
        }
      }),
      { seed: 6, numRuns: 500 },
    );
  });

  test.each([
    ['12 E, 4 W', /Type east and north/],
    ['x', /Type east and north/],
    ['1, 204.4 m W,  7.5 m N', /Type east and north/],
    ['12,5 100,25', /not clear where the first figure ends/],
    ['100,200,300', /not clear where the first figure ends/],
    ['412345.6 E, 6123456.7 N', /over 100 km.*map grid/],
  ])('%s: says what is wrong', (text, words) => {
    expect(inWords(readGridPlace(text, 'metric'))).toEqual({ problem: expect.stringMatching(words), degrees: null });
  });
});
