import { isDeepStrictEqual } from 'node:util';
import type { Database, Statement } from 'better-sqlite3';
import { thingSchema } from '../../core/api/thingSchemas.ts';
import type { Change } from '../../core/model/difference.ts';
import type { Thing } from '../../core/model/things.ts';
import { damaged, ProblemError } from './problems.ts';

/** The table of all things, each as JSON text. */
export class ThingTable {
  readonly #all: Statement<[], { kind: string; id: string; body: string }>;
  readonly #body: Statement<[string, string], string>;
  readonly #insert: Statement<[string, string, string]>;
  readonly #update: Statement<[string, string, string]>;
  readonly #delete: Statement<[string, string]>;

  constructor(database: Database) {
    this.#all = database.prepare('SELECT kind, id, body FROM thing ORDER BY number');
    this.#body = database.prepare<[string, string], string>('SELECT body FROM thing WHERE kind = ? AND id = ?').pluck();
    this.#insert = database.prepare('INSERT INTO thing (kind, id, body) VALUES (?, ?, ?)');
    this.#update = database.prepare('UPDATE thing SET body = ? WHERE kind = ? AND id = ?');
    this.#delete = database.prepare('DELETE FROM thing WHERE kind = ? AND id = ?');
  }

  /** Everything, in the order in which it was made. Throws where a record is not what its kind should be. */
  read(path: string): Thing[] {
    return this.#all.all().map(({ kind, id, body }) => {
      const thing = thingSchema.safeParse(JSON.parse(body));
      if (thing.success) return thing.data;
      throw damaged(`The record of ${kind} ${id} in ${path} can't be read.`);
    });
  }

  /** Writes exactly these changes. Throws, and so ends the transaction, where the file holds something else. */
  write(changes: readonly Change[]): void {
    for (const { kind, id, before, after } of changes) {
      if (!isSame(this.#body.get(kind, id), before)) throw outOfDate(`${kind} ${id} is no longer what it was`);
      if (after === null) this.#delete.run(kind, id);
      else if (before === null) this.#insert.run(kind, id, JSON.stringify(after));
      else this.#update.run(JSON.stringify(after), kind, id);
    }
  }
}

export function outOfDate(what: string): ProblemError {
  return new ProblemError(
    'out-of-date',
    `The file has changed since this edit was begun: ${what}.`,
    'Look at the drawing as it is now and make the edit again.',
  );
}

function isSame(stored: string | undefined, thing: Thing | null): boolean {
  if (stored === undefined || thing === null) return stored === undefined && thing === null;
  const text = JSON.stringify(thing);
  return stored === text || isDeepStrictEqual(JSON.parse(stored), JSON.parse(text));
}
