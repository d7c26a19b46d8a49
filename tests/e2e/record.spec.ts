import { crc32, deflateSync } from 'node:zlib';
import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import type { BuriedPoint, Photo } from '../../core/model/recordThings.ts';
import { expect, test } from '../support/app.ts';

/** A plain grey PNG of this size (ISO/IEC 15948), for a camera's picture. */
function greyPng(widthPx: number, heightPx: number): Buffer {
  const chunk = (type: string, data: Buffer) => {
    const body = Buffer.concat([Buffer.from(type, 'latin1'), data]);
    const [length, check] = [Buffer.alloc(4), Buffer.alloc(4)];
    length.writeUInt32BE(data.length);
    check.writeUInt32BE(crc32(body));
    return Buffer.concat([length, body, check]);
  };
  const head = Buffer.alloc(13);
  head.writeUInt32BE(widthPx, 0);
  head.writeUInt32BE(heightPx, 4);
  head.set([8, 0, 0, 0, 0], 8);
  const rows = Buffer.alloc((widthPx + 1) * heightPx, 0x80);
  for (let row = 0; row < heightPx; row++) rows[row * (widthPx + 1)] = 0;
  const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
  return Buffer.concat([
    signature,
    chunk('IHDR', head),
    chunk('IDAT', deflateSync(rows)),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

/** Opens Record by its key, once the window is there to hear it. */
async function openRecord(page: Page): Promise<void> {
  await expect(page.getByRole('button', { name: 'Record', exact: true })).toBeVisible();
  await page.keyboard.press('Alt+5');
}

/** Opens Record and chooses the crossing at a gateway. */
async function chooseCrossing(page: Page, name: string): Promise<void> {
  await openRecord(page);
  await page
    .locator('.register tbody tr')
    .filter({ hasText: new RegExp(`^${name}(built|planned)`) })
    .click();
  await expect(page.getByRole('heading', { name: `Gateway ${name}` })).toBeVisible();
}

const register = (page: Page, name: string) =>
  page.getByRole('navigation', { name: 'Registers' }).getByRole('button', { name, exact: true }).click();

const part = (page: Page, name: string) =>
  page.getByRole('navigation', { name: 'Parts of the record' }).getByRole('button', { name, exact: true }).click();

test('a crossing is recorded by tape, and found again after a restart', async ({ app, page }) => {
  await app.openDemo();
  await chooseCrossing(page, 'G12');
  await page.getByRole('combobox', { name: 'Point', exact: true }).selectOption('bend');
  await expect(page.getByText('No tie yet.')).toBeVisible();
  await expect(page.getByText('Best posts to tape from')).toBeVisible();
  const tape = async (post: string, metres: string) => {
    const option = page
      .getByLabel('Tape from')
      .locator('option')
      .filter({ hasText: `${post} of G12` });
    await page.getByLabel('Tape from').selectOption((await option.getAttribute('value'))!);
    await page.getByLabel('Tape reads').fill(metres);
    await page.getByLabel('Tape reads').press('Enter');
  };
  await tape('hinge post', '2.55');
  await expect(page.getByText('One tie only')).toBeVisible();
  await tape('latch post', '2.41');
  // Two places fit: it is asked first and loudest, in compass words.
  const asked = page.getByRole('alert').filter({ hasText: 'Which side: ' });
  await expect(asked).toContainText('Nobody said which');
  await asked.getByRole('button').nth(1).click();
  await expect(asked).toBeHidden();
  await expect(page.getByText(/^Within 0\.\d\d m, 19 times in 20\.$/)).toBeVisible();
  await expect(page.getByLabel('On which side of the line of the posts it lies')).toBeVisible();
  const bends = (await app.file()).things.filter(
    (thing): thing is BuriedPoint => thing.kind === 'buriedPoint' && thing.role === 'bend',
  );
  expect(bends.at(-1)!.ties.map(({ distanceM }) => distanceM)).toEqual([2.55, 2.41]);
  expect(bends.at(-1)!.side).not.toBeNull();

  await app.restart();
  await page
    .getByRole('button', { name: /^Demo property/ })
    .first()
    .click();
  await chooseCrossing(page, 'G12');
  await page.getByRole('combobox', { name: 'Point', exact: true }).selectOption('bend');
  await expect(page.getByText(/^Within 0\.\d\d m, 19 times in 20\.$/)).toBeVisible();
});

test('tapes that can not meet: it is said which is wrong', async ({ app, page }) => {
  await app.openDemo();
  await chooseCrossing(page, 'G2');
  await page.getByRole('combobox', { name: 'Point', exact: true }).selectOption('bend');
  await page.getByLabel('Tape', { exact: true }).first().fill('0.30');
  await page.getByLabel('Tape', { exact: true }).first().press('Enter');
  await expect(page.getByText('shorter than the posts are apart')).toBeVisible();
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(page.getByText('shorter than the posts are apart')).toBeHidden();
});

test('joints underground are warned of', async ({ app, page }) => {
  await app.openDemo();
  await chooseCrossing(page, 'G2');
  await part(page, 'Trench and cable');
  await page.getByLabel('Cable joints underground').fill('2');
  await page.getByLabel('Cable joints underground').press('Enter');
  await expect(page.getByRole('note').filter({ hasText: 'A joint underground' })).toBeVisible();
  await page.getByRole('button', { name: 'Done', exact: true }).click();
  await expect(page.locator('.register tbody tr').filter({ hasText: /^G2built/ })).toContainText('! 2');
});

test('a photo is made small, kept in the file, deleted and brought back', async ({ app, page }) => {
  await app.openDemo();
  await chooseCrossing(page, 'G3');
  await part(page, 'Photos');
  const details = page.getByRole('region', { name: 'Details: Gateway G3' });
  await details.locator('input[type=file]').setInputFiles({
    name: 'trench.png',
    mimeType: 'image/png',
    buffer: greyPng(3200, 2400),
  });
  const picture = details.getByRole('img', { name: 'trench.png' });
  await expect(picture).toBeVisible();
  const [photo] = (await app.file()).things.filter((thing): thing is Photo => thing.kind === 'photo');
  expect(photo).toMatchObject({ widthPx: 1600, heightPx: 1200, takenAt: null, fileName: 'trench.png' });
  const kept = await app.project.photoBytes({ blobIds: [photo!.blobId, photo!.thumbId] });
  expect(kept.ok && kept.value.every((bytes) => bytes?.[0] === 0xff && bytes[1] === 0xd8)).toBe(true);

  await details.getByRole('button', { name: 'Delete the photo' }).click();
  await expect(picture).toBeHidden();
  await page.keyboard.press('Control+z');
  await expect(picture).toBeVisible();
  await app.restart();
  await page
    .getByRole('button', { name: /^Demo property/ })
    .first()
    .click();
  await openRecord(page);
  await register(page, 'Photos');
  await expect(page.getByRole('img', { name: 'trench.png' })).toBeVisible();
});

test('a file that is no picture is refused in words', async ({ app, page }) => {
  await app.openDemo();
  await openRecord(page);
  await register(page, 'Photos');
  const file = { name: 'notes.jpg', mimeType: 'image/jpeg', buffer: Buffer.from('not a picture') };
  await page.getByLabel('Photos of the property', { exact: true }).and(page.locator('input')).setInputFiles(file);
  await expect(page.getByText('notes.jpg is no picture that can be read here.')).toBeVisible();
});

test('the test run leads from section to section and keeps what was read', async ({ app, page }) => {
  await app.openDemo();
  await openRecord(page);
  await register(page, 'Test run');
  await expect(page.getByRole('heading', { name: 'Section C' })).toBeVisible();
  const reading = page.getByLabel(/^Read /).first();
  await expect(
    page.getByText(/^Usual here: 8\.\d kV, estimated with .* off; under 4\.9 kV is low/).first(),
  ).toBeVisible();
  // It would hold the stock, and is half of what it should be.
  await reading.fill('4.1');
  await reading.press('Enter');
  await expect(page.getByText('A reading is low for its place')).toBeVisible();
  await reading.fill('5.5');
  await reading.press('Enter');
  await expect(page.getByText('A reading is less than it should be there')).toBeVisible();
  await reading.fill('3.1');
  await reading.press('Enter');
  await expect(page.getByText('look for the fault before you hand it over')).toBeVisible();
  await reading.fill('6.4');
  await reading.press('Enter');
  await expect(page.getByText('it holds the stock')).toBeVisible();
  await page.getByRole('button', { name: 'Passed, next section' }).click();
  await expect(page.getByRole('heading', { name: 'Section D' })).toBeVisible();
  const run = (await app.file()).things.find(({ kind }) => kind === 'testRun');
  expect(run).toMatchObject({ results: expect.arrayContaining([{ section: 'C', outcome: 'passed', note: '' }]) });
  const readings = (await app.file()).things.filter((thing) => thing.kind === 'reading' && thing.section === 'C');
  expect(readings).toMatchObject([{ voltageV: 6400, runId: run!.id, yardstick: { by: 'estimate', lowBelowV: 4900 } }]);
});

test('an earth test is kept with its verdict', async ({ app, page }) => {
  await app.openDemo();
  await openRecord(page);
  await register(page, 'Earth test');
  await page.getByLabel('At the last rod').fill('350');
  await page.getByLabel('At the last rod').press('Enter');
  await expect(page.getByText('Add rods and test again.').first()).toBeVisible();
  await page.getByRole('button', { name: 'Write it down' }).click();
  await expect(page.getByText('350 V. Add rods and test again.')).toBeVisible();
});

test('what is built otherwise than planned, and changed since the handover, is listed; the pack is made', async ({
  app,
  page,
}) => {
  await app.openDemo();
  await openRecord(page);
  await register(page, 'Planned and built');
  await expect(page.locator('table').filter({ hasText: 'Differences from the plan' })).toContainText('crossing at G1');
  await page.getByRole('button', { name: /^Mark all \d+ planned built$/ }).click();
  await expect(page.getByText('Mark all 0 planned built')).toBeVisible();

  await register(page, 'Hand over');
  await page.getByLabel('Taken over by').fill('the owner');
  await page.getByLabel('Taken over by').press('Enter');
  await page.getByRole('button', { name: 'Lock this handover' }).click();
  await expect(page.getByText('Nothing has changed since.')).toBeVisible();
  const { things, state } = await app.file();
  const cutOut = things.find((thing) => thing.kind === 'switch' && thing.name === 'S4')!;
  const changes = [
    { kind: cutOut.kind, id: cutOut.id, before: cutOut, after: { ...cutOut, normally: 'open' as const } },
  ];
  await app.project.apply({ baseRevision: state.revision, label: 'Open S4', changes: changes as never });
  await expect(page.getByText('cut-out switch S4: normally On, now Off')).toBeVisible();

  const download = page.waitForEvent('download');
  await page.keyboard.press('Control+Shift+p');
  await page.getByRole('dialog').getByLabel('Map sheets at true scale').uncheck();
  await page.getByRole('dialog').getByRole('button', { name: 'Make the PDF' }).click();
  expect((await download).suggestedFilename()).toMatch(/^Demo property handover pack \d{4}-\d\d-\d\d\.pdf$/);
});

test('no page of Record has a serious accessibility problem', async ({ app, page }) => {
  test.slow();
  await app.openDemo();
  await chooseCrossing(page, 'G5');
  const serious = async () => {
    const { violations } = await new AxeBuilder({ page }).analyze();
    return violations
      .filter(({ impact }) => impact === 'serious' || impact === 'critical')
      .map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`);
  };
  for (const name of ['Where it lies', 'Depths', 'Trench and cable', 'Built']) {
    await part(page, name);
    expect(await serious()).toEqual([]);
  }
  await page.getByRole('button', { name: 'Done', exact: true }).click();
  for (const name of ['Planned and built', 'Test run', 'Readings', 'Earth test', 'Photos', 'Hand over']) {
    await register(page, name);
    expect(await serious()).toEqual([]);
  }
});
