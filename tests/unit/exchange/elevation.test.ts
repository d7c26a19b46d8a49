import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it, test } from 'vitest';
import { projectionOf } from '../../../core/coordinates/projection.ts';
import { systemOfEpsg } from '../../../core/coordinates/systems.ts';
import { planGrid, stepOfGrid } from '../../../core/exchange/elevation/planGrid.ts';
import { rasterHeightM } from '../../../core/exchange/elevation/raster.ts';
import { mostGridPlaces } from '../../../core/model/groundThings.ts';
import { gridHeightM } from '../../../core/survey/heights/gridHeight.ts';
import type { ElevationRequest } from '../../../renderer/work/elevation/messages.ts';
import { readElevation } from '../../../renderer/work/elevation/readElevation.ts';
import { describeWith } from '../../support/describeWith.ts';
import { allInEnglish, inEnglish } from '../../support/english.ts';
import { type MadeTiff, madeTiff } from '../../support/madeTiff.ts';

const elevationOf = (request: Pick<ElevationRequest, 'file' | 'area'> & Partial<ElevationRequest>) =>
  readElevation({ unit: null, system: null, ...request });

const area = [168.002, -42.008, 168.008, -42.002] as const;

/** Heights that rise by 1 m to the 0.0001 degree eastward and by half of that northward: linear, so bilinear is exact. */
const risingM = (lon: number, lat: number) => 100 + (lon - 168) * 10_000 + (lat + 42.01) * 5000;

const degrees = { 1024: 2, 2048: 4326 };

/** A model in degrees, 0.0001 to a pixel, over 168 to 168.01 east and 42 to 42.01 south. */
function model(heightAt = risingM, how: Partial<MadeTiff> = {}): Blob {
  const bytes = madeTiff({
    width: 100,
    height: 100,
    bits: 32,
    format: 3,
    photometric: 1,
    valueAt: (x, y) => heightAt(168 + (x + 0.5) / 10_000, -42 - (y + 0.5) / 10_000),
    geo: { pixel: 0.0001, west: 168, north: -42, keys: degrees },
    ...how,
  });
  return new Blob([new Uint8Array(bytes)]);
}

/** The same with further GeoKeys. */
const keyed = (keys: Record<number, number>, how: Partial<MadeTiff> = {}, heightAt = risingM) =>
  model(heightAt, { geo: { pixel: 0.0001, west: 168, north: -42, keys: { ...degrees, ...keys } }, ...how });

describe('an elevation model', () => {
  it('gives its heights, linear between its pixels', async () => {
    const read = await elevationOf({ file: model(), area });
    if (!read.ok) throw new Error(inEnglish(read.message));
    for (const [lon, lat] of [
      [168.002, -42.002],
      [168.00455, -42.00333],
      [168.0079, -42.0078],
    ] as const) {
      // Kept to the decimetre.
      expect(Math.abs(gridHeightM(read.grid, [lon, lat])! - risingM(lon, lat))).toBeLessThan(0.11);
    }
    expect(read.notes).toHaveLength(1);
  });

  it('that covers only a part says how much', async () => {
    const read = await elevationOf({ file: model(), area: [168.005, -42.009, 168.015, -42.001] });
    expect(read).toMatchObject({ ok: true });
    expect(read.ok && read.notes.map((note) => inEnglish(note)).join()).toMatch(/covers \d+ %/);
  });

  it('that lies elsewhere, knows nothing, or is no model says so', async () => {
    const elsewhere = await elevationOf({ file: model(), area: [10, 10, 10.01, 10.01] });
    expect(allInEnglish(elsewhere)).toMatchObject({ ok: false, message: expect.stringContaining('elsewhere') });
    const empty = await elevationOf({ file: model(() => -32768), area });
    expect(allInEnglish(empty)).toMatchObject({ ok: false, message: expect.stringContaining('knows no heights') });
    const text = await elevationOf({ file: new Blob(['not a tiff']), area });
    expect(allInEnglish(text)).toMatchObject({ ok: false, message: expect.stringContaining('no GeoTIFF') });
    const whole = new Uint8Array(await model().arrayBuffer());
    const cut = await elevationOf({ file: new Blob([whole.slice(0, 20_000)]), area });
    expect(cut.ok).toBe(false);
  });
});

