import type { Page } from '@playwright/test';
import { allThings, projectOf, propertyOf, put } from '../../core/model/project.ts';
import type { Thing } from '../../core/model/things.ts';
import { expect, test } from '../support/app.ts';
import { bridgedGateway, energiser, leadOut, line, property } from '../support/drawings.ts';
import { largeProperty } from '../support/largeProperty.ts';

/** Rows and columns of live fence, every paddock a ring: a division that takes long to prove. */
function paddocks(side: number): Thing[] {
  const stepM = 150;
  const marks = Array.from({ length: side + 1 }, (_, i) => i * stepM);
  const things: Thing[] = [
    property(),
    energiser('E', [-30, -30]),
    leadOut('L', 'E', [
      [-30, -30],
      [0, 0],
    ]),
  ];
  for (const [row, y] of marks.entries())
    things.push(
      line(
        `row-${row}`,
        marks.map((x) => [x, y]),
      ),
    );
  for (const [column, x] of marks.entries()) {
    for (let row = 0; row < side; row++) {
      const [from, to] = [marks[row]!, marks[row + 1]!];
      things.push(
        line(`fence-${column}-${row}`, [
          [x, from],
          [x, to],
        ]),
      );
      if ((row + column) % 3 === 0) things.push(...bridgedGateway(`G${column}-${row}`, `fence-${column}-${row}`, 60));
    }
  }
  return things;
}

/** From now on notes every text that the plan's line of proof says. */
async function noteWhatThePlanSays(page: Page): Promise<() => Promise<readonly string[]>> {
  await page.evaluate(() => {
    const said: string[] = [];
    Object.assign(window, { said });
    const look = () => {
      const text = document.querySelector('.plan > .field-hint')?.textContent ?? '';
      if (text !== '' && said.at(-1) !== text) said.push(text);
    };
    new MutationObserver(look).observe(document, { subtree: true, childList: true, characterData: true });
  });
  return () => page.evaluate(() => (window as unknown as { said: string[] }).said);
}

const proof = (page: Page) => page.locator('.plan > .field-hint').first();

test('a plan on the way is shown with its bound, then the better one, until it is proven', async ({ app, page }) => {
  const limits = property({ divide: { ...property().divide, maxSectionM: 8000 } });
  await app.openNew([...allThings(put(largeProperty(2000), limits))]);
  const said = await noteWhatThePlanSays(page);
  await page.keyboard.press('Alt+2');
  await expect(proof(page)).toHaveText('Proven: no set of switches costs less within these limits.');
  const first = (await said())[0]!;
  expect(first).toMatch(
    /^Looking for a cheaper set\. No set can cost less than [\d.]+: this one is at most [\d.]+ \(\d+ % of its cost\) above\.$/,
  );
  const costs = (await said()).flatMap((text) => /less than ([\d.]+)/.exec(text)?.[1] ?? []).map(Number);
  expect(costs).toEqual([...costs].sort((a, b) => a - b));
});

test('the search can be stopped and gone on with, and an edit begins it anew', async ({ app, page }) => {
  await app.openNew(paddocks(22));
  await page.keyboard.press('Alt+2');
  await expect(proof(page)).toContainText('Looking for a cheaper set.');
  await page.getByRole('button', { name: 'Stop' }).click();
  await expect(proof(page)).toContainText('Stopped before the proof; a cheaper set may be found.');
  await expect(page.getByRole('progressbar')).toHaveCount(0);
  await expect(page.getByRole('button', { name: 'Use these switches' })).toBeEnabled();
  const stopped = await page.getByRole('region', { name: 'The plan' }).textContent();
  await page.waitForTimeout(1500);
  expect(await page.getByRole('region', { name: 'The plan' }).textContent()).toBe(stopped);

  await page.getByRole('button', { name: 'Go on looking' }).click();
  await expect(proof(page)).toContainText('Looking for a cheaper set.');
  await page.getByRole('button', { name: 'Stop' }).click();

  const said = await noteWhatThePlanSays(page);
  await page.getByRole('button', { name: 'Limits' }).click();
  await page.getByLabel('Longest section, of fence').fill('2000');
  await page.keyboard.press('Enter');
  await expect(page.getByText('Change the limits. Saved.')).toBeVisible();
  await expect(proof(page)).toContainText('Looking for a cheaper set.');
  expect((await said()).some((text) => text.startsWith('This was the plan before the last change'))).toBe(true);
});

