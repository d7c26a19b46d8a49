import { fork } from 'node:child_process';
import { once } from 'node:events';
import { mkdirSync, readdirSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { projectionOf } from '../../core/coordinates/projection.ts';
import { systemOfEpsg } from '../../core/coordinates/systems.ts';
import { distanceM } from '../../core/geometry/geodesic.ts';
import { createLocalPlane } from '../../core/geometry/localPlane.ts';
import { pictureMap } from '../../core/geometry/picture/pictureMap.ts';
import { lonLatInTile, rowFromSouth, tilePlaceOf } from '../../core/geometry/picture/webMercator.ts';
import type { LonLat, Post, Property, Service } from '../../core/model/things.ts';
import type { Placement, Underlay } from '../../core/model/underlayThings.ts';
import type { TileAsked } from '../../electron/store/tileMessages.ts';
import { type App, expect, test } from '../support/app.ts';
import { flatJpeg } from '../support/flatJpeg.ts';
import { makeSilentFiles } from '../support/hostileTiles.ts';
import { framedPng, patternAt, patternBy, patternTiff } from '../support/madePictures.ts';
import { type MadeTiff, madeTiff } from '../support/madeTiff.ts';
import { expectColourInMiddle, goTo } from '../support/mapColours.ts';
import { makeTileFile } from '../support/tileFiles.ts';

const grid = createLocalPlane([0, 0]);
const nztm = projectionOf(systemOfEpsg(2193)!.definition).projection!;

async function openMaps(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Background maps' }).click();
}

const bringIn = (page: Page) => page.getByLabel('Pictures and world files');

async function underlays(app: App): Promise<Underlay[]> {
  return (await app.file()).things.filter((thing): thing is Underlay => thing.kind === 'underlay');
}

async function theUnderlay(app: App): Promise<Underlay & { readonly placement: Placement }> {
  const [underlay] = await underlays(app);
  return underlay as Underlay & { readonly placement: Placement };
}

async function property(app: App): Promise<Property> {
  return (await app.file()).things.find((thing): thing is Property => thing.kind === 'property')!;
}

/** As it is typed: "-41.283120, 174.776390". */
const degrees = ([lon, lat]: LonLat) => `${lat.toFixed(7)}, ${lon.toFixed(7)}`;

function post(id: string, x: number, y: number): Post {
  return { kind: 'post', id, name: id.toUpperCase(), at: grid.toLonLat([x, y]), role: 'strainer', note: '' };
}

test('a photo placed by posts and typed coordinates; undone, and there again after a restart', async ({
  app,
  page,
}) => {
  await app.openNew([post('p1', -150, 80), post('p2', 170, 60)]);
  await openMaps(page);
  await bringIn(page).setInputFiles(await patternBy(page, 'From the air.jpg', 'image/jpeg', 1500, 1000));
  await expect(page.getByText('Lay From the air under the drawing. Saved.')).toBeVisible();
  const size = { widthPx: 1500, heightPx: 1000 };
  expect((await theUnderlay(app)).placement.by).toBe('eye');

  const stage = (await page.locator('.map-stage').boundingBox())!;
  const clickAt = (x: number, y: number) => page.mouse.click(stage.x + x * stage.width, stage.y + y * stage.height);
  await page.getByRole('button', { name: 'Place by points' }).click();
  await clickAt(0.3, 0.4);
  await page.getByLabel('Or at a post').selectOption({ label: 'P1' });
  await expect(page.getByText('Two control points at least are needed')).toBeVisible();
  await clickAt(0.7, 0.45);
  await page.getByLabel('Or at a post').selectOption({ label: 'P2' });
  await expect(page.getByText('RMS over 2 points')).toBeVisible();

  await clickAt(0.5, 0.7);
  await page.getByLabel('Where that place really is').fill('12 E, nonsense');
  await page.getByRole('button', { name: 'Set', exact: true }).click();
  await expect(page.getByText('Type east and north of the grid')).toBeVisible();
  await page.getByLabel('Where that place really is').fill('10 m E, 120 m S');
  await page.getByRole('button', { name: 'Set', exact: true }).click();
  await expect(page.getByText('RMS over 3 points')).toBeVisible();

  const placed = await theUnderlay(app);
  expect(placed.placement).toMatchObject({ by: 'points', fit: 'similarity', points: [{}, {}, {}] });
  const map = pictureMap(placed.placement, size, grid);
  await page.getByRole('button', { name: 'Done placing' }).click();
  const look = async (x: number, y: number) => {
    const xy = map.toXy([x, y]);
    await goTo(page, `${xy[0].toFixed(2)} m E, ${xy[1].toFixed(2)} m N`);
    await expectColourInMiddle(page, patternAt(x, y));
  };
  // In the middle of cells, away from the edges that a JPEG blurs.
  await look(32 + 64 * 5, 32 + 64 * 3);
  await look(32 + 64 * 20, 32 + 64 * 13);

  await page.keyboard.press('Escape');
  await page.keyboard.press('Control+z');
  await expect(page.getByText('Undone: Place From the air.')).toBeVisible();
  expect((await theUnderlay(app)).placement).toMatchObject({ points: [{}, {}] });
  await page.keyboard.press('Control+Shift+z');
  await expect(page.getByText('Redone: Place From the air.')).toBeVisible();

  await app.restart('kill');
  await page.getByRole('button', { name: /^Test property/ }).click();
  await openMaps(page);
  await expect(page.getByRole('cell', { name: /^3 points, RMS/ })).toBeVisible();
  await look(32 + 64 * 9, 32 + 64 * 7);
});

test('a bad point stands out; taken out, the rest agree', async ({ app, page }) => {
  const imageId = await withPicture(app, page);
  const map = pictureMap(
    { by: 'eye', at: [0, 0], metresPerPixel: 0.4, upDeg: 25 },
    { widthPx: 600, heightPx: 400 },
    grid,
  );
  const points = [
    [20, 30],
    [580, 25],
    [560, 390],
    [30, 370],
    [300, 200],
  ].map(([x, y], i) => {
    const [east, north] = map.toXy([x!, y!]);
    return {
      pixel: [x, y] as unknown as readonly [number, number],
      at: grid.toLonLat([east + (i === 2 ? 15 : 0), north]),
    };
  });
  const before = await theUnderlay(app);
  const placement = { by: 'points', fit: 'similarity', points, before: before.placement as never } as const;
  await app.addThings([{ ...before, placement }]);
  expect(imageId).toMatch(/^image-/);
  await expect(page.getByRole('cell', { name: /^5 points/ })).toBeVisible();
  await page.getByRole('row', { name: /Test plan/ }).click();
  await expect(page.getByRole('row', { name: /3 Look at this one/ })).toBeVisible();
  await page.getByLabel('Fit').selectOption('affine');
  await expect(page.getByRole('row', { name: /3 Look at this one/ })).toBeVisible();
  await page.getByRole('button', { name: 'Take point 3 out' }).click();
  await expect(page.getByText('RMS over 4 points')).toBeVisible();
  await expect(page.getByText('Look at this one')).toBeHidden();
  for (const point of [4, 3]) await page.getByRole('button', { name: `Take point ${point} out` }).click();
  await expect(page.getByText('Three control points at least are needed')).toBeVisible();
});

test('a scanned plan placed by two places and their distance', async ({ app, page }) => {
  await withPicture(app, page);
  await page.getByRole('row', { name: /Test plan/ }).click();
  await page.getByRole('button', { name: 'Known distance' }).click();
  const stage = (await page.locator('.map-stage').boundingBox())!;
  await page.mouse.click(stage.x + stage.width * 0.3, stage.y + stage.height * 0.5);
  await page.mouse.click(stage.x + stage.width * 0.7, stage.y + stage.height * 0.5);
  await page.keyboard.type('250');
  await page.keyboard.press('Tab');
  await page.keyboard.type('45');
  await page.keyboard.press('Enter');
  await expect(page.getByText('Scale Test plan. Saved.')).toBeVisible();
  await expect(page.getByText(/Scaled by a distance of 250.00 m, which runs at 45.0°/)).toBeVisible();
  const { placement } = await theUnderlay(app);
  if (placement.by !== 'distance') throw new Error('Not placed by a distance.');
  const { toXy } = pictureMap(placement, { widthPx: 600, heightPx: 400 }, grid);
  const [a, b] = [toXy(placement.from), toXy(placement.to)];
  expect(Math.hypot(b[0] - a[0], b[1] - a[1])).toBeCloseTo(250, 6);
});

test('opacity, hiding and order of several maps', async ({ app, page }) => {
  await withPicture(app, page);
  await bringIn(page).setInputFiles(framedPng('Second.png', 700, 500));
  await expect(page.getByText('Lay Second under the drawing. Saved.')).toBeVisible();
  const ranks = async () => Object.fromEntries((await underlays(app)).map(({ name, rank }) => [name, rank]));
  const before = await ranks();
  expect(before.Second).toBeGreaterThan(before['Test plan']!);
  await page.getByRole('button', { name: 'Under the next' }).click();
  await expect(page.getByText('Lower Second. Saved.')).toBeVisible();
  const after = await ranks();
  expect(after.Second).toBeLessThan(after['Test plan']!);
  await page.getByLabel(/^Opacity/).press('ArrowLeft');
  await page.getByLabel(/^Opacity/).press('ArrowLeft');
  await expect(page.getByRole('cell', { name: '90 %' })).toBeVisible();
  await page.getByLabel('Shown').click();
  await expect(page.getByRole('cell', { name: 'hidden' })).toBeVisible();
  await page.keyboard.press('Control+z');
  await page.keyboard.press('Control+z');
  await expect(page.getByText('Undone: Change the opacity of Second.')).toBeVisible();
});

test('a large JPEG is cut in bands and comes out right everywhere', async ({ app, page }) => {
  test.setTimeout(120_000);
  await app.openNew();
  await openMaps(page);
  const [widthPx, heightPx] = [9000, 6000];
  /** Grey cells of 160 pixels, each with its own level. */
  const levelOf = (column: number, row: number) => 40 + ((column * 31 + row * 47) % 180);
  const buffer = flatJpeg({
    widthPx,
    heightPx,
    sampling: [2, 2],
    restartUnits: 701,
    levelsAt: (column, row) => [levelOf(Math.floor(column / 20), Math.floor(row / 20)), 128, 128],
  });
  await bringIn(page).setInputFiles({ name: 'Large.jpg', mimeType: 'image/jpeg', buffer });
  await expect(page.getByText('Lay Large under the drawing. Saved.')).toBeVisible({ timeout: 60_000 });
  const map = pictureMap((await theUnderlay(app)).placement, { widthPx, heightPx }, grid);
  for (const [column, row] of [
    [3, 2],
    [30, 20],
    [50, 33],
    [12, 36],
  ] as const) {
    const [east, north] = map.toXy([column * 160 + 80, row * 160 + 80]);
    await goTo(page, `${east.toFixed(3)} m E, ${north.toFixed(3)} m N`);
    const level = levelOf(column, row);
    await expectColourInMiddle(page, [level, level, level]);
    await page.keyboard.press('+');
    await page.keyboard.press('+');
    await expectColourInMiddle(page, [level, level, level]);
    await page.keyboard.press('-');
    await page.keyboard.press('-');
  }
});

test('stopped half-way, nothing of a picture is left', async ({ app, page }) => {
  test.setTimeout(120_000);
  await app.openNew();
  await openMaps(page);
  const buffer = flatJpeg({
    widthPx: 20_000,
    heightPx: 15_000,
    levelsAt: (column, row) => [(column + row) % 256, 128, 128],
  });
  const folder = join(app.home, 'projects');
  await bringIn(page).setInputFiles({ name: 'Large.jpg', mimeType: 'image/jpeg', buffer });
  const progress = page.getByRole('progressbar');
  await expect.poll(async () => Number(await progress.getAttribute('value'))).toBeGreaterThan(20);
  expect(readdirSync(folder).some((name) => name.endsWith('.part'))).toBe(true);
  await page.getByRole('button', { name: 'Stop' }).click();
  await expect(progress).toBeHidden();
  await expect.poll(() => readdirSync(folder).filter((name) => name.endsWith('.part'))).toEqual([]);
  expect((await app.file()).state).toMatchObject({ revision: 0, undo: null });
  expect(await underlays(app)).toEqual([]);
});

test('a GeoTIFF lies where its tags say, and gives an empty property its place', async ({ app, page }) => {
  await app.openNew();
  await openMaps(page);
  const geo = { epsg: 2193, west: 1_800_000, north: 5_802_000, pixelM: 0.5 };
  await bringIn(page).setInputFiles(patternTiff('Survey.tif', 800, 600, geo));
  await expect(page.getByText('Lay Survey under the drawing. Saved.')).toBeVisible();
  await expect(page.getByRole('cell', { name: 'by coordinates, NZTM2000' })).toBeVisible();
  expect((await property(app)).placed).toBe(true);
  for (const [x, y] of [
    [32 + 64 * 2, 32 + 64 * 7],
    [32 + 64 * 10, 32 + 64 * 1],
  ] as const) {
    await goTo(page, degrees(nztm.toLonLat([geo.west + x * geo.pixelM, geo.north - y * geo.pixelM]) as LonLat));
    await expectColourInMiddle(page, patternAt(x, y));
  }
});

test('a GeoTIFF in a system without a code is asked for it, and lies where it says', async ({ app, page }) => {
  await app.openNew();
  await openMaps(page);
  const keys = { 1024: 1, 2048: 4326, 3072: 32767 };
  const geo = { pixel: 0.5, west: 1_800_000, north: 5_802_000, keys };
  const valueAt = (x: number, y: number, sample: number) => patternAt(x, y)[sample]!;
  const buffer = madeTiff({ width: 800, height: 600, bits: 8, samples: 3, photometric: 2, valueAt, geo });
  await bringIn(page).setInputFiles({ name: 'Own.tif', mimeType: 'image/tiff', buffer });
  await expect(page.getByText('Own.tif has coordinates in a system without a code')).toBeVisible();
  await page.getByLabel('Its coordinates are').selectOption('EPSG:2193');
  await page.getByRole('button', { name: 'Go on' }).click();
  await expect(page.getByText('Lay Own under the drawing. Saved.')).toBeVisible();
  const [x, y] = [32 + 64 * 4, 32 + 64 * 3];
  await goTo(page, degrees(nztm.toLonLat([geo.west + x / 2, geo.north - y / 2]) as LonLat));
  await expectColourInMiddle(page, patternAt(x, y));
});

test('scanned plans: white stays white and black black, and what is clear shows what lies under it', async ({
  app,
  page,
}) => {
  await app.openNew();
  await openMaps(page);
  const north = 5_802_000;
  const plan = { width: 400, height: 300, rowsPerStrip: 8, packing: 'lzw' } as const;
  // Ink on the right half, paper on the left.
  const inked = (x: number) => x >= 200;
  const scans: Omit<MadeTiff, 'geo'>[] = [
    { ...plan, bits: 1, photometric: 0, valueAt: (x) => (inked(x) ? 1 : 0) },
    { ...plan, bits: 8, photometric: 0, valueAt: (x) => (inked(x) ? 255 : 0) },
    { ...plan, bits: 1, photometric: 1, valueAt: (x) => (inked(x) ? 0 : 1) },
    { ...plan, bits: 4, photometric: 1, valueAt: (x) => (inked(x) ? 0 : 15) },
    // As programs on other machines write it, with more strips than fit beside its tags.
    {
      ...plan,
      bits: 8,
      samples: 3,
      photometric: 2,
      bigEndian: true,
      rowsPerStrip: 1,
      valueAt: (x) => (inked(x) ? 0 : 255),
    },
  ];
  const placeOf = (number: number, x: number) =>
    degrees(nztm.toLonLat([1_800_000 + number * 1000 + x, north - 150]) as LonLat);
  for (const [number, scan] of scans.entries()) {
    const geo = { pixel: 1, west: 1_800_000 + number * 1000, north, keys: { 1024: 1, 1025: 1, 3072: 2193 } };
    const buffer = madeTiff({ ...scan, geo });
    await bringIn(page).setInputFiles({ name: `Plan ${number}.tif`, mimeType: 'image/tiff', buffer });
    await expect(page.getByText(`Lay Plan ${number} under the drawing. Saved.`)).toBeVisible();
    await goTo(page, placeOf(number, 100));
    await expectColourInMiddle(page, [255, 255, 255]);
    await goTo(page, placeOf(number, 300));
    await expectColourInMiddle(page, [0, 0, 0]);
  }

  // The collar of another picture lies over the first plan's paper.
  const collared = madeTiff({
    ...plan,
    bits: 8,
    samples: 3,
    photometric: 2,
    noData: '0',
    valueAt: (x, _, sample) => (inked(x) ? (sample === 1 ? 180 : 20) : 0),
    geo: { pixel: 1, west: 1_800_000, north, keys: { 1024: 1, 1025: 1, 3072: 2193 } },
  });
  await bringIn(page).setInputFiles({ name: 'Aerial.tif', mimeType: 'image/tiff', buffer: collared });
  await expect(page.getByText('Lay Aerial under the drawing. Saved.')).toBeVisible();
  await goTo(page, placeOf(0, 300));
  await expectColourInMiddle(page, [20, 180, 20]);
  await goTo(page, placeOf(0, 100));
  await expectColourInMiddle(page, [255, 255, 255]);
});

test('a world file beside a picture, in the system that the user names', async ({ app, page }) => {
  await app.openNew();
  await openMaps(page);
  const picture = await patternBy(page, 'Block.png', 'image/png', 640, 640);
  const world = (text: string) => ({ name: 'Block.pgw', mimeType: 'text/plain', buffer: Buffer.from(text) });
  await bringIn(page).setInputFiles([picture, world('1\n0\n0\n-1\n5')]);
  await expect(page.getByText('Block.png: This world file can’t be used: it has 5 lines')).toBeVisible();

  await bringIn(page).setInputFiles([picture, world('0.5\n0\n0\n-0.5\n1800000.25\n5801999.75\n')]);
  await expect(page.getByText('does not say in which system they are')).toBeVisible();
  await page.getByLabel('Its coordinates are').selectOption('degrees');
  await page.getByRole('button', { name: 'Go on' }).click();
  await expect(page.getByText('no place on earth in WGS 84')).toBeVisible();

  await bringIn(page).setInputFiles([picture, world('0.5\n0\n0\n-0.5\n1800000.25\n5801999.75\n')]);
  await page.getByLabel('Its coordinates are').selectOption('EPSG:2193');
  await page.getByRole('button', { name: 'Go on' }).click();
  await expect(page.getByText('Lay Block under the drawing. Saved.')).toBeVisible();
  const [x, y] = [32 + 64 * 4, 32 + 64 * 8];
  await goTo(page, degrees(nztm.toLonLat([1_800_000 + x / 2, 5_802_000 - y / 2]) as LonLat));
  await expectColourInMiddle(page, patternAt(x, y));
});

test('a picture with coordinates over a drawing that has no place yet is laid by eye, and says so', async ({
  app,
  page,
}) => {
  await app.openNew([post('p1', 0, 0)]);
  await openMaps(page);
  const geo = { epsg: 32737, west: 260_000, north: 9_850_000, pixelM: 1 };
  await bringIn(page).setInputFiles(patternTiff('Survey.tif', 200, 100, geo));
  await expect(page.getByText('the drawing has none yet')).toBeVisible();
  expect((await theUnderlay(app)).placement.by).toBe('eye');
  expect((await property(app)).placed).toBe(false);
});

test('what is no picture, or a broken one, is refused with its reason and leaves nothing', async ({ app, page }) => {
  await app.openNew();
  await openMaps(page);
  const jpeg = await patternBy(page, 'a.jpg', 'image/jpeg', 900, 700);
  const large = flatJpeg({ widthPx: 6000, heightPx: 5000, levelsAt: () => [100, 128, 128] });
  const png = framedPng('p.png', 3000, 2000);
  for (const [name, buffer, words] of [
    ['text.jpg', Buffer.from('hello, I am no picture at all'), /is no JPEG, PNG, WebP or TIFF/],
    ['empty.png', Buffer.alloc(0), /is no JPEG, PNG, WebP or TIFF/],
    ['head.jpg', jpeg.buffer.subarray(0, 30), /can't be read: its header breaks off/],
    ['half.jpg', large.subarray(0, large.length / 2), /breaks off \d+ % of the way down/],
    ['half.png', png.buffer.subarray(0, png.buffer.length / 2), /damaged or breaks off/],
    ['half.tif', patternTiff('x', 300, 300, null).buffer.subarray(0, 200), /header is damaged|breaks off/],
  ] as const) {
    await bringIn(page).setInputFiles({ name, mimeType: 'application/octet-stream', buffer });
    await expect(page.getByText(words)).toBeVisible();
    await expect(page.getByRole('progressbar')).toBeHidden();
  }
  expect(await underlays(app)).toEqual([]);
  expect((await app.file()).state.revision).toBe(0);
  for (const type of ['png', 'webp'] as const) {
    await bringIn(page).setInputFiles(await patternBy(page, `Good ${type}.${type}`, `image/${type}`, 700, 300));
    await expect(page.getByText(`Lay Good ${type} under the drawing. Saved.`)).toBeVisible();
  }
});

test('an MBTiles file is laid underneath, read where it is, each tile in its place', async ({ app, page }) => {
  await app.openNew();
  const zoom = 15;
  const [column, row] = tilePlaceOf(zoom, [175.3, -37.9]).map(Math.floor) as [number, number];
  const colours = { '0,0': [200, 40, 40], '1,0': [40, 180, 60], '0,1': [50, 60, 210], '1,1': [220, 200, 60] } as const;
  const tiles = [];
  for (const [key, colour] of Object.entries(colours)) {
    const [right, down] = key.split(',').map(Number) as [number, number];
    const bytes = await flatPng(page, colour);
    tiles.push({ zoom, column: column + right, rowFromSouth: rowFromSouth(zoom, row + down), bytes });
  }
  mkdirSync(join(app.home, 'projects'), { recursive: true });
  const path = join(app.home, 'projects', 'Hills.mbtiles');
  makeTileFile(path, { tiles, metadata: { name: 'Hills', format: 'png' } });

  await openMaps(page);
  await page.getByRole('button', { name: 'Add an offline map file' }).click();
  await page.getByRole('button', { name: /^Hills.mbtiles/ }).click();
  await expect(page.getByText('Lay Hills under the drawing. Saved.')).toBeVisible();
  for (const [key, colour] of Object.entries(colours)) {
    const [right, down] = key.split(',').map(Number) as [number, number];
    await goTo(page, degrees(lonLatInTile(zoom, column + right, row + down, [0.9 - 0.8 * right, 0.9 - 0.8 * down])));
    await expectColourInMiddle(page, colour);
  }
  await app.restart();
  await page.getByRole('button', { name: /^Test property/ }).click();
  await goTo(page, degrees(lonLatInTile(zoom, column, row, [0.5, 0.5])));
  await expectColourInMiddle(page, colours['0,0']);
});

/** A map of one red tile around this place, under a property that was placed there. */
async function mapAt(page: Page, app: App, path: string, id: string): Promise<Underlay> {
  const zoom = 15;
  const [column, row] = tilePlaceOf(zoom, mapPlace).map(Math.floor) as [number, number];
  const bytes = await flatPng(page, red);
  makeTileFile(path, {
    tiles: [{ zoom, column, rowFromSouth: rowFromSouth(zoom, row), bytes }],
    metadata: { name: 'Hills', format: 'png' },
  });
  const { origin, ...given } = await property(app);
  await app.addThings([{ ...given, origin: [...mapPlace], placed: true }]);
  expect(origin).not.toEqual(mapPlace);
  return namedMap(id, path);
}

const mapPlace: LonLat = [175.3, -37.9];
const red = [200, 40, 40] as const;

function namedMap(id: string, path: string): Underlay {
  return {
    kind: 'underlay',
    id,
    name: id,
    source: {
      from: 'tileFile',
      path,
      fileName: basename(path),
      minZoom: 15,
      maxZoom: 15,
      bounds: [170, -40, 180, -30],
    },
    placement: null,
    opacity: 1,
    rank: 1,
    shown: true,
    note: '',
  };
}

test('a map file that the property merely names is opened when the user says so, and from then on', async ({
  app,
  page,
}) => {
  const elsewhere = await mkdtemp(join(tmpdir(), 'undergate-maps-'));
  await app.openNew();
  const named = await mapAt(page, app, join(elsewhere, 'Hills.mbtiles'), 'Hill map');
  await app.addThings([named]);
  await app.show();
  await expect(page.getByText('An offline map is not shown: see Background maps.')).toBeVisible();
  await openMaps(page);
  await expect(page.getByRole('row', { name: /Hill map/ })).toContainText('not opened yet');
  await page.getByRole('row', { name: /Hill map/ }).click();
  await expect(page.getByText('This map file was named by the project file; open it?')).toBeVisible();
  await page.getByRole('button', { name: 'Open the map' }).click();
  await expect(page.getByText('Map tiles, read from')).toBeVisible();
  await goTo(page, degrees(mapPlace));
  await expectColourInMiddle(page, red);
  await app.restart();
  await page.getByRole('button', { name: /^Test property/ }).click();
  await goTo(page, degrees(mapPlace));
  await expectColourInMiddle(page, red);
  await rm(elsewhere, { recursive: true });
});

test('a map file that never answers is left out with a word; all else goes on meanwhile', async ({ app, page }) => {
  await app.openNew();
  const folder = join(app.home, 'projects');
  const hostile = namedMap('Endless map', makeSilentFiles(folder)['endless tiles']!);
  await app.addThings([hostile, await mapAt(page, app, join(folder, 'Hills.mbtiles'), 'Hill map')]);
  await app.show();
  await openMaps(page);
  await expect(page.getByRole('row', { name: /Endless map/ })).toContainText('opening…');
  await page.getByRole('row', { name: /Endless map/ }).click();
  await page.getByLabel('Name', { exact: true }).fill('Somebody’s map');
  await page.getByLabel('Name', { exact: true }).press('Enter');
  await expect(page.getByText('Rename Endless map. Saved.')).toBeVisible();
  await goTo(page, degrees(mapPlace));
  await expectColourInMiddle(page, red);
  await expect(page.getByRole('row', { name: /Somebody’s map/ })).toContainText('opening…');
  await expect(page.getByRole('alert')).toContainText('does not answer (it was waited for 15 s), so it is left out.');
  await expect(page.getByRole('row', { name: /Somebody’s map/ })).toContainText('left out');
  await expect(page.getByRole('button', { name: 'Try again' })).toBeVisible();
});

test('the desktop app’s own build of what reads map files reads one', async ({ app, page }) => {
  await app.openNew();
  const path = join(app.home, 'Hills.mbtiles');
  await mapAt(page, app, path, 'Hill map');
  const program = join(import.meta.dirname, '..', '..', 'dist', 'electron', 'tileProcess.js');
  const reader = fork(program, { execArgv: [], serialization: 'advanced' });
  const asked: TileAsked = { call: { what: 'facts', path, below: null }, withinMs: 60_000 };
  try {
    expect(await once(reader, 'message')).toMatchObject([{ ready: true }]);
    reader.send(asked);
    expect(await once(reader, 'message')).toMatchObject([{ value: { name: 'Hills', minZoom: 15 } }]);
  } finally {
    reader.kill();
  }
});

test('coordinates in the system of the property, gone to, and told when they look swapped', async ({ app, page }) => {
  await app.openNew();
  await openMaps(page);
  const geo = { epsg: 2193, west: 1_800_000, north: 5_802_000, pixelM: 0.5 };
  await bringIn(page).setInputFiles(patternTiff('Survey.tif', 200, 100, geo));
  await expect(page.getByText('Lay Survey under the drawing. Saved.')).toBeVisible();
  await page.keyboard.press('Alt+0');
  await page.getByLabel('Shown and typed as').selectOption('EPSG:2193');
  await goTo(page, '1800040 E, 5801980 N');
  await expect(page.locator('.map-position')).toHaveText('1,800,040.0 E, 5,801,980.0 N');
  await goTo(page, '5801990 1800050');
  await expect(page.getByText('These look swapped')).toBeVisible();
  await page.keyboard.press('Enter');
  await expect(page.locator('.map-position')).toHaveText('1,800,050.0 E, 5,801,990.0 N');
  await goTo(page, 'nowhere');
  await expect(page.locator('.map-said')).toContainText('Type east and north');
  await page.keyboard.press('Escape');

  await page.getByLabel('Shown and typed as').selectOption('own');
  await page.getByLabel('PROJ text of the system').fill('+proj=nonsense');
  await page.getByLabel('PROJ text of the system').blur();
  await expect(page.getByText('can’t be worked with')).toBeVisible();
  await page.getByLabel('PROJ text of the system').fill('+proj=utm +zone=60 +south +datum=WGS84 +units=m +no_defs');
  await page.getByLabel('PROJ text of the system').blur();
  await expect(page.getByText('Change the coordinate system. Saved.')).toBeVisible();
  await goTo(page, degrees(nztm.toLonLat([1_800_040, 5_801_980]) as LonLat).replace(/^-(.*), (.*)$/, '$1 S, $2 E'));
  await expect(page.locator('.map-position')).toHaveText(/^348,\d{3}\.\d E, 5,80\d,\d{3}\.\d N$/);
});

test('a property from the blank grid is put on the earth by two points', async ({ app, page }) => {
  await app.openNew([post('p1', 0, 0), post('p2', 300, 400)]);
  await page.getByRole('button', { name: /^Test property/ }).click();
  const place = page.getByRole('region', { name: 'Place on earth' });
  const first = place.getByRole('group', { name: 'First place' });
  const second = place.getByRole('group', { name: 'Second place' });
  const earth = createLocalPlane([175.3, -37.9]);
  const set = async (group: typeof first, mark: string, at: LonLat) => {
    await group.getByLabel('On the drawing').selectOption({ label: mark });
    await group.getByLabel('On the earth').fill(degrees(at));
    await group.getByRole('button', { name: 'Set' }).last().click();
  };
  await set(first, 'Post P1', [175.3, -37.9]);
  await set(second, 'Post P2', earth.toLonLat([900, 0]));
  await expect(place.getByText('Check both.')).toBeVisible();
  await set(second, 'Post P2', earth.toLonLat([500, 0]));
  await place.getByRole('button', { name: 'Put it there' }).click();
  await expect(page.getByText('Place the property on the earth. Saved.')).toBeVisible();
  const posts = (await app.file()).things.filter((thing): thing is Post => thing.kind === 'post');
  expect((await property(app)).placed).toBe(true);
  expect(distanceM(posts[0]!.at, [175.3, -37.9])).toBeLessThan(0.01);
  expect(distanceM(posts[1]!.at, earth.toLonLat([500, 0]))).toBeLessThan(0.05);
  expect(Math.abs(distanceM(posts[0]!.at, posts[1]!.at) / 500 - 1)).toBeLessThan(1e-4);
});

test('services drawn by hand: a power line with its voltage, ground that floods, an earth', async ({ app, page }) => {
  await app.openNew();
  await page.getByRole('button', { name: 'Services', exact: true }).click();
  await expect(page.getByRole('region', { name: 'Tools' }).getByRole('button')).toHaveCount(2);
  await page.getByLabel('Voltage').fill('11000');
  await page.getByLabel('Voltage').press('Enter');
  const stage = (await page.locator('.map-stage').boundingBox())!;
  const click = (x: number, y: number) => page.mouse.click(stage.x + stage.width * x, stage.y + stage.height * y);
  await page.getByRole('button', { name: 'Draw power line' }).click();
  await click(0.3, 0.3);
  await click(0.6, 0.3);
  await page.keyboard.press('Enter');
  await expect(page.getByText('Draw Power line 1. Saved.')).toBeVisible();

  await page.getByLabel('Draw next').selectOption('floodZone');
  await page.getByRole('button', { name: 'Draw flood-prone ground' }).click();
  for (const [x, y] of [
    [0.3, 0.5],
    [0.5, 0.5],
    [0.5, 0.7],
  ] as const)
    await click(x, y);
  await page.keyboard.press('Enter');
  await expect(page.getByText('Draw Flood-prone ground 1. Saved.')).toBeVisible();

  await page.getByLabel('Draw next').selectOption('earthElectrode');
  await page.getByRole('button', { name: 'Draw mains or phone earth' }).click();
  await click(0.7, 0.6);
  await expect(page.getByText('Draw Mains or phone earth 1. Saved.')).toBeVisible();

  const services = (await app.file()).things.filter((thing): thing is Service => thing.kind === 'service');
  expect(services).toMatchObject([
    { what: 'powerLine', voltageV: 11_000, buried: false },
    { what: 'floodZone', voltageV: null },
    { what: 'earthElectrode', buried: true },
  ]);
  expect(services.map(({ path }) => path.length)).toEqual([2, 4, 1]);
  expect(services[1]!.path[0]).toEqual(services[1]!.path[3]);
  await page.getByRole('button', { name: 'Fences', exact: true }).click();
  await expect(page.getByRole('region', { name: 'Tools' }).getByRole('button')).toHaveCount(5);
});

test('the new pages can be used with a screen reader', async ({ app, page }) => {
  await withPicture(app, page);
  await page.getByRole('row', { name: /Test plan/ }).click();
  const check = async () => {
    const { violations } = await new AxeBuilder({ page }).analyze();
    const serious = violations.filter(({ impact }) => impact === 'serious' || impact === 'critical');
    expect(serious.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' | ')}`)).toEqual([]);
  };
  await check();
  await page.getByRole('button', { name: 'Add an offline map file' }).click();
  await expect(page.getByRole('dialog')).toBeVisible();
  await check();
  await page.keyboard.press('Escape');
  await page.getByRole('button', { name: 'Services', exact: true }).click();
  await check();
  await page.keyboard.press('Alt+0');
  await check();
});

/** A new property with a small picture under it and the maps' page open. Answers the picture's id. */
async function withPicture(app: App, page: Page): Promise<string> {
  await app.openNew();
  await openMaps(page);
  await bringIn(page).setInputFiles(await patternBy(page, 'Test plan.jpg', 'image/jpeg', 600, 400));
  await expect(page.getByText('Lay Test plan under the drawing. Saved.')).toBeVisible();
  const { source } = await theUnderlay(app);
  return source.from === 'picture' ? source.imageId : '';
}

async function flatPng(page: Page, [red, green, blue]: readonly [number, number, number]): Promise<Buffer> {
  const url = await page.evaluate((colour) => {
    const canvas = document.createElement('canvas');
    canvas.width = 256;
    canvas.height = 256;
    const ctx = canvas.getContext('2d')!;
    ctx.fillStyle = colour;
    ctx.fillRect(0, 0, 256, 256);
    return canvas.toDataURL('image/png');
  }, `rgb(${red} ${green} ${blue})`);
  return Buffer.from(url.split(',')[1]!, 'base64');
}
