import Sqlite, { type Database } from 'better-sqlite3';
import { type Migration, migrate } from './migrations.ts';
import { type StoredThing, ThingTable } from './thingTable.ts';

/** What a new project file begins with. */
export interface Beginning {
  readonly things: readonly StoredThing[];
  readonly revision: number;
  /** ISO 8601. */
  readonly made: string;
  readonly madeWith: string;
}

/**
 * Fills a new file, without history, and with whatever `more` puts there; answers what `more` does. Nothing of it is flushed: the caller flushes the
 * draft as a whole before it gets its name.
 */
export function makeDatabase<T>(
  draftPath: string,
  migrations: readonly Migration[],
  beginning: Beginning,
  more: (database: Database) => T,
): T {
  const database = new Sqlite(draftPath);
  try {
    database.pragma('synchronous = OFF');
    migrate(database, migrations);
    const setFact = database.prepare('INSERT INTO fact (name, value) VALUES (?, ?)');
    return database
      .transaction(() => {
        setFact.run('revision', beginning.revision);
        setFact.run('position', 0);
        setFact.run('registersAt', -1);
        setFact.run('made', beginning.made);
        setFact.run('madeWith', beginning.madeWith);
        new ThingTable(database).write(
          beginning.things.map((thing) => ({ kind: thing.kind, id: thing.id, before: null, after: thing })),
        );
        return more(database);
      })
      .immediate();
  } finally {
    database.close();
  }
}
