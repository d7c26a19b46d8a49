import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fromArrayBuffer, writeArrayBuffer } from 'geotiff';
import { describe, expect, it } from 'vitest';
import { planGrid, stepOfGrid } from '../../../core/exchange/elevation/planGrid.ts';
import { rasterHeightM } from '../../../core/exchange/elevation/raster.ts';
import { mostGridPlaces } from '../../../core/model/groundThings.ts';
import { gridHeightM } from '../../../core/registers/ground/gridHeight.ts';
import type { ElevationRequest } from '../../../renderer/work/elevation/messages.ts';
import { readElevation } from '../../../renderer/work/elevation/readElevation.ts';

/** Node has no reader of blobs as the browser has, so the file is opened whole. */
const elevationOf = (request: ElevationRequest) =>
  readElevation(request, async (file) => fromArrayBuffer(await file.arrayBuffer()));

const area = [168.002, -42.008, 168.008, -42.002] as const;

/** Heights that rise by 1 m to the 0.0001 degree eastward and by half of that northward: linear, so bilinear is exact. */
const risingM = (lon: number, lat: number) => 100 + (lon - 168) * 10_000 + (lat + 42.01) * 5000;

/** A model in degrees, 0.0001 to a pixel, over 168 to 168.01 east and 42 to 42.01 south. */
function model(heightM = risingM): Blob {
  const side = 100;
  const values = Float32Array.from({ length: side * side }, (_, i) =>
    heightM(168 + ((i % side) + 0.5) / 10_000, -42 - (Math.floor(i / side) + 0.5) / 10_000),
  );
  const bytes = writeArrayBuffer(
    values as never,
    {
      width: side,
      height: side,
      ModelPixelScale: [0.0001, 0.0001, 0],
      ModelTiepoint: [0, 0, 0, 168, -42, 0],
      GeographicTypeGeoKey: 4326,
      GTModelTypeGeoKey: 2,
      SampleFormat: [3],
      BitsPerSample: [32],
    } as never,
  );
  return new Blob([bytes]);
}

describe('an elevation model', () => {
  it('gives its heights, linear between its pixels', async () => {
    const read = await elevationOf({ file: model(), area });
    if (!read.ok) throw new Error(read.message);
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
    expect(read.ok && read.notes.join()).toMatch(/covers \d+ %/);
  });

  it('that lies elsewhere, knows nothing, or is no model says so', async () => {
    const elsewhere = await elevationOf({ file: model(), area: [10, 10, 10.01, 10.01] });
    expect(elsewhere).toMatchObject({ ok: false, message: expect.stringContaining('elsewhere') });
    const empty = await elevationOf({ file: model(() => -32768), area });
    expect(empty).toMatchObject({ ok: false, message: expect.stringContaining('knows no heights') });
    const text = await elevationOf({ file: new Blob(['not a tiff']), area });
    expect(text).toMatchObject({ ok: false, message: expect.stringContaining('no GeoTIFF') });
    const whole = new Uint8Array(await model().arrayBuffer());
    const cut = await elevationOf({ file: new Blob([whole.slice(0, 20_000)]), area });
    expect(cut.ok).toBe(false);
  });
});

describe.skipIf(spawnSync('gdalwarp', ['--version']).status !== 0)('an elevation model that GDAL projected', () => {
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
      if (!read.ok) throw new Error(read.message);
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
  const raster = { values: [10, 20, 30, 40], width: 2, height: 2, noData: -1, unitM: 1 };

  it('is linear between the middles of its pixels, and level beyond them', () => {
    expect(rasterHeightM(raster, 0.5, 0.5)).toBe(10);
    expect(rasterHeightM(raster, 1, 1)).toBe(25);
    expect(rasterHeightM(raster, 0, 0)).toBe(10);
    expect(rasterHeightM(raster, 2, 2)).toBe(40);
    expect(rasterHeightM({ ...raster, unitM: 0.3048 }, 1, 1)).toBeCloseTo(7.62, 9);
  });

  it('knows nothing outside, beside a gap, or of what can be no height', () => {
    expect(rasterHeightM(raster, -0.1, 1)).toBeNull();
    expect(rasterHeightM({ ...raster, values: [10, -1, 30, 40] }, 1, 1)).toBeNull();
    expect(rasterHeightM({ ...raster, values: [10, 1e38, 30, Number.NaN] }, 1, 1)).toBeNull();
    expect(rasterHeightM(raster, Number.NaN, 1)).toBeNull();
  });
});
