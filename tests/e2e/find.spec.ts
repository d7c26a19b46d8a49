import { readFile } from 'node:fs/promises';
import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { newBuriedPoint, newCrossingRecord } from '../../core/model/recordDefaults.ts';
import type { Thing } from '../../core/model/things.ts';
import { type App, expect, test } from '../support/app.ts';
import { at, bridgedGateway, energiser, line, lineSwitch, property, strainer } from '../support/drawings.ts';

/** A fence of 400 m with three switches along it, so that it has four sections, and two gateways; one was taped. */
const things: Thing[] = [
  property(),
  line('F1', [
    [0, 0],
    [400, 0],
  ]),
  energiser('E1', [0, 0]),
  ...bridgedGateway('G1', 'F1', 50, { status: 'built' }),
  ...bridgedGateway('G2', 'F1', 250, { note: 'By the old yard.', status: 'built' }),
  lineSwitch('S1', 'F1', 100),
  lineSwitch('S2', 'F1', 200),
  lineSwitch('S3', 'F1', 300),
  strainer('P1', [55, 6]),
  {
    ...newBuriedPoint('bend', 'X-G1', 'bend'),
    side: 'left',
    ties: (['start', 'end'] as const).map((post) => ({
      from: { on: 'gatePost', gatewayId: 'G1', post },
      postName: '',
      postAt: at(post === 'start' ? [48, 0] : [52, 0]),
      distanceM: 2.4,
      seM: 0.01,
    })),
  },
];

async function openFind(app: App, page: Page, view?: string): Promise<void> {
  await app.openNew(things);
  await goToFind(page, view);
}

async function goToFind(page: Page, view?: string): Promise<void> {
  await page.getByRole('navigation', { name: 'Workspaces' }).waitFor();
  await page.keyboard.press('Alt+6');
  if (view) await page.getByRole('button', { name: view }).click();
}

test('a crossing is found by its name: which post, how far, which way, how sure; on one page', async ({
  app,
  page,
}) => {
  await openFind(app, page);
  await expect(page.getByText('2 crossings in the ground (1 partly measured, 1 not measured).')).toBeVisible();
  await page.getByLabel('Gateway, fence, or coordinates').fill('g1');
  await expect(page.getByRole('row')).toHaveCount(2);
  await page.getByRole('row', { name: /G1/ }).click();
  const found = page.getByRole('region', { name: 'To find the crossing at G1' });
  await expect(
    found.getByText('From the hinge post (west) 2.40 m, from the latch post (east) 2.40 m, on the north side: here.'),
  ).toBeVisible();
  await expect(found.getByText('Taped when it was recorded: within 0.0')).toBeVisible();
  await expect(found.getByRole('img', { name: 'Plan of the crossing at G1, north up' })).toContainText('2.40 m');
  await found.getByText('Step along the trench').click();
  await expect(found.getByRole('row', { name: /^2\.00 m 1\.3. m north/ })).toBeVisible();

  const download = page.waitForEvent('download');
  await found.getByRole('button', { name: 'Print on one page' }).click();
  const file = await download;
  expect(file.suggestedFilename()).toMatch(
    /^Test property crossing at G1 .*\.pdf$|^Invented test property crossing at G1 .*\.pdf$/,
  );
  const bytes = await readFile(await file.path());
  expect(bytes.subarray(0, 5).toString()).toBe('%PDF-');
});

test('crossings near a pasted place, the nearest first', async ({ app, page }) => {
  await openFind(app, page);
  const [lon, lat] = at([240, 0]);
  await page.getByLabel('Gateway, fence, or coordinates').fill(`geo:${lat.toFixed(6)},${lon.toFixed(6)}`);
  await expect(page.getByRole('row').nth(1)).toContainText('G2');
  await expect(page.getByRole('row').nth(1)).toContainText('10.0 m');
  await page.getByLabel('Gateway, fence, or coordinates').fill('nowhere at all');
  await expect(page.getByText('No gateway or fence is called that.')).toBeVisible();
});

