import { isDeepStrictEqual } from 'node:util';
import type { Database, Statement } from 'better-sqlite3';
import { readBody } from '../../core/api/readBody.ts';
import { bodyVersion } from '../../core/kinds/upgrade.ts';
import { isKind } from '../../core/model/project.ts';
import type { Thing } from '../../core/model/things.ts';
import { plainWords } from '../../core/words/figures.ts';
import { type Message, message } from '../../core/words/message.ts';
import { parsed } from './parsed.ts';
import { damaged, ProblemError } from './problems.ts';

interface Row {
  readonly kind: string;
  readonly id: string;
  readonly body: string;
}

/** A thing as the file holds it: also one of a kind that a newer version made, which is kept but seen by nobody. */
export interface StoredThing {
  readonly kind: string;
  readonly id: string;
}

/** A change of such a thing. */
export interface StoredChange {
  readonly kind: string;
  readonly id: string;
  readonly before: StoredThing | null;
  readonly after: StoredThing | null;
}

/** Whether a stored thing is of a kind that this version knows; it was read as one then. */
export function isThing(thing: StoredThing): thing is Thing {
  return isKind(thing.kind);
}

/** What a write has left of each thing that it changed: its new record, or null for none. */
export type Written = readonly { readonly kind: string; readonly id: string; readonly body: string | null }[];

/**
 * The table of all things, each as JSON text. What stands in it is kept in memory as well, so that it is still known where
 * the file is not ours any more.
 */
export class ThingTable {
  readonly #all: Statement<[], Row>;
  readonly #body: Statement<[string, string], string>;
  readonly #insert: Statement<[string, string, string]>;
  readonly #update: Statement<[string, string, string]>;
  readonly #delete: Statement<[string, string]>;
  /** In the order in which they were made. */
  readonly #kept = new Map<string, Row>();
  /** What was read from them: each row once. */
  readonly #read = new WeakMap<Row, StoredThing>();

  constructor(database: Database) {
    this.#all = database.prepare('SELECT kind, id, body FROM thing ORDER BY number');
    this.#body = database.prepare<[string, string], string>('SELECT body FROM thing WHERE kind = ? AND id = ?').pluck();
    this.#insert = database.prepare('INSERT INTO thing (kind, id, body) VALUES (?, ?, ?)');
    this.#update = database.prepare('UPDATE thing SET body = ? WHERE kind = ? AND id = ?');
    this.#delete = database.prepare('DELETE FROM thing WHERE kind = ? AND id = ?');
    this.load();
  }

  /** Keeps in memory what the table holds now. */
  load(): void {
    this.#kept.clear();
    for (const row of this.#all.iterate()) this.#kept.set(keyOf(row.kind, row.id), row);
  }

  /** Whether the table holds what is kept in memory of it. */
  isAsKept(): boolean {
    let count = 0;
    for (const { kind, id, body } of this.#all.iterate()) {
      if (this.#kept.get(keyOf(kind, id))?.body !== body) return false;
      count += 1;
    }
    return count === this.#kept.size;
  }

  /** Everything, in the order in which it was made. Throws where a record is not what its kind should be. */
  all(path: string): StoredThing[] {
    return Array.from(this.#kept.values(), (row) => {
      const known = this.#read.get(row);
      if (known) return known;
      const thing = thingOf(row, path);
      this.#read.set(row, thing);
      return thing;
    });
  }

  /** Everything of kinds that this version knows. */
  things(path: string): Thing[] {
    return this.all(path).filter(isThing);
  }

  /** Whether it holds things of kinds that a newer version made. */
  holdsNewerKinds(): boolean {
    return [...this.#kept.values()].some(({ kind }) => !isKind(kind));
  }

  /** Writes exactly these changes. Throws, and so ends the transaction, where the file holds something else. */
  write(changes: readonly StoredChange[]): Written {
    return changes.map(({ kind, id, before, after }) => {
      if (!isSame(this.#body.get(kind, id), before))
        throw outOfDate(message('host.files.outOfDate.thing', { kind, id }));
      const body = after && JSON.stringify(after);
      if (body === null) this.#delete.run(kind, id);
      else if (before === null) this.#insert.run(kind, id, body);
      else this.#update.run(body, kind, id);
      return { kind, id, body };
    });
  }

  /** Keeps in memory what `write` has written, once it is in the file for good. */
  keep(written: Written): void {
    for (const { kind, id, body } of written) {
      if (body === null) this.#kept.delete(keyOf(kind, id));
      else this.#kept.set(keyOf(kind, id), { kind, id, body });
    }
  }
}

export function outOfDate(what: Message): ProblemError {
  const words = plainWords().host.files.outOfDate;
  return new ProblemError('out-of-date', words.message({ what }), words.remedy);
}

function keyOf(kind: string, id: string): string {
  return `${kind} ${id}`;
}

function thingOf({ kind, id, body }: Row, path: string): StoredThing {
  const value = parsed(body);
  // That it is an object which says so itself is what the table checks.
  if (!isKind(kind)) return value as StoredThing;
  const read = readBody(kind, bodyVersion, value);
  if (read.ok && read.things.length === 1) return read.things[0]!;
  throw damaged((words) => words.recordIn({ kind, id, path }));
}

function isSame(stored: string | undefined, thing: StoredThing | null): boolean {
  if (stored === undefined || thing === null) return stored === undefined && thing === null;
  const text = JSON.stringify(thing);
  return stored === text || isDeepStrictEqual(JSON.parse(stored), JSON.parse(text));
}
