import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { expect, test } from '../support/app.ts';

/** Types a leg of the fence being drawn: its length in metres, its bearing in degrees. */
async function leg(page: Page, lengthM: number, bearingDeg: number): Promise<void> {
  await page.keyboard.type(String(lengthM));
  await page.keyboard.press('Tab');
  await page.keyboard.type(String(bearingDeg));
  await page.keyboard.press('Enter');
}

async function drawSquare(page: Page): Promise<void> {
  await page.keyboard.press('Alt+m');
  await page.keyboard.press('f');
  await page.keyboard.press('ArrowLeft');
  await page.keyboard.press('Enter');
  await leg(page, 200, 90);
  await leg(page, 150, 0);
  await leg(page, 200, 270);
  await leg(page, 150, 180);
  await page.keyboard.press('Enter');
  await expect(page.getByText('Draw fence F1. Saved.')).toBeVisible();
}

test('with the keyboard alone: a new property, a fence, a gateway, undo, the plan, a print', async ({ app, page }) => {
  await app.show();
  await page.keyboard.press('Control+Alt+n');
  await page.getByLabel('Name of the property').fill('Keyboard block');
  await page.keyboard.press('Enter');
  await expect(page).toHaveTitle(/Keyboard block/);

  await drawSquare(page);
  await expect(page.getByRole('status').filter({ hasText: '1 paddock of 3.00 ha' })).toBeVisible();

  await page.keyboard.press('g');
  for (let i = 0; i < 3; i++) await page.keyboard.press('Shift+ArrowUp');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'Gateway G1' })).toBeVisible();
  await expect(page.getByText('Place gateway G1. Saved.')).toBeVisible();

  await page.keyboard.press('Control+z');
  await expect(page.getByText('Undone: Place gateway G1.')).toBeVisible();
  expect((await app.file()).things.filter(({ kind }) => kind === 'gateway')).toHaveLength(0);
  await page.keyboard.press('Control+Shift+z');
  await expect(page.getByText('Redone: Place gateway G1.')).toBeVisible();

  await page.keyboard.press('e');
  await page.keyboard.press('Enter');
  await expect(page.getByText('Place energiser E1. Saved.')).toBeVisible();

  await page.keyboard.press('Alt+2');
  await expect(page.getByRole('status').filter({ hasText: '1 section' })).toBeVisible();
  await page.getByRole('button', { name: 'Limits' }).press('Enter');
  await page.getByLabel('Longest section, of fence').fill('400');
  await page.keyboard.press('Enter');
  const take = page.getByRole('button', { name: 'Use these switches' });
  await take.press('Enter');
  await expect(page.getByText('Use the switches of the plan. Saved.')).toBeVisible();
  const switches = (await app.file()).things.filter(({ kind }) => kind === 'switch');
  expect(switches.length).toBeGreaterThan(0);

  const download = page.waitForEvent('download');
  await page.keyboard.press('Control+p');
  await page.getByRole('button', { name: 'Make the PDF' }).press('Enter');
  expect((await download).suggestedFilename()).toMatch(/\.pdf$/);
});

test('all that was done is there after a restart, and can still be undone', async ({ app, page }) => {
  await app.openNew();
  await drawSquare(page);
  await app.restart();
  await page.getByRole('button', { name: /^Test property/ }).click();
  await expect(page.getByRole('status').filter({ hasText: '700 m of fence' })).toBeVisible();
  await page.keyboard.press('Control+z');
  await expect(page.getByText('Undone: Draw fence F1.')).toBeVisible();
  await app.restart();
  await page.getByRole('button', { name: /^Test property/ }).click();
  await expect(page.getByRole('status').filter({ hasText: 'Draw the first fence line' })).toBeVisible();
  await page.keyboard.press('Control+Shift+z');
  await expect(page.getByText('Redone: Draw fence F1.')).toBeVisible();
});

test('a plan is suggested for the example and can be taken', async ({ app, page }) => {
  await app.openDemo();
  await page.keyboard.press('Alt+2');
  await expect(page.getByText('Proven: no set of switches costs less within these limits.')).toBeVisible();
  await page.getByRole('button', { name: 'Use these switches' }).click();
  await expect(page.getByText('The switches as drawn are the plan')).toBeVisible();
  await expect(page.getByRole('status').filter({ hasText: 'over the limit' })).toHaveCount(0);
});

test('two windows on the same file show the same', async ({ app, page, context }) => {
  await app.openNew();
  const other = await context.newPage();
  await other.goto(await app.newAddress());
  await drawSquare(page);
  await expect(other.getByRole('status').filter({ hasText: '700 m of fence' })).toBeVisible();
});

for (const theme of ['light', 'dark'] as const) {
  test(`no serious fault of accessibility on any page, ${theme}`, async ({ app, page }) => {
    test.slow();
    await page.emulateMedia({ colorScheme: theme });
    await app.show();
    await expectAccessible(page, 'welcome');
    await app.openDemo();
    await page.getByRole('button', { name: 'Gateways', exact: true }).click();
    await page.locator('.register tbody tr').first().click();
    for (const key of ['Alt+0', 'Alt+1', 'Alt+2']) {
      await page.keyboard.press(key);
      await expectAccessible(page, key);
    }
    for (const [key, name] of [
      ['Control+p', 'print'],
      ['Control+o', 'open'],
      ['F1', 'keys'],
    ] as const) {
      await page.keyboard.press(key);
      await expect(page.getByRole('dialog')).toBeVisible();
      await expectAccessible(page, name);
      await page.keyboard.press('Escape');
      await expect(page.getByRole('dialog')).toBeHidden();
    }
  });
}

async function expectAccessible(page: Page, where: string): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  const serious = violations.filter(({ impact }) => impact === 'serious' || impact === 'critical');
  const words = serious.map(({ id, nodes }) => `${where}: ${id}: ${nodes.map(({ html }) => html).join(' | ')}`);
  expect(words).toEqual([]);
}