describe('the unit of heights', () => {
  /** In the middle of the area, by how the file was read. */
  const middle = [168.005, -42.005] as const;
  const truthM = risingM(...middle);
  async function heightOf(file: Blob, chosen: Partial<ElevationRequest> = {}) {
    const read = await elevationOf({ file, area, ...chosen });
    if (!read.ok) throw new Error(inEnglish(read.message));
    return { ...read, heightM: gridHeightM(read.grid, middle)! };
  }

  const usFootM = 1200 / 3937;
  const usFoot = '<GDALMetadata><Item name="UNITTYPE" sample="0" role="unittype">US survey foot</Item></GDALMetadata>';
  test.each<[string, Blob, string, number]>([
    ['its unit is feet', keyed({ 4099: 9002 }), 'feet', 0.3048],
    ['its unit is US survey feet', keyed({ 4099: 9003 }), 'usFeet', usFootM],
    ['its unit is metres', keyed({ 4099: 9001 }), 'metres', 1],
    ['its vertical system is NAVD88 in US survey feet', keyed({ 4096: 6360 }), 'usFeet', usFootM],
    ['its vertical system is NAVD88 in feet', keyed({ 4096: 8228 }), 'feet', 0.3048],
    ['its vertical system is NGVD29 in US survey feet', keyed({ 4096: 5702 }), 'usFeet', usFootM],
    ['its vertical system is NAVD88 in metres', keyed({ 4096: 5703 }), 'metres', 1],
    ['its vertical system is that of Australia', keyed({ 4096: 5711 }), 'metres', 1],
    ['its band says so', model(risingM, { gdalMetadata: usFoot }), 'usFeet', usFootM],
  ])('is told where %s', async (_, file, unit, inM) => {
    const read = await heightOf(file);
    expect(allInEnglish(read.unit)).toMatchObject({ unit, doubt: null, toldBy: expect.any(String) as unknown });
    expect(read.heightM).toBeCloseTo(truthM * inM, 0);
    expect(read.lowestM).toBeLessThan(read.heightM);
    expect(read.highestM).toBeGreaterThan(read.heightM);
  });

  test.each<[string, Blob, RegExp]>([
    ['nothing', model(), /does not say in which unit/],
    ['a code of nothing known', keyed({ 4096: 5103, 4099: 9014 }), /does not say in which unit/],
    ['that it lies on feet, and no more', keyed({ 3076: 9003 }), /may be in feet too/],
    ['a unit of its own', model(risingM, { gdalMetadata: usFoot.replace('US survey foot', 'cubits') }), /“cubits”/],
    ['two things at once', keyed({ 4099: 9001, 4096: 6360 }), /contradicts itself/],
  ])('is an assumption that is said where the file says %s', async (_, file, doubt) => {
    const read = await heightOf(file);
    expect(allInEnglish(read.unit)).toMatchObject({
      unit: 'metres',
      toldBy: null,
      doubt: expect.stringMatching(doubt) as unknown,
    });
    expect(read.heightM).toBeCloseTo(truthM, 0);
  });

  it('is the one that the user chose, whatever the file says', async () => {
    expect((await heightOf(model(), { unit: 'usFeet' })).heightM).toBeCloseTo(truthM * usFootM, 1);
    expect((await heightOf(keyed({ 4099: 9002 }), { unit: 'metres' })).heightM).toBeCloseTo(truthM, 0);
  });

  it('can only be feet where metres would be above all mountains', async () => {
    const high = await heightOf(model((lon, lat) => 10_000 + risingM(lon, lat)));
    expect(allInEnglish(high.unit)).toMatchObject({
      unit: 'feet',
      doubt: expect.stringContaining('any mountain') as unknown,
    });
    expect(high.heightM).toBeCloseTo((10_000 + truthM) * 0.3048, 0);
  });

  it('comes with a scale and an offset', async () => {
    const metadata =
      '<GDALMetadata>\n<Item name="OFFSET" sample="0" role="offset">50</Item>\n<Item name="SCALE" sample="0" role="scale">0.1</Item></GDALMetadata>';
    const tenths = model((lon, lat) => Math.round((risingM(lon, lat) - 50) * 10), {
      bits: 16,
      format: 2,
      gdalMetadata: metadata,
    });
    expect((await heightOf(tenths)).heightM).toBeCloseTo(truthM, 0);
  });

  it('of depths is refused', async () => {
    expect(allInEnglish(await elevationOf({ file: keyed({ 4096: 5715 }), area }))).toMatchObject({
      ok: false,
      message: expect.stringContaining('depths') as unknown,
    });
  });
});

