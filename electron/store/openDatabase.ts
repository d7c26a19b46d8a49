import { accessSync, constants, existsSync, statSync } from 'node:fs';
import { dirname } from 'node:path';
import Sqlite, { type Database } from 'better-sqlite3';
import { fileEnding, nameOfFile } from './fileFormat.ts';
import { looksLikeProject } from './fileHeader.ts';
import { type Migration, migrate, newestVersion, versionOf } from './migrations.ts';
import { damaged, ProblemError } from './problems.ts';
import { publishFile } from './publishFile.ts';

/**
 * Opens a project file for this process alone, checked and brought to the newest version. Throws a `ProblemError` or
 * SQLite's own error; the file is then left as it was.
 */
export function openDatabase(path: string, migrations: readonly Migration[]): Database {
  assertProjectFile(path);
  const database = lockedDatabase(path);
  try {
    assertNotNewer(database, path, newestVersion(migrations));
    assertSound(database, path);
    if (versionOf(database) < newestVersion(migrations)) {
      keepCopy(database, path, versionOf(database) + 1);
      migrate(database, migrations);
    }
    return database;
  } catch (error) {
    database.close();
    throw error;
  }
}

/**
 * The file at `path` opened and locked. Every edit is durable when its transaction returns: a rollback journal,
 * flushed before the file is touched and again when it is struck out (synchronous FULL). Not write-ahead logging:
 * between two edits the file alone is always whole, so that it can be copied to a stick. The exclusive lock keeps
 * other processes out and ends with this process, however it ends.
 */
export function lockedDatabase(path: string): Database {
  const database = new Sqlite(path, { timeout: 0, fileMustExist: true });
  try {
    database.pragma('trusted_schema = OFF');
    database.pragma('locking_mode = EXCLUSIVE');
    database.pragma('synchronous = FULL');
    database.exec('BEGIN EXCLUSIVE; COMMIT');
    database.pragma('journal_mode = DELETE');
    return database;
  } catch (error) {
    database.close();
    throw error;
  }
}

/** Throws where another process has the file open. */
export function assertNotInUse(path: string): void {
  if (existsSync(path) && looksLikeProject(path)) lockedDatabase(path).close();
}

function assertProjectFile(path: string): void {
  if (statSync(path).isDirectory()) {
    throw new ProblemError('not-a-project', `${path} is a folder, not a project file.`, 'Choose a file inside it.');
  }
  accessSync(path, constants.R_OK | constants.W_OK);
  accessSync(dirname(path), constants.W_OK);
  if (!looksLikeProject(path)) {
    throw new ProblemError(
      'not-a-project',
      `${path} is not an Undergate project file. It was not touched.`,
      `Choose a file that ends in ${fileEnding}; drawings of other kinds come in through Import.`,
    );
  }
}

/** Throws where the file is damaged, or holds what no migration of ours puts there. */
function assertSound(database: Database, path: string): void {
  const faults = database.pragma('quick_check(1)', { simple: true });
  const tables = database
    .prepare(`SELECT count(*) FROM sqlite_schema WHERE type = 'table' AND name IN ('fact', 'thing', 'step')`)
    .pluck()
    .get();
  const triggers = database.prepare(`SELECT count(*) FROM sqlite_schema WHERE type = 'trigger'`).pluck().get();
  if (faults !== 'ok' || tables !== 3 || triggers !== 0) {
    throw damaged(`${path} is damaged and can't be read safely.`);
  }
}

function assertNotNewer(database: Database, path: string, newest: number): void {
  const version = versionOf(database);
  if (version > newest) {
    throw new ProblemError(
      'newer-version',
      `${path} was written by a newer Undergate (file version ${version}; this one knows up to ${newest}). It was not touched.`,
      'Open it with the newer Undergate, or bring this one up to date.',
    );
  }
}

/** Keeps the file as it is, beside it, before the migration with this number: `Farm.before-0002.undergate`. */
function keepCopy(database: Database, path: string, migrationNumber: number): void {
  const stem = `${dirname(path)}/${nameOfFile(path)}.before-${String(migrationNumber).padStart(4, '0')}`;
  let copyPath = stem + fileEnding;
  for (let count = 2; existsSync(copyPath); count++) copyPath = `${stem}-${count}${fileEnding}`;
  publishFile(copyPath, false, (draftPath) => copyInto(database, draftPath));
}

/** Writes a whole copy, history and all, to a path where no file is. */
export function copyInto(database: Database, path: string): void {
  database.prepare('VACUUM INTO ?').run(path);
}
