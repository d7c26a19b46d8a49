import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';

const isRoot = process.getuid?.() === 0;

/** Programs of browsers that can show one page as a window of its own, by system. */
const names: Partial<Record<NodeJS.Platform, readonly string[]>> = {
  linux: ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'microsoft-edge'],
  darwin: [
    '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
    '/Applications/Chromium.app/Contents/MacOS/Chromium',
    '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
  ],
  win32: [
    'Google\\Chrome\\Application\\chrome.exe',
    'Chromium\\Application\\chrome.exe',
    'Microsoft\\Edge\\Application\\msedge.exe',
  ],
};

/** An installed browser, or null. */
export function findBrowser(): string | null {
  const folders = process.platform === 'win32' ? windowsFolders() : (process.env.PATH ?? '').split(delimiter);
  for (const name of names[process.platform] ?? []) {
    const paths = name.startsWith('/') ? [name] : folders.map((folder) => join(folder, name));
    const found = paths.find((path) => existsSync(path));
    if (found) return found;
  }
  return null;
}

function windowsFolders(): string[] {
  const { ProgramFiles, LOCALAPPDATA, ...rest } = process.env;
  return [ProgramFiles, rest['ProgramFiles(x86)'], LOCALAPPDATA].filter((folder) => folder !== undefined);
}

/**
 * Opens the address as an app window; resolves when the window was closed, to whether the browser ran well. It gets a
 * fresh profile, so that it is a process of its own. Its arguments can be read by every account of the machine, so the
 * address may hold nothing that lasts.
 */
export async function openAsApp(browser: string, address: string): Promise<boolean> {
  const profile = mkdtempSync(join(tmpdir(), 'undergate-window-'));
  const args = [`--app=${address}`, `--user-data-dir=${profile}`, '--no-first-run', '--no-default-browser-check'];
  const child = spawn(browser, isRoot ? ['--no-sandbox', ...args] : args, { stdio: 'ignore' });
  const onExit = () => child.kill();
  process.once('exit', onExit);
  const ranWell = await ended(child);
  process.removeListener('exit', onExit);
  rmSync(profile, { recursive: true, force: true, maxRetries: 3 });
  return ranWell;
}

function ended(child: ChildProcess): Promise<boolean> {
  return new Promise((resolve) => {
    child.once('error', () => resolve(false));
    child.once('exit', (code) => resolve(code === 0));
  });
}
