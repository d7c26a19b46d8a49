import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import type { Reading } from '../../core/model/things.ts';
import { type App, expect, test } from '../support/app.ts';

const register = (page: Page, name: string) =>
  page.getByRole('navigation', { name: 'Registers' }).getByRole('button', { name, exact: true }).click();

const inspector = (page: Page) => page.getByRole('complementary', { name: 'Inspector' });

/** Opens the demo property and, once it is there, the page that a key leads to. */
async function openDemoAt(app: App, page: Page, key: string): Promise<void> {
  await app.openDemo();
  await expect(inspector(page)).toBeVisible();
  await page.keyboard.press(key);
}

/** The page's answer: kilovolts at the weakest place. */
async function weakestKv(page: Page): Promise<number> {
  const answer = page.getByRole('status').filter({ hasText: /weakest place about/i });
  return Number(/about ([\d.]+) kV/.exec((await answer.textContent()) ?? '')![1]);
}

test('says where the fence is weakest, and more growth makes it weaker', async ({ app, page }) => {
  await openDemoAt(app, page, 'Alt+3');
  const answer = page.getByRole('status').filter({ hasText: 'Weakest place about' });
  await expect(answer).toContainText(/Weakest place about \d\.\d kV at the .* \(estimate\); 4\.0 kV holds the stock\./);
  const light = await weakestKv(page);

  await register(page, 'Stock, growth, wire');
  await page.getByLabel('Grass and weeds on the wires, on the whole property').selectOption('Heavy growth');
  await expect(page.getByText('Change the growth. Saved.')).toBeVisible();
  expect(await weakestKv(page)).toBeLessThan(light);
  await expect(page.getByText('of fence reads less')).toBeVisible();

  await register(page, 'What would raise the voltage');
  const best = page.getByRole('table').getByRole('row').nth(1);
  await expect(best).toContainText('Growth cleared on all fence');
  await expect(best).toContainText(/\+\d\.\d kV/);

  await register(page, 'Profile');
  const place = page.getByRole('slider', { name: 'Read along the way' });
  await place.press('Home');
  await expect(place).toHaveAttribute('aria-valuetext', /^0\.00 m from the energiser: about \d\.\d kV$/);
  await page.getByText('The same as a table').click();
  await expect(page.getByRole('row', { name: /the weakest place/ })).toBeVisible();
});

test('a switch opened to see what it would do changes nothing in the file', async ({ app, page }) => {
  await openDemoAt(app, page, 'Alt+3');
  const { revision } = (await app.file()).state;
  await page.getByLabel('Show', { exact: true }).selectOption('With S3 off');
  await expect(page.getByRole('status').filter({ hasText: /^With S3 off: weakest place/ })).toBeVisible();
  await register(page, 'Fences');
  await expect(page.getByRole('row', { name: /^West 2/ })).toContainText('0 V, dead');

  await register(page, 'Switches');
  await page.getByRole('button', { name: 'Show it with S1 off' }).click();
  await expect(page.getByRole('status').filter({ hasText: 'With S1 off: no fence is live.' })).toBeVisible();
  await page.getByLabel('Show', { exact: true }).selectOption('All switches on');
  await expect(page.getByRole('status').filter({ hasText: 'Weakest place about' })).toBeVisible();
  expect((await app.file()).state.revision).toBe(revision);
});

