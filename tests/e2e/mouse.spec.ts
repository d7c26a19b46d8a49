import type { Page } from '@playwright/test';
import { createLocalPlane } from '../../core/geometry/localPlane.ts';
import { projectOf, propertyOf } from '../../core/model/project.ts';
import { type App, expect, test } from '../support/app.ts';

/** Turns of the wheel that bring a gateway so near that its bow can be taken hold of. */
const wheelTurns = 6;

type Px = readonly [x: number, y: number];

async function drag(page: Page, from: Px, to: Px): Promise<void> {
  await page.mouse.move(...from);
  await page.mouse.down();
  await page.mouse.move((from[0] + to[0]) / 2, (from[1] + to[1]) / 2, { steps: 4 });
  await page.mouse.move(...to, { steps: 4 });
  await page.mouse.up();
}

const tool = (page: Page, name: string) => page.getByRole('region', { name: 'Tools' }).getByRole('button', { name });

const drawn = async (app: App) => projectOf((await app.file()).things);

/** What the expression gives once it is there in the file. */
async function once<T>(app: App, of: (project: Awaited<ReturnType<typeof drawn>>) => T | undefined | null): Promise<T> {
  await expect.poll(async () => of(await drawn(app)) ?? null).not.toBeNull();
  return of(await drawn(app))!;
}

test('the mouse draws a fence, drags its corner, a gateway and its bow, and marks a place for a switch', async ({
  app,
  page,
}) => {
  const path = await app.openNew();
  const box = (await page.locator('.map-stage').first().boundingBox())!;
  const [west, east, y] = [box.x + 0.2 * box.width, box.x + 0.7 * box.width, box.y + 0.5 * box.height];
  const middle: Px = [(west + east) / 2, y];

  // Due east, so that along the fence is along the screen.
  await tool(page, 'Fence').click();
  await page.mouse.click(west, y);
  await page.mouse.click(east, y);
  await page.keyboard.press('Enter');
  const line = await once(app, (project) => [...project.fenceLine.values()][0]);
  expect(line.path).toHaveLength(2);
  const plane = createLocalPlane(propertyOf(await drawn(app)).origin);
  const [from, to] = line.path.map(plane.toXy);
  expect(to![1]).toBeCloseTo(from![1], 0);
  const metresPerPx = (to![0] - from![0]) / (east - west);

  await page.keyboard.press('Escape');
  await drag(page, [east, y], [east + 60, y]);
  const stretched = await once(app, (project) => {
    const end = plane.toXy(project.fenceLine.get(line.id)!.path[1]!);
    return Math.abs(end[0] - to![0]) > 1 ? end : null;
  });
  expect((stretched[0] - to![0]) / metresPerPx).toBeGreaterThan(50);
  expect((stretched[0] - to![0]) / metresPerPx).toBeLessThan(70);

  await tool(page, 'Gateway').click();
  await page.mouse.click(...middle);
  const gateway = await once(app, (project) => [...project.gateway.values()][0]);
  await page.keyboard.press('Escape');
  // Nearer, with the gateway where it is: a bow can be taken hold of when its gateway is wide enough on the screen.
  await page.mouse.move(...middle);
  for (let turn = 0; turn < wheelTurns; turn++) {
    await page.mouse.wheel(0, -240);
    await page.waitForTimeout(200);
  }
  await drag(page, middle, [middle[0] + 100, y]);
  const moved = await once(app, (project) => {
    const now = project.gateway.get(gateway.id)!;
    return now.atM === gateway.atM ? null : now;
  });
  const pxPerM = 100 / (moved.atM - gateway.atM);
  expect(pxPerM).toBeGreaterThan(15);

  const crossing = [...(await drawn(app)).crossing.values()][0]!;
  expect(crossing.bowM).toBeNull();
  const up = crossing.bowSide === 'left' ? -1 : 1;
  const assumedM = propertyOf(await drawn(app)).crossings.bowShare * moved.widthM;
  const bowAt = (bowM: number): Px => [middle[0] + 100, y + up * bowM * pxPerM];
  await drag(page, bowAt(assumedM), bowAt(assumedM + 0.6));
  const bowM = await once(app, (project) => project.crossing.get(crossing.id)!.bowM);
  expect(bowM).toBeGreaterThan(assumedM + 0.3);
  expect(bowM).toBeLessThan(assumedM + 0.9);

  await page.keyboard.press('Alt+2');
  await page.getByRole('button', { name: 'All' }).click();
  await tool(page, 'Place').click();
  await page.mouse.click(box.x + 0.3 * box.width, box.y + 0.5 * box.height);
  const place = await once(app, (project) => [...project.switchCandidate.values()][0]);
  expect(place).toMatchObject({ lineId: line.id, cost: null });
  expect(place.atM).toBeLessThan(moved.atM);

  await app.restart();
  await app.project.open({ path });
  await app.show();
  const after = await drawn(app);
  expect([...after.switchCandidate.values()]).toEqual([place]);
  expect(after.crossing.get(crossing.id)!.bowM).toBe(bowM);
  await page.keyboard.press('Alt+2');
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect.poll(async () => (await drawn(app)).switchCandidate.size).toBe(0);
});
