import Sqlite, { SqliteError } from 'better-sqlite3';
import type { Thing } from '../../core/model/things.ts';
import { dropUnusedBlobs } from './blobTable.ts';
import { removeLeftStagings } from './imageStaging.ts';
import { dropUnusedImages } from './imageTable.ts';
import { type Migration, migrate, readMigrations } from './migrations.ts';
import { openDatabase } from './openDatabase.ts';
import { damaged } from './problems.ts';
import { ProjectStore } from './projectStore.ts';
import { publishFile } from './publishFile.ts';
import { ThingTable } from './thingTable.ts';

/** An open file and what it holds. */
export interface OpenedFile {
  readonly store: ProjectStore;
  readonly things: readonly Thing[];
}

/** Opens the project file at `path`; refuses what can't be opened whole. */
export function openProjectFile(path: string, migrations: readonly Migration[] = readMigrations()): OpenedFile {
  const database = openDatabase(path, migrations);
  try {
    const store = new ProjectStore(path, database);
    store.state();
    const things = store.things();
    if (!things.some(({ kind }) => kind === 'property')) throw damaged(`${path} has no record of its property.`);
    dropUnusedImages(database);
    dropUnusedBlobs(database);
    removeLeftStagings(path);
    return { store, things };
  } catch (error) {
    database.close();
    // Our own files never make SQLite stumble over a table or column.
    throw error instanceof SqliteError && error.code === 'SQLITE_ERROR' ? damaged(`${path}: ${error.message}.`) : error;
  }
}

/** Makes a project file that holds `things`, with no history. Refuses to write over a file (EEXIST). */
export function createProjectFile(path: string, things: readonly Thing[], madeWith: string): void {
  publishFile(path, false, (draftPath) => {
    const database = new Sqlite(draftPath);
    try {
      // The draft is flushed as a whole before it gets its name.
      database.pragma('synchronous = OFF');
      migrate(database, readMigrations());
      const setFact = database.prepare('INSERT INTO fact (name, value) VALUES (?, ?)');
      database
        .transaction(() => {
          setFact.run('revision', 0);
          setFact.run('position', 0);
          setFact.run('registersAt', -1);
          setFact.run('made', new Date().toISOString());
          setFact.run('madeWith', madeWith);
          new ThingTable(database).write(
            things.map((thing) => ({ kind: thing.kind, id: thing.id, before: null, after: thing })),
          );
        })
        .immediate();
    } finally {
      database.close();
    }
  });
}
