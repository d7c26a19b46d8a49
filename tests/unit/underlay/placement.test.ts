import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { projectionOf } from '../../../core/coordinates/projection.ts';
import { systemOfEpsg } from '../../../core/coordinates/systems.ts';
import { placeOfGeoTiff, whyAskForSystem } from '../../../core/exchange/image/geoTiffTags.ts';
import { latticeOf, looksLikeDegrees } from '../../../core/exchange/image/latticeOf.ts';
import { isWorldFileName, readWorldFile } from '../../../core/exchange/image/worldFile.ts';
import { fitAffine } from '../../../core/geometry/fitAffine.ts';
import { fitSimilarity } from '../../../core/geometry/fitSimilarity.ts';
import { distanceM } from '../../../core/geometry/geodesic.ts';
import { createLocalPlane } from '../../../core/geometry/localPlane.ts';
import { affineCells } from '../../../core/geometry/picture/affineCells.ts';
import { applyAffine } from '../../../core/geometry/picture/affineMap.ts';
import { pictureMap } from '../../../core/geometry/picture/pictureMap.ts';
import { suspectPoint } from '../../../core/geometry/picture/suspectPoint.ts';
import { lonLatInTile, rowFromSouth, tilePlaceOf } from '../../../core/geometry/picture/webMercator.ts';
import type { LonLat, Xy } from '../../../core/geometry/types.ts';
import type { Placement } from '../../../core/model/underlayThings.ts';
import { allInEnglish, inEnglish } from '../../support/english.ts';
import { randomNumbers } from '../../support/random.ts';

const size = { widthPx: 4000, heightPx: 3000 };
const home: LonLat = [175.3, -37.9];
const plane = createLocalPlane(home);
const nztm = systemOfEpsg(2193)!;
const projection = projectionOf(nztm.definition).projection!;

function near([x, y]: Xy, [expectedX, expectedY]: Xy, toleranceM = 1e-6): void {
  expect(Math.hypot(x - expectedX, y - expectedY)).toBeLessThan(toleranceM);
}

describe('where a picture lies', () => {
  test('by eye: middle, scale, and up where it is told', () => {
    const placement: Placement = { by: 'eye', at: plane.toLonLat([10, 20]), metresPerPixel: 0.5, upDeg: 90 };
    const { toXy } = pictureMap(placement, size, plane);
    near(toXy([2000, 1500]), [10, 20]);
    // The upper edge looks east, so the right edge looks south.
    near(toXy([2000, 0]), [10 + 750, 20]);
    near(toXy([4000, 1500]), [10, 20 - 1000]);
  });

  test('by a distance: the two places are so far apart, at that bearing', () => {
    const at = plane.toLonLat([100, -50]);
    const placement: Placement = { by: 'distance', from: [10, 20], to: [310, 420], distanceM: 250, at, bearingDeg: 30 };
    const { toXy, metresPerPixel } = pictureMap(placement, size, plane);
    near(toXy([10, 20]), [100, -50]);
    near(toXy([310, 420]), [100 + 250 * Math.sin(Math.PI / 6), -50 + 250 * Math.cos(Math.PI / 6)]);
    expect(metresPerPixel).toBeCloseTo(0.5, 9);
  });

  test('by points: as the fit has it, and by eye while they are too few', () => {
    const before = { by: 'eye', at: home, metresPerPixel: 1, upDeg: 0 } as const;
    const points = [
      { pixel: [0, 0], at: plane.toLonLat([0, 0]) },
      { pixel: [1000, 0], at: plane.toLonLat([0, -200]) },
    ] as const;
    const few = pictureMap({ by: 'points', fit: 'similarity', points: points.slice(0, 1), before }, size, plane);
    expect(inEnglish(few.refused)).toMatch(/Two control points/);
    near(few.toXy([2000, 1500]), [0, 0]);
    const enough = pictureMap({ by: 'points', fit: 'similarity', points, before }, size, plane);
    expect(enough.refused).toBeNull();
    near(enough.toXy([0, 1000]), [-200, 0]);
    const affine = pictureMap({ by: 'points', fit: 'affine', points, before }, size, plane);
    expect(inEnglish(affine.refused)).toMatch(/Three control points/);
  });

  test('a pixel goes to the plane and back, however the picture is placed', () => {
    const lattice = latticeOf(
      { a: 0.4, b: 0.1, c: 1_803_000, d: 0.1, e: -0.4, f: 5_802_000 },
      projection,
      size,
      'NZTM',
    );
    const placements: Placement[] = [
      { by: 'eye', at: home, metresPerPixel: 0.3, upDeg: 77 },
      { by: 'distance', from: [0, 0], to: [5, 9], distanceM: 12, at: home, bearingDeg: 200 },
      lattice.placement!,
    ];
    for (const placement of placements) {
      const { toXy, toPixel } = pictureMap(placement, size, plane);
      for (const pixel of [
        [0, 0],
        [4000, 3000],
        [17, 2900],
        [-500, 3500],
      ] as const) {
        near(toPixel(toXy(pixel)), pixel, 1e-4);
      }
    }
  });
});

