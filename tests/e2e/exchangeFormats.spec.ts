import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { unzipSync, zipSync } from 'fflate';
import type { FenceLine, Post } from '../../core/model/things.ts';
import { type App, expect, test } from '../support/app.ts';
import { madeTiff } from '../support/madeTiff.ts';

const files = join(import.meta.dirname, '..', 'unit', 'exchange', 'files');

async function openCover(page: Page): Promise<void> {
  await expect(page.getByRole('application').or(page.locator('.leaflet-container')).first()).toBeVisible();
  await page.keyboard.press('Alt+0');
  await expect(page.getByRole('heading', { name: 'Import', exact: true })).toBeVisible();
}

/** Chooses a file for import, as through the system's dialog. */
async function bringIn(page: Page, name: string, bytes: Uint8Array): Promise<void> {
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Import a map' }).click();
  await (await chooser).setFiles({ name, mimeType: 'application/octet-stream', buffer: Buffer.from(bytes) });
}

async function importFileFrom(page: Page, name: string): Promise<void> {
  await bringIn(page, name, await readFile(join(files, name)));
}

/** What the button hands over. */
async function handedOn(page: Page, button: string): Promise<{ name: string; bytes: Buffer }> {
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: button, exact: true }).click();
  const done = await download;
  return { name: done.suggestedFilename(), bytes: await readFile(await done.path()) };
}

const kindsOf = async (app: App) => (await app.file()).things.map(({ kind }) => kind);

for (const [name, pieces] of [
  ['lines.kml', 3],
  ['map.kmz', 5],
  ['tracks.gpx', 4],
  ['layers.zip', 7],
  ['points.csv', 3],
] as const) {
  test(`${name} comes in after a look, and one undo takes it back`, async ({ app, page }) => {
    await app.openNew();
    await openCover(page);
    await importFileFrom(page, name);
    const dialog = page.getByRole('dialog');
    await expect(dialog.getByText(`${pieces} usable pieces`)).toBeVisible();
    const before = (await kindsOf(app)).length;
    await dialog.getByRole('button', { name: /^Import [\d,]+ pieces?$/ }).click();
    await expect.poll(async () => (await kindsOf(app)).length).toBeGreaterThan(before + 1);
    await expect(dialog.getByRole('button', { name: /^Import/ })).toHaveCount(0);
    const done = dialog.getByRole('button', { name: 'Done' });
    if (await done.isVisible()) await done.click();
    await expect(dialog).toBeHidden();
    await page.keyboard.press('Control+z');
    await expect(page.getByText(`Undone: Import ${name}.`)).toBeVisible();
    expect(await kindsOf(app)).toHaveLength(before);
  });
}

test('a track shows what simplifying does, snaps its ends and gives its heights', async ({ app, page }) => {
  await app.openNew();
  await openCover(page);
  await importFileFrom(page, 'tracks.gpx');
  const dialog = page.getByRole('dialog');
  await expect(dialog.getByText(/^67 points become \d+\.$/)).toBeVisible();
  const tolerance = dialog.getByLabel('Simplify lines to within');
  await tolerance.fill('0');
  await tolerance.press('Enter');
  await expect(dialog.getByText('67 points; 0 keeps them all.')).toBeVisible();
  await tolerance.fill('3');
  await tolerance.press('Enter');
  await dialog.getByLabel('All lines become').selectOption('boundary');
  const accessible = await new AxeBuilder({ page }).include('dialog').analyze();
  expect(accessible.violations).toEqual([]);
  await dialog.getByRole('button', { name: /^Import [\d,]+ pieces?$/ }).click();
  await expect.poll(() => kindsOf(app)).toContain('ground');
  const { things } = await app.file();
  const lines = things.filter((thing): thing is FenceLine => thing.kind === 'fenceLine');
  expect(lines.map(({ live }) => live)).toEqual([false, false, false]);
  expect(lines.every(({ path }) => path.length < 20)).toBe(true);
});

