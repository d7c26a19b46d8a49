import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';

/** Installs Debian packages where that can be done without asking (root on Debian or the like); answers whether it did. */
export function installDebianPackages(names: readonly string[]): boolean {
  if (process.getuid?.() !== 0 || !existsSync('/usr/bin/apt-get') || !existsSync('/etc/debian_version')) return false;
  console.log(`Getting ${names.join(', ')} for the tests (apt-get install) ...`);
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  const apt = (...args: string[]) =>
    spawnSync('apt-get', ['-q', ...args], { env, stdio: ['ignore', 'ignore', 'inherit'] }).status === 0;
  apt('update');
  return apt('install', '-y', '--no-install-recommends', ...names);
}
