import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { chromium } from '@playwright/test';

/** Debian's Chromium, where it is. */
const debianChromium = '/usr/bin/chromium';

/** The Chromium that the tests drive, or null: Debian's, else the one that Playwright fetched. */
export function installedChromium(): string | null {
  return [debianChromium, chromium.executablePath()].find((path) => existsSync(path)) ?? null;
}

/** Makes sure that there is a Chromium that starts. Throws, saying exactly what to install, where it can't. */
export function provideChromium(): void {
  if (!installedChromium()) install();
  const path = installedChromium();
  if (!path) throw new Error(`There is no Chromium for the end-to-end tests. ${howToInstall}`);
  const started = spawnSync(path, ['--version', '--no-sandbox'], { encoding: 'utf8' });
  if (started.status !== 0) throw new Error(`${path} does not start: ${started.stderr}\n${howToInstall}`);
}

const howToInstall =
  'Install it: on Debian or Ubuntu "apt-get install chromium" as root; elsewhere "npx playwright install --with-deps chromium".';

function install(): void {
  const isRoot = process.getuid?.() === 0;
  if (isRoot && existsSync('/usr/bin/apt-get') && existsSync('/etc/debian_version')) {
    console.log("Getting Debian's Chromium for the end-to-end tests (apt-get install chromium) ...");
    const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
    const apt = (...args: string[]) => spawnSync('apt-get', args, { env, stdio: ['ignore', 'ignore', 'inherit'] });
    if (apt('update', '-q').status === 0 && apt('install', '-y', '-q', 'chromium').status === 0) return;
  }
  console.log('Getting the Chromium of Playwright for the end-to-end tests (npx playwright install chromium) ...');
  spawnSync('npx', ['playwright', 'install', 'chromium'], { stdio: 'inherit', shell: process.platform === 'win32' });
}
