import { join } from 'node:path';
import { expect, test } from 'vitest';
import { historyLimits } from '../../../electron/store/history.ts';
import {
  changed,
  edit,
  gone,
  made,
  makeStore,
  openStore,
  post,
  problemIn,
  startingThings,
  withSqlite,
} from '../../support/projectFile.ts';
import { temporaryFolder } from '../../support/temporaryFolder.ts';

const newFile = () => join(temporaryFolder(), 'Farm.undergate');

test('a new file holds its property and fence types, and nothing to undo', () => {
  const store = makeStore(newFile());
  expect(store.things()).toEqual(startingThings);
  expect(store.state()).toEqual({ revision: 0, undo: null, redo: null });
});

test('an edit is in the file at once, undo takes it back and redo brings it again', () => {
  const store = makeStore(newFile());
  const changes = [made(post('p1')), made(post('p2'))];
  expect(store.apply(edit(store, 'Place two posts', changes))).toEqual({
    revision: 1,
    undo: 'Place two posts',
    redo: null,
  });
  expect(store.things()).toEqual([...startingThings, post('p1'), post('p2')]);

  const undone = store.undo();
  expect(undone?.changes).toEqual([gone(post('p2')), gone(post('p1'))]);
  expect(undone?.state).toEqual({ revision: 2, undo: null, redo: 'Place two posts' });
  expect(store.things()).toEqual(startingThings);

  expect(store.redo()?.changes).toEqual(changes);
  expect(store.things()).toEqual([...startingThings, post('p1'), post('p2')]);
  expect(store.undo()).not.toBeNull();
  expect(store.undo()).toBeNull();
});

test('undo and redo survive closing and opening', () => {
  const path = newFile();
  const store = makeStore(path);
  store.apply(edit(store, 'First', [made(post('p1'))]));
  store.apply(edit(store, 'Second', [changed(post('p1'), post('p1', 'Corner'))]));
  store.undo();
  store.close();

  const again = openStore(path);
  expect(again.state()).toEqual({ revision: 3, undo: 'First', redo: 'Second' });
  expect(again.redo()?.label).toBe('Second');
  expect(again.things().at(-1)).toEqual(post('p1', 'Corner'));
  expect(again.undo()?.label).toBe('Second');
  expect(again.undo()?.label).toBe('First');
  expect(again.things()).toEqual(startingThings);
});

test('a new edit after an undo takes the place of what could be brought again', () => {
  const store = makeStore(newFile());
  store.apply(edit(store, 'First', [made(post('p1'))]));
  store.undo();
  expect(store.apply(edit(store, 'Other', [made(post('p2'))]))).toMatchObject({ undo: 'Other', redo: null });
  expect(store.redo()).toBeNull();
});

test('edits with one merge key, one after another, are one step', () => {
  const store = makeStore(newFile());
  store.apply(edit(store, 'Place post', [made(post('p1'))]));
  for (const name of ['a', 'ab', 'abc']) {
    const before = store.things().at(-1)!;
    store.apply(edit(store, `Name post ${name}`, [changed(before, post('p1', name))], 'name p1'));
  }
  expect(store.state()).toMatchObject({ revision: 4, undo: 'Name post abc' });
  expect(store.undo()?.changes).toEqual([changed(post('p1', 'abc'), post('p1'))]);
  expect(store.state().undo).toBe('Place post');
});

test('an undo in between, or another key, ends the merging', () => {
  const store = makeStore(newFile());
  store.apply(edit(store, 'a', [made(post('p1'))], 'key'));
  store.apply(edit(store, 'b', [made(post('p2'))], 'other key'));
  store.undo();
  store.redo();
  store.apply(edit(store, 'c', [made(post('p3'))], 'other key'));
  expect([store.undo(), store.undo(), store.undo()].map((replay) => replay?.label)).toEqual(['c', 'b', 'a']);
});

test('merged edits that end where they began leave no step behind', () => {
  const store = makeStore(newFile());
  store.apply(edit(store, 'Place', [made(post('p1'))]));
  store.apply(edit(store, 'Move', [changed(post('p1'), post('p1', 'x'))], 'move'));
  expect(store.apply(edit(store, 'Move', [changed(post('p1', 'x'), post('p1'))], 'move')).undo).toBe('Place');
  expect(store.undo()?.label).toBe('Place');
});

