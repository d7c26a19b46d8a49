import { spawnSync } from 'node:child_process';
import { copyFileSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type { Database } from 'better-sqlite3';
import { describe, expect, test } from 'vitest';
import type { Problem } from '../../../core/api/result.ts';
import { assertNotInUse } from '../../../electron/store/openDatabase.ts';
import { openProjectFile } from '../../../electron/store/projectFile.ts';
import { fullProperty } from '../../support/fullProperty.ts';
import { makeOlderFile } from '../../support/olderFile.ts';
import { made, makeFile, post, problemIn, withSqlite } from '../../support/projectFile.ts';
import { temporaryFolder } from '../../support/temporaryFolder.ts';

const program = join(import.meta.dirname, '..', '..', 'support', 'children', 'tryFile.ts');

/** What opening the file runs into, in a process of its own that is ended should it hang; the file must stay as it is. */
function refusalOf(path: string): Problem {
  const before = readFileSync(path);
  const child = spawnSync(process.execPath, [program, 'open', path], { encoding: 'utf8', timeout: 50_000 });
  if (child.error) throw new Error(`Opening did not come to an end: ${child.error.message}`);
  expect(child.stderr).not.toMatch(/Error/);
  expect(readFileSync(path).equals(before)).toBe(true);
  expect(readdirSync(dirname(path))).toEqual(['Farm.undergate']);
  return JSON.parse(child.stdout) as Problem;
}

function fileWith(work: (database: Database) => void): string {
  const path = makeFile(join(temporaryFolder(), 'Farm.undergate'), fullProperty());
  withSqlite(path, (database) => {
    database.pragma('foreign_keys = OFF');
    work(database);
  });
  return path;
}

/** Changes the words of the schema past all that forbids it. */
function rewrite(database: Database, sql: string): void {
  database.unsafeMode(true);
  database.pragma('writable_schema = ON');
  database.exec(sql);
}

const endless = 'WITH RECURSIVE c(x) AS (SELECT 1 UNION ALL SELECT x + 1 FROM c)';

test.each<[string, string, string]>([
  [
    'a table that is an endless view',
    `DROP TABLE image; CREATE VIEW image AS ${endless}
     SELECT x AS id, 'a' AS file_name, 1 AS width_px, 1 AS height_px, 1 AS tile_px FROM c`,
    'view “image” that no Undergate puts there',
  ],
  ['one view more', `CREATE VIEW v_more AS ${endless} SELECT x FROM c`, 'view “v_more” that no'],
  [
    'a view of ours that is endless',
    `DROP VIEW v_ties; CREATE VIEW v_ties AS ${endless} SELECT x FROM c`,
    'view “v_ties” is not',
  ],
  ['a view missing', 'DROP VIEW v_ties', 'view “v_ties” is missing'],
  ['a trigger', `CREATE TRIGGER t AFTER INSERT ON thing BEGIN DELETE FROM step; END`, 'trigger “t”'],
  ['a trigger on a view', `CREATE TRIGGER t INSTEAD OF INSERT ON v_ties BEGIN DELETE FROM step; END`, 'trigger “t”'],
  ['a virtual table', `CREATE VIRTUAL TABLE search USING fts5(words)`, '“search'],
  ['an index on an expression', `CREATE INDEX i ON thing (json_extract(body, '$.name'))`, 'index “i”'],
  ['an index of some rows', `CREATE INDEX i ON thing (id) WHERE length(hex(zeroblob(9))) > 0`, 'index “i”'],
  ['a computed column', `ALTER TABLE step ADD COLUMN more AS (length(hex(zeroblob(40000000))))`, 'table “step” is not'],
  ['a name without end', `CREATE TABLE "${'x'.repeat(5000)}" (a)`, 'xxx ...”'],
])('a file with %s is refused before anything of it is run', (_what, sql, words) => {
  const problem = refusalOf(fileWith((database) => database.exec(sql)));
  expect(problem.code).toBe('damaged');
  expect(problem.message).toContain('Farm.undergate was not opened: it');
  expect(problem.message).toContain(words);
  expect(problem.message.length).toBeLessThan(400);
});

test('statistics that another program has gathered do no harm', () => {
  const path = fileWith((database) => database.exec('ANALYZE'));
  const { store, things } = openProjectFile(path);
  expect(things.length).toBeGreaterThan(0);
  store.close();
});

test('a table whose check takes for ever is refused', () => {
  const path = fileWith((database) => {
    database.exec('CREATE TABLE more (a CHECK (length(hex(zeroblob(40000000))) > 0))');
    database.pragma('ignore_check_constraints = ON');
    database.exec(`INSERT INTO more ${endless} SELECT 1 FROM c LIMIT 5000`);
  });
  expect(refusalOf(path).message).toContain('table “more” that no Undergate puts there');
});

test('a check of our own table that was made to take for ever is refused', () => {
  const path = fileWith((database) =>
    rewrite(
      database,
      `UPDATE sqlite_schema SET sql = replace(sql, 'json_valid(body)', 'length(hex(zeroblob(400000000))) > 0')
       WHERE name = 'thing'`,
    ),
  );
  expect(refusalOf(path).message).toContain('table “thing” is not as Undergate makes it');
});

test('a check that differs within a text alone is refused', () => {
  const path = fileWith((database) =>
    rewrite(database, `UPDATE sqlite_schema SET sql = replace(sql, '''$.kind''', '''$.KIND''') WHERE name = 'thing'`),
  );
  expect(refusalOf(path).message).toContain('table “thing” is not as Undergate makes it');
});

test('the same name for two things is refused', () => {
  const path = fileWith((database) =>
    rewrite(
      database,
      `INSERT INTO sqlite_schema SELECT type, 'v_ties', 'v_ties', 0, 'CREATE VIEW "v_ties " AS SELECT 1' FROM sqlite_schema WHERE name = 'v_ties'`,
    ),
  );
  expect(refusalOf(path).code).toBe('damaged');
});

test('words that are no SQL are refused', () => {
  const path = fileWith((database) =>
    rewrite(database, `UPDATE sqlite_schema SET sql = 'CREATE nonsense' WHERE name = 'v_ties'`),
  );
  expect(refusalOf(path).code).toBe('damaged');
});

test('tables beyond measure are refused', () => {
  const path = fileWith((database) =>
    database.transaction(() => {
      for (let n = 0; n < 1200; n++) database.exec(`CREATE VIEW more${n} AS SELECT ${n}`);
    })(),
  );
  expect(refusalOf(path).message).toContain('tables beyond measure');
});

test('one table of a million letters is refused', () => {
  const path = fileWith((database) => database.exec(`CREATE TABLE more (a, /* ${'x'.repeat(1_100_000)} */ b)`));
  expect(refusalOf(path).message).toContain('tables beyond measure');
});

describe('pages of the table of tables that lead to each other', () => {
  const pageBytes = 4096;

  /** Interior pages in a row, each leading to the next by all of its entries: a walk through them never ends. */
  function tangled(): string {
    const path = fileWith((database) =>
      database.exec(`CREATE TABLE padding (a); INSERT INTO padding VALUES (zeroblob(99999))`),
    );
    const bytes = readFileSync(path);
    const depth = 12;
    for (let page = 1; page <= depth; page++) {
      const start = page === 1 ? 100 : 0;
      const content = bytes.subarray((page - 1) * pageBytes, page * pageBytes);
      content.fill(0, start);
      if (page === depth) {
        // A leaf with one row of nothing: its length, its number, five values without a type.
        Buffer.from([0x0d, 0, 0, 0, 1, 0x0f, 0xf8, 0, 0x0f, 0xf8]).copy(content, start);
        Buffer.from([6, 1, 6, 0, 0, 0, 0, 0]).copy(content, pageBytes - 8);
        continue;
      }
      const [cells, cellBytes] = [300, 5];
      content.writeUInt8(0x05, start);
      content.writeUInt16BE(cells, start + 3);
      content.writeUInt16BE(pageBytes - cells * cellBytes, start + 5);
      content.writeUInt32BE(page + 1, start + 8);
      for (let cell = 0; cell < cells; cell++) {
        const at = pageBytes - (cell + 1) * cellBytes;
        content.writeUInt16BE(at, start + 12 + 2 * cell);
        content.writeUInt32BE(page + 1, at);
        content.writeUInt8(cell % 127, at + 4);
      }
    }
    writeFileSync(path, bytes);
    return path;
  }

  test('are refused when it is opened', () => {
    expect(refusalOf(tangled()).message).toContain('tables beyond measure');
  });

  test('do not matter where it is only to be replaced', () => {
    expect(() => assertNotInUse(tangled())).not.toThrow();
  });
});

test.each([0, -1, 2, 5])(
  'a file that says it is of version %i while it is of the newest is refused, with no copy',
  (version) => {
    const problem = refusalOf(fileWith((database) => database.pragma(`user_version = ${version}`)));
    expect(problem.code).toBe('damaged');
  },
);

test('a stranger’s view in a file of an earlier version is refused before it is brought up to date', () => {
  const path = makeOlderFile(join(temporaryFolder(), 'Farm.undergate'), 4);
  withSqlite(path, (database) => database.exec(`CREATE VIEW image AS ${endless} SELECT x AS id FROM c`));
  expect(refusalOf(path).message).toContain('view “image” that no Undergate puts there');
});

test('a change that another program left in a file beside it is refused, not taken in', () => {
  const path = fileWith((database) => database.pragma('journal_mode = WAL'));
  writeFileSync(`${path}-wal`, 'x');
  const child = spawnSync(process.execPath, [program, 'open', path], { encoding: 'utf8' });
  expect(JSON.parse(child.stdout)).toMatchObject({ code: 'damaged' });
  expect(readFileSync(`${path}-wal`, 'utf8')).toBe('x');
});

test('what another program left in a file beside it is not played into one that was laid over since', () => {
  const folder = temporaryFolder();
  const path = makeFile(join(folder, 'Farm.undergate'));
  const elsewhere = join(folder, 'elsewhere');
  copyFileSync(path, elsewhere);
  withSqlite(elsewhere, (database) => {
    database.pragma('journal_mode = WAL');
    database.exec(`INSERT INTO fact (name, value) VALUES ('more', 1)`);
    copyFileSync(`${elsewhere}-wal`, `${path}-wal`);
  });
  const before = readFileSync(path);
  const left = readFileSync(`${path}-wal`);
  const link = join(folder, 'Link.undergate');
  symlinkSync(path, link);
  for (const way of [path, link]) {
    const problem = problemIn(way, () => openProjectFile(way));
    expect(problem).toMatchObject({ code: 'damaged', message: expect.stringContaining(`${path}-wal`) as string });
    expect(problem.remedy).toContain('move what lies beside it to another folder');
  }
  expect(readFileSync(path).equals(before)).toBe(true);
  expect(readFileSync(`${path}-wal`).equals(left)).toBe(true);
  writeFileSync(`${path}-wal`, '');
  openProjectFile(path).store.close();
});

describe.skipIf(process.platform === 'win32')('a pipe, which never ends and mostly never begins', () => {
  const pipeAt = (path: string) => expect(spawnSync('mkfifo', [path]).status).toBe(0);

  /** In a process of its own that is ended should it wait at the pipe. */
  function answerOf(work: 'open' | 'replace', path: string): Problem | null {
    const child = spawnSync(process.execPath, [program, work, path], { encoding: 'utf8', timeout: 20_000 });
    expect(child.error).toBeUndefined();
    return JSON.parse(child.stdout) as Problem | null;
  }

  test('under the name of a project file is not waited for, also behind a link', () => {
    const path = join(temporaryFolder(), 'Farm.undergate');
    const link = join(dirname(path), 'Link.undergate');
    pipeAt(path);
    symlinkSync(path, link);
    for (const way of [path, link]) {
      expect(answerOf('open', way)).toMatchObject({
        code: 'not-a-project',
        message: `${way} is a pipe or a device, not a project file.`,
      });
    }
    expect(answerOf('replace', path)).toBeNull();
  });

  test.each(['-journal', '-wal'])('beside a project file, with its name and %s, neither', (suffix) => {
    const path = makeFile(join(temporaryFolder(), 'Farm.undergate'));
    pipeAt(path + suffix);
    expect(answerOf('open', path)?.message).toContain(`beside it lies ${path}${suffix}`);
    expect(answerOf('replace', path)).toBeNull();
  });
});

test('many photos that nothing names, beside a long history, are dropped in one go through it', () => {
  const path = fileWith((database) =>
    database.transaction(() => {
      const addPhoto = database.prepare(`INSERT INTO blob VALUES (?, 'image/jpeg', x'ff')`);
      for (let n = 0; n < 20_000; n++) addPhoto.run(n.toString(16).padStart(64, '0'));
      const addStep = database.prepare('INSERT INTO step VALUES (?, ?, ?, ?)');
      for (let n = 1; n <= 30; n++) {
        const after = { ...post(`p${n}`), note: '0'.repeat(1_000_000) };
        addStep.run(n, '2026-11-30T00:00:00.000Z', 'Place', JSON.stringify([made(after)]));
      }
    })(),
  );
  const child = spawnSync(process.execPath, [program, 'open', path], { encoding: 'utf8', timeout: 50_000 });
  expect(child.error).toBeUndefined();
  expect(child.stdout.trim()).toBe('null');
  expect(withSqlite(path, (database) => database.prepare('SELECT count(*) FROM blob').pluck().get())).toBe(0);
});