describe('a bad control point', () => {
  const good = [
    [0, 0],
    [4000, 0],
    [4000, 3000],
    [0, 3000],
    [2000, 1400],
  ].map(([x, y]) => ({ pixel: [x, y] as unknown as Xy, map: [x! * 0.3 + 7, 900 - y! * 0.3] as unknown as Xy }));

  test('stands out, whichever it is and whatever the fit', () => {
    for (const index of good.keys()) {
      const points = good.map((point, i) =>
        i === index ? { ...point, map: [point.map[0] + 8, point.map[1]] as Xy } : point,
      );
      expect(suspectPoint(points, fitSimilarity, 2)).toBe(index);
      expect(suspectPoint(points, fitAffine, 3)).toBe(index);
    }
  });

  test('is not named where all agree, or where too few are left to tell', () => {
    expect(suspectPoint(good, fitSimilarity, 2)).toBeNull();
    expect(suspectPoint(good.slice(0, 3), fitSimilarity, 2)).toBeNull();
  });

  test('is named in hardly one of twenty where all are only shaky, as its level says', () => {
    const random = randomNumbers(4);
    const noise = () => random() + random() + random() - 1.5;
    let named = 0;
    const rounds = 1000;
    for (let round = 0; round < rounds; round++) {
      const shaky = good.map(({ pixel, map }) => ({ pixel, map: [map[0] + noise(), map[1] + noise()] as Xy }));
      if (suspectPoint(shaky, fitSimilarity, 2) !== null) named += 1;
    }
    expect(named / rounds).toBeGreaterThan(0.01);
    expect(named / rounds).toBeLessThan(0.08);
  });
});

describe('cells that are drawn by one affine map each', () => {
  test('an affine picture is one cell', () => {
    const { toXy } = pictureMap({ by: 'eye', at: home, metresPerPixel: 0.3, upDeg: 12 }, size, plane);
    expect(affineCells(toXy, [0, 0, 4000, 3000], 0.01)).toHaveLength(1);
  });

  test('a web map’s tile is right to a quarter pixel of the screen at every zoom', () => {
    for (let zoom = 6; zoom <= 20; zoom++) {
      const [column, row] = tilePlaceOf(zoom, home).map(Math.floor) as [number, number];
      const toXy = (place: Xy) => plane.toXy(lonLatInTile(zoom, column, row, place));
      const sideM = Math.hypot(...(toXy([1, 0]).map((value, i) => value - toXy([0, 0])[i]!) as [number, number]));
      // Tiles are looked at from half to twice their size of 256 pixels.
      const toleranceM = (0.25 * sideM) / 512;
      const cells = affineCells(toXy, [0, 0, 1, 1], toleranceM);
      if (zoom >= 12) expect(cells.length).toBeLessThanOrEqual(4);
      for (const { x, y, width, height, map } of cells) {
        for (const [u, v] of [
          [0.3, 0.3],
          [0.9, 0.1],
          [0.5, 0.75],
        ] as const) {
          const place: Xy = [x + u * width, y + v * height];
          near(applyAffine(map, place), toXy(place), 1.5 * toleranceM);
        }
      }
      expect(cells.reduce((area, { width, height }) => area + width * height, 0)).toBeCloseTo(1, 9);
    }
  });
});

