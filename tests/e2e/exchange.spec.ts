import { readFile } from 'node:fs/promises';
import { expect, test } from '../support/app.ts';

const fences = {
  type: 'FeatureCollection',
  features: [
    {
      type: 'Feature',
      properties: { name: 'Top fence' },
      geometry: {
        type: 'LineString',
        coordinates: [
          [-150.001, -40.001],
          [-150.0, -40.001],
          [-150.0, -40.0],
        ],
      },
    },
    { type: 'Feature', properties: { name: 'No shape' }, geometry: { type: 'LineString', coordinates: [[-150, -40]] } },
    {
      type: 'Feature',
      properties: { name: 'Old strainer' },
      geometry: { type: 'Point', coordinates: [-150.0, -40.0] },
    },
  ],
};

test('GeoJSON comes in after a look, with a word on what can’t be used, and one undo takes it back', async ({
  app,
  page,
}) => {
  await app.openNew();
  await page.keyboard.press('Alt+0');
  await page
    .locator('input[type=file]')
    .first()
    .setInputFiles({
      name: 'fences.geojson',
      mimeType: 'application/geo+json',
      buffer: Buffer.from(JSON.stringify(fences)),
    });
  const dialog = page.getByRole('dialog');
  await expect(dialog.getByText('2 usable pieces, 1 that can’t be used.')).toBeVisible();
  await expect(dialog.getByText('No shape')).toBeVisible();
  await dialog.getByRole('button', { name: 'Import 2 pieces' }).click();
  await expect(dialog).toBeHidden();
  const kinds = (await app.file()).things.map(({ kind }) => kind);
  expect(kinds.filter((kind) => kind === 'fenceLine')).toHaveLength(1);
  expect(kinds.filter((kind) => kind === 'post')).toHaveLength(1);
  await page.keyboard.press('Control+z');
  await expect(page.getByText('Undone: Import fences.geojson.')).toBeVisible();
  expect((await app.file()).things.some(({ kind }) => kind === 'fenceLine')).toBe(false);
});

test('a truncated file is refused with the reason, and nothing changes', async ({ app, page }) => {
  await app.openNew();
  await page.keyboard.press('Alt+0');
  await page
    .locator('input[type=file]')
    .first()
    .setInputFiles({
      name: 'broken.geojson',
      mimeType: 'application/geo+json',
      buffer: Buffer.from(JSON.stringify(fences).slice(0, 150)),
    });
  await expect(page.getByRole('dialog').getByRole('alert')).toBeVisible();
  expect((await app.file()).things.some(({ kind }) => kind === 'fenceLine')).toBe(false);
});

test('the example goes out as GeoJSON and comes back without a change', async ({ app, page }) => {
  await app.openDemo();
  const before = (await app.file()).things;
  await page.keyboard.press('Alt+0');
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Export GeoJSON', exact: true }).click();
  const path = await (await download).path();
  const text = await readFile(path, 'utf8');
  expect((JSON.parse(text) as { type: string }).type).toBe('FeatureCollection');
  await page
    .locator('input[type=file]')
    .first()
    .setInputFiles({
      name: 'back.geojson',
      mimeType: 'application/geo+json',
      buffer: Buffer.from(text),
    });
  await page.getByRole('button', { name: /^Import [\d,]+ pieces?$/ }).click();
  await expect(page.getByText('Nothing was changed')).toBeVisible();
  expect((await app.file()).things).toEqual(before);
});