test('a reading is written down at a switch, laid beside its estimate, and is there after a restart', async ({
  app,
  page,
}) => {
  await openDemoAt(app, page, 'Alt+3');
  await register(page, 'Readings');
  await page.getByLabel('Place', { exact: true }).selectOption('S4');
  await page.getByLabel('Day').fill('2026-04-02');
  await page.getByLabel('Reading', { exact: true }).fill('6.2');
  await page.getByRole('button', { name: 'Write the reading down' }).click();
  await expect(page.getByText('Write down a reading at S4. Saved.')).toBeVisible();
  const row = page.getByRole('row', { name: /^S4 ?2 April 2026/ });
  await expect(row).toContainText('6.2 kV');
  await expect(page.getByLabel('Readings of')).toHaveValue('2026-04-02');
  await expect(page.getByText('Fitted to 1 reading by least squares')).toBeVisible();
  await page.getByLabel('Readings of').selectOption('All of them together');
  await expect(page.getByText(/^Fitted to \d+ readings by least squares/)).toBeVisible();

  const readings = (await app.file()).things.filter((thing): thing is Reading => thing.kind === 'reading');
  expect(readings.find(({ date }) => date === '2026-04-02')).toMatchObject({ voltageV: 6200, openSwitchIds: [] });
  await app.restart();
  await page.getByRole('button', { name: /Demo/ }).first().click();
  await expect(inspector(page)).toBeVisible();
  await page.keyboard.press('Alt+3');
  await register(page, 'Readings');
  await expect(row).toContainText('6.2 kV');
});

test('own wire, earth stakes for a target, an earth test: each is kept', async ({ app, page }) => {
  await openDemoAt(app, page, 'Alt+3');
  await register(page, 'Stock, growth, wire');
  await page.getByRole('button', { name: 'Enter a conductor' }).click();
  await page
    .getByRole('region', { name: /^Details/ })
    .getByLabel('Resistance')
    .fill('12.5');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('row', { name: /Own conductor/ })).toContainText('13');
  await page.getByRole('button', { name: 'Done' }).click();

  await register(page, 'Earth');
  await page.getByLabel('Bring it down to').fill('8');
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: /^Plan \d+ rods$/ }).click();
  await expect(page.getByText('Change the earth stakes. Saved.')).toBeVisible();
  await page.getByLabel('Read at the last rod').fill('340');
  await page.keyboard.press('Enter');
  await expect(page.getByText('Add rods and test again: over 300 V.')).toBeVisible();
  await page.getByRole('button', { name: 'Write it down' }).click();
  await expect(page.getByRole('listitem').filter({ hasText: /: 340 V\. Add rods/ })).toBeVisible();
  const { things } = await app.file();
  expect(things).toContainEqual(expect.objectContaining({ kind: 'conductor', ohmPerKm: 12.5 }));
  expect(things).toContainEqual(expect.objectContaining({ kind: 'earthTest', earthV: 340 }));
});

test('a ring switch stood open in Divide feeds every section one way', async ({ app, page }) => {
  await openDemoAt(app, page, 'Alt+2');
  const rings = page.getByRole('region', { name: 'Rings' });
  await register(page, 'Switches');
  const ringRow = page.getByRole('row').filter({ hasText: 'both sides: ' }).first();
  await expect(ringRow).toContainText('nothing alone');
  await expect(page.getByRole('row').filter({ hasText: 'not fed' })).toHaveCount(0);
  await rings.getByRole('button', { name: /^Leave .* off$/ }).click();
  await expect(rings).toContainText('so every section is fed one way');
  await page.keyboard.press('Alt+3');
  await page.getByLabel('Show', { exact: true }).selectOption('All switches on');
  await expect(page.getByRole('status').filter({ hasText: /^With S\d on: weakest place/ })).toBeVisible();
});

for (const theme of ['light', 'dark'] as const) {
  test(`no serious fault of accessibility in Power, ${theme}`, async ({ app, page }) => {
    await page.emulateMedia({ colorScheme: theme });
    await openDemoAt(app, page, 'Alt+3');
    await expect(page.getByRole('status').filter({ hasText: 'Weakest place about' })).toBeVisible();
    const names = await page.getByRole('navigation', { name: 'Registers' }).getByRole('button').allInnerTexts();
    expect(names.length).toBeGreaterThan(5);
    for (const name of names) {
      await register(page, name);
      const { violations } = await new AxeBuilder({ page }).analyze();
      const serious = violations.filter(({ impact }) => impact === 'serious' || impact === 'critical');
      expect(serious.map(({ id, nodes }) => `${name}: ${id}: ${nodes[0]?.html}`)).toEqual([]);
    }
  });
}
