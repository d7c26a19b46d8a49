import { execFileSync } from 'node:child_process';
import {
  existsSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  truncateSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { registersOf } from '../../../electron/host/registers.ts';
import { HeldFile } from '../../../electron/store/heldFile.ts';
import { readMigrations } from '../../../electron/store/migrations.ts';
import { openDatabase } from '../../../electron/store/openDatabase.ts';
import type { ProjectStore } from '../../../electron/store/projectStore.ts';
import { lostInWords } from '../../../electron/store/salvage.ts';
import { addPictures, finish, fullProperty, imageId, photoBlobs, stagedPicture } from '../../support/fullProperty.ts';
import {
  changed,
  edit,
  gone,
  made,
  makeFile,
  makeStore,
  openStore,
  post,
  problemIn,
  withSqlite,
} from '../../support/projectFile.ts';
import { temporaryFolder } from '../../support/temporaryFolder.ts';

/** By another process: this one would lose its lock on a file by closing any handle of it. */
function copy(from: string, to: string): void {
  execFileSync('cp', [from, to]);
}

/** Looked at instead of the open file itself: see `copy`. */
function copyOf(path: string): string {
  const aside = join(temporaryFolder(), 'aside');
  copy(path, aside);
  return aside;
}

const farmIn = (folder: string) => join(folder, 'Farm.undergate');

/** An open file of many things, undone once, with 20 edits after a copy of it was put aside. */
function openedFarm(): { store: ProjectStore; path: string; older: string } {
  const path = makeFile(farmIn(temporaryFolder()), fullProperty());
  const store = openStore(path);
  addPictures(store);
  const older = join(temporaryFolder(), 'older.undergate');
  copy(path, older);
  for (let n = 0; n < 20; n++) store.apply(edit(store, `Edit ${n}`, [made(post(`p${n}`))]));
  store.undo();
  return { store, path, older };
}

/** A copy that went on elsewhere, further than the open file. */
function newerThan(older: string): string {
  const newer = join(temporaryFolder(), 'newer.undergate');
  copy(older, newer);
  const store = openStore(newer);
  for (let n = 0; n < 60; n++)
    store.apply(edit(store, `Elsewhere ${n}`, [made({ ...post(`e${n}`), note: 'n'.repeat(500) })]));
  finish(store);
  return newer;
}

const layings: readonly (readonly [string, (path: string, older: string) => void])[] = [
  ['an older copy', (path, older) => copy(older, path)],
  ['a newer copy', (path, older) => copy(newerThan(older), path)],
  ['another property', (path) => copy(makeFile(farmIn(temporaryFolder())), path)],
  ['a text', (path) => writeFileSync(path, 'Dear owner, the crossing is under the big tree.\n'.repeat(3000))],
  ['nothing', (path) => truncateSync(path)],
  ['half of itself', (path) => truncateSync(path, Math.floor(statSync(path).size / 8192) * 4096)],
  [
    'its own pages in part',
    (path, older) =>
      execFileSync('dd', [`if=${older}`, `of=${path}`, 'bs=4096', 'count=2', 'conv=notrunc'], { stdio: 'ignore' }),
  ],
];

const photo = (store: ProjectStore) => store.things().find(({ kind }) => kind === 'photo')!;

const writings: readonly (readonly [string, (store: ProjectStore) => unknown])[] = [
  ['an edit', (store) => store.apply(edit(store, 'After', [made(post('after'))]))],
  ['undo', (store) => store.undo()],
  ['redo', (store) => store.redo()],
  ['the registers at closing', (store) => store.refreshRegisters(registersOf)],
  ['a photo', (store) => store.applyWithPhotos(edit(store, 'Photo', [gone(photo(store))]), photoBlobs)],
  [
    'a picture',
    (store) => {
      const staging = stagedPicture(store.path);
      try {
        store.applyWithImage(edit(store, 'Picture', [made(post('after'))]), staging);
      } finally {
        staging.discard();
      }
    },
  ],
];

describe.each(layings)('%s laid over the open file', (_what, lay) => {
  test.each(writings)('%s is refused, and the file is left byte for byte', (_writing, write) => {
    const { store, path, older } = openedFarm();
    const before = [store.things(), store.state()];
    lay(path, older);
    const laid = readFileSync(path);
    const problem = problemIn(path, () => write(store));
    expect(problem.code).toBe('overwritten');
    expect(problem.message).toContain(path);
    expect(problem.remedy).toContain('Save a copy under a new name');
    for (const [, again] of writings) expect(problemIn(path, () => again(store)).code).toBe('overwritten');
    expect([store.things(), store.state()]).toEqual(before);
    store.close();
    expect(readFileSync(path).equals(laid)).toBe(true);
    expect(readdirSync(dirname(path)).filter((name) => name.includes('journal'))).toEqual([]);
  });

  test('closing alone writes nothing', () => {
    const { store, path, older } = openedFarm();
    lay(path, older);
    const laid = readFileSync(path);
    store.close();
    expect(readFileSync(path).equals(laid)).toBe(true);
  });
});

test.each(layings.slice(0, 3))('%s that was laid over the open file is sound afterwards, and opens', (_what, lay) => {
  const { store, path, older } = openedFarm();
  lay(path, older);
  expect(() => store.apply(edit(store, 'After', [made(post('after'))]))).toThrow();
  store.close();
  expect(withSqlite(path, (database) => database.pragma('integrity_check', { simple: true }))).toBe('ok');
  openStore(path).close();
});

test('an older copy of the same size, with the very times of the file, is told by its stamp', () => {
  const { store, path } = openedFarm();
  const aside = join(dirname(path), 'aside');
  const corner = store.things().find(({ id }) => id === 'p3')!;
  store.apply(edit(store, 'Name', [changed(corner, post('p3', 'Corner 1'))]));
  copy(path, aside);
  store.apply(edit(store, 'Name', [changed(post('p3', 'Corner 1'), post('p3', 'Corner 2'))]));
  const left = statSync(path, { bigint: true });
  expect(left.size).toBe(statSync(aside, { bigint: true }).size);
  copy(aside, path);
  execFileSync('touch', [
    '-d',
    `@${left.mtimeNs / 1_000_000_000n}.${String(left.mtimeNs % 1_000_000_000n).padStart(9, '0')}`,
    path,
  ]);
  expect(statSync(path, { bigint: true }).mtimeNs).toBe(left.mtimeNs);
  expect(store.trouble()).toBe('overwritten');
});

test('a file that is only touched, or laid over with its own bytes, is written on', () => {
  const { store, path } = openedFarm();
  utimesSync(path, new Date(), new Date(Date.now() + 5000));
  expect(store.apply(edit(store, 'After a touch', [made(post('touched'))])).undo).toBe('After a touch');
  const aside = join(dirname(path), 'aside');
  copy(path, aside);
  copy(aside, path);
  expect(store.apply(edit(store, 'After itself', [made(post('itself'))])).undo).toBe('After itself');
  store.close();
  expect(withSqlite(path, (database) => database.pragma('integrity_check', { simple: true }))).toBe('ok');
  expect(openStore(path).things()).toContainEqual(post('itself'));
});

test.each([
  ['things', 'thing'],
  ['steps of undo', 'step'],
  ['registers', 'register'],
  ['table of tables', 'sqlite_schema'],
])(
  'pages of the %s alone that were spoilt, with size, header and stamp as they were: nothing more is written',
  (_what, table) => {
    const { store, path } = openedFarm();
    store.refreshRegisters(registersOf);
    const before = [store.things(), store.state()];
    const page = withSqlite(copyOf(path), (database) =>
      database.prepare<[string], number>(`SELECT max(pageno) FROM dbstat WHERE name = ?`).pluck().get(table),
    );
    const spoil = ['if=/dev/zero', `of=${path}`, 'bs=4096', `seek=${page! - 1}`, 'count=1', 'conv=notrunc'];
    execFileSync('dd', spoil, { stdio: 'ignore' });
    expect(problemIn(path, () => store.apply(edit(store, 'After', [made(post('after'))]))).code).toBe('overwritten');
    expect([store.things(), store.state()]).toEqual(before);
    const to = join(dirname(path), 'Copy.undergate');
    store.copyTo(to, false);
    expect(openStore(to).things()).toEqual(before[0]);
  },
);

test('another thing in it, with size, header and stamp as they were, counts as overwritten', () => {
  const { store, path } = openedFarm();
  store.apply(edit(store, 'Name', [changed(post('p3'), post('p3', 'Corner 1'))]));
  const aside = copyOf(path);
  const bytes = readFileSync(aside, 'latin1');
  const at = bytes.indexOf('"name":"Corner 1"');
  writeFileSync(aside, `${bytes.slice(0, at)}"name":"Corner 9"${bytes.slice(at + 17)}`, 'latin1');
  copy(aside, path);
  expect(store.trouble()).toBe('overwritten');
});

test('another file in between, gone again before anybody looked, leaves nothing behind', () => {
  const { store, path, older } = openedFarm();
  const aside = join(dirname(path), 'aside');
  copy(path, aside);
  copy(older, path);
  copy(aside, path);
  store.apply(edit(store, 'After', [made(post('after'))]));
  while (store.undo());
  while (store.redo());
  store.close();
  expect(withSqlite(path, (database) => database.pragma('integrity_check', { simple: true }))).toBe('ok');
});

test('once it was seen to be another file, it is not written into even if the old one is put back', () => {
  const { store, path, older } = openedFarm();
  const aside = join(dirname(path), 'aside');
  copy(path, aside);
  copy(older, path);
  expect(store.trouble()).toBe('overwritten');
  copy(aside, path);
  expect(problemIn(path, () => store.undo()).code).toBe('overwritten');
  expect(readFileSync(path).equals(readFileSync(aside))).toBe(true);
  openStore(path);
});

test.each(['an older copy', 'nothing'])('%s laid over it in the middle of a write: the write is given up', (what) => {
  const { store, path, older } = openedFarm();
  store.close();
  const file = openDatabase(path, readMigrations());
  const lay = layings.find(([name]) => name === what)![1];
  let laid = Buffer.alloc(0);
  const problem = problemIn(path, () =>
    file.write(() => {
      const insert = file.database.prepare('INSERT INTO step (seq, at, label, changes) VALUES (?, ?, ?, ?)');
      for (let n = 0; n < 2000; n++) insert.run(1000 + n, '', 'x'.repeat(10_000), '[]');
      lay(path, older);
      laid = readFileSync(path);
    }),
  );
  expect(problem.code).toBe('overwritten');
  file.close();
  expect(readFileSync(path).equals(laid)).toBe(true);
  expect(readdirSync(dirname(path))).toEqual(['Farm.undergate']);
});

test('laid over between the writes of two migrations, it is left alone', () => {
  const path = makeFile(farmIn(temporaryFolder()), fullProperty());
  const older = join(temporaryFolder(), 'older');
  copy(path, older);
  withSqlite(older, (database) => database.exec(`DELETE FROM thing WHERE kind = 'post'`));
  const number = readMigrations().length + 1;
  const file = new HeldFile(path);
  file.watch();
  copy(older, path);
  const laid = readFileSync(path);
  expect(problemIn(path, () => file.write(() => file.database.pragma(`user_version = ${number}`))).code).toBe(
    'overwritten',
  );
  expect(readFileSync(path).equals(laid)).toBe(true);
});

test('where the stamp lies too deep to be seen, a file that is only touched counts as overwritten', () => {
  const path = makeFile(farmIn(temporaryFolder()));
  withSqlite(path, (database) => {
    const insert = database.prepare('INSERT INTO fact (name, value) VALUES (?, ?)');
    database.transaction(() => {
      for (let n = 0; n < 2000; n++) insert.run(`more ${n}`, 'x'.repeat(50));
    })();
  });
  const store = openStore(path);
  for (let n = 0; n < 3; n++) store.apply(edit(store, 'Edit', [made(post(`p${n}`))]));
  utimesSync(path, new Date(), new Date(Date.now() + 5000));
  expect(store.trouble()).toBe('overwritten');
});

describe('a copy saved after that', () => {
  const copyPath = () => join(temporaryFolder(), 'Copy.undergate');

  test('holds all that was drawn, and no undo of the file that was laid', () => {
    const { store, path, older } = openedFarm();
    const [things, { revision }] = [store.things(), store.state()];
    copy(older, path);
    const to = copyPath();
    expect(store.copyTo(to, false, registersOf)).toEqual({ photos: 0, pictures: [] });
    const saved = openStore(to);
    expect(saved.things()).toEqual(things);
    expect(saved.state()).toEqual({ revision, undo: null, redo: null });
    for (const { blobId, bytes } of photoBlobs) expect(saved.photoBytes(blobId)).toEqual(bytes);
    expect(saved.imageTile({ imageId, level: 0, column: 1, row: 1 })).not.toBeNull();
    saved.close();
    const sections = withSqlite(to, (database) =>
      database.prepare('SELECT DISTINCT up_to_date FROM v_sections').pluck().all(),
    );
    expect(sections).toEqual([1]);
    expect(readFileSync(path).equals(readFileSync(older))).toBe(true);
  });

  test('says which photos and pictures lay in the file alone', () => {
    const { store, path } = openedFarm();
    const things = store.things();
    truncateSync(path);
    const to = copyPath();
    const lost = store.copyTo(to, false, registersOf)!;
    expect(lost).toEqual({ photos: 1, pictures: ['Aerial photo'] });
    expect(lostInWords(lost)).toBe(
      'Not in it: 1 photo, the background map “Aerial photo”. They lay only in the file that was written over.',
    );
    const saved = openStore(to);
    expect(saved.things()).toEqual(things);
    expect(saved.photoBytes(photoBlobs[0].blobId)).toBeNull();
    expect(statSync(path).size).toBe(0);
  });

  test('takes no photo that is another under the same name', () => {
    const { store, path, older } = openedFarm();
    withSqlite(older, (database) => database.exec(`UPDATE blob SET bytes = x'ffd8ff'`));
    copy(older, path);
    expect(store.copyTo(copyPath(), false)).toEqual({ photos: 1, pictures: [] });
  });

  test('takes nothing from a file that is made otherwise than ours', () => {
    const { store, path, older } = openedFarm();
    withSqlite(older, (database) => database.exec('CREATE VIEW more AS SELECT 1'));
    copy(older, path);
    expect(store.copyTo(copyPath(), false)).toEqual({ photos: 1, pictures: ['Aerial photo'] });
    expect(readFileSync(path).equals(readFileSync(older))).toBe(true);
  });

  test('is asked for where the file was deleted: whole, with its undo', () => {
    const { store, path } = openedFarm();
    const [things, state] = [store.things(), store.state()];
    rmSync(path);
    expect(store.trouble()).toBe('moved');
    expect(store.isOnlyHere()).toBe(true);
    const to = copyPath();
    expect(store.copyTo(to, false)).toBeNull();
    const saved = openStore(to);
    expect([saved.things(), saved.state()]).toEqual([things, state]);
  });
});

test('a copy is told from what it is a copy of, though both hold the same', () => {
  const path = makeFile(farmIn(temporaryFolder()));
  const store = openStore(path);
  const to = join(dirname(path), 'Copy.undergate');
  store.copyTo(to, false);
  store.close();
  const stamp = (of: string) =>
    withSqlite(of, (database) => database.prepare(`SELECT value FROM fact WHERE name = 'stamp'`).pluck().get());
  expect(stamp(to)).not.toBe(stamp(path));
  const opened = openStore(to);
  copy(path, to);
  expect(opened.trouble()).toBe('overwritten');
  expect(existsSync(`${to}-journal`)).toBe(false);
});

test('edits far larger than memory for pages are written whole', () => {
  const path = makeFile(farmIn(temporaryFolder()));
  const store = openStore(path);
  const posts = Array.from({ length: 2000 }, (_, n) => made({ ...post(`p${n}`), note: 'n'.repeat(20_000) }));
  store.apply(edit(store, 'Import', posts));
  store.close();
  expect(openStore(path).things()).toHaveLength(2000 + makeStore(farmIn(temporaryFolder())).things().length);
});
