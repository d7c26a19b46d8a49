import { randomUUID } from 'node:crypto';
import { accessSync, constants, existsSync, lstatSync, realpathSync, rmSync, type Stats, statSync } from 'node:fs';
import { dirname } from 'node:path';
import Sqlite, { type Database, SqliteError } from 'better-sqlite3';
import { plainWords } from '../../core/words/figures.ts';
import { message } from '../../core/words/message.ts';
import { assertUsableName, fileEnding, fittingName, nameOfFile } from './fileFormat.ts';
import { readHeader } from './fileHeader.ts';
import { HeldFile } from './heldFile.ts';
import { type Migration, migrate, newestVersion, versionOf } from './migrations.ts';
import { damaged, isDiskFull, noRoomToOpen, notOurs, ProblemError } from './problems.ts';
import { publishFile } from './publishFile.ts';
import { assertOwnSchema } from './schemaCheck.ts';

/**
 * Opens a project file for this process alone, checked and brought to the newest version. Throws a `ProblemError` or
 * SQLite's own error; the file is then left as it was.
 */
export function openDatabase(path: string, migrations: readonly Migration[]): HeldFile {
  assertProjectFile(path, newestVersion(migrations));
  const file = new HeldFile(path);
  try {
    const { database } = file;
    assertNotNewer(versionOf(database), path, newestVersion(migrations));
    assertOwnSchema(file, migrations);
    settle(database);
    assertSound(database, path);
    file.watch();
    if (versionOf(database) < newestVersion(migrations)) {
      bringUpToDate(file, migrations);
      file.watch();
    }
    return file;
  } catch (error) {
    file.close();
    throw error;
  }
}

/** Throws where another process has the file open. */
export function assertNotInUse(path: string): void {
  if (!existsSync(path) || !readHeader(path).isProject) return;
  // Nobody has one open that SQLite would wait at.
  if (besides(realpathSync(path)).every(({ stats }) => stats.isFile())) new HeldFile(path).close();
}

/**
 * How the file is written. Every edit is durable when its transaction returns: a rollback journal, flushed before the file
 * is touched and again when it is struck out (synchronous FULL). Not write-ahead logging: between two edits the file alone
 * is always whole, so that it can be copied to a stick. Until its end a transaction writes to the journal alone
 * (cache_spill OFF), so that it can still be given up where somebody else has written into the file meanwhile.
 */
function settle(database: Database): void {
  database.pragma('synchronous = FULL');
  database.pragma('journal_mode = DELETE');
  database.pragma('cache_spill = OFF');
}

function assertProjectFile(path: string, newest: number): void {
  assertUsableName(path);
  const said = plainWords().host.files;
  const stats = statSync(path);
  if (stats.isDirectory()) {
    throw new ProblemError('not-a-project', said.folder.message({ path }), said.folder.remedy);
  }
  if (!stats.isFile()) {
    throw new ProblemError('not-a-project', said.device.message({ path }), said.device.remedy);
  }
  accessSync(path, constants.R_OK | constants.W_OK);
  accessSync(dirname(path), constants.W_OK);
  const { isProject, version, isWriteAhead } = readHeader(path);
  if (!isProject) {
    const words = said.notAProject;
    throw new ProblemError('not-a-project', words.message({ path }), words.remedy({ ending: fileEnding }));
  }
  // Before SQLite sees the file: opening it alone may change one that a newer version keeps otherwise.
  assertNotNewer(version, path, newest);
  // SQLite follows links first, and looks beside what they lead to.
  const lies = realpathSync(path);
  if (isWriteAhead && existsSync(`${lies}-wal`)) {
    throw notOurs(path, message('host.files.notOurs.leftBeside', { beside: `${lies}-wal` }));
  }
  assertNothingForeignBeside(path, lies);
}

/**
 * Throws where SQLite would take something else for the file's journal: it waits at pipes, and plays whatever is called
 * `-wal` into the file, also one that was left by another program and belongs to another copy.
 */
function assertNothingForeignBeside(path: string, lies: string): void {
  for (const { beside, stats } of besides(lies)) {
    if (stats.isFile() && (beside.endsWith('-journal') || stats.size === 0)) continue;
    const words = plainWords().host.files.foreignBeside;
    throw new ProblemError('damaged', words.message({ path, beside }), words.remedy);
  }
}

/** What lies beside a file under the names that SQLite looks for. */
function besides(lies: string): { readonly beside: string; readonly stats: Stats }[] {
  return [`${lies}-journal`, `${lies}-wal`].flatMap((beside) => {
    const stats = lstatSync(beside, { throwIfNoEntry: false });
    return stats ? [{ beside, stats }] : [];
  });
}

/** Throws where the file is damaged. Only where its tables are known to be ours: this runs their checks. */
function assertSound(database: Database, path: string): void {
  if (soundness(database) !== 'ok') throw damaged((words) => words.file({ path }));
}

function soundness(database: Database): unknown {
  try {
    return database.pragma('quick_check(1)', { simple: true });
  } catch (error) {
    // A check of ours over a record that is no longer JSON.
    if (error instanceof SqliteError && error.code === 'SQLITE_ERROR') return error.message;
    throw error;
  }
}

function assertNotNewer(version: number, path: string, newest: number): void {
  if (version > newest) {
    const words = plainWords().host.files.newer;
    throw new ProblemError('newer-version', words.message({ path, version, newest }), words.remedy);
  }
}

/**
 * Brings the file to the newest version, after it was kept as it is beside it: `Farm.before-0002.undergate` before migration 2.
 * Where the disk is full all is left as it was, without the copy.
 */
function bringUpToDate(file: HeldFile, migrations: readonly Migration[]): void {
  const { path, database } = file;
  const copyPath = freeName(path, `before-${String(versionOf(database) + 1).padStart(4, '0')}`);
  try {
    publishFile(copyPath, false, (draftPath) => copyInto(database, draftPath));
    file.write(() => migrate(database, migrations));
  } catch (error) {
    if (!isDiskFull(error)) throw error;
    rmSync(copyPath, { force: true });
    throw noRoomToOpen(path);
  }
}

/** A name beside the file that nothing has yet: `Farm.kept.undergate`, `Farm.kept-2.undergate`, ... A long one is cut. */
export function freeName(path: string, what: string, folder = dirname(path)): string {
  const named = (end: string) => `${folder}/${fittingName(nameOfFile(path), `.${what}${end}${fileEnding}`)}`;
  let free = named('');
  for (let count = 2; existsSync(free); count++) free = named(`-${count}`);
  return free;
}

/** Gives a copy a stamp of its own, so that it is told from the file that it is a copy of. */
export function restamp(path: string): void {
  const database = new Sqlite(path);
  try {
    database.pragma('synchronous = OFF');
    database.prepare(`UPDATE fact SET value = ? WHERE name = 'stamp'`).run(randomUUID());
  } finally {
    database.close();
  }
}

/** Writes a whole copy, history and all, to a path where no file is. */
export function copyInto(database: Database, path: string): void {
  database.prepare('VACUUM INTO ?').run(path);
}
