import {
  accessSync,
  closeSync,
  constants,
  existsSync,
  fsyncSync,
  linkSync,
  openSync,
  renameSync,
  rmSync,
} from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { assertUsableName } from './fileFormat.ts';

/** The name of a file on its way, as `publishFile` makes it. */
export const draftName = /^\..+\.undergate\.\d+\.part/;

/**
 * Makes the file at `path` whole or not at all: `write` fills a hidden file beside it, which is then flushed to the
 * disk and given its name in one step. Without `replace` an existing file stops it (EEXIST), also one that came
 * in the meantime. With it, the caller has made sure that nobody has the existing file open. Answers what `write` does.
 */
export function publishFile<T>(path: string, replace: boolean, write: (draftPath: string) => T): T {
  const draftPath = join(dirname(path), `.${basename(path)}.${process.pid}.part`);
  assertUsableName(path, 'make');
  accessSync(dirname(path), constants.W_OK);
  removeDatabase(draftPath);
  try {
    const answer = write(draftPath);
    flush(draftPath);
    if (replace || !existsSync(path)) removeJournals(path);
    if (replace) renameSync(draftPath, path);
    else linkWithoutReplacing(draftPath, path);
    flushFolder(dirname(path));
    return answer;
  } finally {
    removeDatabase(draftPath);
  }
}

function linkWithoutReplacing(draftPath: string, path: string): void {
  try {
    linkSync(draftPath, path);
  } catch (error) {
    if (existsSync(path)) throw error;
    // Some file systems (FAT, some network drives) have no links.
    renameSync(draftPath, path);
  }
}

/** A journal left beside a file that is gone would be played back into the new one. */
function removeJournals(path: string): void {
  for (const suffix of ['-journal', '-wal', '-shm']) rmSync(path + suffix, { force: true });
}

function removeDatabase(path: string): void {
  removeJournals(path);
  rmSync(path, { force: true });
}

function flush(path: string): void {
  const file = openSync(path, 'r+');
  try {
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
}

function flushFolder(path: string): void {
  // Windows knows no flushing of folders.
  if (process.platform === 'win32') return;
  const folder = openSync(path, 'r');
  try {
    fsyncSync(folder);
  } finally {
    closeSync(folder);
  }
}