test('before a dig: what may be hit, in words and red; what is not known is said', async ({ app, page }) => {
  await openFind(app, page, 'Check a dig');
  const [lon, lat] = at([250, 2]);
  await page.getByLabel('Coordinates of the dig').fill(`${lat.toFixed(6)}, ${lon.toFixed(6)}`);
  await page.getByRole('button', { name: 'Look here' }).click();
  const answer = page.locator('.dig-answer');
  await expect(answer).toContainText('Do not dig yet: crossing under G2 may lie in the dig.');
  await expect(page.getByText('May lie in the dig.').first()).toBeVisible();
  await expect(page.getByText('Only what is in this file is known.').first()).toBeVisible();

  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Print the dig sheet' }).click();
  expect((await download).suggestedFilename()).toMatch(/dig sheet .*\.pdf$/);

  const [farLon, farLat] = at([150, 90]);
  await page.getByLabel('Coordinates of the dig').fill(`${farLat.toFixed(6)}, ${farLon.toFixed(6)}`);
  await page.getByRole('button', { name: 'Look here' }).click();
  await expect(answer).toContainText('Nothing in this file is buried within 10.0 m of the dig.');
});

/** G3: both feet and the bend taped from the gate posts, the side of none said. G4 is only planned. */
const openThings: Thing[] = [
  ...things,
  ...bridgedGateway('G3', 'F1', 350, { status: 'built' }),
  ...bridgedGateway('G4', 'F1', 380),
  ...(
    [
      ['startFoot', 0.4, 4.37],
      ['bend', 2.5, 2.3],
      ['endFoot', 4.37, 0.4],
    ] as const
  ).map(([role, fromStart, fromEnd]) => ({
    ...newBuriedPoint(`G3-${role}`, 'X-G3', role),
    ties: (['start', 'end'] as const).map((post) => ({
      from: { on: 'gatePost', gatewayId: 'G3', post } as const,
      postName: '',
      postAt: at(post === 'start' ? [348, 0] : [352, 0]),
      distanceM: post === 'start' ? fromStart : fromEnd,
      seM: 0.02,
    })),
  })),
  { ...newCrossingRecord('X-G3'), depths: [{ alongM: 2, depthM: 0.1 }] },
];

test('a side that nobody said is two places: in the list, on the ground, and to a dig', async ({ app, page }) => {
  await app.openNew(openThings);
  await goToFind(page);
  await expect(
    page.getByText('3 crossings in the ground (1 partly measured, 1 side not said, 1 not measured), 1 planned.'),
  ).toBeVisible();
  await expect(page.getByRole('row', { name: /G4/ })).toContainText('Planned');
  await expect(page.getByRole('row', { name: /G3/ })).toContainText('Side not said');
  await page.getByRole('row', { name: /G3/ }).click();
  const found = page.getByRole('region', { name: 'To find the crossing at G3' });
  await expect(found.getByRole('note').first()).toContainText('bend: north side or south side');
  await expect(found.getByText('0.10 m deep to the top of the pipe, measured at one place.')).toBeVisible();
  await expect(found.getByText(/2\.50 m.* on the north side or on the south side: nobody said which\./)).toBeVisible();
  await expect(found.getByText(/^south side: /)).toHaveCount(3);
  await expect(found).not.toContainText('Measured: it lies');

  await page.getByRole('button', { name: 'Check a dig' }).click();
  const answer = page.locator('.dig-answer');
  for (const xy of [
    [350.12, 1.32],
    [350.12, -1.32],
  ] as const) {
    const [lon, lat] = at(xy);
    await page.getByLabel('Coordinates of the dig').fill(`${lat.toFixed(7)}, ${lon.toFixed(7)}`);
    await page.getByRole('button', { name: 'Look here' }).click();
    await page.getByLabel('Place within, 19 times in 20').fill('0.1');
    await page.getByLabel('Place within, 19 times in 20').press('Enter');
    await expect(answer).toContainText('Do not dig yet: crossing under G3 may lie in the dig.');
    await expect(page.locator('.dig-findings li.hit')).toContainText(
      '0.10 m deep to the top of the pipe, measured at one place',
    );
  }
  const [lon, lat] = at([380, 1]);
  await page.getByLabel('Coordinates of the dig').fill(`${lat.toFixed(7)}, ${lon.toFixed(7)}`);
  await page.getByRole('button', { name: 'Look here' }).click();
  await expect(answer).toContainText('Planned, not in the ground as far as this file knows: crossing under G4.');
  await expect(page.locator('.dig-findings li.planned')).toContainText('Planned here, not in the ground');
});

