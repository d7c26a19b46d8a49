import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { _electron, expect, test } from '@playwright/test';
import type { OpenProject } from '../../core/api/projectApi.ts';
import type { Result } from '../../core/api/result.ts';
import { installedElectron } from '../../electron/start/electronRuntime.ts';

const electron = installedElectron();
const hasScreen = process.platform !== 'linux' || Boolean(process.env.DISPLAY ?? process.env.WAYLAND_DISPLAY);
const whyNot = electron ? 'there is no screen' : "Electron's runtime is not installed";

test.skip(!electron || !hasScreen, `The desktop window was NOT tested: ${whyNot}.`);

test('the desktop window shows the page, sandboxed, and writes through its own calls', async () => {
  const home = await mkdtemp(join(tmpdir(), 'undergate-desktop-'));
  const isRoot = process.getuid?.() === 0;
  const app = await _electron.launch({
    executablePath: electron!,
    args: [...(isRoot ? ['--no-sandbox'] : []), join(import.meta.dirname, '..', '..')],
    env: { ...process.env, UNDERGATE_HOME: home },
  });
  try {
    const page = await app.firstWindow();
    expect(page.url()).toBe('undergate://app/');
    await expect(page).toHaveTitle('Undergate');
    const inPage = await page.evaluate(async () => ({
      node: [typeof (globalThis as { require?: unknown }).require, typeof process],
      demo: await (window as unknown as { undergate: Calls }).undergate.project.openDemo(),
      elsewhere: window.open('https://example.com/') === null,
    }));
    expect(inPage).toMatchObject({ node: ['undefined', 'undefined'], demo: { ok: true }, elsewhere: true });
    await page.evaluate(() => location.assign('https://example.com/'));
    expect(page.url()).toBe('undergate://app/');
  } finally {
    await app.close();
    await rm(home, { recursive: true, force: true });
  }
});

interface Calls {
  readonly project: { openDemo(): Promise<Result<OpenProject>> };
}
