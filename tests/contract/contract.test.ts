import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, onTestFinished, test, vi } from 'vitest';
import type { PackOptions } from '../../core/api/packOptions.ts';
import type { PrintJob } from '../../core/api/printJob.ts';
import type { Host, HostEvent, OpenProject } from '../../core/api/projectApi.ts';
import type { Result } from '../../core/api/result.ts';
import type { SheetOptions } from '../../core/api/sheetOptions.ts';
import { newProperty, startingFenceTypes } from '../../core/model/defaults.ts';
import type { Photo } from '../../core/model/recordThings.ts';
import type { Property } from '../../core/model/things.ts';
import { demoThings, ipcHost, loopbackHost, type TestHost } from '../support/hosts.ts';
import { changed, gone, made, makeFile, post } from '../support/projectFile.ts';
import { temporaryFolder } from '../support/temporaryFolder.ts';

vi.mock('electron', async () => import('../support/fakeElectron.ts'));

const orderOptions = { locale: 'en-NZ', withCutLists: true, withQuantities: true, date: '2026-05-12' };
const packOptions: PackOptions = {
  parts: ['crossings'],
  paper: 'A4',
  orientation: 'portrait',
  scaleDenominator: null,
  handoverNumber: null,
  preparedBy: '',
  preparedFor: '',
  note: '',
  date: '2031-05-02',
};

/** The beginning of any JPEG, then every value that a byte can have. */
const jpeg = Uint8Array.from([0xff, 0xd8, 0xff, ...Array.from({ length: 256 }, (_, i) => i)]);
const photoBytes = { blobId: createHash('sha256').update(jpeg).digest('hex'), bytes: jpeg };
const photo: Photo = {
  kind: 'photo',
  id: 'photo-1',
  of: null,
  blobId: photoBytes.blobId,
  thumbId: photoBytes.blobId,
  widthPx: 4,
  heightPx: 3,
  takenAt: '2031-05-02T09:30:00',
  gps: [175.2, -38.1],
  fileName: 'gate.jpg',
  caption: '',
};

const sheetOptions: SheetOptions = {
  paper: 'A3',
  orientation: 'landscape',
  scaleDenominator: 5000,
  centre: null,
  gridM: null,
  withSwitchRegister: true,
  withCrossingSchedule: true,
  withTestSheets: false,
  date: '2031-05-02',
};

function unwrap<T>(result: Result<T>): T {
  if (result.ok) return result.value;
  throw new Error(`${result.problem.code}: ${result.problem.message}`);
}

function codeOf(result: Result<unknown>): string {
  return result.ok ? 'ok' : result.problem.code;
}

/** What the window hears from now on. */
function heardBy(window: Host): HostEvent[] {
  const heard: HostEvent[] = [];
  onTestFinished(window.project.subscribe((event) => heard.push(event)));
  return heard;
}

async function withNewFile(host: TestHost): Promise<{ window: Host; path: string; opened: OpenProject }> {
  const window = await host.openWindow();
  const path = join(temporaryFolder(), 'Farm.undergate');
  return { window, path, opened: unwrap(await window.project.create({ path, name: 'Home block' })) };
}

