import { join } from 'node:path';
import Sqlite, { type Database } from 'better-sqlite3';
import { describe, expect, test } from 'vitest';
import { migrate, readMigrations } from '../../../electron/store/migrations.ts';
import { addPictures, finish, fullProperty } from '../../support/fullProperty.ts';
import { newerThan331 } from '../../support/newerSqlite.ts';
import { otherSqlites } from '../../support/otherSqlite.ts';
import { makeStore, withSqlite } from '../../support/projectFile.ts';
import { temporaryFolder } from '../../support/temporaryFolder.ts';

function finishedFile(): string {
  const store = makeStore(join(temporaryFolder(), 'Farm.undergate'), fullProperty());
  addPictures(store);
  finish(store);
  return store.path;
}

function schema(): { name: string; sql: string }[] {
  const database = new Sqlite(':memory:');
  migrate(database, readMigrations());
  const all = database.prepare<[], { name: string; sql: string }>(
    'SELECT name, sql FROM sqlite_schema WHERE sql IS NOT NULL',
  );
  return all.all();
}

/** For each table and view a query of everything in it, exactly: a row a line, in hexadecimal. */
function queriesOf(database: Database): { name: string; query: string }[] {
  return database
    .prepare<[], string>(`SELECT name FROM sqlite_schema WHERE type IN ('table', 'view') ORDER BY name`)
    .pluck()
    .all()
    .map((name) => {
      const columns = database.prepare(`SELECT * FROM ${name}`).columns();
      const texts = columns.map((column) => `quote("${column.name}")`).join(` || ' | ' || `);
      return { name, query: `SELECT hex(${texts}) FROM ${name}` };
    });
}

const words = (line: string) => Buffer.from(line, 'hex').toString('utf8').split(' | ');

/** Older versions differ from ours in the last digits that they print. */
function isSame(one: string, other: string): boolean {
  const [a, b] = [Number(one), Number(other)];
  return one === other || Math.abs(a - b) <= 1e-14 * Math.abs(a);
}

for (const other of otherSqlites) {
  // Elsewhere than on CI it may be missing; there `npm test` gets it.
  describe.skipIf(!other.isHere && !process.env.CI)(other.name, () => {
    test('reads every table and view of a finished file as ours does', () => {
      const path = finishedFile();
      const ours = withSqlite(path, (database) =>
        queriesOf(database).map(({ name, query }) => ({
          name,
          query,
          rows: database.prepare<[], string>(query).pluck().all().map(words),
        })),
      );
      const theirs = other.ask(
        path,
        ours.map(({ query }) => query),
      );
      ours.forEach(({ name, rows }, index) => {
        // A view without a row proves nothing: put a thing that it shows into tests/support/fullProperty.ts.
        expect(rows, name).not.toEqual([]);
        const read = theirs[index]!.map(words);
        expect(read, name).toHaveLength(rows.length);
        rows.forEach((row, at) => {
          expect(read[at], name).toEqual(row.map((word, column) => sameOr(word, read[at]![column]!)));
        });
      });
    });

    test('finds nothing wrong with it', () => {
      expect(other.ask(finishedFile(), ['PRAGMA integrity_check'])).toEqual([['ok']]);
    });

    test('reads open switches in the order in which they were made', () => {
      const asked = other.ask(finishedFile(), ['SELECT open_switches FROM v_readings WHERE voltage_v = 6200.5']);
      expect(asked).toEqual([['S1, S3']]);
    });
  });
}

function sameOr(ours: string, theirs: string): string {
  return isSame(ours, theirs) ? theirs : ours;
}

test('no table, view, index or trigger has words that SQLite of 2020 (3.31) does not know', () => {
  const found = schema().flatMap(({ name, sql }) => newerThan331(sql).map((what) => `${name}: ${what}`));
  expect(found).toEqual([]);
});

