import type { Page } from '@playwright/test';
import { type App, expect, test } from '../support/app.ts';
import { englishOnScreen } from '../support/englishOnScreen.ts';
import { namesIn } from '../support/pseudo.ts';

/** Words that are names of formats, standards, keys and the program, in every language. */
const proper = [
  'Undergate',
  'WGS 84',
  'EPSG',
  'UTM',
  'MGRS',
  'GeoPackage',
  'GeoJSON',
  'GeoTIFF',
  'Shapefile',
  'KML',
  'KMZ',
  'GPX',
  'DXF',
  'CSV',
  'PDF',
  'PNG',
  'JPEG',
  'MBTiles',
  'Alt+',
  'Ctrl+',
  'Ctrl',
  'Shift',
  'Esc',
  'Enter',
  'Del',
  'A4',
  'A3',
];

const keys = {
  file: 'Alt+0',
  draw: 'Alt+1',
  divide: 'Alt+2',
  power: 'Alt+3',
  order: 'Alt+4',
  record: 'Alt+5',
  find: 'Alt+6',
};

/** The invented property in the pseudo-language; what it holds, as names. */
async function start(app: App): Promise<string[]> {
  const settings = { theme: null, bookWidthPx: 520, locale: null, language: 'en-XA' };
  await app.project.keepWindowSettings(settings);
  await app.openDemo();
  const { things, path } = await app.file();
  // A code such as 'gateway' is no name.
  const names = [...namesIn(things)].filter((name) => /[A-Z0-9 ]/.test(name));
  return [...names, path, ...path.split('/'), ...proper].filter((name) => /[A-Za-z]{2}/.test(name));
}

/** Opens what is folded and looks. */
async function look(page: Page, names: readonly string[], found: Set<string>): Promise<void> {
  await page.evaluate(() => {
    for (const details of document.querySelectorAll('details')) details.open = true;
  });
  await page.waitForTimeout(150);
  for (const text of await englishOnScreen(page, names)) found.add(text);
}

/** Every view of the workspace that is open, and the first row of each of its tables. */
async function walk(page: Page, names: readonly string[], found: Set<string>): Promise<void> {
  await page.waitForTimeout(600);
  await look(page, names, found);
  const choices = page.locator('.inspector-page nav button');
  for (let i = 0; i < (await choices.count()); i++) {
    await choices.nth(i).click();
    await look(page, names, found);
    const row = page.locator('.inspector-page tbody tr').first();
    if (await row.count()) {
      await row.click({ position: { x: 8, y: 8 } }).catch(() => {});
      await look(page, names, found);
    }
  }
}

for (const [workspace, key] of Object.entries(keys)) {
  test(`no English outside the catalogue: ${workspace}`, async ({ app, page }) => {
    const names = await start(app);
    const found = new Set<string>();
    await page.keyboard.press(key);
    await walk(page, names, found);
    expect([...found].sort().join('\n')).toBe('');
  });
}

test('no English outside the catalogue: a map that comes in', async ({ app, page }) => {
  const names = [...(await start(app)), 'fences.geojson', 'Top fence', 'Far post'];
  const property = (await app.file()).things.find(({ kind }) => kind === 'property');
  const [lon, lat] = (property as unknown as { readonly origin: readonly [number, number] }).origin;
  const feature = (name: string | null, type: string, coordinates: unknown) => ({
    type: 'Feature',
    properties: name === null ? {} : { name },
    geometry: { type, coordinates },
  });
  const found = new Set<string>();
  await page.keyboard.press(keys.file);
  await look(page, names, found);
  const features = [
    feature('Top fence', 'LineString', [
      [lon, lat, 12],
      [lon + 0.01, lat, 14],
      [lon + 0.01, lat + 0.01, 18],
    ]),
    feature(null, 'Point', [lon, lat]),
    feature(null, 'Point', [lon + 0.001, lat]),
    feature(null, 'LineString', [[lon, lat]]),
    feature('Far post', 'Point', [lon + 3, lat + 3]),
  ];
  await page.locator('input[accept*=".geojson"]').setInputFiles({
    name: 'fences.geojson',
    mimeType: 'application/geo+json',
    buffer: Buffer.from(JSON.stringify({ type: 'FeatureCollection', features })),
  });
  const dialog = page.getByRole('dialog');
  await expect(dialog.getByRole('table')).toBeVisible();
  await look(page, names, found);
  await dialog.locator('button.main').click();
  await expect(dialog.getByRole('table')).toBeHidden();
  await look(page, names, found);
  expect([...found].sort().join('\n')).toBe('');
});
