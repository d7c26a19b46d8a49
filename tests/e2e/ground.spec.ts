import type { Page } from '@playwright/test';
import type { InGround } from '../../core/model/inGroundThings.ts';
import { allThings, propertyOf, put } from '../../core/model/project.ts';
import type { Gateway } from '../../core/model/things.ts';
import type { Units } from '../../core/words/numbers/write.ts';
import { type App, expect, test } from '../support/app.ts';
import { drawingWithLeft, recordedDrawing } from '../support/recordedDrawing.ts';

/** Opens an invented property with recorded crossings, and chooses gateway G1 in Draw. */
async function chooseG1(app: App, page: Page, units: Units = 'metric'): Promise<void> {
  const drawing = recordedDrawing();
  await app.openNew([...allThings(put(drawing, { ...propertyOf(drawing), units }))]);
  await page
    .getByRole('navigation', { name: 'Registers' })
    .getByRole('button', { name: /^Gateways/ })
    .click();
  await page.locator('.register tbody tr').filter({ hasText: /^G1/ }).click();
  await expect(page.getByRole('heading', { name: 'Gateway G1' })).toBeVisible();
}

const inFile = async <K extends 'inGround' | 'gateway'>(app: App, kind: K) =>
  (await app.file()).things.filter((thing): thing is (InGround | Gateway) & { kind: K } => thing.kind === kind);

