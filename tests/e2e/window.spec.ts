import type { Page } from '@playwright/test';
import { createLocalPlane } from '../../core/geometry/localPlane.ts';
import { newFenceLine, startingFenceTypes } from '../../core/model/defaults.ts';
import type { FenceLine, Gateway, Property } from '../../core/model/things.ts';
import type { Underlay } from '../../core/model/underlayThings.ts';
import { type App, expect, test } from '../support/app.ts';
import { patternBy } from '../support/madePictures.ts';
import { goTo } from '../support/mapColours.ts';

const grid = createLocalPlane([0, 0]);

function fence(id: string, points: readonly (readonly [number, number])[]): FenceLine {
  const path = points.map((xy) => grid.toLonLat(xy));
  return newFenceLine({ id, name: id, typeId: startingFenceTypes()[0]!.id, path });
}

async function thingsOf<T>(app: App, kind: string): Promise<T[]> {
  return (await app.file()).things.filter((thing) => thing.kind === kind) as T[];
}

async function middleOf(page: Page, selector: string): Promise<{ x: number; y: number }> {
  const box = (await page.locator(selector).boundingBox())!;
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

test('a gateway is placed under the box that says what it snaps to', async ({ app, page }) => {
  await app.openNew([
    fence('F1', [
      [0, 0],
      [200, 0],
    ]),
  ]);
  await goTo(page, '100 m E, 0 m N');
  await page.keyboard.press('Escape');
  const centre = await middleOf(page, '.map-stage');
  await page.keyboard.press('Alt+m');
  await page.keyboard.press('g');
  await page.mouse.move(centre.x, centre.y);
  const box = page.locator('.map-measures');
  await expect(box).toContainText('halfway');
  const under = await middleOf(page, '.map-measures');

  // The map is dragged until the fence's middle lies where the box stands.
  await page.keyboard.press('Escape');
  await page.keyboard.press('v');
  await page.mouse.move(centre.x, centre.y + 60);
  await page.mouse.down();
  await page.mouse.move(under.x, under.y + 60, { steps: 5 });
  await page.mouse.up();
  await page.keyboard.press('g');
  await page.mouse.move(under.x + 1, under.y);
  await page.mouse.move(under.x, under.y);
  await expect(box).toContainText('halfway');
  const shown = (await box.boundingBox())!;
  expect(under.x > shown.x && under.x < shown.x + shown.width).toBe(true);
  expect(under.y > shown.y && under.y < shown.y + shown.height).toBe(true);
  await page.mouse.click(under.x, under.y);
  await expect(page.getByText('Place gateway G1. Saved.')).toBeVisible();
  const [gateway] = await thingsOf<Gateway>(app, 'gateway');
  expect(gateway!.atM).toBeCloseTo(100, 1);
});

test('lengths are typed in fields that lie beside the map; what is shown can be typed', async ({ app, page }) => {
  await app.openNew();
  const stage = (await page.locator('.map-stage').boundingBox())!;
  await page.keyboard.press('Alt+m');
  await page.keyboard.press('f');
  // The lower left corner of the map is the map's, while figures can be typed too.
  await page.mouse.click(stage.x + 30, stage.y + stage.height - 100);
  await page.mouse.click(stage.x + 30, stage.y + stage.height - 25);
  const length = page.getByRole('textbox', { name: 'Length' });
  const field = (await length.boundingBox())!;
  expect(field.y).toBeGreaterThan(stage.y + stage.height - 1);
  await length.click();
  await length.fill('1,250');
  await page.keyboard.press('Tab');
  await page.keyboard.type('90');
  await page.keyboard.press('Enter');
  // And by the keyboard alone: the first digit goes to the field.
  await page.keyboard.press('Alt+m');
  await page.keyboard.type('0,5 km');
  await page.keyboard.press('Tab');
  await page.keyboard.type('0');
  await page.keyboard.press('Enter');
  await page.keyboard.press('Enter');
  await expect(page.getByText('Draw fence F1. Saved.')).toBeVisible();
  const [line] = await thingsOf<FenceLine>(app, 'fenceLine');
  const xy = line!.path.map((at) => grid.toXy(at));
  expect(xy).toHaveLength(4);
  expect(xy[2]![0] - xy[1]![0]).toBeCloseTo(1250, 0);
  expect(xy[3]![1] - xy[2]![1]).toBeCloseTo(500, 0);

  await page.keyboard.press('Alt+2');
  await page.getByRole('button', { name: 'Limits' }).click();
  const limit = page.getByLabel('Longest section, of fence');
  for (const [typed, shown] of [
    ['1,250', '1250'],
    ['1.250,5', '1250.5'],
    ['4 km', '4000'],
    ['1 250', '1250'],
  ] as const) {
    await limit.fill(typed);
    await limit.press('Enter');
    await expect(limit).toHaveValue(shown);
  }
  expect((await thingsOf<Property>(app, 'property'))[0]!.divide.maxSectionM).toBe(1250);
  await page.keyboard.press('Alt+4');
  await page.getByRole('button', { name: 'Prices', exact: true }).click();
  const price = page.locator('.price-input').first();
  await price.fill('1,250.50');
  await price.press('Enter');
  await expect(price).toHaveValue('1250.50');
});

test('latitude and longitude are not taken for metres: a picture’s first point places an empty property', async ({
  app,
  page,
}) => {
  await app.openNew();
  await goTo(page, '-35.404678, 147.665947');
  await expect(page.locator('.map-said')).toContainText('This looks like latitude and longitude');
  await page.keyboard.press('Escape');
  await goTo(page, '1200, 1000');
  await expect(page.locator('.map-position')).toHaveText('1,200.0 m E, 1,000.0 m N');
  await goTo(page, '0 m, 0 m');
  await page.keyboard.press('Escape');

  await page.getByRole('button', { name: 'Background maps' }).click();
  const picture = await patternBy(page, 'From the air.jpg', 'image/jpeg', 1500, 1000);
  await page.getByLabel('Pictures and world files').setInputFiles(picture);
  await expect(page.getByText('Lay From the air under the drawing. Saved.')).toBeVisible();
  const stage = (await page.locator('.map-stage').boundingBox())!;
  const clickAt = (x: number, y: number) => page.mouse.click(stage.x + x * stage.width, stage.y + y * stage.height);
  const place = page.getByLabel('Where that place really is');
  const type = async (text: string) => {
    await place.fill(text);
    await page.getByRole('button', { name: 'Set', exact: true }).click();
  };
  await page.getByRole('button', { name: 'Place by points' }).click();
  await clickAt(0.35, 0.5);
  await type('35.404678 S, 147.665947 E');
  await expect(page.getByText('This looks like latitude and longitude')).toBeVisible();
  expect((await thingsOf<Underlay>(app, 'underlay'))[0]!.placement!.by).toBe('eye');
  await page.getByRole('button', { name: 'Place the property by it' }).click();
  await expect(page.getByText('Place the property on the earth. Saved.')).toBeVisible();
  const [property] = await thingsOf<Property>(app, 'property');
  expect(property!.placed).toBe(true);

  await clickAt(0.65, 0.5);
  await type('-35.404678, 147.668947');
  await expect(page.getByText('RMS over 2 points')).toBeVisible();
  await expect(page.getByRole('cell', { name: '35.404678° S, 147.668947° E' })).toBeVisible();

  // A third point given with the first one's figures but for its last: no picture lies so.
  await page.getByRole('button', { name: 'Take point 2 out' }).click();
  await expect(page.getByText('Two control points at least are needed')).toBeVisible();
  await clickAt(0.65, 0.5);
  await type('-35.404678, 147.6659471');
  await expect(page.getByText('Not done yet.')).toBeVisible();
  expect((await thingsOf<Underlay>(app, 'underlay'))[0]!.placement).toMatchObject({ points: [{}] });
  await page.getByRole('button', { name: 'Keep it as it is' }).click();
  await expect(page.getByText('Not done yet.')).toBeHidden();
  await clickAt(0.65, 0.5);
  await type('-35.404678, 147.6659471');
  await page.getByRole('button', { name: 'Do it all the same' }).click();
  await expect(page.getByText('which no picture of a property has. Check the figures')).toBeVisible();
  expect((await thingsOf<Underlay>(app, 'underlay'))[0]!.placement).toMatchObject({ points: [{}, {}] });
});

test('with something drawn, latitude and longitude lead to where the property is placed', async ({ app, page }) => {
  await app.openNew([
    fence('F1', [
      [0, 0],
      [200, 0],
    ]),
  ]);
  await page.getByRole('button', { name: 'Background maps' }).click();
  const picture = await patternBy(page, 'From the air.jpg', 'image/jpeg', 1500, 1000);
  await page.getByLabel('Pictures and world files').setInputFiles(picture);
  await expect(page.getByText('Lay From the air under the drawing. Saved.')).toBeVisible();
  const stage = (await page.locator('.map-stage').boundingBox())!;
  await page.getByRole('button', { name: 'Place by points' }).click();
  await page.mouse.click(stage.x + 0.4 * stage.width, stage.y + 0.5 * stage.height);
  await page.getByLabel('Where that place really is').fill('-35.404678, 147.665947');
  await page.getByRole('button', { name: 'Set', exact: true }).click();
  await page.getByRole('button', { name: 'Open “Place on earth”' }).click();
  await expect(page.getByRole('region', { name: 'Place on earth' })).toBeVisible();
  expect((await thingsOf<Property>(app, 'property'))[0]!.placed).toBe(false);
});
