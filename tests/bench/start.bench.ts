import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from '@playwright/test';
import { allThings } from '../../core/model/project.ts';
import type { Thing } from '../../core/model/things.ts';
import { buildIfNeeded } from '../../electron/start/buildApp.ts';
import { createProjectFile } from '../../electron/store/projectFile.ts';
import { AppHost } from '../support/appHost.ts';
import { largeProperty } from '../support/largeProperty.ts';
import { summary } from './measure.ts';
import { pictureAt, startChromium, viewport, watchPictures } from './page.ts';
import type { BenchRow } from './row.ts';

const demo = join(import.meta.dirname, '..', '..', 'assets', 'demo', 'demo-property.json');
const largeRuns = 20_000;
const workspaces = ['Draw', 'Divide', 'Power', 'Order', 'Record', 'Find'];

/** A window that opens a property, until its map is painted whole; and its workspaces, one after another. */
export async function bench(): Promise<BenchRow[]> {
  await buildIfNeeded();
  const example = JSON.parse(readFileSync(demo, 'utf8')) as readonly Thing[];
  const large = [...allThings(largeProperty(largeRuns))];
  const home = mkdtempSync(join(tmpdir(), 'undergate-bench-'));
  const browser = await startChromium();
  try {
    const small = await opened(browser, home, 'Example', example, 7);
    const big = await opened(browser, home, 'Large', large, 5);
    return [
      {
        name: 'example opened, on the map',
        size: example.length,
        ...summary(small.openMs),
        unit: 'ms',
        budget: 800,
        budgetAt: 'median',
      },
      {
        name: 'large property opened, on the map',
        size: largeRuns,
        ...summary(big.openMs),
        unit: 'ms',
        budget: 2000,
        budgetAt: 'median',
      },
      ...switchRows('example', example.length, small.switchMs),
      ...switchRows('large property', largeRuns, big.switchMs),
    ];
  } finally {
    await browser.close();
    rmSync(home, { recursive: true, force: true });
  }
}

function switchRows(name: string, size: number, times: ReadonlyMap<string, readonly number[]>): BenchRow[] {
  return [...times].map(([workspace, each]) => {
    return { name: `to ${workspace}, ${name}`, size, ...summary(each), unit: 'ms', budget: 150, budgetAt: 'median' };
  });
}

/** From the navigation to the painted map, in a window of its own each; the last one then goes through its workspaces. */
async function opened(browser: Browser, home: string, name: string, things: readonly Thing[], rounds: number) {
  const path = join(home, `${name}.undergate`);
  createProjectFile(path, things, 'Undergate bench');
  const host = await AppHost.start(home, [path]);
  const openMs: number[] = [];
  try {
    for (let round = 0; ; round++) {
      const context = await browser.newContext({ viewport });
      const page = await context.newPage();
      await page.addInitScript(watchPictures);
      await page.goto(await host.newAddress(), { waitUntil: 'commit' });
      openMs.push(await pictureAt(page, 0));
      if (round === rounds) return { openMs: openMs.slice(1), switchMs: await switches(page) };
      await context.close();
    }
  } finally {
    await host.kill();
  }
}

/** From the key to the painted page, three rounds through all workspaces, with a rest between them as a person has. */
async function switches(page: Page): Promise<Map<string, number[]>> {
  const times = new Map<string, number[]>(workspaces.map((name) => [name, []]));
  await page.waitForTimeout(10_000);
  for (let round = 0; round < 4; round++) {
    for (const [i, name] of workspaces.entries()) {
      if (round === 0 && i === 0) continue;
      const took = page.evaluate(timeToPaint);
      await page.keyboard.press(`Alt+${i + 1}`);
      // The first round compiles.
      if (round > 0) times.get(name)!.push(await took);
      else await took;
      await page.waitForTimeout(1500);
    }
  }
  return times;
}

/** Runs in the page: from the next key to the paint after the page that it leads to stands. */
function timeToPaint(): Promise<number> {
  return new Promise((resolve) => {
    const onKey = (event: KeyboardEvent) => {
      if (event.key === 'Alt') return;
      window.removeEventListener('keydown', onKey, { capture: true });
      const watch = new MutationObserver(() => {
        watch.disconnect();
        requestAnimationFrame(() => setTimeout(() => resolve(performance.now() - event.timeStamp)));
      });
      watch.observe(document.body, { subtree: true, childList: true, characterData: true });
    };
    window.addEventListener('keydown', onKey, { capture: true });
  });
}
