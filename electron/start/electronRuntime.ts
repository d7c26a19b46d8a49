import { spawn } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import http from 'node:http';
import { join } from 'node:path';
import { plainWords } from '../../core/words/figures.ts';

const folder = join(import.meta.dirname, '..', '..', 'node_modules', 'electron');

const environment = process.env;
const downloads =
  environment.npm_config_electron_mirror ??
  environment.ELECTRON_MIRROR ??
  'https://github.com/electron/electron/releases/';

/** So long it may take to find out whether the downloads can be reached, and to fetch the 120 MB. */
const patience = { reachMs: 5000, fetchMs: 5 * 60_000 };

/** Electron's own program, or null where npm has placed only the package that fetches it. */
export function installedElectron(): string | null {
  const pathFile = join(folder, 'path.txt');
  if (!existsSync(pathFile)) return null;
  const program = join(environment.ELECTRON_OVERRIDE_DIST_PATH ?? join(folder, 'dist'), readFileSync(pathFile, 'utf8'));
  return existsSync(program) ? program : null;
}

/** Electron's program, fetched where it is missing; null where it can't be had in reasonable time. */
export async function provideElectron(): Promise<string | null> {
  const installed = installedElectron();
  if (installed) return installed;
  if (!(await canReachDownloads())) return null;
  console.log(plainWords().host.start.fetching);
  await fetchElectron();
  return installedElectron();
}

async function canReachDownloads(): Promise<boolean> {
  try {
    if (environment.HTTPS_PROXY ?? environment.https_proxy) http.setGlobalProxyFromEnv();
    await fetch(downloads, { method: 'HEAD', signal: AbortSignal.timeout(patience.reachMs) });
    return true;
  } catch {
    return false;
  }
}

/** Runs the package's own installer, which checks what it fetched against the package's checksums. */
function fetchElectron(): Promise<void> {
  return new Promise((resolve) => {
    const installer = spawn(process.execPath, [join(folder, 'install.js')], {
      env: { ...environment, NODE_USE_ENV_PROXY: '1' },
      stdio: 'ignore',
      timeout: patience.fetchMs,
    });
    installer.once('error', () => resolve());
    installer.once('exit', () => resolve());
  });
}