test('a gateway of a file lands on the fence that comes with it', async ({ app, page }) => {
  await app.openNew();
  await openCover(page);
  await importFileFrom(page, 'layers.zip');
  const dialog = page.getByRole('dialog');
  await dialog.getByRole('button', { name: /^Import [\d,]+ pieces?$/ }).click();
  await expect.poll(() => kindsOf(app)).toContain('gateway');
});

test('swapped latitude and longitude are offered to be put right', async ({ app, page }) => {
  await app.openNew();
  await openCover(page);
  const text =
    '<kml><Placemark><name>A</name><Point><coordinates>-42.001,168.002</coordinates></Point></Placemark></kml>';
  await bringIn(page, 'swapped.kml', new TextEncoder().encode(text));
  const dialog = page.getByRole('dialog');
  await dialog.getByRole('button', { name: 'Swap latitude and longitude' }).click();
  await dialog.getByRole('button', { name: 'Import 1 piece' }).click();
  await expect.poll(() => kindsOf(app)).toContain('post');
  const post = (await app.file()).things.find((thing): thing is Post => thing.kind === 'post')!;
  expect(post.at).toEqual([168.002, -42.001]);
});

test('script in a name is shown, not run', async ({ app, page }) => {
  await app.openNew();
  await openCover(page);
  const name = '&lt;img src=x onerror="window.ran=1"&gt;';
  const text = `<kml><Placemark><name>${name}</name><description><![CDATA[<script>window.ran=1</script>]]></description><Point><coordinates>168,-42</coordinates></Point></Placemark></kml>`;
  await bringIn(page, 'script.kml', new TextEncoder().encode(text));
  await expect(page.getByRole('dialog').getByRole('cell', { name: '<img src=x' })).toBeVisible();
  await page.getByRole('button', { name: 'Import 1 piece' }).click();
  await expect.poll(() => kindsOf(app)).toContain('post');
  expect(await page.evaluate(() => (window as { ran?: number }).ran)).toBeUndefined();
});

test('files that are made to do harm end with a word, and nothing changes', async ({ app, page }) => {
  await app.openNew();
  await openCover(page);
  const before = (await app.file()).things;
  const bomb = zipSync({ 'doc.kml': new Uint8Array(200 * 1024 * 1024) });
  const entities =
    '<!DOCTYPE kml [<!ENTITY a "aa"><!ENTITY b "&a;&a;">]><kml><Placemark><name>&b;</name></Placemark></kml>';
  const hostile: readonly (readonly [string, Uint8Array, RegExp])[] = [
    ['bomb.kmz', bomb, /unpacks to more than/],
    ['entities.kml', new TextEncoder().encode(entities), /entities/],
    ['cut.gpx', (await readFile(join(files, 'tracks.gpx'))).subarray(0, 3000), /breaks off/],
    ['picture.kml', new Uint8Array([0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, 0, 0]), /picture/],
  ];
  for (const [name, bytes, reason] of hostile) {
    await bringIn(page, name, bytes);
    await expect(page.getByRole('dialog').getByRole('alert')).toContainText(reason);
    await page.keyboard.press('Escape');
  }
  expect((await app.file()).things).toEqual(before);
});

test('reading a large file shows how far it is and can be stopped', async ({ app, page }) => {
  await app.openNew();
  await openCover(page);
  const point = '<trkpt lat="-42.0012345" lon="168.0012345"><ele>12.5</ele><time>2026-03-01T02:00:00Z</time></trkpt>';
  const text = `<gpx version="1.1"><trk><trkseg>${point.repeat(400_000)}</trkseg></trk></gpx>`;
  await bringIn(page, 'long.gpx', new TextEncoder().encode(text));
  const dialog = page.getByRole('dialog');
  await expect(dialog.getByRole('progressbar')).toBeVisible();
  await expect
    .poll(() => dialog.getByRole('progressbar').evaluate((bar) => (bar as HTMLProgressElement).value))
    .toBeGreaterThan(0);
  await dialog.getByRole('button', { name: 'Stop' }).click();
  await expect(dialog).toBeHidden();
  expect(await kindsOf(app)).not.toContain('fenceLine');
});

