import { createHash } from 'node:crypto';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { Photo } from '../../../core/model/recordThings.ts';
import { historyLimits } from '../../../electron/store/history.ts';
import { openProjectFile } from '../../../electron/store/projectFile.ts';
import { edit, gone, made, makeFile, openStore, post, withSqlite } from '../../support/projectFile.ts';
import { temporaryFolder } from '../../support/temporaryFolder.ts';

const bytes = Uint8Array.from([0xff, 0xd8, 1, 2, 3]);
const blobId = createHash('sha256').update(bytes).digest('hex');
const photo: Photo = {
  kind: 'photo',
  id: 'p',
  of: null,
  blobId,
  thumbId: blobId,
  widthPx: 4,
  heightPx: 3,
  takenAt: null,
  gps: null,
  fileName: 'gate.jpg',
  caption: 'The gate',
};

function fileWithPhoto(): string {
  const path = makeFile(join(temporaryFolder(), 'Farm.undergate'));
  const { store } = openProjectFile(path);
  store.applyWithPhotos(edit(store, 'Add photo', [made(photo)]), [{ blobId, bytes }]);
  store.close();
  return path;
}

const pictures = (path: string) => withSqlite(path, (database) => database.prepare('SELECT id FROM blob').all());
const reopen = (path: string) => openProjectFile(path).store.close();

test('the bytes never go into the undo history', () => {
  const steps = withSqlite(fileWithPhoto(), (database) => database.prepare('SELECT changes FROM step').pluck().all());
  expect(String(steps)).toContain(blobId);
  expect(String(steps).length).toBeLessThan(1000);
});

test('a deleted photo comes back with undo, also after the file was opened again', () => {
  const path = fileWithPhoto();
  const { store } = openProjectFile(path);
  store.apply(edit(store, 'Delete photo', [gone(photo)]));
  store.close();
  const again = openStore(path);
  expect(again.undo()?.changes).toEqual([made(photo)]);
  expect(again.photoBytes(blobId)).toEqual(bytes);
});

test('what neither a photo, a step nor a handover names goes when the file is opened', () => {
  const path = fileWithPhoto();
  const { store } = openProjectFile(path);
  store.apply(edit(store, 'Delete photo', [gone(photo)]));
  store.close();
  reopen(path);
  expect(pictures(path)).toHaveLength(1);
  // The steps that named it are forgotten, as they are when many others follow.
  expect(historyLimits.steps).toBeGreaterThan(0);
  withSqlite(path, (database) => database.exec('DELETE FROM step'));
  reopen(path);
  expect(pictures(path)).toEqual([]);
});

test('a handover keeps the pictures of its photos', () => {
  const path = fileWithPhoto();
  const { store } = openProjectFile(path);
  const handover = {
    kind: 'handover',
    id: 'h',
    number: 1,
    date: '2031-05-02',
    by: '',
    to: '',
    note: '',
    things: [photo],
  } as const;
  store.apply(edit(store, 'Hand over', [made(handover), gone(photo)]));
  store.close();
  withSqlite(path, (database) => database.exec('DELETE FROM step'));
  reopen(path);
  expect(pictures(path)).toHaveLength(1);
});

test('an edit that is refused leaves no picture', () => {
  const path = makeFile(join(temporaryFolder(), 'Farm.undergate'));
  const store = openStore(path);
  const wrong = { ...edit(store, 'Add photo', [made(photo), gone(post('nowhere'))]) };
  expect(() => store.applyWithPhotos(wrong, [{ blobId, bytes }])).toThrow();
  expect(store.photoBytes(blobId)).toBeNull();
});

test('plain SQLite reads photos, ties, depths, tests and handovers', () => {
  const path = fileWithPhoto();
  const rows = (view: string) => withSqlite(path, (database) => database.prepare(`SELECT * FROM ${view}`).all());
  expect(rows('v_photos')).toMatchObject([{ caption: 'The gate', file_name: 'gate.jpg', bytes: Buffer.from(bytes) }]);
  for (const view of [
    'v_built',
    'v_crossing_records',
    'v_depths',
    'v_ties',
    'v_test_results',
    'v_earth_tests',
    'v_handovers',
  ]) {
    expect(rows(view)).toEqual([]);
  }
});