test('a dig is drawn by keyboard on the map', async ({ app, page }) => {
  await openFind(app, page, 'Check a dig');
  const [lon, lat] = at([50, 1]);
  await page.getByLabel('Coordinates of the dig').fill(`${lat.toFixed(6)}, ${lon.toFixed(6)}`);
  await page.getByRole('button', { name: 'Look here' }).click();
  await expect(page.locator('.dig-answer')).toBeVisible();
  await page.getByRole('button', { name: 'Clear' }).click();
  await page.getByRole('button', { name: 'Trench (T)' }).click();
  await page.keyboard.press('Enter');
  await page.keyboard.type('6');
  await page.keyboard.press('Tab');
  await page.keyboard.type('0');
  await page.keyboard.press('Enter');
  await page.keyboard.press('Enter');
  await expect(page.locator('.dig-answer')).toContainText('crossing under G1 may lie in the dig');
});

/** What the fence reads with a fault beyond S1 and short of S2, by which switch stands open. */
const good = /at S1, on the energiser/;

test('a fault is walked down to its section, over a restart, and kept', async ({ app, page }) => {
  await openFind(app, page, 'Find a fault');
  await expect(page.getByText('4 parts with switches between them: at most 2 tests')).toBeVisible();
  await expect(page.getByText(/^Usual at the energiser: \d\.\d kV, estimated with/)).toBeVisible();
  await page.getByRole('button', { name: 'Begin the search' }).click();
  await expect(page.locator('.fault-search-do')).toHaveText('Read at the energiser, on the wire that leads out.');
  await expect(page.getByText(/^Usual here: \d\.\d kV, estimated.*is low, from 6\.\d kV good\./)).toBeVisible();
  // Stock would be held by it, and yet it is about half of what is usual.
  await read(page, '4.6');
  await expect(page.locator('.fault-search-readings li')).toHaveText(
    /^At the energiser: 4\.6 kV, low \(usual \d\.\d kV, estimated\)$/,
  );
  await expect(page.locator('.fault-search-do')).toContainText('Open S2. Then read at S2, on the energiser’s side');
  await expect(page.getByText('At most 2 tests are left, 2.0 as a rule.')).toBeVisible();
  await read(page, '4700 V');

  await app.restart('kill');
  await page.getByRole('button', { name: /^Test property/ }).click();
  await goToFind(page, 'Find a fault');
  await expect(page.locator('.fault-search-do')).toContainText('Open S1. Then read at S1');
  await expect(page.getByText('S2 stays open. One test is left.')).toBeVisible();
  await read(page, '8.8');
  await expect(page.locator('.fault-search-do').first()).toHaveText('The fault is in section B.');
  await expect(page.getByText('Not made sure of yet')).toBeVisible();
  await makeSure(page);
  await expect(page.getByText('2 tests led here, and the readings made sure of it.')).toBeVisible();
  await page.getByLabel('What it was').fill('A branch on the wire.');
  await page.getByRole('button', { name: 'End the search', exact: true }).click();
  await expect(page.getByText(/: section B \(F1/)).toBeVisible();
  const search = (await app.file()).things.find(({ kind }) => kind === 'faultHunt');
  expect(search).toMatchObject({ end: { section: 'B', confirmed: true, cause: 'A branch on the wire.' } });
});

test('a doubtful answer that was wrong is named, repeated and put right', async ({ app, page }) => {
  await openFind(app, page, 'Find a fault');
  await page.getByRole('button', { name: 'Begin the search' }).click();
  await read(page, '1.1');
  // The fault lies beyond S3, yet the fence is taken for low with S2 open.
  await page.getByLabel('Reading', { exact: true }).fill('6,0');
  await page.getByRole('button', { name: 'Enter' }).click();
  await expect(page.getByText('6.0 kV is doubtful.')).toBeVisible();
  await page.getByRole('button', { name: 'Count it as low' }).click();
  await expect(page.locator('.fault-search-readings li')).toHaveCount(2);
  // S2 stays open, so that everything reads good from now on.
  await read(page, '8.8');
  await expect(page.locator('.fault-search-do').first()).toHaveText('The fault is in section B.');
  // To make sure: good without section B, as it ought to be; good with it too, as it ought not.
  await read(page, '8.8');
  await expect(page.getByText('It should read low.')).toBeVisible();
  await read(page, '8.8');
  await expect(page.getByText('The readings do not fit together')).toBeVisible();
  await expect(page.locator('.contradiction li').first()).toHaveText(/^S2: 6\.0 kV, low, doubtful \(usual \d\.\d kV/);
  await expect(page.getByText(/Repeat this one: .*read at S2/i)).toBeVisible();
  await read(page, '8.8');
  await expect(page.locator('.fault-search-do').first()).toContainText('Open S3, close S2. Then read at S3');
  await read(page, '8.8');
  await expect(page.locator('.fault-search-do').first()).toHaveText('The fault is in section D.');
});

async function read(page: Page, kilovolts: string): Promise<void> {
  const before = await page.locator('.fault-search-readings li').count();
  await page.getByLabel('Reading', { exact: true }).fill(kilovolts);
  await page.getByRole('button', { name: 'Enter' }).click();
  await expect(page.locator('.fault-search-readings li')).toHaveCount(before + 1);
}

/** Answers the readings at the end as a fault in section B has them. */
async function makeSure(page: Page): Promise<void> {
  for (let n = 0; n < 2; n++) {
    const step = (await page.getByText(/^To make sure:/).textContent()) ?? '';
    await read(page, good.test(step) ? '8.8' : '1.2');
  }
}

test('the file for the phone opens without any network, and is searched', async ({ app, page, browser }, info) => {
  await openFind(app, page, 'Take along');
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Make the file for the phone' }).click();
  const path = info.outputPath('phone.html');
  await (await download).saveAs(path);

  const phone = await browser.newContext({ viewport: { width: 390, height: 800 }, hasTouch: true, isMobile: true });
  await phone.setOffline(true);
  const asked: string[] = [];
  const screen = await phone.newPage();
  screen.on('request', (request) => asked.push(request.url()));
  const faults: string[] = [];
  screen.on('console', (message) => message.type() === 'error' && faults.push(message.text()));
  await screen.goto(`file://${path}`);
  await expect(screen.getByRole('heading', { name: 'Crossings in the ground (2)' })).toBeVisible();
  await screen.getByLabel('Search crossings and switches').fill('old yard');
  await expect(screen.locator('.card:visible')).toHaveCount(1);
  await screen.getByText('Find it').locator('visible=true').click();
  await expect(screen.getByRole('img', { name: 'Plan of the crossing at G2, north up' })).toBeVisible();
  await screen.getByLabel('Search crossings and switches').fill('nothing like it');
  await expect(screen.getByRole('status')).toHaveText('Nothing has all these words.');
  await screen.getByLabel('Search crossings and switches').fill('');
  await screen.getByRole('button', { name: 'Larger map' }).click();
  expect(await screen.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
  expect(asked.filter((url) => !url.startsWith('file:') && !url.startsWith('data:'))).toEqual([]);
  expect(faults).toEqual([]);
  const { violations } = await new AxeBuilder({ page: screen }).analyze();
  expect(violations.filter(({ impact }) => impact === 'serious' || impact === 'critical')).toEqual([]);
  await phone.close();
});

for (const theme of ['light', 'dark'] as const) {
  test(`no serious fault of accessibility in Find, ${theme}`, async ({ app, page }) => {
    test.slow();
    await page.emulateMedia({ colorScheme: theme });
    await openFind(app, page);
    await page.getByRole('row', { name: /G1/ }).click();
    await page.getByText('Step along the trench').click();
    await expectAccessible(page, 'crossings');
    await page.getByRole('button', { name: 'What else lies here' }).click();
    await expectAccessible(page, 'dig');
    await page.getByRole('button', { name: 'Find a fault' }).click();
    await expectAccessible(page, 'begin');
    await page.getByLabel('Judge a reading by').selectOption('Limits of my own');
    await page.getByRole('button', { name: 'Begin the search' }).click();
    await read(page, '1');
    await page.getByLabel('Reading', { exact: true }).fill('3.5');
    await page.getByRole('button', { name: 'Enter' }).click();
    await expect(page.getByText('is doubtful.')).toBeVisible();
    await expectAccessible(page, 'walk');
    await page.getByRole('button', { name: 'Count it as low' }).click();
    await expect(page.locator('.fault-search-readings li')).toHaveCount(2);
    await read(page, '8.8');
    await expectAccessible(page, 'found');
    await page.getByRole('button', { name: 'Take along' }).click();
    await expectAccessible(page, 'take along');
  });
}

async function expectAccessible(page: Page, where: string): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  const serious = violations.filter(({ impact }) => impact === 'serious' || impact === 'critical');
  const words = serious.map(({ id, nodes }) => `${where}: ${id}: ${nodes.map(({ html }) => html).join(' | ')}`);
  expect(words).toEqual([]);
}
