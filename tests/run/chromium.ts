import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { chromium } from '@playwright/test';
import { installDebianPackages } from './debian.ts';

/** Debian's Chromium, where it is. */
const debianChromium = '/usr/bin/chromium';

const howToInstall =
  'Install it: on Debian "apt-get install chromium" as root, elsewhere "npx playwright install --with-deps chromium".';

/** The Chromium that the tests drive, or null: Debian's, else the one that Playwright fetched. */
export function installedChromium(): string | null {
  return [debianChromium, chromium.executablePath()].find((path) => existsSync(path)) ?? null;
}

/** Makes sure that there is a Chromium that starts. Throws, saying exactly what to install, where it can't. */
export function provideChromium(): void {
  if (!installedChromium() && !installDebianPackages(['chromium'])) {
    console.log("Getting Playwright's Chromium for the end-to-end tests (npx playwright install chromium) ...");
    spawnSync('npx', ['playwright', 'install', 'chromium'], {
      stdio: 'inherit',
      shell: process.platform === 'win32',
    });
  }
  const path = installedChromium();
  if (!path)
    throw new Error(`There is no Chromium for the end-to-end tests, and it could not be fetched. ${howToInstall}`);
  const started = spawnSync(path, ['--version', '--no-sandbox'], { encoding: 'utf8' });
  if (started.status !== 0) throw new Error(`${path} does not start: ${started.stderr.trim()}\n${howToInstall}`);
}