describe.each([
  ['desktop window', ipcHost, 'desktop'],
  ['loopback', loopbackHost, 'loopback'],
] as const)('%s', (_name, startHost, transport) => {
  test('nothing is open at first', async () => {
    const { project } = await (await startHost()).openWindow();
    expect(unwrap(await project.current())).toBeNull();
    expect(codeOf(await project.undo())).toBe('no-file-open');
    expect(codeOf(await project.apply({ baseRevision: 0, label: 'Edit', changes: [] }))).toBe('no-file-open');
    expect(codeOf(await project.print({ what: 'sheets', options: sheetOptions }))).toBe('no-file-open');
    expect(codeOf(await project.photoBytes({ blobIds: [photo.blobId] }))).toBe('no-file-open');
    expect(unwrap(await project.close())).toBeNull();
  });

  test('create makes a file that begins with its property and fence types, and opens it', async () => {
    const { window, path, opened } = await withNewFile(await startHost());
    expect(opened).toEqual({
      path,
      fileName: 'Farm',
      things: [newProperty('Home block'), ...startingFenceTypes()],
      state: { revision: 0, undo: null, redo: null },
      holdsUnknown: false,
    });
    expect(unwrap(await window.project.current())).toEqual(opened);
    expect(existsSync(path)).toBe(true);
  });

  test('create adds the ending, and never writes over a file', async () => {
    const { window, path } = await withNewFile(await startHost());
    const { project } = window;
    const other = unwrap(await project.create({ path: path.replace('Farm.undergate', 'Other'), name: 'Other' }));
    expect(other.path).toBe(path.replace('Farm', 'Other'));
    expect(codeOf(await project.create({ path, name: 'Again' }))).toBe('exists-already');
    expect(codeOf(await project.create({ path: join(path, '..', 'nowhere', 'x'), name: 'x' }))).toBe('not-found');
    expect(codeOf(await project.create({ path: 'x.undergate', name: 'x' }))).toBe('not-valid');
    expect(unwrap(await project.current())?.path).toBe(other.path);
  });

  test('edits, undo and redo', async () => {
    const { window } = await withNewFile(await startHost());
    const { project } = window;
    const first = await project.apply({ baseRevision: 0, label: 'Place post', changes: [made(post('p1'))] });
    expect(unwrap(first)).toEqual({ revision: 1, undo: 'Place post', redo: null });
    const stale = await project.apply({ baseRevision: 0, label: 'Stale', changes: [made(post('p2'))] });
    expect(codeOf(stale)).toBe('out-of-date');
    const renamed = [changed(post('p1'), post('p1', 'Corner'))];
    unwrap(await project.apply({ baseRevision: 1, label: 'Name post', changes: renamed, mergeKey: 'name' }));
    expect(unwrap(await project.undo())).toEqual({
      label: 'Name post',
      changes: [changed(post('p1', 'Corner'), post('p1'))],
      state: { revision: 3, undo: 'Place post', redo: 'Name post' },
    });
    expect(unwrap(await project.redo())?.changes).toEqual(renamed);
    expect(unwrap(await project.redo())).toBeNull();
    expect(unwrap(await project.current())?.things).toContainEqual(post('p1', 'Corner'));
  });

  test('undo is still there when the file is closed and opened again', async () => {
    const { window, path } = await withNewFile(await startHost());
    const { project } = window;
    unwrap(await project.apply({ baseRevision: 0, label: 'Place post', changes: [made(post('p1'))] }));
    unwrap(await project.close());
    expect(unwrap(await project.current())).toBeNull();
    expect(unwrap(await project.open({ path })).state.undo).toBe('Place post');
    expect(unwrap(await project.undo())?.changes).toEqual([gone(post('p1'))]);
  });

  test('open answers each kind of failure with its code, and keeps what was open', async () => {
    const { window, path } = await withNewFile(await startHost());
    const { project } = window;
    const folder = temporaryFolder();
    const text = join(folder, 'Text.undergate');
    writeFileSync(text, 'not a project');
    expect(codeOf(await project.open({ path: join(folder, 'gone.undergate') }))).toBe('not-found');
    expect(codeOf(await project.open({ path: text }))).toBe('not-a-project');
    expect(codeOf(await project.open({ path: folder }))).toBe('not-a-project');
    expect(unwrap(await project.current())?.path).toBe(path);
  });

  test('opening the open file again answers it as it stands', async () => {
    const { window, path } = await withNewFile(await startHost());
    unwrap(await window.project.apply({ baseRevision: 0, label: 'Place', changes: [made(post('p1'))] }));
    expect(unwrap(await window.project.open({ path })).state.revision).toBe(1);
  });

  test('save as writes a whole copy with its undo and goes on in it', async () => {
    const { window, path } = await withNewFile(await startHost());
    const { project } = window;
    unwrap(await project.apply({ baseRevision: 0, label: 'Place', changes: [made(post('p1'))] }));
    const copyPath = join(temporaryFolder(), 'Copy.undergate');
    const copy = unwrap(await project.saveAs({ path: copyPath, replace: false }));
    expect(copy).toMatchObject({ path: copyPath, fileName: 'Copy', state: { undo: 'Place' } });
    unwrap(await project.apply({ baseRevision: 1, label: 'More', changes: [made(post('p2'))] }));
    expect(readdirSync(join(copyPath, '..')).filter((name) => name.endsWith('.undergate'))).toEqual(['Copy.undergate']);
    const original = unwrap(await project.open({ path }));
    expect(original.things).toContainEqual(post('p1'));
    expect(original.things).not.toContainEqual(post('p2'));
  });

  test('save as replaces a file only when told so, and onto itself does nothing', async () => {
    const { window, path } = await withNewFile(await startHost());
    const { project } = window;
    const taken = makeFile(join(temporaryFolder(), 'Taken.undergate'), demoThings);
    expect(codeOf(await project.saveAs({ path: taken, replace: false }))).toBe('exists-already');
    expect(unwrap(await project.current())?.path).toBe(path);
    const replaced = unwrap(await project.saveAs({ path: taken, replace: true }));
    expect(replaced).toMatchObject({ path: taken });
    expect(replaced.things).toHaveLength(1 + startingFenceTypes().length);
    expect(unwrap(await project.saveAs({ path: taken, replace: true })).path).toBe(taken);
  });

  test('the demo is copied to the project folder under a free name', async () => {
    const host = await startHost();
    const { project } = await host.openWindow();
    const first = unwrap(await project.openDemo());
    expect(first.things).toEqual(demoThings);
    expect(first.path).toBe(join(host.home, 'projects', 'Demo property.undergate'));
    expect(unwrap(await project.openDemo()).fileName).toBe('Demo property 2');
  });

  test('recent files, newest first, and whether they are still there', async () => {
    const host = await startHost();
    const { window, path } = await withNewFile(host);
    const { project } = window;
    const demo = unwrap(await project.openDemo());
    rmSync(path);
    expect(unwrap(await project.recent())).toMatchObject([
      { path: demo.path, fileName: 'Demo property', present: true },
      { path, fileName: 'Farm', present: false },
    ]);
    expect(readdirSync(join(host.home, 'config'))).toEqual(['recent.json']);
  });

  test('window settings are kept for the next start; nonsense is refused', async () => {
    const host = await startHost();
    const { project } = await host.openWindow();
    expect(unwrap(await project.windowSettings())).toEqual({
      theme: null,
      bookWidthPx: null,
      locale: null,
      language: null,
    });
    unwrap(await project.keepWindowSettings({ theme: 'dark', bookWidthPx: 512, locale: 'de-CH', language: null }));
    expect(unwrap(await project.windowSettings())).toEqual({
      theme: 'dark',
      bookWidthPx: 512,
      locale: 'de-CH',
      language: null,
    });
    const refused = await project.keepWindowSettings({
      theme: 'purple' as 'dark',
      bookWidthPx: 512,
      locale: 'de-CH',
      language: null,
    });
    expect(refused).toMatchObject({ ok: false, problem: { code: 'not-valid' } });
    expect(unwrap(await project.windowSettings())).toEqual({
      theme: 'dark',
      bookWidthPx: 512,
      locale: 'de-CH',
      language: null,
    });
  });

  test('a listing shows folders and project files, nothing else', async () => {
    const { project } = await (await startHost()).openWindow();
    const folder = temporaryFolder();
    for (const name of ['North 10', 'North 9', '.hidden']) mkdirSync(join(folder, name));
    makeFile(join(folder, 'Farm.undergate'));
    writeFileSync(join(folder, 'notes.txt'), '');
    const listing = unwrap(await project.listFolder({ path: folder }));
    expect(listing).toMatchObject({ path: folder, parent: join(folder, '..'), folders: ['North 9', 'North 10'] });
    expect(listing.projects.map(({ name }) => name)).toEqual(['Farm.undergate']);
    expect(listing.projects[0]!.sizeBytes).toBeGreaterThan(4096);
    expect(codeOf(await project.listFolder({ path: join(folder, 'gone') }))).toBe('not-found');
    expect(codeOf(await project.listFolder({ path: 'North 9' }))).toBe('not-valid');
  });

  test('the project folder is made when it is first looked into', async () => {
    const host = await startHost();
    const { project } = await host.openWindow();
    expect(unwrap(await project.listFolder({ path: null }))).toMatchObject({
      path: join(host.home, 'projects'),
      folders: [],
      projects: [],
    });
  });

  const find = { sheet: 'crossing', gatewayId: 'g1', date: '2026-05-12' } as const;
  const dig = { sheet: 'dig', dig: { shape: 'point', path: [], errorM: 1, withinM: 10 }, date: '2026-05-12' } as const;
  const parts = [...packOptions.parts, 'poster'] as unknown as PackOptions['parts'];
  test.each<[PrintJob, why: string, PrintJob]>([
    [
      { what: 'sheets', options: sheetOptions },
      'with a scale that is none',
      { what: 'sheets', options: { ...sheetOptions, scaleDenominator: 0 } },
    ],
    [
      { what: 'order', options: orderOptions },
      'with a locale that is none',
      { what: 'order', options: { ...orderOptions, locale: 'no place' } },
    ],
    [{ what: 'find', options: find }, 'for a dig without a place', { what: 'find', options: dig }],
    [
      { what: 'pack', options: packOptions },
      'with a part that is none',
      { what: 'pack', options: { ...packOptions, parts } },
    ],
  ])('a printed $what arrives byte for byte, and one %s is refused', async (job, _why, wrong) => {
    const { window, opened } = await withNewFile(await startHost());
    const made = unwrap(await window.project.print(job));
    expect(made).toMatchObject({ fileName: `${job.what}.pdf`, mediaType: 'application/pdf' });
    expect(made.bytes).toBeInstanceOf(Uint8Array);
    expect([...made.bytes]).toEqual(Array.from({ length: 256 + opened.things.length }, (_, index) => index % 256));
    expect(codeOf(await window.project.print(wrong))).toBe('not-valid');
  });

  test('a GeoPackage arrives byte for byte, and a property without a place on earth is refused one', async () => {
    const { window, opened } = await withNewFile(await startHost());
    expect(codeOf(await window.project.makeGeoPackage())).toBe('not-valid');
    const before = opened.things.find(({ kind }) => kind === 'property') as Property;
    const change = { kind: 'property', id: 'property', before, after: { ...before, placed: true } } as const;
    unwrap(await window.project.apply({ baseRevision: opened.state.revision, label: 'Place', changes: [change] }));
    const { fileName, bytes } = unwrap(await window.project.makeGeoPackage());
    expect(fileName).toBe(`${opened.fileName}.gpkg`);
    expect(new TextDecoder().decode(bytes.slice(0, 15))).toBe('SQLite format 3');
  });

  test('a photo comes back byte for byte, also after undo, redo and opening again', async () => {
    const { window, path } = await withNewFile(await startHost());
    const { project } = window;
    const edit = { baseRevision: 0, label: 'Add photo', changes: [made(photo)] };
    expect(unwrap(await project.addPhotos({ photos: [photoBytes], edit }))).toMatchObject({
      revision: 1,
      undo: 'Add photo',
    });
    const bytes = async () => unwrap(await project.photoBytes({ blobIds: [photo.blobId, 'f'.repeat(64)] }));
    expect(await bytes()).toEqual([photoBytes.bytes, null]);
    unwrap(await project.undo());
    unwrap(await project.close());
    unwrap(await project.open({ path }));
    expect(unwrap(await project.redo())?.changes).toEqual([made(photo)]);
    expect(await bytes()).toEqual([photoBytes.bytes, null]);
  });

  test('a photo that is none, or spoilt, or comes with a stale edit leaves nothing behind', async () => {
    const { window } = await withNewFile(await startHost());
    const { project } = window;
    const edit = { baseRevision: 0, label: 'Add photo', changes: [made(photo)] };
    const add = async (bytes: Uint8Array, baseRevision = 0) =>
      codeOf(await project.addPhotos({ photos: [{ ...photoBytes, bytes }], edit: { ...edit, baseRevision } }));
    expect(await add(new TextEncoder().encode('not a JPEG'))).toBe('not-valid');
    expect(await add(Uint8Array.of(...photoBytes.bytes, 0))).toBe('not-valid');
    expect(await add(photoBytes.bytes, 7)).toBe('out-of-date');
    expect(unwrap(await project.photoBytes({ blobIds: [photo.blobId] }))).toEqual([null]);
    expect(unwrap(await project.current())?.state.revision).toBe(0);
  });

  test('a window hears what the others do, and not its own doings', async () => {
    const host = await startHost();
    const { window, path } = await withNewFile(host);
    const other = await host.openWindow();
    const [own, others] = [heardBy(window), heardBy(other)];
    await vi.waitFor(async () => {
      unwrap(await window.project.open({ path: unwrap(await window.project.openDemo()).path }));
      expect(others).not.toEqual([]);
    });
    unwrap(await window.project.open({ path }));
    const changes = [made(post('p1'))];
    const state = unwrap(await window.project.apply({ baseRevision: 0, label: 'Place', changes }));
    await vi.waitFor(() => expect(others.at(-1)).toEqual({ type: 'changed', changes, state }));
    expect(others.at(-2)).toEqual({ type: 'opened', path });
    const undone = unwrap(await other.project.undo())!;
    await vi.waitFor(() => expect(own).toEqual([{ type: 'changed', changes: undone.changes, state: undone.state }]));
    unwrap(await other.project.close());
    await vi.waitFor(() => expect(own.at(-1)).toEqual({ type: 'opened', path: null }));
  });

  test('no more events after the end of a subscription', async () => {
    const host = await startHost();
    const { window } = await withNewFile(host);
    const other = await host.openWindow();
    const heard: HostEvent[] = [];
    const stop = other.project.subscribe((event) => heard.push(event));
    await vi.waitFor(async () => {
      unwrap(await window.project.openDemo());
      expect(heard).not.toEqual([]);
    });
    stop();
    const count = heard.length;
    unwrap(await window.project.openDemo());
    unwrap(await other.project.current());
    expect(heard).toHaveLength(count);
  });

  test.each<[string, unknown]>([
    ['no message', undefined],
    ['a foreign field', { baseRevision: 0, label: 'x', changes: [], extra: 1 }],
    ['no label', { baseRevision: 0, label: '', changes: [] }],
    ['a place off the earth', withChange({ ...post('p1'), at: [181, 0] })],
    ['a number that is none', withChange({ ...post('p1'), at: [Number.NaN, 0] })],
    ['a kind that there is not', withChange({ ...post('p1'), kind: 'tower' })],
    ['a thing under the id of another', { baseRevision: 0, label: 'x', changes: [{ ...made(post('p2')), id: 'p1' }] }],
    ['two changes to one thing', { baseRevision: 0, label: 'x', changes: [made(post('p1')), made(post('p1'))] }],
    ['a name without end', withChange(post('p1', 'n'.repeat(10_000)))],
  ])('an edit with %s is refused before it reaches the file', async (_what, message) => {
    const { window, path } = await withNewFile(await startHost());
    const result = await window.project.apply(message as Parameters<Host['project']['apply']>[0]);
    expect(codeOf(result)).toBe('not-valid');
    expect(unwrap(await window.project.open({ path })).state.revision).toBe(0);
  });

  test('the dialogs of the system belong to the desktop', async () => {
    const { desktop } = await (await startHost()).openWindow();
    const answers = [await desktop.chooseOpenPath(), await desktop.chooseSavePath({ suggestedName: 'Farm' })];
    if (transport === 'desktop') expect(answers.map(unwrap)).toEqual([null, null]);
    else expect(answers.map(codeOf)).toEqual(['not-available', 'not-available']);
  });
});

function withChange(after: object): unknown {
  const { kind, id } = after as { kind: string; id: string };
  return { baseRevision: 0, label: 'x', changes: [{ kind, id, before: null, after }] };
}