describe('web map tiles', () => {
  /** Source: the tile grid of EPSG:3857 as OGC's Two Dimensional Tile Matrix Set (WebMercatorQuad) defines it. */
  test('zoom 0 spans 85.0511 degrees; the corner of four tiles of zoom 1 is at 0, 0', () => {
    expect(lonLatInTile(0, 0, 0, [0, 0])[1]).toBeCloseTo(85.0511287798, 9);
    expect(lonLatInTile(0, 0, 0, [1, 1])).toEqual([180, -lonLatInTile(0, 0, 0, [0, 0])[1]]);
    expect(lonLatInTile(1, 0, 0, [1, 1]).map((value) => value + 0)).toEqual([0, 0]);
  });

  test('agrees with the spherical Mercator of PROJ’s definition', () => {
    const mercator = projectionOf(systemOfEpsg(3857)!.definition).projection!;
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 2 ** 17 - 1 }), fc.integer({ min: 0, max: 2 ** 17 - 1 }), (column, row) => {
        const [x, y] = mercator.toGrid(lonLatInTile(17, column, row, [0, 0]));
        const side = (2 * Math.PI * 6_378_137) / 2 ** 17;
        expect(x).toBeCloseTo(column * side - Math.PI * 6_378_137, 5);
        expect(y).toBeCloseTo(Math.PI * 6_378_137 - row * side, 5);
      }),
      { seed: 4 },
    );
  });

  test('rows of MBTiles count from the south', () => {
    expect(rowFromSouth(3, 0)).toBe(7);
    expect(rowFromSouth(3, rowFromSouth(3, 5))).toBe(5);
  });

  test('a place is in the tile that it is found in', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -180, max: 179.99, noNaN: true }),
        fc.double({ min: -85, max: 85, noNaN: true }),
        fc.integer({ min: 0, max: 20 }),
        (lon, lat, zoom) => {
          const [column, row] = tilePlaceOf(zoom, [lon, lat]);
          const back = lonLatInTile(zoom, Math.floor(column), Math.floor(row), [column % 1, row % 1]);
          expect(distanceM(back, [lon, lat])).toBeLessThan(0.001);
        },
      ),
      { seed: 4 },
    );
  });
});

describe('world file', () => {
  test('six numbers, counted from the middle of the first pixel', () => {
    const { map } = readWorldFile('0.5\n0\n0\n-0.5\n1800000.25\n5800000.75\n');
    near(applyAffine(map!, [0.5, 0.5]), [1_800_000.25, 5_800_000.75]);
    near(applyAffine(map!, [100, 40]), [1_800_050, 5_799_981]);
  });

  test('turned, with Windows line ends, decimal commas and exponents', () => {
    const { map } = readWorldFile('\uFEFF 0,4\r\n1e-1\r\n 1e-1\r\n-0.4 \r\n100\r\n200\r\n\r\n');
    near(applyAffine(map!, [0.5, 0.5]), [100, 200]);
    near(applyAffine(map!, [10.5, 0.5]), [104, 201]);
  });

  test.each([
    ['', /0 lines/],
    ['1\n2\n3', /3 lines/],
    ['1\n0\n0\nx\n5\n6', /line 4 is “x”/],
    ['0\n0\n0\n0\n5\n6', /no area/],
    ['1e308\n0\n0\n-1\n5\n6', /line 1/],
    ['<html>\n0\n0\n-1\n5\n6', /line 1/],
  ])('%j is refused with its reason', (text, words) => {
    expect(allInEnglish(readWorldFile(text))).toMatchObject({ map: null, problem: expect.stringMatching(words) });
  });

  test('its names', () => {
    for (const name of ['a.jgw', 'a.JGW', 'a.pgw', 'a.tfw', 'a.wld', 'a.jpgw', 'a.tifw'])
      expect(isWorldFileName(name)).toBe(true);
    for (const name of ['a.jpg', 'a.tif', 'a.raw', 'a.png']) expect(isWorldFileName(name)).toBe(false);
  });
});