for (const [format, button] of [
  ['kml', 'Export KML'],
  ['kmz', 'Export KMZ'],
  ['gpx', 'Export GPX'],
] as const) {
  test(`the example goes out as ${format} and comes back without a change`, async ({ app, page }) => {
    await app.openDemo();
    const before = (await app.file()).things;
    await openCover(page);
    const { name, bytes } = await handedOn(page, button);
    expect(name).toMatch(new RegExp(`\\.${format}$`));
    await bringIn(page, name, bytes);
    await page.getByRole('button', { name: /^Import [\d,]+ pieces?$/ }).click();
    await expect(page.getByText('Nothing was changed')).toBeVisible();
    expect((await app.file()).things).toEqual(before);
  });
}

test('the example goes out as GeoPackage, DXF, tables and a picture', async ({ app, page }) => {
  await app.openDemo();
  await openCover(page);
  const geoPackage = await handedOn(page, 'Export GeoPackage');
  expect(geoPackage.bytes.subarray(0, 15).toString()).toBe('SQLite format 3');
  const dxf = await handedOn(page, 'Export DXF');
  expect(dxf.bytes.toString()).toContain('LWPOLYLINE');
  const registers = await handedOn(page, 'Export the registers');
  expect(Object.keys(unzipSync(registers.bytes))).toContain('gateways.csv');
  const picture = await handedOn(page, 'Export a picture (PNG)');
  expect(picture.bytes.subarray(1, 4).toString()).toBe('PNG');
  // IHDR: width and height stand 16 bytes into the file.
  expect(Math.max(picture.bytes.readUInt32BE(16), picture.bytes.readUInt32BE(20))).toBeGreaterThan(3500);
});

test('stray points are named with their distance, left out, and can be taken in', async ({ app, page }) => {
  await app.openNew();
  await openCover(page);
  const rows = Array.from({ length: 30 }, (_, i) => `P${i + 1},${-40 - i * 1e-4},${-150 + i * 1e-4}`);
  const file = (...strays: string[]) => new TextEncoder().encode(['name,lat,lon', ...rows, ...strays].join('\n'));
  const posts = async () => (await app.file()).things.filter((thing): thing is Post => thing.kind === 'post');

  await bringIn(page, 'walk.csv', file('No fix,0,0', 'From the trip,-38.6,-150'));
  const dialog = page.getByRole('dialog');
  const strays = dialog.getByRole('region', { name: 'Far from the rest' });
  await expect(strays).toContainText('2 pieces lie far from the rest and are left out');
  await expect(strays).toContainText(/No fix: it lies at latitude 0, longitude 0, where a receiver without a fix/);
  await expect(strays).toContainText(/From the trip: it lies 15\d(\.\d)? km from the rest/);
  await strays.getByLabel('From the trip becomes').selectOption('post');
  await dialog.getByRole('button', { name: 'Import 31 pieces' }).click();
  await expect(dialog).toContainText('Imported, but for these:');
  await dialog.getByRole('button', { name: 'Done' }).click();
  expect((await posts()).map(({ name }) => name)).toHaveLength(31);

  // The property is drawn now: the same stray does not keep the rest out.
  await bringIn(page, 'again.csv', file('No fix,0,0'));
  await dialog.getByRole('button', { name: 'Import 30 pieces' }).click();
  await dialog.getByRole('button', { name: 'Done' }).click();
  expect(await posts()).toHaveLength(61);
});