describe('an elevation model of any make', () => {
  test.each<[string, Partial<MadeTiff>]>([
    ['in tiles, with differences of floating numbers', { tile: 32, predictor: 3, packing: 'deflate' }],
    ['with the highest byte first', { bigEndian: true, rowsPerStrip: 1 }],
    ['with the highest byte first, floating differences', { bigEndian: true, predictor: 3, packing: 'lzw' }],
    ['of 64 bits', { bits: 64 }],
    [
      'of whole numbers with differences, highest byte first',
      { bits: 16, format: 2, predictor: 2, packing: 'lzw', bigEndian: true },
    ],
  ])('%s', async (_, how) => {
    const whole = how.format === 2;
    const read = await elevationOf({
      file: model(whole ? (lon, lat) => Math.round(risingM(lon, lat)) : risingM, how),
      area,
    });
    if (!read.ok) throw new Error(inEnglish(read.message));
    for (const place of [
      [168.002, -42.002],
      [168.0079, -42.0078],
    ] as const) {
      expect(Math.abs(gridHeightM(read.grid, place)! - risingM(place[0], place[1]))).toBeLessThan(whole ? 0.6 : 0.11);
    }
  });

  it('is read coarser where it has more than can be held, and is as right on an even slope', async () => {
    const [width, height] = [7001, 40];
    const heightAt = (x: number, y: number) => 0.1 * x + y;
    const bytes = madeTiff({
      width,
      height,
      bits: 32,
      format: 3,
      photometric: 1,
      valueAt: (x, y) => heightAt(x + 0.5, y + 0.5),
      geo: { pixel: 1, west: 500_000, north: 6_000_000, keys: { 1024: 1, 3072: 32655 } },
    });
    const read = await elevationOf({ file: new Blob([new Uint8Array(bytes)]), area: null });
    if (!read.ok) throw new Error(inEnglish(read.message));
    const { toLonLat } = projectionOf(systemOfEpsg(32655)!.definition).projection!;
    for (const [x, y] of [
      [200, 10],
      [3500, 20],
      [6800, 31],
    ] as const) {
      const heightM = gridHeightM(read.grid, toLonLat([500_000 + x, 6_000_000 - y]));
      expect(Math.abs(heightM! - heightAt(x, y))).toBeLessThan(0.6);
    }
  });

  it('in a system that is not known here asks for it, and is read in the one that is chosen', async () => {
    const { toGrid } = projectionOf(systemOfEpsg(32759)!.definition).projection!;
    const [west, north] = toGrid([168, -42]);
    const keys = { 1024: 1, 2048: 4326, 3072: 32767 };
    const file = model(risingM, { geo: { pixel: 9, west: Math.round(west), north: Math.round(north), keys } });
    const asked = await elevationOf({ file, area });
    expect(allInEnglish(asked)).toMatchObject({
      ok: false,
      message: expect.stringContaining('without a code') as unknown,
      askSystem: { epsg: null, ownSystem: true },
    });
    const read = await elevationOf({ file, area, system: systemOfEpsg(32759) });
    expect(read.ok && read.notes.map((note) => inEnglish(note)).join()).toContain('UTM 59 south');
  });

  it('names the system that it is read in, and how far that may be off', async () => {
    const read = await elevationOf({ file: keyed({ 2048: 4283 }), area });
    expect(allInEnglish(read)).toMatchObject({
      ok: true,
      notes: [expect.stringContaining('GDA94 (within about 2 m of WGS 84)')],
    });
  });

  it('that is a picture says so', async () => {
    for (const how of [
      { samples: 3, bits: 8, format: 1 },
      { bits: 1, format: 1 },
    ] as const) {
      const read = await elevationOf({ file: model(() => 1, how), area });
      expect(allInEnglish(read)).toMatchObject({
        ok: false,
        message: expect.stringContaining('is a picture') as unknown,
      });
    }
  });
});

