import { readFile } from 'node:fs/promises';
import AxeBuilder from '@axe-core/playwright';
import type { Download, Page } from '@playwright/test';
import { expect, test } from '../support/app.ts';
import { bridgedGateway, gateSwitch, line, ring } from '../support/drawings.ts';

const things = [
  ring('F1', [
    [0, 0],
    [100, 0],
    [100, 100],
    [0, 100],
  ]),
  line('F2', [
    [100, 0],
    [200, 0],
  ]),
  ...bridgedGateway('G1', 'F1', 50, { widthM: 4.2 }),
  ...bridgedGateway('G2', 'F2', 50, { widthM: 4.2 }),
  gateSwitch('S1', 'G1', 'start'),
];

const register = (page: Page, name: string) =>
  page.getByRole('navigation', { name: 'Registers' }).getByRole('button', { name, exact: true }).click();

async function openOrder(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Order', exact: true }).waitFor();
  await page.keyboard.press('Alt+4');
}

const answer = (page: Page) => page.getByRole('status').filter({ hasText: /items? for/ });

async function downloaded(page: Page, press: () => Promise<void>): Promise<{ name: string; text: string }> {
  const coming = page.waitForEvent('download');
  await press();
  const download: Download = await coming;
  return { name: download.suggestedFilename(), text: await readFile(await download.path(), 'utf8') };
}

test('the manager counts, prices, cuts and stages the job, and has the order as PDF and CSV', async ({ app, page }) => {
  await app.openNew(things, 'Order block');
  await openOrder(page);
  await expect(answer(page)).toContainText('of fence');

  // A figure explains itself.
  const strainers = page.getByRole('button', { name: 'Strainer post: 5', exact: true });
  await strainers.click();
  await expect(page.getByRole('button', { name: /where F1 and F2 meet/ })).toBeVisible();
  await page.getByRole('button', { name: /^end of F2/ }).click();
  await expect(page.getByRole('heading', { name: 'Fence F2' })).toBeVisible();

  // Terms and prices are the user's own.
  await register(page, 'Counting rules');
  await page.getByLabel('Currency').fill('nzd');
  await page.keyboard.press('Enter');
  await expect(answer(page)).toContainText('NZ$');
  await page.getByLabel('Tax', { exact: true }).fill('15');
  await page.keyboard.press('Enter');
  await expect(answer(page)).toContainText('of tax');
  await register(page, 'Prices');
  const price = page.getByLabel('Price of Strainer post, 2.4 m');
  await price.fill('1000');
  await page.keyboard.press('Enter');
  await expect(page.getByText('Price of Strainer post, 2.4 m. Saved.')).toBeVisible();
  await register(page, 'Goods and work');
  await expect(page.getByRole('row', { name: /Strainer post, 2.4 m/ })).toContainText('NZ$5,000.00');

  // Pipe is cut from what is on hand before a roll is bought.
  await register(page, 'Rolls and cuts');
  const pipes = page.getByRole('region', { name: 'Pipe, 19 mm bore' });
  await expect(pipes).toContainText('Roll 1: 50.00 m, bought');
  await page.getByRole('button', { name: 'Add a roll' }).click();
  await expect(pipes).toContainText('Roll 1: 50.00 m, on hand');

  // Two stages.
  await register(page, 'Stages');
  await page.getByLabel('New stage').fill('Next year');
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: 'Next year', exact: true }).click();
  await expect(page.getByText('1 thing, with all that hangs on it.')).toBeVisible();
  await expect(answer(page)).toContainText('in 1 stage');
  await page.getByRole('button', { name: 'Done', exact: true }).click();

  // Out of the house.
  await register(page, 'Goods and work');
  const csv = await downloaded(page, () => page.getByRole('button', { name: 'Order as CSV' }).click());
  expect(csv.name).toBe('Order block order.csv');
  expect(csv.text).toContain('"Strainer post, 2.4 m"');
  const pdf = await downloaded(page, () => page.getByRole('button', { name: 'Print the order' }).click());
  expect(pdf.name).toMatch(/^Order block order \d{4}-\d\d-\d\d\.pdf$/);
  expect(pdf.text.startsWith('%PDF-')).toBe(true);
});

test('a price list goes out, is changed, and comes in again with a word on what can not be used', async ({
  app,
  page,
}) => {
  await app.openNew(things, 'Price block');
  await openOrder(page);
  await register(page, 'Prices');
  const list = await downloaded(page, () => page.getByRole('button', { name: 'Price list as CSV' }).click());
  expect(list.text).toContain('item-stay');
  const changed = `name,price\r\nStay with block,33.50\r\nRock anchor,12\r\nBad one,cheap\r\n`;
  await page
    .getByLabel('Price list as CSV')
    .setInputFiles({ name: 'new.csv', mimeType: 'text/csv', buffer: Buffer.from(changed) });
  await expect(page.getByText('1 items that are in the list, 1 new ones')).toBeVisible();
  await expect(page.getByText(/Row 4 is left out/)).toBeVisible();
  await page.getByRole('button', { name: 'Import', exact: true }).click();
  await expect(page.getByText('Import new.csv. Saved.')).toBeVisible();
  await expect(page.getByLabel('Price of Stay with block')).toHaveValue('33.50');
  await page.keyboard.press('Control+z');
  await expect(page.getByLabel('Price of Stay with block')).toHaveValue('19.00');
});

test('two plans are weighed against each other, and the first is gone back to', async ({ app, page }) => {
  await app.openNew(things, 'Plan block');
  await openOrder(page);
  await register(page, 'Plans');
  await page.getByLabel('Keep the drawing as it stands, as').fill('With switch');
  await page.keyboard.press('Enter');
  await expect(page.getByText('Keep With switch. Saved.')).toBeVisible();
  const { things: present } = await app.file();
  const cutOut = present.find(({ id }) => id === 'S1')!;
  await app.project.apply({
    baseRevision: (await app.file()).state.revision,
    label: 'Take out the switch',
    changes: [{ kind: 'switch', id: 'S1', before: cutOut, after: null }],
  });
  const switches = page.getByRole('row', { name: /Cut-out switches/ });
  await expect(switches.getByRole('cell')).toHaveText(['0', '1']);
  await page.getByRole('button', { name: 'Go back to With switch' }).click();
  await expect(switches.getByRole('cell')).toHaveText(['1', '1']);
  expect((await app.file()).things.some(({ id }) => id === 'S1')).toBe(true);
});

test('no register of Order has a serious fault of access', async ({ app, page }) => {
  await app.openNew(things, 'Access block');
  await openOrder(page);
  for (const name of [
    'Quantities',
    'Goods and work',
    'Rolls and cuts',
    'Prices',
    'Stages',
    'Plans',
    'Counting rules',
  ]) {
    await register(page, name);
    const { violations } = await new AxeBuilder({ page }).analyze();
    const serious = violations.filter(({ impact }) => impact === 'serious' || impact === 'critical');
    expect(serious.map(({ id, nodes }) => `${name}: ${id} ${nodes[0]?.html}`)).toEqual([]);
  }
});