test('a file of two places asks which of them is the property', async ({ app, page }) => {
  await app.openNew();
  await openCover(page);
  const rows = Array.from({ length: 40 }, (_, i) =>
    i < 20 ? `A${i},${-40 - i * 1e-4},-150` : `B${i},${-35 - i * 1e-4},-140`,
  );
  await bringIn(page, 'two.csv', new TextEncoder().encode(['name,lat,lon', ...rows].join('\n')));
  const dialog = page.getByRole('dialog');
  const take = dialog.getByRole('button', { name: /^Import [\d,]+ pieces?$/ });
  await expect(dialog.getByRole('alert')).toContainText('places that lie far from one another');
  await expect(take).toBeDisabled();
  await dialog.getByLabel('The property is').selectOption({ index: 2 });
  await expect(dialog.getByRole('region', { name: 'Far from the rest' })).toContainText('20 pieces lie far');
  await take.click();
  await dialog.getByRole('button', { name: 'Done' }).click();
  const names = (await app.file()).things.flatMap((thing) => (thing.kind === 'post' ? [thing.name] : []));
  expect(names).toHaveLength(20);
  expect(new Set(names.map((name) => name[0]))).toEqual(new Set(['B']));
});

test('an elevation model lengthens the fences over the ground, and can be taken out', async ({ app, page }) => {
  await app.openDemo();
  await openCover(page);
  const { things } = await app.file();
  const [lon, lat] = things.find((thing): thing is FenceLine => thing.kind === 'fenceLine')!.path[0]!;
  const hills = (keys: Readonly<Record<number, number>>) => {
    const geo = { pixel: 0.0002, west: lon - 0.04, north: lat + 0.04, keys: { 1024: 2, ...keys } };
    const valueAt = (x: number) => 200 + 2 * x;
    return madeTiff({ width: 400, height: 400, bits: 32, format: 3, photometric: 1, valueAt, geo });
  };
  const importModel = async (name: string, buffer: Buffer) => {
    const chooser = page.waitForEvent('filechooser');
    await page.getByRole('button', { name: 'Bring in an elevation model' }).click();
    await (await chooser).setFiles({ name, mimeType: 'image/tiff', buffer });
  };
  await importModel('feet.tif', hills({ 2048: 4326, 4096: 6360 }));
  const found = page.getByRole('region', { name: 'Heights found' });
  await expect(found.getByText('US survey feet by its vertical system (EPSG:6360).')).toBeVisible();
  await expect(found.getByLabel('Its heights are in')).toHaveValue('usFeet');
  await found.getByRole('button', { name: 'Leave out' }).click();
  expect(await kindsOf(app)).not.toContain('ground');

  // Nothing says in which unit its heights are, and nothing is known of its system.
  await importModel('hills.tif', hills({ 2048: 4999 }));
  await expect(page.getByText('in the system EPSG:4999, which is not known here')).toBeVisible();
  await page.getByRole('button', { name: 'Go on' }).click();
  await expect(found.getByText('metres are an assumption')).toBeVisible();
  const [inMetres, inFeet] = await found.getByLabel('Its heights are in').locator('option').allTextContents();
  const lowest = (text: string | undefined) => Number(/: (\d+) m to/.exec(text ?? '')?.[1]);
  expect(Math.abs(lowest(inFeet) - lowest(inMetres) * 0.3048)).toBeLessThan(1);
  await found.getByLabel('Its heights are in').selectOption('feet');
  await expect(found.getByText(`from ${lowest(inFeet)} m to`)).toBeVisible();
  await found.getByRole('button', { name: 'Use these heights' }).click();
  await expect(page.getByText(/of fence on the plan is .* over the ground/)).toBeVisible();
  expect(await kindsOf(app)).toContain('ground');
  const kept = await page.getByText(/heights, \d+ m to/).textContent();
  expect(Math.abs(Number(/heights, (\d+) m/.exec(kept!)?.[1]) - lowest(inFeet))).toBeLessThan(2);
  await page.getByRole('button', { name: 'Take out Heights of hills.tif' }).click();
  await expect(page.getByText(/With heights, wire is ordered/)).toBeVisible();
  expect(await kindsOf(app)).not.toContain('ground');
});

test('the cover is accessible, light and dark', async ({ app, page }) => {
  await app.openDemo();
  await openCover(page);
  for (let turn = 0; turn < 2; turn++) {
    const { violations } = await new AxeBuilder({ page })
      .withTags(['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa'])
      .analyze();
    expect(violations).toEqual([]);
    await page.keyboard.press('Alt+l');
  }
});