test('edits during the search are saved and checked by the same worker, and the plan follows', async ({
  app,
  page,
}) => {
  let workers = 0;
  page.on('worker', (worker) => {
    if (worker.url().includes('analysis')) workers++;
  });
  await app.openNew(paddocks(22));
  await page.keyboard.press('Alt+2');
  await expect(proof(page)).toContainText('Looking for a cheaper set.');
  await page.getByRole('button', { name: 'Limits' }).click();
  for (const metres of [1500, 1600, 1700, 1800, 50]) {
    await page.getByLabel('Longest section, of fence').fill(String(metres));
    await page.keyboard.press('Enter');
    await expect.poll(async () => propertyOf(projectOf((await app.file()).things)).divide.maxSectionM).toBe(metres);
  }
  // What the last edit leads to: every run is longer than that.
  await expect(page.getByText(/over the limit of 50\.0 m/).first()).toBeVisible();
  await expect(proof(page)).toContainText('No set of switches keeps everything within these limits.');
  await expect(page.getByText('Over the limits whatever switches are set:')).toBeVisible();
  expect(workers).toBe(1);
});

test('limits that nothing can meet are named with their fences, equal stretches once, never as proven', async ({
  app,
  page,
}) => {
  await app.openDemo();
  await page.keyboard.press('Alt+2');
  await page.getByRole('button', { name: 'Limits' }).click();
  await page.getByLabel('Longest section, of fence').fill('300');
  await page.keyboard.press('Enter');
  const plan = page.getByRole('region', { name: 'The plan' });
  await expect(proof(page)).toHaveText(
    'No set of switches keeps everything within these limits. Proven for the rest: none costs less.',
  );
  const lines = plan.locator('.over-limit').first().getByRole('listitem');
  await expect(lines.first()).toContainText(
    /: (a stretch|\d+ stretches) of .* over the limit, without a place for a switch\./,
  );
  await lines.first().getByRole('button', { name: 'Show' }).click();
  await page.getByRole('button', { name: 'Use these switches' }).click();
  await expect(
    page.getByText("The switches as drawn are the plan. It can't keep every section within the limits."),
  ).toBeVisible();
  await expect(page.getByText(/^Proven: /)).toHaveCount(0);
});

test('tables of Power say which drawing they are of', async ({ app, page }) => {
  await app.openDemo();
  await page.keyboard.press('Alt+3');
  await page.getByRole('button', { name: 'What would raise the voltage' }).click();
  const tables = page.locator('.worked-out');
  await expect(tables).toContainText('For the drawing as it is now.');
  await page.evaluate(() => {
    const seen: string[] = [];
    Object.assign(window, { seen });
    new MutationObserver(() => {
      const block = document.querySelector('.worked-out');
      if (block) seen.push(`${block.className}: ${block.querySelector('p')?.textContent}`);
    }).observe(document, { subtree: true, childList: true, characterData: true, attributes: true });
  });
  await page.getByRole('button', { name: 'Stock, growth, wire' }).click();
  await page.getByLabel('Grass and weeds on the wires, on the whole property').selectOption('Heavy growth');
  await page.getByRole('button', { name: 'What would raise the voltage' }).click();
  await expect(tables).toContainText('For the drawing as it is now.');
  const seen = await page.evaluate(() => (window as unknown as { seen: string[] }).seen);
  expect(seen).toContain('worked-out stale: Before the last change. Working it out again…');
});

test('a worker that can not be started is told, with a way to go on, and nothing says it is working', async ({
  app,
  page,
}) => {
  await page.route('**/analysis*.js', (route) => route.abort());
  await app.openDemo();
  await expect(page.getByRole('alert')).toContainText(
    'The checks, the plan and the tables of Power could not be worked out',
  );
  await expect(page.getByRole('alert')).toContainText('The drawing is safe in the file.');
  await page.getByRole('alert').getByRole('button', { name: 'Close' }).click();
  await page.keyboard.press('Alt+2');
  await expect(page.getByText('The plan could not be worked out')).toBeVisible();
  await expect(page.getByText('Working out')).toHaveCount(0);
  await page.unroute('**/analysis*.js');
  await page.getByRole('region', { name: 'The plan' }).getByRole('button', { name: 'Try again' }).click();
  await expect(proof(page)).toHaveText('Proven: no set of switches costs less within these limits.');
  await expect(page.getByText('could not be worked out')).toHaveCount(0);
});
