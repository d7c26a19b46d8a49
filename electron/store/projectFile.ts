import { SqliteError } from 'better-sqlite3';
import type { Thing } from '../../core/model/things.ts';
import { removeLeftovers } from './leftovers.ts';
import { type Migration, readMigrations } from './migrations.ts';
import { makeDatabase } from './newDatabase.ts';
import { openDatabase } from './openDatabase.ts';
import { damaged, isDiskFull } from './problems.ts';
import { ProjectStore } from './projectStore.ts';
import { publishFile } from './publishFile.ts';

/** An open file and what it holds. */
export interface OpenedFile {
  readonly store: ProjectStore;
  readonly things: readonly Thing[];
}

/** Opens the project file at `path`; refuses what can't be opened whole. */
export function openProjectFile(path: string, migrations: readonly Migration[] = readMigrations()): OpenedFile {
  const file = openDatabase(path, migrations);
  try {
    const store = new ProjectStore(file);
    const things = store.things();
    if (!things.some(({ kind }) => kind === 'property')) throw damaged((words) => words.noProperty({ path }));
    dropUnused(store);
    removeLeftovers(path);
    return { store, things };
  } catch (error) {
    file.close();
    // Our own files never make SQLite stumble over a table or column.
    throw error instanceof SqliteError && error.code === 'SQLITE_ERROR'
      ? damaged((words) => words.bySqlite({ path, reason: error.message }))
      : error;
  }
}

/** Makes a project file that holds `things`, with no history. Refuses to write over a file (EEXIST). */
export function createProjectFile(
  path: string,
  things: readonly Thing[],
  madeWith: string,
  migrations: readonly Migration[] = readMigrations(),
): void {
  publishFile(path, false, (draftPath) => {
    const made = new Date().toISOString();
    makeDatabase(draftPath, migrations, { things, revision: 0, made, madeWith }, () => {});
  });
}

/** On a full disk what nothing names stays until there is room: nobody is kept from looking at the file. */
function dropUnused(store: ProjectStore): void {
  try {
    store.dropUnused();
  } catch (error) {
    if (!isDiskFull(error)) throw error;
  }
}
