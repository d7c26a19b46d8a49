import Sqlite, { type Database } from 'better-sqlite3';
import { type Message, message } from '../../core/words/message.ts';
import type { HeldFile } from './heldFile.ts';
import { type Migration, migrate, versionOf } from './migrations.ts';
import { notOurs } from './problems.ts';
import { type Read, schemaWeight } from './schemaWeight.ts';

/** Far more than ours, which has about 30 entries and 20 kB, and far less than what keeps SQLite busy for long. */
const most = { entries: 1000, bytes: 1_000_000 };

const longestName = 60;

interface Entry {
  readonly type: string;
  readonly name: string;
  readonly tableName: string;
  readonly sql: string;
}

/**
 * Throws where the file is not made as its version's migrations make it: something more, something less, or something
 * otherwise. A file may come from a stranger, and a view, a check, a trigger or an index of theirs is a program that SQLite
 * would run for us, without end if they like; so this comes before anything else is asked of it.
 */
export function assertOwnSchema(file: HeldFile, migrations: readonly Migration[]): void {
  if (!isWithinMeasure((at, length) => file.bytesAt(at, length))) {
    throw notOurs(file.path, message('host.files.notOurs.beyondMeasure'));
  }
  const difference = schemaDifference(file.database, migrations);
  if (difference) throw notOurs(file.path, difference);
}

/** Whether SQLite can be let loose on the table of a file's tables; `read` gives bytes of the file. */
export function isWithinMeasure(read: Read): boolean {
  const weight = schemaWeight(read);
  return weight !== null && weight.entries <= most.entries && weight.bytes <= most.bytes;
}

/** How the tables, views and the like of a file differ from those of its version; null where they do not. */
export function schemaDifference(database: Database, migrations: readonly Migration[]): Message | null {
  const version = versionOf(database);
  if (version < 1) return message('host.files.notOurs.version', { version });
  const expected = schemaOf(migrations, version);
  const found = entriesOf(database);
  for (const [key, entry] of found) {
    const own = expected.get(key) ?? statistics.get(key);
    if (!own) return message('host.files.notOurs.foreign', named(entry));
    if (own.tableName !== entry.tableName || (own.sql !== entry.sql && plain(own.sql) !== plain(entry.sql))) {
      return message('host.files.notOurs.changed', named(entry));
    }
  }
  for (const [key, entry] of expected) if (!found.has(key)) return message('host.files.notOurs.missing', named(entry));
  return null;
}

/** What SQLite itself puts into a file that another program has asked to gather statistics (PRAGMA optimize, ANALYZE). */
const statistics: ReadonlyMap<string, Entry> = new Map(
  [
    ['sqlite_stat1', 'CREATE TABLE sqlite_stat1(tbl,idx,stat)'],
    ['sqlite_stat4', 'CREATE TABLE sqlite_stat4(tbl,idx,neq,nlt,ndlt,sample)'],
  ].map(([name, sql]) => [`table ${name}`, { type: 'table', name: name!, tableName: name!, sql: sql! }]),
);

/** What the migrations up to a version make, found by running them. */
function schemaOf(migrations: readonly Migration[], version: number): ReadonlyMap<string, Entry> {
  const database = new Sqlite(':memory:');
  try {
    migrate(
      database,
      migrations.filter(({ number }) => number <= version),
    );
    return entriesOf(database);
  } finally {
    database.close();
  }
}

function entriesOf(database: Database): ReadonlyMap<string, Entry> {
  const entries = database
    .prepare<[], Record<keyof Entry, unknown>>('SELECT type, name, tbl_name AS tableName, sql FROM sqlite_schema')
    .all()
    .map(({ type, name, tableName, sql }) => ({
      type: String(type),
      name: String(name),
      tableName: String(tableName),
      sql: String(sql),
    }));
  // One that is there twice is none of ours: the second gets a key that ours have not.
  const byKey = new Map<string, Entry>();
  for (const entry of entries) {
    const key = `${entry.type} ${entry.name}`;
    byKey.set(byKey.has(key) ? `${key} again` : key, entry);
  }
  return byKey;
}

function named({ type, name }: Entry): Pick<Entry, 'type' | 'name'> {
  return { type, name: name.length > longestName ? `${name.slice(0, longestName)} ...` : name };
}

const parts = /'(?:[^']|'')*'|"(?:[^"]|"")*"|--[^\n]*|\/\*.*?\*\/|\s+|./gs;

/** SQL without what means nothing: remarks, the lengths of gaps, and quotes around plain names. */
function plain(sql: string): string {
  const words: string[] = [];
  for (const word of sql.match(parts) ?? []) {
    if (!/^(\s|--|\/\*)/.test(word)) words.push(/^"[A-Za-z_]\w*"$/.test(word) ? word.slice(1, -1) : word);
    else if (words.at(-1) !== ' ') words.push(' ');
  }
  return words.join('').trim();
}
