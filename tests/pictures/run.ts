// Drives the real app in Chromium over the example property and writes a PNG of every scene, in a large and a small
// window, light and dark, to assets/pictures. `-- NAME` takes only the scenes whose name holds NAME.
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, chromium, type Page } from '@playwright/test';
import { buildIfNeeded } from '../../electron/start/buildApp.ts';
import { installedChromium, provideChromium } from '../run/chromium.ts';
import { AppHost } from '../support/appHost.ts';
import { type Scene, scenes } from './scenes.ts';

const windows = [
  { width: 1440, height: 900 },
  { width: 1024, height: 700 },
] as const;
const themes = ['light', 'dark'] as const;
/** Time for the map to draw and the analysis to answer. */
const settleMs = 900;

const folder = join(import.meta.dirname, '..', '..', 'assets', 'pictures');
const wanted = scenes.filter(({ name }) => name.includes(process.argv[2] ?? ''));

await buildIfNeeded();
provideChromium();
mkdirSync(folder, { recursive: true });
const executablePath = installedChromium();
const browser = await chromium.launch({
  ...(executablePath ? { executablePath } : {}),
  args: ['--disable-gpu', '--disable-dev-shm-usage', ...(process.getuid?.() === 0 ? ['--no-sandbox'] : [])],
});
const home = mkdtempSync(join(tmpdir(), 'undergate-pictures-'));
const host = await AppHost.start(home);
try {
  for (const theme of themes) for (const size of windows) await takeAll(browser, theme, size);
} finally {
  await browser.close();
  await host.kill();
  rmSync(home, { recursive: true, force: true });
}

async function takeAll(
  browser: Browser,
  theme: (typeof themes)[number],
  size: (typeof windows)[number],
): Promise<void> {
  for (const scene of wanted) {
    const context = await browser.newContext({ viewport: size, colorScheme: theme, locale: 'en-GB' });
    const page = await context.newPage();
    await open(page, scene);
    await scene.reach(page);
    await page.mouse.move(0, 0);
    await page.waitForTimeout(settleMs);
    const path = join(folder, `${scene.name}-${size.width}x${size.height}-${theme}.png`);
    await page.screenshot({ path });
    console.log(path);
    await context.close();
  }
}

async function open(page: Page, scene: Scene): Promise<void> {
  await page.goto(await host.newAddress());
  const example = page.getByRole('button', { name: 'Open the example' });
  const close = page.getByRole('button', { name: /File menu: export/ });
  await example.or(close).first().waitFor();
  if (await close.isVisible()) {
    await close.click();
    await page.getByRole('button', { name: 'Close', exact: true }).click();
    await example.waitFor();
  }
  if (scene.beforeOpening) return;
  await example.click();
  await close.waitFor();
}