test.each([
  [`SELECT body ->> '$.a' FROM t`, '-> and ->> (3.38)'],
  ['CREATE TABLE t (a TEXT) STRICT', 'STRICT (3.37)'],
  ['CREATE TABLE t (a TEXT)\nWITHOUT ROWID,  strict', 'STRICT (3.37)'],
  [`SELECT group_concat(a, ', ' ORDER BY b) FROM t`, 'ORDER BY inside of group_concat (3.44)'],
  ['SELECT sum(a) FILTER (WHERE a > 0) FROM t', 'FILTER of an aggregate'],
  ['SELECT iif(a, b, c) FROM t', 'the function iif'],
  [`SELECT string_agg(a, ',') FROM t`, 'the function string_agg'],
  ['SELECT unixepoch(a), sqrt(b) FROM t', 'the function unixepoch'],
  ['SELECT a IS NOT DISTINCT FROM b FROM t', 'IS DISTINCT FROM (3.39)'],
  ['WITH a AS MATERIALIZED (SELECT 1) SELECT * FROM a', 'MATERIALIZED (3.35)'],
  ['SELECT * FROM a FULL OUTER JOIN b', 'RIGHT and FULL JOIN (3.39)'],
  ['CREATE TRIGGER t AFTER INSERT ON a BEGIN INSERT INTO b VALUES (1) RETURNING c; END', 'RETURNING (3.35)'],
  ['CREATE TABLE t (a, b AS (a + 1) STORED)', 'a computed column or virtual table'],
])('newer words are found: %s', (sql, what) => {
  expect(newerThan331(sql)).toContain(what);
});

test.each([
  `SELECT '->> STRICT iif(a)' FROM t -- RETURNING string_agg(a)`,
  'SELECT group_concat(name) FROM (SELECT a AS name FROM t ORDER BY b)',
  'SELECT coalesce((SELECT a FROM t ORDER BY b LIMIT 1), 0), max(a) OVER (ORDER BY b) FROM t',
  `CREATE TABLE strict_things (a TEXT REFERENCES other (id), UNIQUE (a), CHECK (typeof(a) IN ('text')))`,
])('what 3.31 reads is let be: %s', (sql) => {
  expect(newerThan331(sql)).toEqual([]);
});

describe('the types of the tables', () => {
  const values: readonly (string | number | bigint | Buffer | null)[] = [
    null,
    1,
    2n,
    1.5,
    'x',
    '7',
    '7.0',
    ' 7',
    '',
    Buffer.from('7'),
    Buffer.alloc(0),
  ];
  const good: Readonly<Record<string, Readonly<Record<string, unknown>>>> = {
    fact: { name: 'n', value: 'v' },
    thing: { number: 1n, kind: '1', id: '7', body: '{"kind":"1","id":"7"}' },
    step: { seq: 1n, at: 'a', label: 'l', changes: '[]' },
    register: { kind: 'k', row: 1n, body: '{}' },
    blob: { id: 'i', media_type: 'm', bytes: Buffer.from('b') },
    image: { id: 'image', file_name: 'f', width_px: 1n, height_px: 1n, tile_px: 1n },
    image_tile: { image_id: 'there', level: 0n, tile_column: 0n, tile_row: 0n, bytes: Buffer.from('b') },
  };

  /** What becomes of each value in each column: how it is kept, or that it is refused. */
  function outcomes(version: number): Record<string, unknown> {
    const database = new Sqlite(':memory:');
    migrate(database, readMigrations().slice(0, version));
    database.exec(`INSERT INTO image VALUES ('there', 1, 1, 1, 1)`);
    const found: Record<string, unknown> = {};
    for (const [table, row] of Object.entries(good)) {
      const columns = Object.keys(row);
      const places = columns.map(() => '?').join();
      const insert = database.prepare(`INSERT INTO ${table} (${columns.join()}) VALUES (${places})`);
      for (const column of columns) {
        for (const value of values) {
          database.exec(`SAVEPOINT try; DELETE FROM ${table}`);
          try {
            insert.run(...columns.map((name) => (name === column ? value : row[name])));
            const kept = `SELECT typeof(${column}) || ' ' || quote(${column}) FROM ${table}`;
            found[`${table}.${column} ${typeof value} ${String(value)}`] = database.prepare(kept).pluck().get();
          } catch {
            found[`${table}.${column} ${typeof value} ${String(value)}`] = 'refused';
          }
          database.exec('ROLLBACK TO try; RELEASE try');
        }
      }
    }
    return found;
  }

  test('are held as strictly as by STRICT tables, and values kept as exactly', () => {
    const strict = outcomes(5);
    expect(Object.values(strict).filter((outcome) => outcome === 'refused').length).toBeGreaterThan(50);
    expect(outcomes(readMigrations().length)).toEqual(strict);
  });
});
