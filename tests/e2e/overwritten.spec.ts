import { copyFileSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { newFenceLine } from '../../core/model/defaults.ts';
import { expect, test } from '../support/app.ts';

const line = newFenceLine({
  id: 'f1',
  name: 'Lane',
  typeId: 'ft-2',
  path: [
    [0, 0],
    [0.001, 0],
  ],
});

test('a copy laid over the open file is told of, stays as it is, and all on the screen can be saved', async ({
  app,
  page,
}) => {
  const path = await app.openNew();
  const older = join(app.home, 'older.undergate');
  copyFileSync(path, older);
  await app.addThings([line]);
  await page.reload();
  await expect(page).toHaveTitle(/Test property/);
  copyFileSync(older, path);

  const told = page.getByRole('alert');
  await expect(told).toContainText(`Another program wrote into ${path} while it was open here`);
  await told.getByRole('button', { name: 'Close' }).click();
  await expect(page.locator('.last-line')).toContainText('Nothing is saved any more');

  await page.keyboard.press('Control+Shift+S');
  await page.getByLabel('Name of the property').fill('Rescued');
  await page.getByRole('button', { name: 'Save the copy' }).click();
  await expect(page).toHaveTitle(/Rescued/);
  await expect(told).toContainText('holds all that was drawn and recorded');
  await expect(page.locator('.last-line')).toContainText('From now on changes go into the copy');
  expect((await app.file()).things).toContainEqual(line);
  expect(readFileSync(path).equals(readFileSync(older))).toBe(true);
});

test('leaving the file by opening it again keeps what was on the screen beside it', async ({ app, page }) => {
  const path = await app.openNew();
  const older = join(app.home, 'older.undergate');
  copyFileSync(path, older);
  await app.addThings([line]);
  copyFileSync(older, path);
  await expect(page.getByRole('alert')).toContainText('Another program wrote into');
  expect((await app.project.open({ path })).ok).toBe(true);
  await expect(page.getByRole('alert')).toContainText(
    `What you saw is kept in ${path.replace('property', 'property.kept')}`,
  );
  expect((await app.project.open({ path: path.replace('property', 'property.kept') })).ok).toBe(true);
  expect((await app.file()).things).toContainEqual(line);
});