describeWith(['gdal_translate'], 'an elevation model whose heights GDAL knows in feet', () => {
  it('is read in them', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'elevation-'));
    try {
      const [from, to] = [join(folder, 'from.tif'), join(folder, 'to.tif')];
      writeFileSync(from, new Uint8Array(await model().arrayBuffer()));
      for (const [system, unit] of [
        ['EPSG:4269+6360', 'usFeet'],
        ['EPSG:4269+8228', 'feet'],
        ['EPSG:4269+5703', 'metres'],
      ] as const) {
        const { status } = spawnSync('gdal_translate', ['-q', '-a_srs', system, '-co', 'TILED=YES', from, to]);
        expect(status).toBe(0);
        const read = await elevationOf({ file: new Blob([new Uint8Array(readFileSync(to))]), area });
        expect(read).toMatchObject({ ok: true, unit: { unit, doubt: null } });
      }
    } finally {
      rmSync(folder, { recursive: true });
    }
  });
});

describeWith(['gdalwarp'], 'an elevation model that GDAL projected', () => {
  it('gives the same heights as the one it came from', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'elevation-'));
    try {
      const [from, to] = [join(folder, 'from.tif'), join(folder, 'to.tif')];
      writeFileSync(from, new Uint8Array(await model().arrayBuffer()));
      const args = ['-q', '-s_srs', 'EPSG:4326', '-t_srs', 'EPSG:32759', '-r', 'bilinear', '-dstnodata', '-9999'];
      const { status, stderr } = spawnSync('gdalwarp', [...args, '-co', 'COMPRESS=DEFLATE', from, to], {
        encoding: 'utf8',
      });
      expect(`${status} ${stderr}`).toBe('0 ');
      const read = await elevationOf({ file: new Blob([new Uint8Array(readFileSync(to))]), area });
      if (!read.ok) throw new Error(inEnglish(read.message));
      for (const [lon, lat] of [
        [168.002, -42.002],
        [168.0055, -42.0041],
        [168.008, -42.007],
      ] as const) {
        // GDAL places pixels to an eighth of one, and a pixel is up to 1.2 m higher than the next.
        expect(Math.abs(gridHeightM(read.grid, [lon, lat])! - risingM(lon, lat))).toBeLessThan(0.4);
      }
    } finally {
      rmSync(folder, { recursive: true });
    }
  });
});

describe('the grid of heights', () => {
  it('is as fine as the model where that fits, and never more than a file may hold', () => {
    const small = planGrid(area, 10);
    expect(stepOfGrid(small)).toBeCloseTo(10, 6);
    const large = planGrid([168, -42.5, 168.9, -42], 1);
    expect(large.columns * large.rows).toBeLessThanOrEqual(mostGridPlaces);
    expect(large.columns * large.rows).toBeGreaterThan(mostGridPlaces / 2);
    const thin = planGrid([168, -42.0000001, 169, -42], 1);
    expect(thin.columns * thin.rows).toBeLessThanOrEqual(mostGridPlaces);
  });

  it('reaches across the 180 meridian', () => {
    const { northWest, columns, stepLonDeg } = planGrid([179.99, -20.01, -179.99, -20], 20);
    expect(northWest[0]).toBeLessThan(179.99);
    expect(columns * stepLonDeg).toBeGreaterThan(0.02);
    expect(columns * stepLonDeg).toBeLessThan(0.04);
  });
});

describe('a raster', () => {
  const raster = { values: [10, 20, 30, 40], width: 2, height: 2, noData: -1, unitM: 1, offsetM: 0 };

  it('is linear between the middles of its pixels, and level beyond them', () => {
    expect(rasterHeightM(raster, 0.5, 0.5)).toBe(10);
    expect(rasterHeightM(raster, 1, 1)).toBe(25);
    expect(rasterHeightM(raster, 0, 0)).toBe(10);
    expect(rasterHeightM(raster, 2, 2)).toBe(40);
    expect(rasterHeightM({ ...raster, unitM: 0.3048 }, 1, 1)).toBeCloseTo(7.62, 9);
    expect(rasterHeightM({ ...raster, unitM: 0.1, offsetM: 500 }, 1, 1)).toBeCloseTo(502.5, 9);
  });

  it('knows nothing outside, beside a gap, or of what can be no height', () => {
    expect(rasterHeightM(raster, -0.1, 1)).toBeNull();
    expect(rasterHeightM({ ...raster, values: [10, -1, 30, 40] }, 1, 1)).toBeNull();
    expect(rasterHeightM({ ...raster, values: [10, 1e38, 30, Number.NaN] }, 1, 1)).toBeNull();
    expect(rasterHeightM(raster, Number.NaN, 1)).toBeNull();
  });
});
