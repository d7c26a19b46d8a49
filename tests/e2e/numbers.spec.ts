import type { Page } from '@playwright/test';
import { projectOf, propertyOf } from '../../core/model/project.ts';
import { expect, test } from '../support/app.ts';
import { ring } from '../support/drawings.ts';

const things = [
  ring('F1', [
    [0, 0],
    [1200, 0],
    [1200, 400],
    [0, 400],
  ]),
];

const limit = (page: Page) => page.getByLabel('Longest section, of fence', { exact: true });

async function toLimits(page: Page): Promise<void> {
  await page.keyboard.press('Alt+2');
  await page.getByRole('button', { name: 'Limits' }).click();
}

async function leave(page: Page): Promise<void> {
  await page.keyboard.press('Enter');
}

test('numbers are typed with units and in the habits of the place, and shown so after a restart', async ({
  app,
  page,
}) => {
  await app.openNew(things, 'Figures');
  await toLimits(page);
  const length = limit(page);
  await length.fill('1.2 km');
  await expect(page.getByText('= 1,200 m')).toBeVisible();
  await leave(page);
  await expect(length).toHaveValue('1200');
  await length.fill('1,250');
  await expect(page.getByText('= 1,250 m')).toBeVisible();
  await leave(page);
  await expect(length).toHaveValue('1250');

  await page.keyboard.press('Alt+0');
  await page.getByLabel('Numbers and dates').selectOption('de-DE');
  await expect(page.getByLabel('Numbers and dates')).toHaveValue('de-DE');
  await toLimits(page);
  // A section of 1.234 m is none, so that there is nothing to ask.
  await length.fill('1.234');
  await expect(page.getByText('= 1.234 m')).toBeVisible();
  await leave(page);
  await expect(length).toHaveValue('1234');
  await length.fill('1.500,5');
  await leave(page);
  await expect(length).toHaveValue('1500,5');
  const maxSectionM = async () => propertyOf(projectOf((await app.file()).things)).divide.maxSectionM;
  await expect.poll(maxSectionM).toBe(1500.5);

  // Leaving the field as it is changes nothing; the setting outlives the app.
  await length.focus();
  await leave(page);
  await expect.poll(async () => (await app.project.windowSettings()).ok).toBe(true);
  await expect
    .poll(async () => {
      const kept = await app.project.windowSettings();
      return kept.ok ? kept.value.locale : null;
    })
    .toBe('de-DE');
  await app.restart();
  await page.getByRole('button', { name: /^Figures/ }).click();
  await page.getByRole('button', { name: 'Divide', exact: true }).waitFor();
  await toLimits(page);
  await expect(limit(page)).toHaveValue('1500,5');
});