describe('tags of a GeoTIFF', () => {
  const none = {
    pixelScale: null,
    tiepoints: null,
    transformation: null,
    rasterType: null,
    modelType: null,
    citation: null,
    projectedCode: null,
    geographicCode: null,
  };

  test('scale and tie point', () => {
    const tags = {
      ...none,
      pixelScale: [0.5, 0.25, 0],
      tiepoints: [10, 20, 0, 1000, 2000, 0],
      rasterType: 1,
      projectedCode: 2193,
    };
    const { map, epsg } = placeOfGeoTiff(tags)!;
    near(applyAffine(map, [10, 20]), [1000, 2000]);
    near(applyAffine(map, [12, 24]), [1001, 1999]);
    expect(epsg).toBe(2193);
  });

  test('a pixel that is a point has its coordinates in its middle', () => {
    const tags = { ...none, pixelScale: [2, 2, 0], tiepoints: [0, 0, 0, 1000, 2000, 0], rasterType: 2 };
    near(applyAffine(placeOfGeoTiff(tags)!.map, [0.5, 0.5]), [1000, 2000]);
  });

  test('a transformation, and what is no placement', () => {
    const transformation = [0, 2, 0, 500, 3, 0, 0, 600, 0, 0, 0, 0, 0, 0, 0, 1];
    near(applyAffine(placeOfGeoTiff({ ...none, transformation })!.map, [10, 1]), [502, 630]);
    expect(placeOfGeoTiff(none)).toBeNull();
    expect(placeOfGeoTiff({ ...none, transformation: transformation.map(() => 0) })).toBeNull();
    expect(placeOfGeoTiff({ ...none, pixelScale: [1, 1, 0], tiepoints: [0, 0, 0, Number.NaN, 1, 0] })).toBeNull();
    const user = { ...none, pixelScale: [1, 1, 0], tiepoints: [0, 0, 0, 1, 1, 0], projectedCode: 32767 };
    expect(placeOfGeoTiff(user)!.epsg).toBeNull();
  });

  test('a projected system without a code is asked for: its degrees are not what its coordinates are in', () => {
    const laid = { ...none, pixelScale: [1, 1, 0], tiepoints: [0, 0, 0, 500_000, 6_000_000, 0] };
    const own = { ...laid, modelType: 1, projectedCode: 32767, geographicCode: 4326, citation: 'Our grid|' };
    expect(placeOfGeoTiff(own)).toMatchObject({ epsg: null, ownSystem: true });
    expect(inEnglish(whyAskForSystem(placeOfGeoTiff(own)!, 'a.tif'))).toMatch(
      /without a code \(it calls it “Our grid”\)/,
    );
    expect(placeOfGeoTiff({ ...own, projectedCode: null })).toMatchObject({ epsg: null, ownSystem: true });
    expect(placeOfGeoTiff({ ...own, modelType: null })).toMatchObject({ epsg: null, ownSystem: true });
    expect(placeOfGeoTiff({ ...own, modelType: 2 })).toMatchObject({ epsg: 4326, ownSystem: false });
    expect(placeOfGeoTiff({ ...own, projectedCode: 2193 })).toMatchObject({ epsg: 2193, ownSystem: false });
    expect(placeOfGeoTiff({ ...laid, geographicCode: 4326 })).toMatchObject({ epsg: 4326 });
    expect(placeOfGeoTiff(laid)).toMatchObject({ epsg: null, ownSystem: false });
    expect(inEnglish(whyAskForSystem(placeOfGeoTiff(laid)!, 'a.tif'))).toMatch(/does not say/);
  });
});

describe('a picture with coordinates', () => {
  test('lies right to a tenth of a pixel everywhere, also where its system bends', () => {
    const wide = { widthPx: 20_000, heightPx: 15_000 };
    for (const [epsg, map] of [
      [2193, { a: 0.5, b: 0, c: 1_795_000, d: 0, e: -0.5, f: 5_806_000 }],
      [2193, { a: 3.5, b: 0.5, c: 1_780_000, d: 0.5, e: -3.5, f: 5_830_000 }],
      [4326, { a: 1e-5, b: 0, c: 175.2, d: 0, e: -1e-5, f: -37.8 }],
      [3857, { a: 2, b: 0, c: 19_500_000, d: 0, e: -2, f: -4_560_000 }],
    ] as const) {
      const { definition, name } = systemOfEpsg(epsg)!;
      const system = projectionOf(definition).projection!;
      const { placement } = latticeOf(map, system, wide, inEnglish(name));
      const { toXy, metresPerPixel } = pictureMap(placement!, wide, plane);
      fc.assert(
        fc.property(
          fc.double({ min: 0, max: 20_000, noNaN: true }),
          fc.double({ min: 0, max: 15_000, noNaN: true }),
          (x, y) => {
            const truth = plane.toXy(system.toLonLat(applyAffine(map, [x, y])));
            near(toXy([x, y]), truth, 0.15 * metresPerPixel);
          },
        ),
        { seed: 4, numRuns: 50 },
      );
    }
  });

  test('whose coordinates are degrees is not laid by them as metres of a grid', () => {
    const degrees = { a: 1e-6, b: 0, c: 175.3, d: 0, e: -1e-6, f: -37.9 };
    const { placement, problem } = latticeOf(degrees, projection, size, 'NZTM2000');
    expect(placement).toBeNull();
    expect(inEnglish(problem)).toMatch(/less than a millimetre.*look like degrees.*coordinate system/);
    expect(looksLikeDegrees(degrees)).toBe(true);
    expect(looksLikeDegrees({ a: 0.4, b: 0, c: 1_803_000, d: 0, e: -0.4, f: 5_802_000 })).toBe(false);
    expect(looksLikeDegrees({ a: 0.4, b: 0, c: 0, d: 0, e: -0.4, f: 0 })).toBe(false);
  });

  test('whose coordinates are no place on earth is refused', () => {
    const degrees = projectionOf(systemOfEpsg(4326)!.definition).projection!;
    const { problem } = latticeOf({ a: 1, b: 0, c: 1_800_000, d: 0, e: -1, f: 5_800_000 }, degrees, size, 'WGS 84');
    expect(inEnglish(problem)).toMatch(/no place on earth in WGS 84/);
  });
});
