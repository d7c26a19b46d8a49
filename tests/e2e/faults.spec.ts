import type { Page } from '@playwright/test';
import { expect, test } from '../support/app.ts';

/** Chooses a GeoJSON file of these geometries for import. */
async function bringIn(page: Page, name: string, geometries: readonly object[]): Promise<void> {
  const features = geometries.map((geometry, i) => ({ type: 'Feature', properties: { name: `P${i + 1}` }, geometry }));
  await page.keyboard.press('Alt+0');
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Import a map' }).click();
  const buffer = Buffer.from(JSON.stringify({ type: 'FeatureCollection', features }));
  await (await chooser).setFiles({ name, mimeType: 'application/geo+json', buffer });
}

const points = (count: number, lon = -150, lat = -40) =>
  Array.from({ length: count }, (_, i) => ({
    type: 'Point',
    coordinates: [lon + (i % 400) * 1e-4, lat + Math.floor(i / 400) * 1e-4],
  }));

test('what nobody caught is shown, and the window goes on', async ({ app, page }) => {
  await app.openNew();
  await page.evaluate(() => void Promise.reject(new Error('the ink ran out')));
  const problem = page.getByRole('alert');
  await expect(problem).toContainText('Something went wrong in this window: the ink ran out.');
  await problem.getByRole('button', { name: 'Close' }).click();
  await page.evaluate(() => {
    setTimeout(() => {
      throw new Error('the pen broke');
    });
  });
  await expect(problem).toContainText('the pen broke');
  await problem.getByRole('button', { name: 'Close' }).click();
  await expect(problem).toBeHidden();
});

test('a page that fails says what happened, and the map and the other pages go on', async ({ app, page }) => {
  await app.openDemo();
  // The profile of the voltage alone asks how wide it is.
  await page.evaluate(() => {
    const { ResizeObserver } = window;
    Object.assign(window, {
      KeptObserver: ResizeObserver,
      ResizeObserver: class {
        constructor() {
          throw new Error('no widths left');
        }
      },
    });
  });
  await page.keyboard.press('Alt+3');
  await expect(page.getByRole('heading', { name: 'Power can’t be shown' })).toBeVisible();
  await expect(page.getByRole('alert')).toContainText('What happened: no widths left.');
  await page.keyboard.press('Alt+1');
  await expect(page.getByRole('heading', { name: 'Power can’t be shown' })).toBeHidden();
  await expect(page.getByRole('button', { name: 'Gateways', exact: true })).toBeVisible();
  await page.keyboard.press('Alt+3');
  await page.evaluate(() => {
    const { KeptObserver } = window as never as { KeptObserver: typeof ResizeObserver };
    Object.assign(window, { ResizeObserver: KeptObserver });
  });
  await page.getByRole('button', { name: 'Try again' }).click();
  await expect(page.getByRole('button', { name: 'Profile', exact: true })).toBeVisible();
});

/** Takes a built-in away, in the page, until `giveBack`, so that what uses it fails. */
function takeAway(name: 'ResizeObserver' | 'toReversed'): void {
  const owner: Record<string, unknown> = (name === 'toReversed' ? Array.prototype : window) as never;
  const known = owner[name];
  owner[name] = function broken() {
    throw new Error('it broke');
  };
  Object.assign(window, {
    giveBack: () => {
      owner[name] = known;
    },
  });
}

const giveBack = (page: Page) => page.evaluate(() => (window as never as { giveBack: () => void }).giveBack());

test('a dialog that fails is named, and is tried again or closed', async ({ app, page }) => {
  await app.openDemo();
  await page.evaluate(takeAway, 'toReversed' as const);
  const print = page.getByRole('button', { name: 'Print map sheets' });
  await page.keyboard.press('Alt+0');
  await print.click();
  const fault = page.getByRole('dialog', { name: 'Print map sheets can’t be shown' });
  await expect(fault).toContainText('What happened: it broke.');
  await fault.getByRole('button', { name: 'Close' }).click();
  await expect(fault).toBeHidden();
  await print.click();
  await expect(fault).toBeVisible();
  await giveBack(page);
  await fault.getByRole('button', { name: 'Try again' }).click();
  await expect(page.getByRole('dialog').getByLabel('True scale')).toBeVisible();
});