test('an edit without changes writes nothing', () => {
  const store = makeStore(newFile());
  expect(store.apply(edit(store, 'Nothing', []))).toEqual({ revision: 0, undo: null, redo: null });
});

test('an edit on an older revision, or of a thing that is no longer so, is refused whole', () => {
  const path = newFile();
  const store = makeStore(path);
  store.apply(edit(store, 'First', [made(post('p1'))]));
  const stale = { ...edit(store, 'Stale', [made(post('p2'))]), baseRevision: 0 };
  expect(problemIn(path, () => store.apply(stale))).toMatchObject({ code: 'out-of-date' });
  const halfWrong = edit(store, 'Half wrong', [made(post('p2')), changed(post('p1', 'other'), post('p1', 'new'))]);
  expect(problemIn(path, () => store.apply(halfWrong))).toMatchObject({ code: 'out-of-date' });
  const twice = edit(store, 'Twice', [made(post('p1'))]);
  expect(problemIn(path, () => store.apply(twice))).toMatchObject({ code: 'out-of-date' });
  expect(store.things()).toEqual([...startingThings, post('p1')]);
  expect(store.state()).toMatchObject({ revision: 1, undo: 'First' });
});

test('the property can be changed but not taken away', () => {
  const path = newFile();
  const store = makeStore(path);
  const [property] = startingThings;
  const taken = edit(store, 'Take away', [gone(property!)]);
  expect(problemIn(path, () => store.apply(taken))).toMatchObject({ code: 'not-valid' });
  store.apply(edit(store, 'Rename', [changed(property!, { ...property!, name: 'New name' } as typeof property & {})]));
  expect(store.things()[0]).toMatchObject({ name: 'New name' });
});

test('only the newest steps are kept, by number and by size', () => {
  const path = newFile();
  const store = makeStore(path);
  for (let n = 0; n < historyLimits.steps + 5; n++) store.apply(edit(store, `Step ${n}`, [made(post(`p${n}`))]));
  const count = () => withSqliteCopy(store, (database) => database.prepare('SELECT count(*) FROM step').pluck().get());
  expect(count()).toBe(historyLimits.steps);

  const big = 'x'.repeat(20_000);
  const postsOf = (batch: string) =>
    Array.from({ length: 1000 }, (_, n) => made({ ...post(`${batch}${n}`), note: big }));
  store.apply(edit(store, 'Big one', postsOf('a')));
  store.apply(edit(store, 'Big two', postsOf('b')));
  expect(count()).toBe(1);
  expect(store.undo()?.label).toBe('Big two');
  expect(store.undo()).toBeNull();
});

test('registers are kept for readers, and computed only where the file has moved on', () => {
  const store = makeStore(newFile());
  let computed = 0;
  const compute = (things: readonly unknown[]) => {
    computed += 1;
    return { section: [{ letter: 'A', fenceLengthM: 1210.4, gateways: things.length, switches: 'S1, S2', fed: true }] };
  };
  const sections = () => withSqliteCopy(store, (database) => database.prepare('SELECT * FROM v_sections').all());
  store.refreshRegisters(compute);
  store.refreshRegisters(compute);
  expect(computed).toBe(1);
  const row = { section: 'A', fence_length_m: 1210.4, gateways: 5, switches: 'S1, S2', fed: 1 };
  expect(sections()).toEqual([{ ...row, up_to_date: 1 }]);
  store.apply(edit(store, 'Edit', [made(post('p1'))]));
  expect(sections()).toEqual([{ ...row, up_to_date: 0 }]);
  store.refreshRegisters(compute);
  expect(sections()).toEqual([{ ...row, gateways: 6, up_to_date: 1 }]);
});

function withSqliteCopy<T>(store: ReturnType<typeof makeStore>, work: Parameters<typeof withSqlite<T>>[1]): T {
  const copyPath = join(temporaryFolder(), 'copy.undergate');
  store.copyTo(copyPath, false);
  return withSqlite(copyPath, work);
}
