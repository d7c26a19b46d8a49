import { createHash } from 'node:crypto';
import { readdirSync, renameSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { pyramidOf } from '../../../core/exchange/image/pyramid.ts';
import { readMigrations } from '../../../electron/store/migrations.ts';
import { fullProperty, imageId, imageSize, photoBlobs, underlay } from '../../support/fullProperty.ts';
import { makeOlderFile } from '../../support/olderFile.ts';
import { openStore, post, withSqlite } from '../../support/projectFile.ts';
import { temporaryFolder } from '../../support/temporaryFolder.ts';

type Row = Record<string, unknown>;

const versions = readMigrations()
  .slice(0, -1)
  .map(({ number }) => number);

/** Everything in the tables, each value with its type, by table; the stamp aside, which came later. */
function tablesOf(path: string): Record<string, Row[]> {
  return withSqlite(path, (database) => {
    const names = database.prepare<[], string>(`SELECT name FROM sqlite_schema WHERE type = 'table'`).pluck().all();
    return Object.fromEntries(
      names.map((name) => {
        const columns = database.prepare(`SELECT * FROM ${name}`).columns();
        const typed = columns.map((column) => `${column.name}, typeof(${column.name})`);
        const rows = database.prepare<[], Row>(`SELECT ${typed.join(', ')} FROM ${name}`).all();
        return [name, rows.filter((row) => row.name !== 'stamp')];
      }),
    );
  });
}

function viewsOf(path: string): Record<string, Row[]> {
  return withSqlite(path, (database) => {
    const names = database.prepare<[], string>(`SELECT name FROM sqlite_schema WHERE type = 'view'`).pluck().all();
    return Object.fromEntries(
      names.map((name) => [name, database.prepare<[], Row>(`SELECT * FROM ${name}`).all()] as const),
    );
  });
}

/** What a view has been called since then. */
const renamed: Readonly<Record<string, string>> = { depth_m: 'planned_depth_m' };

function asNow(view: string, row: Row): Row {
  if (view !== 'v_crossings') return row;
  return Object.fromEntries(Object.entries(row).map(([name, value]) => [renamed[name] ?? name, value]));
}

describe.each(versions)('a file of version %i', (version) => {
  test('opens with all that it held', () => {
    const folder = temporaryFolder();
    const path = makeOlderFile(join(folder, 'Farm.undergate'), version);
    const tables = tablesOf(path);
    const views = viewsOf(path);

    const store = openStore(path);
    const pictures = version >= 5 ? [underlay] : [];
    expect(store.things()).toEqual([...fullProperty(), post('older', 'Corner'), ...pictures]);
    expect(store.state()).toEqual({ revision: 4, undo: 'Name it', redo: 'Place another' });
    for (const { blobId, bytes } of version >= 3 ? photoBlobs : []) {
      expect(createHash('sha256').update(store.photoBytes(blobId)!).digest('hex')).toBe(blobId);
      expect(store.photoBytes(blobId)).toHaveLength(bytes.length);
    }
    for (const { level, columns, rows } of version >= 5
      ? pyramidOf(imageSize.widthPx, imageSize.heightPx).levels
      : []) {
      expect(store.imageTile({ imageId, level, column: columns - 1, row: rows - 1 })).not.toBeNull();
    }
    store.close();

    expect(withSqlite(path, (database) => database.pragma('user_version', { simple: true }))).toBe(versions.length + 1);
    expect(withSqlite(path, (database) => database.pragma('integrity_check', { simple: true }))).toBe('ok');
    expect(readdirSync(folder).sort()).toEqual([
      `Farm.before-${String(version + 1).padStart(4, '0')}.undergate`,
      'Farm.undergate',
    ]);
    expect(tablesOf(path)).toMatchObject(tables);
    const viewsNow = viewsOf(path);
    for (const [view, rows] of Object.entries(views)) {
      expect(viewsNow[view], view).toMatchObject(rows.map((row) => asNow(view, row)));
    }
  });

  test('goes on: undo, redo and further edits, after a restart too', () => {
    const path = makeOlderFile(join(temporaryFolder(), 'Farm.undergate'), version);
    const first = openStore(path);
    expect(first.undo()?.label).toBe('Name it');
    expect(first.undo()?.label).toBe('Place a post');
    expect(first.redo()?.label).toBe('Place a post');
    first.close();
    const again = openStore(path);
    expect(again.state()).toMatchObject({ undo: 'Place a post', redo: 'Name it' });
    expect(again.things()).toContainEqual(post('older'));
    expect(again.things()).not.toContainEqual(post('older', 'Corner'));
  });
});

test('the planned depth of a crossing is told from what was measured of it', () => {
  const path = makeOlderFile(join(temporaryFolder(), 'Farm.undergate'), 5);
  const measured = withSqlite(path, (database) =>
    database
      .prepare<[], Row>('SELECT gateway, min(depth_m) AS least, max(depth_m) AS most FROM v_depths GROUP BY 1')
      .all(),
  );
  openStore(path).close();
  const crossings = viewsOf(path).v_crossings!;
  expect(measured.length).toBeGreaterThan(5);
  expect(crossings.length).toBeGreaterThan(measured.length);
  for (const { gateway, planned_depth_m, shallowest_measured_depth_m, deepest_measured_depth_m } of crossings) {
    const found = measured.find((row) => row.gateway === gateway);
    expect(planned_depth_m).toBeGreaterThan(0);
    expect([shallowest_measured_depth_m, deepest_measured_depth_m]).toEqual([
      found?.least ?? null,
      found?.most ?? null,
    ]);
  }
});

test('a file with a long name is brought up to date, its copy under as much of that as there is room for', () => {
  const name = 'ü'.repeat(115);
  const path = makeOlderFile(join(temporaryFolder(), 'Farm.undergate'), 5);
  const long = join(dirname(path), `${name}.undergate`);
  renameSync(path, long);
  expect(openStore(long).things()).toContainEqual(post('older', 'Corner'));
  const [copy] = readdirSync(dirname(long)).filter((other) => other.endsWith('.before-0006.undergate'));
  expect(name.startsWith(copy!.slice(0, -'.before-0006.undergate'.length))).toBe(true);
});
