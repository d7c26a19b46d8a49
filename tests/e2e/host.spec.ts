import { newFenceLine } from '../../core/model/defaults.ts';
import { expect, test } from '../support/app.ts';

test('the page loads under its content policy, without a word on the console', async ({ app, page }) => {
  const words: string[] = [];
  page.on('console', (message) => words.push(message.text()));
  page.on('pageerror', (error) => words.push(error.message));
  await app.openNew();
  await expect(page).toHaveTitle(/Test property/);
  expect(words).toEqual([]);
});

test('the token is not left in the address, and the page can be loaded anew', async ({ app, page }) => {
  await app.openNew();
  await expect(page).toHaveTitle(/Test property/);
  expect(page.url()).not.toContain('token');
  await page.reload();
  await expect(page).toHaveTitle(/Test property/);
});

test('what was saved is there after a power cut', async ({ app, page }) => {
  const line = newFenceLine({
    id: 'f1',
    name: 'Lane',
    typeId: 'ft-2',
    path: [
      [0, 0],
      [0.001, 0],
    ],
  });
  const path = await app.openNew([line]);
  await app.restart('kill');
  expect((await app.project.open({ path })).ok).toBe(true);
  expect((await app.file()).things).toContainEqual(line);
  await page.reload();
  await expect(page).toHaveTitle(/Test property/);
});