test('deleting a gateway with a recorded crossing asks, keeps it by default, and undoes in one step', async ({
  app,
  page,
}) => {
  await chooseG1(app, page);
  await page.keyboard.press('Control+Delete');
  const dialog = page.getByRole('dialog', { name: /in the ground/ });
  await expect(dialog.getByText(/The crossing under G1 \(built 2025-02-11, 3 points measured/)).toBeVisible();
  await expect(dialog.getByRole('radio').first()).toBeChecked();
  await dialog.getByRole('button', { name: 'Cancel' }).last().click();
  await expect(page.getByText('cancelled, nothing was changed')).toBeVisible();
  expect((await inFile(app, 'gateway')).some(({ name }) => name === 'G1')).toBe(true);

  await page.keyboard.press('Control+Delete');
  await dialog.getByRole('button', { name: 'Continue' }).click();
  await expect(page.getByText('Delete G1. Saved.')).toBeVisible();
  expect((await inFile(app, 'gateway')).some(({ name }) => name === 'G1')).toBe(false);
  expect(await inFile(app, 'inGround')).toMatchObject([{ name: 'old crossing under G1', fate: 'inUse' }]);

  await page.keyboard.press('Control+z');
  await expect(page.getByText(/Undone: Delete G1/)).toBeVisible();
  expect(await inFile(app, 'inGround')).toEqual([]);
  expect((await inFile(app, 'gateway')).some(({ name }) => name === 'G1')).toBe(true);
});

test('widening one asks whether it was really done, or the drawing is put right', async ({ app, page }) => {
  await chooseG1(app, page);
  const width = page.getByLabel('Width, post to post');
  await width.fill('5');
  await width.press('Enter');
  const dialog = page.getByRole('dialog', { name: /in the ground/ });
  await expect(dialog.getByText(/a post of the gate moves 0\.50 m/)).toBeVisible();
  await dialog.getByText('It stays in the ground, cut off at both ends').click();
  await dialog.getByRole('button', { name: 'Continue' }).click();
  await expect(page.getByText(/Change the width of G1\. Saved/)).toBeVisible();
  expect(await inFile(app, 'inGround')).toMatchObject([{ fate: 'dead' }]);
  await app.restart();
  await page
    .getByRole('button', { name: /^Test property/ })
    .first()
    .click();
  await page.locator('.leaflet-container').waitFor();
  expect((await inFile(app, 'inGround')).length).toBe(1);
});

test('a crossing whose gate was widened is found from where the posts stood, in Find and in Record', async ({
  app,
  page,
}) => {
  await chooseG1(app, page);
  const width = page.getByLabel('Width, post to post');
  await width.fill('6');
  await width.press('Enter');
  await page
    .getByRole('dialog', { name: /in the ground/ })
    .getByRole('button', { name: 'Continue' })
    .click();
  await expect(page.getByText(/Change the width of G1\. Saved/)).toBeVisible();
  await page.getByRole('button', { name: 'Find', exact: true }).click();
  const found = page.getByRole('region', { name: 'To find the crossing at G1' });
  await expect(found.getByText(/posts are drawn up to 1\.00 m from where they stood when it was dug/)).toBeVisible();
  await expect(
    found.getByText(/From the old hinge post \(west\) \(stood 1\.00 m from where it is drawn now\) 2\.33 m/),
  ).toBeVisible();
  await expect(found.getByText(/From posts as they are drawn now, worked out: .*post P1 6\.93 m/)).toBeVisible();

  await page.getByRole('button', { name: 'Record', exact: true }).click();
  await expect(page.getByText('hinge post of G1 (stood 1.00 m from where it is drawn now)')).toBeVisible();
  await expect(page.getByText(/This tape counts from where the post stood/).first()).toBeVisible();
});

test('Escape leaves the edit, and what only stands nearby is not asked about', async ({ app, page }) => {
  await chooseG1(app, page);
  await page.getByLabel('Name', { exact: true }).first().fill('Main gate');
  await page.getByLabel('Name', { exact: true }).first().press('Enter');
  await expect(page.getByRole('heading', { name: 'Gateway Main gate' })).toBeVisible();
  await page.getByLabel('Width, post to post').fill('6');
  await page.getByLabel('Width, post to post').press('Enter');
  await expect(page.getByRole('dialog')).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(page.getByRole('dialog')).toBeHidden();
  await expect(page.getByLabel('Width, post to post')).toHaveValue('4');
});

test('what is left is found again: in the list, on its sheet, in the dig check; its fate can be changed', async ({
  app,
  page,
}) => {
  const project = drawingWithLeft();
  await app.openNew([...allThings(project)]);
  await page.getByRole('button', { name: 'Find', exact: true }).click();
  await page.locator('.register tbody tr').filter({ hasText: 'Old crossing under G1' }).click();
  await expect(page.getByRole('heading', { name: 'Old crossing under G1' })).toBeVisible();
  await expect(page.getByText('It was left in the ground, cut off at both ends as recorded')).toBeVisible();
  await page.getByRole('button', { name: 'What else lies here' }).click();
  await expect(page.getByText(/Do not dig yet: old crossing under G1/)).toBeVisible();

  await page.getByRole('button', { name: 'Crossings', exact: true }).click();
  await page.locator('.register tbody tr').filter({ hasText: 'Old lead-out L1' }).click();
  await expect(page.getByText('nobody has said that it is cut off: take it for live')).toBeVisible();
  await page.getByLabel('What has become of it').selectOption('takenOut');
  await expect(page.getByText('It was taken out of the ground, as recorded.')).toBeVisible();
  await page.getByRole('button', { name: 'Delete this record' }).click();
  const dialog = page.getByRole('dialog', { name: 'This record is of something in the ground' });
  await expect(dialog.getByRole('radio').first()).toBeChecked();
  await dialog.getByText('It was never there: the record is a mistake').click();
  await dialog.getByRole('button', { name: 'Continue' }).click();
  await expect(page.getByText(/Delete the record of the old lead-out L1\. Saved/)).toBeVisible();
  expect((await inFile(app, 'inGround')).map(({ name }) => name)).toEqual([
    'old earth stakes of E1',
    'old crossing under G1',
  ]);
});

test('an assumed bow stands in its field in the units that it is typed in', async ({ app, page }) => {
  await chooseG1(app, page, 'imperial');
  const { widthM } = (await inFile(app, 'gateway')).find(({ name }) => name === 'G1') as Gateway;
  const bowM = widthM * propertyOf(recordedDrawing()).crossings.bowShare;
  await expect(page.getByLabel('Curve: most off the straight')).toHaveAttribute(
    'placeholder',
    (bowM / 0.3048).toFixed(2),
  );
});
