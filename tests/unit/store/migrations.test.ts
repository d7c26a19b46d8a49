import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { SqliteError } from 'better-sqlite3';
import { expect, onTestFinished, test, vi } from 'vitest';
import { newEnergiser, newFenceType, newProperty } from '../../../core/model/defaults.ts';
import { HeldFile } from '../../../electron/store/heldFile.ts';
import { type Migration, newestVersion, readMigrations } from '../../../electron/store/migrations.ts';
import { openProjectFile } from '../../../electron/store/projectFile.ts';
import { makeOlderFile } from '../../support/olderFile.ts';
import {
  made,
  makeFile,
  makeStore,
  openStore,
  post,
  problemIn,
  startingThings,
  withSqlite,
} from '../../support/projectFile.ts';
import { temporaryFolder } from '../../support/temporaryFolder.ts';

const present = readMigrations();
const next = newestVersion(present) + 1;
const copyName = `Farm.before-${String(next).padStart(4, '0')}.undergate`;

function migrationsWith(sql: string): Migration[] {
  return [...present, { number: next, fileName: `${next}-test.sql`, sql }];
}

test('an older file is migrated, and a copy of it as it was is kept beside it', () => {
  const folder = temporaryFolder();
  const path = join(folder, 'Farm.undergate');
  const store = makeStore(path);
  store.apply({ baseRevision: 0, label: 'Place', changes: [made(post('p1'))] });
  store.close();
  const sql = `CREATE TABLE photo (id TEXT); INSERT INTO photo VALUES ('a');`;
  const opened = openProjectFile(path, migrationsWith(sql));
  expect(opened.things).toContainEqual(post('p1'));
  expect(opened.store.state().undo).toBe('Place');
  opened.store.close();

  expect(withSqlite(path, (database) => database.pragma('user_version', { simple: true }))).toBe(next);
  expect(withSqlite(path, (database) => database.prepare('SELECT id FROM photo').pluck().all())).toEqual(['a']);
  const copyPath = join(folder, copyName);
  expect(withSqlite(copyPath, (database) => database.pragma('user_version', { simple: true }))).toBe(next - 1);
  const copy = openStore(copyPath);
  expect(copy.things()).toContainEqual(post('p1'));
  expect(copy.undo()?.label).toBe('Place');
});

test('a migration that the disk has no room for leaves all as it was, without a copy, and says so', () => {
  const folder = temporaryFolder();
  const path = makeFile(join(folder, 'Farm.undergate'));
  const before = readFileSync(path);
  const sql = 'PRAGMA max_page_count = 1; CREATE TABLE photo (bytes); INSERT INTO photo VALUES (zeroblob(100000));';
  const problem = problemIn(path, () => openProjectFile(path, migrationsWith(sql)));
  expect(problem).toEqual({
    code: 'disk-full',
    message: `The disk that holds ${path} is full: there is no room to bring the file up to date for this Undergate. The file was left as it is.`,
    remedy: 'Make room on the disk and open it again, or copy the file to another disk and open it there.',
  });
  expect(readFileSync(path).equals(before)).toBe(true);
  expect(readdirSync(folder)).toEqual(['Farm.undergate']);
  openStore(path);
});

test('a full disk keeps nobody from opening a file that has something to be dropped', () => {
  const path = makeFile(join(temporaryFolder(), 'Farm.undergate'));
  const unused = `INSERT INTO blob VALUES ('${'0'.repeat(64)}', 'image/jpeg', x'ff')`;
  withSqlite(path, (database) => database.exec(unused));
  const drop = vi.spyOn(HeldFile.prototype, 'write').mockImplementation(() => {
    throw new SqliteError('database or disk is full', 'SQLITE_FULL');
  });
  onTestFinished(() => drop.mockRestore());
  const { store, things } = openProjectFile(path);
  expect(drop).toHaveBeenCalledOnce();
  expect(things).toEqual(startingThings);
  store.close();
});

test('a migration that fails leaves the file as it was, with its copy', () => {
  const folder = temporaryFolder();
  const path = makeFile(join(folder, 'Farm.undergate'));
  const sql = `CREATE TABLE photo (id TEXT); INSERT INTO nowhere VALUES (1);`;
  const problem = problemIn(path, () => openProjectFile(path, migrationsWith(sql)));
  expect(problem.code).not.toBe('damaged');
  const store = openStore(path);
  expect(store.things()).toEqual(startingThings);
  store.close();
  expect(readdirSync(folder).sort()).toEqual([copyName, 'Farm.undergate']);
});

test('of several migrations all go through or none', () => {
  const folder = temporaryFolder();
  const path = makeOlderFile(join(folder, 'Farm.undergate'), 2);
  const before = readFileSync(path);
  const migrations = [
    ...present.slice(0, 4),
    { number: 5, fileName: '0005-test.sql', sql: 'INSERT INTO nowhere VALUES (1)' },
  ];
  expect(problemIn(path, () => openProjectFile(path, migrations)).code).not.toBe('damaged');
  expect(readFileSync(path).equals(before)).toBe(true);
  expect(readdirSync(folder).sort()).toEqual(['Farm.before-0003.undergate', 'Farm.undergate']);
  openStore(path).close();
});

test('an up-to-date file is opened without a copy', () => {
  const folder = temporaryFolder();
  openStore(makeFile(join(folder, 'Farm.undergate'))).close();
  expect(readdirSync(folder)).toEqual(['Farm.undergate']);
});

test('migrations are plain SQL, numbered without a gap', () => {
  for (const { fileName, sql } of present) {
    expect(sql, fileName).not.toMatch(/^\s*(BEGIN|COMMIT|ROLLBACK|SAVEPOINT)\b/im);
  }
  const folder = temporaryFolder();
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, '0001-initial.sql'), '');
  writeFileSync(join(folder, '0003-later.sql'), '');
  expect(() => readMigrations(folder)).toThrow('migrations/0003-later.sql: expected number 2');
});

test('every file says what it is: application_id and version in the header', () => {
  const bytes = readFileSync(makeFile(join(temporaryFolder(), 'Farm.undergate')));
  expect(bytes.toString('latin1', 68, 72)).toBe('UGAT');
  expect(bytes.readUInt32BE(60)).toBe(newestVersion(present));
});

test('fence types and cables as older versions wrote them open and stay as they are', () => {
  const { plainWires: _, ...older } = newFenceType('ft-boundary', 'Boundary, seven wires, two live, one earth');
  const lead = {
    kind: 'leadOut',
    id: 'lead',
    name: 'Lead',
    energiserId: 'e',
    path: [
      [175.5, -37.9],
      [175.51, -37.9],
    ],
    cableId: 'cable-copper-6mm2',
    buried: true,
    status: 'built',
    note: '',
  } as const;
  const store = makeStore(join(temporaryFolder(), 'Farm.undergate'), [
    newProperty('Older'),
    older,
    newEnergiser('e', 'E', [175.5, -37.9]),
    lead,
  ]);
  expect(store.things()).toContainEqual(older);
  expect(store.things()).toContainEqual(lead);
});