test('a map that fails is named, the inspector goes on, and it is tried again', async ({ app, page }) => {
  await page.addInitScript(takeAway, 'ResizeObserver' as const);
  await app.openNew();
  await expect(page.getByRole('heading', { name: 'The map can’t be shown' })).toBeVisible();
  await page.keyboard.press('Alt+4');
  await expect(page.getByRole('button', { name: 'Quantities', exact: true })).toBeVisible();
  await giveBack(page);
  await page.getByRole('button', { name: 'Try again' }).click();
  await expect(page.getByRole('heading', { name: 'The map can’t be shown' })).toBeHidden();
  await expect(page.locator('.leaflet-container')).toBeVisible();
});

test('an order whose worker does not load says so, and is tried again', async ({ app, page }) => {
  await app.openDemo();
  await page.route(/order\.worker/, (route) => route.abort());
  await page.keyboard.press('Alt+4');
  const problem = page.getByRole('alert');
  await expect(problem).toContainText('The order could not be worked out (its script could not be loaded)');
  await page.unroute(/order\.worker/);
  await problem.getByRole('button', { name: 'Try again' }).click();
  await expect(page.getByRole('button', { name: 'Quantities', exact: true })).toBeVisible();
});

test('checks whose worker does not load are told of', async ({ app, page }) => {
  await page.route(/analysis\.worker/, (route) => route.abort());
  await app.openDemo();
  await expect(page.getByRole('alert')).toContainText('could not be worked out (its script could not be loaded)');
});

test('a file whose reader does not load is told of', async ({ app, page }) => {
  await app.openNew();
  await page.route(/reading\.worker/, (route) => route.abort());
  await bringIn(page, 'posts.geojson', points(3));
  await expect(page.getByRole('dialog')).toContainText('The file could not be read (its script could not be loaded).');
});

test('an import that fails says so instead of going on for ever', async ({ app, page }) => {
  await app.openNew();
  await bringIn(page, 'posts.geojson', points(3));
  const take = page.getByRole('button', { name: 'Import 3 pieces' });
  await take.waitFor();
  await page.evaluate(() => {
    const { flatMap } = Array.prototype;
    Object.assign(window, { flatMap });
    Object.assign(Array.prototype, {
      flatMap: () => {
        throw new RangeError('Maximum call stack size exceeded');
      },
    });
  });
  await take.click();
  await expect(page.getByRole('dialog')).toContainText('This program failed at it (Maximum call stack size exceeded)');
  await page.evaluate(() => {
    Object.assign(Array.prototype, { flatMap: (window as never as { flatMap: unknown }).flatMap });
  });
  await page.getByRole('button', { name: 'Done' }).click();
  await bringIn(page, 'posts.geojson', points(3));
  await take.click();
  await expect(page.getByText('Import posts.geojson. Saved.')).toBeVisible();
});

test('150,000 points come in', async ({ app, page }) => {
  await app.openNew();
  await bringIn(page, 'many.geojson', points(150_000));
  await page.getByRole('button', { name: 'Import 150,000 pieces' }).click({ timeout: 60_000 });
  await expect(page.getByText('Import many.geojson. Saved.')).toBeVisible({ timeout: 100_000 });
  expect((await app.file()).state.revision).toBe(1);
});

test('more than one step can hold is refused in words', async ({ app, page }) => {
  await app.openNew();
  await bringIn(page, 'many.geojson', points(210_000));
  await page.getByRole('button', { name: 'Import 210,000 pieces' }).click({ timeout: 60_000 });
  const dialog = page.getByRole('dialog');
  await expect(dialog.getByRole('alert')).toContainText('one step can make 200,000 at most', { timeout: 60_000 });
  await expect(dialog).toContainText('Nothing was imported.');
  expect((await app.file()).state.revision).toBe(0);
});
