import { createHash } from 'node:crypto';
import { globSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { build, type InlineConfig } from 'vite';
import { packFiles } from '../host/packedFiles.ts';

const top = join(import.meta.dirname, '..', '..');
const stampPath = join(top, 'dist', 'built-from.txt');

/** Builds all that is built from something that has changed since the last time. */
export async function buildIfNeeded(): Promise<void> {
  if (readStamp() !== stampOfSources()) await buildAll();
}

/** Builds the page, the desktop's main process, its printing thread, its reader of tile files and its preload into `dist`. */
export async function buildAll(): Promise<void> {
  const stamp = stampOfSources();
  await buildPage();
  await buildDesktop();
  writeFileSync(stampPath, stamp);
}

async function buildPage(): Promise<void> {
  await build({ root: join(top, 'renderer'), configFile: join(top, 'vite.config.ts'), logLevel: 'warn' });
  await packFiles(join(top, 'dist', 'renderer'));
}

export async function buildDesktop(): Promise<void> {
  await build(forElectron('electron/main/main.ts', 'main.js', 'es', { ssr: true, emptyOutDir: true }));
  await build(forElectron('electron/print/print.worker.ts', 'printWorker.js', 'es', { ssr: true, emptyOutDir: false }));
  await build(forElectron('electron/store/tile.process.ts', 'tileProcess.js', 'es', { ssr: true, emptyOutDir: false }));
  await build(forElectron('electron/preload/preload.ts', 'preload.cjs', 'cjs', { emptyOutDir: false }));
}

function forElectron(
  entry: string,
  fileName: string,
  format: 'es' | 'cjs',
  options: NonNullable<InlineConfig['build']>,
): InlineConfig {
  return {
    root: top,
    configFile: false,
    publicDir: false,
    logLevel: 'warn',
    build: {
      outDir: 'dist/electron',
      target: 'node24',
      minify: false,
      rolldownOptions: {
        input: entry,
        external: ['electron'],
        output: { format, entryFileNames: fileName, codeSplitting: false },
      },
      ...options,
    },
  };
}

function stampOfSources(): string {
  const sources = ['core/**', 'renderer/**', 'electron/**', 'vite.config.ts', 'package-lock.json'];
  const hash = createHash('sha256');
  for (const path of globSync(sources, { cwd: top }).sort()) {
    const { mtimeMs, size } = statSync(join(top, path));
    hash.update(`${path} ${mtimeMs} ${size}\n`);
  }
  return hash.digest('hex');
}

function readStamp(): string | null {
  try {
    return readFileSync(stampPath, 'utf8');
  } catch {
    return null;
  }
}
