import { spawnSync } from 'node:child_process';
import {
  chmodSync,
  copyFileSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { Problem } from '../../../core/api/result.ts';
import type { Property } from '../../../core/model/things.ts';
import { readMigrations } from '../../../electron/store/migrations.ts';
import { openDatabase } from '../../../electron/store/openDatabase.ts';
import { createProjectFile, openProjectFile } from '../../../electron/store/projectFile.ts';
import { ProjectStore } from '../../../electron/store/projectStore.ts';
import { Child, canGiveUpRootsRights } from '../../support/child.ts';
import { stagedPicture } from '../../support/fullProperty.ts';
import {
  changed,
  edit,
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

const isRoot = process.getuid?.() === 0;

/** What opening this file runs into; makes sure that the file and its folder are left byte for byte as they were. */
function refusalOf(path: string): Problem {
  const before = readFileSync(path);
  const namesBefore = readdirSync(join(path, '..'));
  const problem = problemIn(path, () => openProjectFile(path));
  expect(readFileSync(path).equals(before)).toBe(true);
  expect(readdirSync(join(path, '..'))).toEqual(namesBefore);
  expect(problem.message).toContain(path);
  return problem;
}

function fileIn(folder: string): string {
  return join(folder, 'Farm.undergate');
}

test('a file that is not there', () => {
  const path = fileIn(temporaryFolder());
  expect(problemIn(path, () => openProjectFile(path))).toMatchObject({
    code: 'not-found',
    message: `${path} is not there.`,
  });
});

test('a folder', () => {
  const path = fileIn(temporaryFolder());
  mkdirSync(path);
  expect(problemIn(path, () => openProjectFile(path))).toMatchObject({ code: 'not-a-project' });
});

test.each([
  ['an empty file', ''],
  ['a text', 'Dear owner, the crossing is under the big tree.\n'.repeat(10)],
])('%s', (_what, content) => {
  const path = fileIn(temporaryFolder());
  writeFileSync(path, content);
  expect(refusalOf(path)).toMatchObject({ code: 'not-a-project' });
});

test('an SQLite file of another program', () => {
  const path = fileIn(temporaryFolder());
  withSqlite(path, (database) => database.exec('CREATE TABLE song (title TEXT)'));
  expect(refusalOf(path)).toMatchObject({
    code: 'not-a-project',
    message: `${path} is not an Undergate project file. It was not touched.`,
  });
});

test('a file from a newer version', () => {
  const path = makeFile(fileIn(temporaryFolder()));
  withSqlite(path, (database) => database.pragma('user_version = 999'));
  const problem = refusalOf(path);
  expect(problem.code).toBe('newer-version');
  expect(problem.message).toContain('file version 999; this one knows up to');
});

test('a file from a newer version that keeps its edits in another way', () => {
  const path = makeFile(fileIn(temporaryFolder()));
  withSqlite(path, (database) => {
    database.pragma('user_version = 999');
    database.pragma('journal_mode = WAL');
  });
  expect(refusalOf(path)).toMatchObject({ code: 'newer-version' });
});

test('a name that ends in a blank, beside the same name without it', () => {
  const path = makeFile(fileIn(temporaryFolder()));
  const before = readFileSync(path);
  copyFileSync(path, `${path} `);
  for (const blank of [' ', '\u00a0', '\n']) {
    const problem = problemIn(path, () => openProjectFile(path + blank));
    expect(problem).toMatchObject({ code: 'not-valid', message: expect.stringMatching(/ends with a blank/) });
    expect(problemIn(path, () => createProjectFile(`${path}x${blank}`, startingThings, 'test')).code).toBe('not-valid');
  }
  expect(readFileSync(path).equals(before)).toBe(true);
});

test('a name that leaves no room for the files beside it', () => {
  const folder = temporaryFolder();
  const named = (length: number) => join(folder, `${'n'.repeat(length - '.undergate'.length)}.undergate`);
  const path = makeFile(fileIn(folder));
  copyFileSync(path, named(250));
  expect(problemIn(path, () => openProjectFile(named(250)))).toMatchObject({
    code: 'not-valid',
    message: expect.stringMatching(/is too long/),
  });
  copyFileSync(path, named(247));
  const store = openStore(named(247));
  store.apply(edit(store, 'Place', [made(post('p1'))]));
  expect(problemIn(path, () => createProjectFile(named(200), startingThings, 'test')).code).toBe('not-valid');
  expect(problemIn(path, () => store.copyTo(named(300), false)).code).toBe('not-valid');
  const longest = makeStore(named(190));
  const staging = stagedPicture(longest.path);
  longest.applyWithImage(edit(longest, 'Picture', [made(post('p1'))]), staging);
  staging.discard();
});

test.each(['not JSON', '{"kind":"fenceType"', '\u0000'])('a file with a record that is %j', (body) => {
  const path = makeFile(fileIn(temporaryFolder()));
  withSqlite(path, (database) => {
    database.pragma('ignore_check_constraints = ON');
    database.prepare(`UPDATE thing SET body = ? WHERE id = 'ft-1'`).run(body);
  });
  expect(refusalOf(path)).toMatchObject({ code: 'damaged' });
});

test('a step of undo that would take away the record of the property', () => {
  const path = fileIn(temporaryFolder());
  const store = makeStore(path);
  const [property] = startingThings as readonly [Property];
  store.apply(edit(store, 'Rename', [changed(property, { ...property, name: 'Other' })]));
  store.close();
  withSqlite(path, (database) =>
    database.exec(`UPDATE step SET changes = json_set(changes, '$[0].before', json('null'))`),
  );
  const again = openStore(path);
  const problem = problemIn(path, () => again.undo());
  expect(problem).toMatchObject({ code: 'damaged', message: expect.stringMatching(/“Rename” in the history/) });
  expect(again.things()[0]).toMatchObject({ name: 'Other' });
  again.close();
  expect(openStore(path).things()[0]).toMatchObject({ name: 'Other' });
});

test('a file cut short', () => {
  const path = makeFile(fileIn(temporaryFolder()));
  truncateSync(path, 20_000);
  expect(refusalOf(path)).toMatchObject({ code: 'damaged' });
});

test('a file with a page overwritten', () => {
  const path = makeFile(fileIn(temporaryFolder()), [
    ...startingThings,
    ...Array.from({ length: 200 }, (_, n) => post(`p${n}`)),
  ]);
  const bytes = readFileSync(path);
  bytes.fill(0xa5, 4096 * 4, 4096 * 8);
  writeFileSync(path, bytes);
  expect(refusalOf(path)).toMatchObject({ code: 'damaged' });
});

test.each<[string, string]>([
  [
    'a record that is not what its kind should be',
    `UPDATE thing SET body = json_set(body, '$.name', 7) WHERE id = 'ft-1'`,
  ],
  ['no property', `DELETE FROM thing WHERE kind = 'property'`],
  ['no revision', `DELETE FROM fact WHERE name = 'revision'`],
  ['a table missing', 'DROP TABLE step'],
  ['a column missing', 'ALTER TABLE step DROP COLUMN label'],
  ['a trigger, which ours never have', 'CREATE TRIGGER t AFTER INSERT ON thing BEGIN DELETE FROM step; END'],
])('a file with %s', (_what, sql) => {
  const path = makeFile(fileIn(temporaryFolder()));
  withSqlite(path, (database) => database.exec(sql));
  expect(refusalOf(path)).toMatchObject({ code: 'damaged' });
});

test('a history that can not be read stops undo, not the file', () => {
  const path = fileIn(temporaryFolder());
  const store = makeStore(path);
  store.apply(edit(store, 'Place a post', [made(post('p1'))]));
  store.close();
  withSqlite(path, (database) => database.exec(`UPDATE step SET changes = '[{"kind":"post"}]'`));
  const again = openStore(path);
  expect(problemIn(path, () => again.undo())).toMatchObject({ code: 'damaged' });
  expect(again.things()).toContainEqual(post('p1'));
});

test('a file that another process has open, until that process is gone', async () => {
  const path = makeFile(fileIn(temporaryFolder()));
  const holder = new Child('holdFile', [path]);
  await holder.untilLines(1);
  expect(refusalOf(path)).toMatchObject({ code: 'in-use', message: `${path} is open in another Undergate.` });
  await holder.kill();
  expect(openStore(path).state().revision).toBe(0);
});

test('a name that is taken', () => {
  const path = makeFile(fileIn(temporaryFolder()));
  const before = readFileSync(path);
  const problem = problemIn(path, () => createProjectFile(path, startingThings, 'Undergate test'));
  expect(problem).toMatchObject({ code: 'exists-already' });
  expect(readFileSync(path).equals(before)).toBe(true);
  expect(readdirSync(join(path, '..'))).toEqual(['Farm.undergate']);
});

describe.runIf(canGiveUpRootsRights())('with ordinary rights (as root: needs setpriv)', () => {
  test.each<['open' | 'create', 'file' | 'folder']>([
    ['open', 'file'],
    ['open', 'folder'],
    ['create', 'folder'],
  ])('%s in a read-only %s', async (work, what) => {
    const folder = temporaryFolder();
    const path = makeFile(fileIn(folder));
    chmodSync(path, what === 'file' ? 0o444 : 0o666);
    chmodSync(folder, what === 'folder' ? 0o555 : 0o777);
    const tried = work === 'open' ? path : join(folder, 'New.undergate');
    const child = new Child('tryFile', [work, tried], 'ordinary');
    await child.untilLines(1);
    expect(JSON.parse(child.lines[0]!)).toMatchObject({ code: 'read-only' });
    chmodSync(folder, 0o755);
    expect(readdirSync(folder)).toEqual(['Farm.undergate']);
  });
});

test('a file that was moved away while it was open: nothing is written anywhere, and a copy can be saved', () => {
  const folder = temporaryFolder();
  const path = fileIn(folder);
  const store = makeStore(path);
  store.apply(edit(store, 'Before', [made(post('p1'))]));
  const movedTo = join(folder, 'Moved.undergate');
  renameSync(path, movedTo);
  const bytes = readFileSync(movedTo);
  const problem = problemIn(path, () => store.apply(edit(store, 'After', [made(post('p2'))])));
  expect(problem).toMatchObject({ code: 'not-found' });
  expect(problem.message).toContain('moved, renamed or deleted while it was open');
  expect(readFileSync(movedTo).equals(bytes)).toBe(true);
  const copyPath = join(folder, 'Copy.undergate');
  store.copyTo(copyPath, false);
  expect(openStore(copyPath).state()).toMatchObject({ undo: 'Before' });
});

test('a full disk: the edit is refused, all before it is kept, and work goes on when there is room', () => {
  const path = makeFile(fileIn(temporaryFolder()));
  const file = openDatabase(path, readMigrations());
  const { database } = file;
  const store = new ProjectStore(file);
  store.apply(edit(store, 'Fits', [made(post('p1'))]));
  const pages = Number(database.pragma('page_count', { simple: true }));
  database.pragma(`max_page_count = ${pages + 1}`);
  const big = edit(store, 'Too big', [made({ ...post('p2'), note: 'n'.repeat(20_000) })]);
  const problem = problemIn(path, () => store.apply(big));
  expect(problem).toMatchObject({ code: 'disk-full' });
  expect(problem.message).toContain(path);
  expect(store.things()).toEqual([...startingThings, post('p1')]);
  expect(store.state()).toMatchObject({ revision: 1, undo: 'Fits' });
  database.pragma(`max_page_count = ${pages + 1000}`);
  store.apply(big);
  store.close();
  expect(openStore(path).state()).toMatchObject({ revision: 2, undo: 'Too big' });
});

test('a disk that is really full', (context) => {
  const folder = temporaryFolder();
  const mounted = isRoot && spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=256k', 'tmpfs', folder]).status === 0;
  if (!mounted) return context.skip('needs the right to mount a small disk');
  try {
    const path = fileIn(folder);
    const store = makeStore(path);
    const note = 'n'.repeat(10_000);
    let applied = 0;
    const problem = problemIn(path, () => {
      for (; applied < 100; applied++) {
        store.apply(edit(store, `Edit ${applied}`, [made({ ...post(`p${applied}`), note })]));
      }
    });
    expect(problem).toMatchObject({ code: 'disk-full' });
    expect(store.state()).toMatchObject({ revision: applied, undo: `Edit ${applied - 1}` });
    const copyPath = join(folder, 'Copy.undergate');
    expect(problemIn(copyPath, () => store.copyTo(copyPath, false))).toMatchObject({ code: 'disk-full' });
    expect(readdirSync(folder).filter((name) => name.includes('Copy'))).toEqual([]);
    store.close();
    copyFileSync(path, join(temporaryFolder(), 'Rescued.undergate'));
    expect(withSqlite(path, (database) => database.pragma('integrity_check', { simple: true }))).toBe('ok');
    expect(
      problemIn(path, () => createProjectFile(join(folder, 'New.undergate'), startingThings, 'test')),
    ).toMatchObject({
      code: 'disk-full',
    });
  } finally {
    spawnSync('umount', [folder]);
  }
});
