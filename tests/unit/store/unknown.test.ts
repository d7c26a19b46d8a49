import { copyFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { Thing } from '../../../core/model/things.ts';
import { registersOf } from '../../../electron/host/registers.ts';
import { fullProperty } from '../../support/fullProperty.ts';
import { changed, edit, gone, makeFile, makeStore, openStore, post, withSqlite } from '../../support/projectFile.ts';
import { temporaryFolder } from '../../support/temporaryFolder.ts';
import { withUnknown } from '../../support/withUnknown.ts';

const beacon = { kind: 'beacon', id: 'b-1', light: { colour: 'red' }, photoId: 'f'.repeat(64) };
const before = { ...beacon, light: { colour: 'white' } };

/** The file's own records, from a copy of it: it may be held. */
function bodiesIn(path: string): unknown[] {
  const copy = join(temporaryFolder(), 'look.undergate');
  copyFileSync(path, copy);
  return withSqlite(copy, (database) =>
    database
      .prepare<[], string>('SELECT body FROM thing ORDER BY number')
      .pluck()
      .all()
      .map((body) => JSON.parse(body) as unknown),
  );
}

/** A file that a newer version wrote a thing of a new kind into, and a step that changed it with a post. */
function makeNewerFile(path: string): string {
  const store = makeStore(path, [...fullProperty(), post('p', 'P')]);
  store.apply(edit(store, 'Name it', [changed(post('p', 'P'), post('p', 'Q'))]));
  store.close();
  withSqlite(path, (database) => {
    database
      .prepare('INSERT INTO thing (kind, id, body) VALUES (?, ?, ?)')
      .run('beacon', 'b-1', JSON.stringify(beacon));
    const changes = [
      { ...changed(post('p', 'P'), post('p', 'Q')), why: 'to tell it' },
      { kind: 'beacon', id: 'b-1', before, after: beacon },
    ];
    database.prepare('UPDATE step SET changes = ?').run(JSON.stringify(changes));
    database.prepare('INSERT INTO blob VALUES (?, ?, ?)').run(beacon.photoId, 'image/jpeg', Buffer.from([1]));
  });
  return path;
}

describe('a file with fields that this version does not know', () => {
  test('is opened, edited, undone and copied with all of them', () => {
    const folder = temporaryFolder();
    const things = fullProperty().map(withUnknown);
    const store = makeStore(join(folder, 'Farm.undergate'), things);
    expect(store.things()).toEqual(things);
    expect(store.holdsUnknown(store.things())).toBe(true);

    const gateway = things.find(({ kind }) => kind === 'gateway')!;
    const handover = things.find(({ kind }) => kind === 'handover')!;
    const named = { ...gateway, name: 'G-new' } as Thing;
    store.apply(edit(store, 'Name it', [changed(gateway, named), gone(handover)]));
    store.close();

    const again = openStore(join(folder, 'Farm.undergate'));
    expect(again.things()).toContainEqual(named);
    expect(again.undo()?.changes).toContainEqual({ kind: 'gateway', id: gateway.id, before: named, after: gateway });
    expect(again.things()).toEqual(expect.arrayContaining([gateway, handover]));
    expect(again.redo()?.label).toBe('Name it');
    again.undo();
    again.copyTo(join(folder, 'Copy.undergate'), false);
    expect(bodiesIn(join(folder, 'Copy.undergate'))).toEqual(bodiesIn(again.path));
  });

  test('is told from one without', () => {
    const store = makeStore(join(temporaryFolder(), 'Farm.undergate'), fullProperty());
    expect(store.holdsUnknown(store.things())).toBe(false);
  });
});

describe('a file with a thing of a kind that this version does not know', () => {
  test('is opened without it, and it stays in the file through edits, undo and redo', () => {
    const path = makeNewerFile(join(temporaryFolder(), 'Farm.undergate'));
    const store = openStore(path);
    expect(store.things()).toEqual([...fullProperty(), post('p', 'Q')]);
    expect(store.holdsUnknown(store.things())).toBe(true);
    expect(bodiesIn(path)).toContainEqual(beacon);

    const undone = store.undo()!;
    expect(undone.changes.map(({ kind }) => kind)).toEqual(['post']);
    expect(bodiesIn(path)).toContainEqual(before);
    expect(store.redo()!.changes).toHaveLength(1);
    expect(bodiesIn(path)).toContainEqual(beacon);

    store.apply(edit(store, 'Take it out', [gone(post('p', 'Q'))]));
    store.refreshRegisters(registersOf);
    store.close();
    const again = openStore(path);
    again.undo();
    again.undo();
    expect(again.things()).toContainEqual(post('p', 'P'));
    expect(bodiesIn(path)).toContainEqual(before);
  });

  test('goes on being a step of its own when the next edit joins the step', () => {
    const path = makeNewerFile(join(temporaryFolder(), 'Farm.undergate'));
    const store = openStore(path);
    store.apply(edit(store, 'Drag', [changed(post('p', 'Q'), post('p', 'R'))], 'drag'));
    store.apply(edit(store, 'Drag', [changed(post('p', 'R'), post('p', 'S'))], 'drag'));
    store.undo();
    expect(store.things()).toContainEqual(post('p', 'Q'));
    expect(bodiesIn(path)).toContainEqual(beacon);
  });

  test('keeps what it names of the photos in the file', () => {
    const path = makeNewerFile(join(temporaryFolder(), 'Farm.undergate'));
    const store = openStore(path);
    expect(store.photoBytes(beacon.photoId)).toEqual(new Uint8Array([1]));
  });

  test('is whole in the copy that is made where somebody wrote over the file', () => {
    const folder = temporaryFolder();
    const path = makeNewerFile(join(folder, 'Farm.undergate'));
    const store = openStore(path);
    const bodies = bodiesIn(path);
    copyFileSync(makeFile(join(folder, 'Other.undergate')), path);
    expect(store.isOnlyHere()).toBe(true);
    store.copyTo(join(folder, 'Kept.undergate'), false, registersOf);
    expect(bodiesIn(join(folder, 'Kept.undergate'))).toEqual(bodies);
  });
});
