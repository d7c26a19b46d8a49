import { readdirSync, rmSync, statSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { stagingEnding } from './imageStaging.ts';
import { draftName } from './publishFile.ts';

/** A file that is being made is written to all the time; one that was left alone for so long has nobody any more. */
const draftIsLeftAfterMs = 3_600_000;

const besideDatabases = '(-journal|-wal|-shm)?$';
const draft = new RegExp(draftName.source + besideDatabases);
const staging = new RegExp(`${stagingEnding.replaceAll('.', '\\.')}${besideDatabases}`);

/**
 * Removes what interrupted processes left beside a project file: its own pictures that were on their way in, and files
 * of any name that were being made. Only while the project file is locked.
 */
export function removeLeftovers(projectPath: string): void {
  const folder = dirname(projectPath);
  const own = `.${basename(projectPath)}.`;
  for (const name of readdirSync(folder)) {
    const path = join(folder, name);
    if (staging.test(name) ? name.startsWith(own) : draft.test(name) && isLeft(path)) remove(path);
  }
}

function isLeft(path: string): boolean {
  const stats = statSync(path, { throwIfNoEntry: false });
  return stats !== undefined && Date.now() - stats.mtimeMs > draftIsLeftAfterMs;
}

/** What another user left may have to stay. */
function remove(path: string): void {
  try {
    rmSync(path, { force: true });
  } catch {
    // It is in nobody's way.
  }
}
