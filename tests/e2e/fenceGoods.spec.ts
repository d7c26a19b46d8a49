import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { newFenceType } from '../../core/model/defaults.ts';
import { expect, test } from '../support/app.ts';
import { bridgedGateway, drawing, energiser, leadOut, line } from '../support/drawings.ts';

const register = (page: Page, name: string) =>
  page.getByRole('navigation', { name: 'Registers' }).getByRole('button', { name, exact: true }).click();

const finding = (page: Page, text: string | RegExp) =>
  page.getByRole('region', { name: 'What the checks found' }).locator('li').filter({ hasText: text });

const showAll = (page: Page) => page.getByRole('button', { name: /^And \d/ }).click();

async function expectAccessible(page: Page): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join()).join('; ')}`)).toEqual(
    [],
  );
}

/** The boundary of a file of an older version: its name says seven wires, three are entered. */
const { plainWires: _, ...olderBoundary } = newFenceType('ft-boundary', 'Boundary, seven wires, two live, one earth', {
  liveWires: 2,
  earthWires: 1,
});

const [gateway, crossing] = bridgedGateway('G1', 'F1', 500, { widthM: 4.2 });
const things = [
  ...drawing().property.values(),
  olderBoundary,
  line(
    'F1',
    [
      [0, 0],
      [1000, 0],
    ],
    { typeId: 'ft-boundary' },
  ),
  gateway,
  crossing,
  energiser('E1', [0, -40]),
  leadOut(
    'L1',
    'E1',
    [
      [0, -40],
      [0, 0],
    ],
    { cableId: 'cable-copper-6mm2' },
  ),
];

test('a fence type of an older file is given its plain wires, and the order counts them', async ({ app, page }) => {
  await app.openNew(things, 'Older block');
  await page.keyboard.press('Alt+4');
  const wire = page.getByRole('button', { name: /^Steel wire 2\.5 mm: / });
  await expect(wire).toHaveAccessibleName(/2,9\d\d m|3,0\d\d m/);
  const short = finding(page, 'Its name says 7 wires, it has 2 live and 1 earth');
  await showAll(page);
  await expect(short).toBeVisible();

  await page.keyboard.press('Alt+1');
  await register(page, 'Fence types');
  await page.getByRole('row', { name: /Boundary, seven wires/ }).click();
  await expect(page.getByLabel('Plain wires')).toHaveAttribute('placeholder', 'not entered');
  await expect(page.getByText('if it has none, enter 0.')).toBeVisible();
  await page.getByLabel('Plain wires').fill('4');
  await page.getByLabel('Plain wires').press('Enter');
  await expect(page.getByText('if it has none, enter 0.')).toBeHidden();
  await page.getByLabel('Earth and plain wire').selectOption({ label: 'Steel wire 2.0 mm, 61 ohm/km' });
  await expectAccessible(page);

  await page.getByRole('button', { name: 'Done', exact: true }).click();
  await page.keyboard.press('Alt+4');
  await expect(page.getByRole('button', { name: /^Steel wire 2\.0 mm: [45],\d{3} m/ })).toBeVisible();
  await expect(page.getByRole('button', { name: /^Steel wire 2\.5 mm: [12],\d{3} m/ })).toBeVisible();
  await register(page, 'Goods and work');
  await expect(page.getByRole('row', { name: /Steel wire 2\.0 mm, coil of 25 kg, about 1,014 m/ })).toBeVisible();
  await expect(page.getByRole('row', { name: /Fence lead-out cable, steel core 2\.5 mm/ })).toContainText(
    'never building wire',
  );
  await expectAccessible(page);
  await page.getByRole('row', { name: /Fence lead-out cable, steel core 2\.5 mm/ }).scrollIntoViewIfNeeded();
  const type = (await app.file()).things.find(({ id }) => id === 'ft-boundary');
  expect(type).toMatchObject({ plainWires: 4, plainWireId: 'steel-2' });

  await app.restart();
  await page.getByRole('button', { name: /Older block/ }).click();
  await page.getByRole('button', { name: 'Draw', exact: true }).waitFor();
  await register(page, 'Fence types');
  await page.getByRole('row', { name: /Boundary, seven wires/ }).click();
  await expect(page.getByLabel('Plain wires')).toHaveValue('4');
});

test('a cable says what it must be, and building wire of an older file is told and left alone', async ({
  app,
  page,
}) => {
  await app.openNew(things, 'Older block');
  await register(page, 'Energiser');
  await showAll(page);
  await expect(finding(page, 'lead-out L1 is entered as building wire')).toBeVisible();
  await page.getByRole('row', { name: /L1/ }).click();
  const cable = page.getByLabel('Cable', { exact: true });
  await expect(cable.locator('option:checked')).toHaveText(
    'Building wire, copper 6 mm², not made for a fence, 2.9 ohm/km',
  );
  await expect(page.getByRole('alert').filter({ hasText: 'size of building wire' })).toBeVisible();
  await expect(page.getByText('Never in one conduit with mains')).toBeVisible();
  await expectAccessible(page);
  const lead = async () => (await app.file()).things.find(({ id }) => id === 'L1');
  expect(await lead()).toMatchObject({ cableId: 'cable-copper-6mm2' });
  await cable.selectOption({ label: 'Copper core 2.5 mm, 3.5 ohm/km: fence lead-out cable, rated 10 kV or more' });
  await expect(page.getByRole('alert')).toBeHidden();
  await expect(page.getByText('Fence lead-out cable rated 10 kV or more only.')).toBeVisible();
  expect(await lead()).toMatchObject({ cableId: 'cable-copper-2.5' });
  await expect(cable.locator('option').filter({ hasText: 'Building wire' })).toHaveCount(0);

  // The crossing: overhead, its earth goes along and is counted.
  await register(page, 'Gateways');
  await page.getByRole('row', { name: /G1/ }).click();
  const panel = page.getByRole('region', { name: 'Crossing at G1' });
  await expect(panel.getByText('Never in one conduit with mains')).toBeVisible();
  await panel.getByLabel('How').selectOption('overhead');
  await expect(panel.getByLabel('An earth wire goes across overhead too')).toBeChecked();
  // Nothing is asked of a trench and a pipe that are not there.
  for (const label of ['Curve: most off the straight', 'Depth', 'Pipe bore', 'Riser ends sealed']) {
    await expect(panel.getByLabel(label, { exact: true })).toHaveCount(0);
  }
  await expect(panel).not.toContainText('Bend radius');
  await panel.getByLabel('Height of the wire').fill('4.5');
  await panel.getByLabel('Height of the wire').press('Enter');
  // 4.2 m from post to post, 2 x 4.5 m up and down, 0.3 m of allowance.
  await expect(panel.getByText('13.50 m')).toBeVisible();
  await panel.getByLabel('An earth wire goes across overhead too').click();
  await expect(finding(page, 'earth-return wire that is cut at this gateway')).toBeVisible();
});

test('a mains cable in a trench is asked about where it is written down', async ({ app, page }) => {
  await app.openNew(things, 'Older block');
  await page.keyboard.press('Alt+5');
  await page.locator('.register tbody tr').filter({ hasText: /^G1/ }).click();
  await page
    .getByRole('navigation', { name: 'Parts of the record' })
    .getByRole('button', { name: 'Trench and cable', exact: true })
    .click();
  await expect(page.getByText('Never in one conduit with mains')).toBeVisible();
  await page.getByLabel('Also in the trench').fill('mains cable to the pump');
  await page.getByLabel('Also in the trench').press('Enter');
  await expect(page.getByText('Another cable is named here (mains cable).')).toBeVisible();
  await expectAccessible(page);
  await page.keyboard.press('Alt+1');
  await showAll(page);
  await expect(finding(page, '"mains cable to the pump"')).toBeVisible();
});
