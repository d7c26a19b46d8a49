import { execFileSync } from 'node:child_process';
import { readdirSync, readFileSync, renameSync, rmSync, symlinkSync, truncateSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { describe, expect, onTestFinished, test, vi } from 'vitest';
import type { Host, HostEvent, OpenProject } from '../../core/api/projectApi.ts';
import type { Problem, Result } from '../../core/api/result.ts';
import type { ProjectService } from '../../electron/host/projectService.ts';
import { ipcHost, loopbackHost, type TestHost, testService } from '../support/hosts.ts';
import { made, makeFile, post, startingThings, withSqlite } from '../support/projectFile.ts';
import { temporaryFolder } from '../support/temporaryFolder.ts';

vi.mock('electron', async () => import('../support/fakeElectron.ts'));

/** By another process: this one would lose its lock on a file by closing any handle of it. */
function copy(from: string, to: string): void {
  execFileSync('cp', [from, to]);
}

function unwrap<T>(result: Result<T>): T {
  if (result.ok) return result.value;
  throw new Error(`${result.problem.code}: ${result.problem.message}`);
}

const codeOf = (result: Result<unknown>): string => (result.ok ? 'ok' : result.problem.code);

const namesBeside = (path: string) =>
  readdirSync(dirname(path))
    .filter((name) => name.endsWith('.undergate'))
    .sort();

/** What is told to the window without its asking. */
function toldTo(window: Host): Problem[] {
  const told: Problem[] = [];
  const hear = (event: HostEvent) => void (event.type === 'problem' && told.push(event.problem));
  onTestFinished(window.project.subscribe(hear));
  return told;
}

async function place({ project }: Host, id: string, baseRevision: number): Promise<Result<unknown>> {
  return project.apply({ baseRevision, label: `Place ${id}`, changes: [made(post(id))] });
}

/** A file with two edits, open, and a copy of it from before the second. */
async function openedFarm(host: TestHost): Promise<{ window: Host; path: string; older: string; told: Problem[] }> {
  const window = await host.openWindow();
  const told = toldTo(window);
  const path = join(temporaryFolder(), 'Farm.undergate');
  const older = join(temporaryFolder(), 'older.undergate');
  unwrap(await window.project.create({ path, name: 'Home block' }));
  unwrap(await place(window, 'p1', 0));
  copy(path, older);
  unwrap(await place(window, 'p2', 1));
  return { window, path, older, told };
}

async function shown({ project }: Host): Promise<OpenProject> {
  return unwrap(await project.current())!;
}

function thingsIn(path: string): string[] {
  return withSqlite(path, (database) => database.prepare<[], string>('SELECT id FROM thing').pluck().all());
}

describe.each([
  ['desktop window', ipcHost],
  ['loopback', loopbackHost],
] as const)('%s', (_name, startHost) => {
  test('an edit, undo and redo into a file that was laid over the open one are refused; all stays on the screen', async () => {
    const { window, path, older } = await openedFarm(await startHost());
    const before = await shown(window);
    copy(older, path);
    for (const result of [await place(window, 'p3', 2), await window.project.undo(), await window.project.redo()]) {
      expect(result).toMatchObject({ ok: false, problem: { code: 'overwritten' } });
    }
    expect(await shown(window)).toEqual(before);
    expect(codeOf(await window.project.photoBytes({ blobIds: ['f'.repeat(64)] }))).toBe('overwritten');
    expect(unwrap(await window.project.pictureTile({ imageId: 'i', level: 0, column: 0, row: 0 }))).toBeNull();
    expect(codeOf(await window.project.makeGeoPackage())).toBe('not-valid');
    expect(readFileSync(path).equals(readFileSync(older))).toBe(true);
  });

  test('it is told without an edit, once', async () => {
    const { window, path, older, told } = await openedFarm(await startHost());
    copy(older, path);
    await vi.waitFor(() => expect(told).toHaveLength(1), { timeout: 20_000 });
    expect(told[0]).toMatchObject({ code: 'overwritten', message: expect.stringContaining(path) as string });
    const keptPath = path.replace('Farm', 'Farm.kept');
    expect(told[0]?.remedy).toBe(
      `What you saw is kept in ${keptPath}. Open that copy to go on, or open the file again to see what is in it now.`,
    );
    // The host may be killed from now on.
    expect(thingsIn(keptPath)).toContain('p2');
    expect(codeOf(await place(window, 'p3', 2))).toBe('overwritten');
    await new Promise((resolve) => setTimeout(resolve, 2500));
    expect(told).toHaveLength(1);
    unwrap(await window.project.close());
    expect(namesBeside(path)).toEqual(['Farm.kept.undergate', 'Farm.undergate']);
  });

  test('one that was deleted, or had another put in its place, is kept at once too', async () => {
    const host = await startHost();
    for (const replacement of [false, true]) {
      const { window, path, older, told } = await openedFarm(host);
      if (replacement) renameSync(older, path);
      else rmSync(path);
      await vi.waitFor(() => expect(told).toHaveLength(1), { timeout: 20_000 });
      const keptPath = path.replace('Farm', 'Farm.kept');
      expect(told[0]?.remedy).toBe(`What you saw is kept in ${keptPath}. Open that copy to go on.`);
      expect(unwrap(await window.project.open({ path: keptPath })).state).toMatchObject({ undo: 'Place p2' });
    }
  });

  test('closing writes nothing into it, keeps what was on the screen beside it, and says so', async () => {
    const { window, path, older, told } = await openedFarm(await startHost());
    copy(older, path);
    unwrap(await window.project.close());
    expect(readFileSync(path).equals(readFileSync(older))).toBe(true);
    expect(namesBeside(path)).toEqual(['Farm.kept.undergate', 'Farm.undergate']);
    const keptPath = path.replace('Farm', 'Farm.kept');
    await vi.waitFor(() => expect(told.at(-1)?.remedy).toBe(`What you saw is kept in ${keptPath}.`));
    expect(unwrap(await window.project.open({ path: keptPath })).things).toContainEqual(post('p2'));
    expect(unwrap(await window.project.open({ path })).things).not.toContainEqual(post('p2'));
  });

  test('opening it again shows what is in it now, and keeps what was on the screen', async () => {
    const { window, path, older } = await openedFarm(await startHost());
    copy(older, path);
    const opened = unwrap(await window.project.open({ path }));
    expect(opened.things).not.toContainEqual(post('p2'));
    expect(opened.state).toMatchObject({ revision: 1, undo: 'Place p1' });
    unwrap(await place(window, 'p9', 1));
    expect(namesBeside(path)).toEqual(['Farm.kept.undergate', 'Farm.undergate']);
    expect(thingsIn(path.replace('Farm', 'Farm.kept'))).toContain('p2');
    unwrap(await window.project.close());
    expect(thingsIn(path)).toContain('p9');
  });

  test('a copy saved from it holds all that was on the screen, and says what it lacks', async () => {
    const { window, path, told } = await openedFarm(await startHost());
    truncateSync(path);
    const copyPath = join(dirname(path), 'Copy.undergate');
    const before = await shown(window);
    const saved = unwrap(await window.project.saveAs({ path: copyPath, replace: false }));
    expect(saved).toEqual({
      ...before,
      path: copyPath,
      fileName: 'Copy',
      state: { revision: 2, undo: null, redo: null },
    });
    await vi.waitFor(() => expect(told.at(-1)?.message).toContain(`${copyPath} holds all that was drawn and recorded`));
    unwrap(await place(window, 'p3', 2));
    unwrap(await window.project.close());
    // One was kept at once where the host has looked before that.
    const others = namesBeside(path).filter((name) => name !== 'Farm.kept.undergate');
    expect(others).toEqual(['Copy.undergate', 'Farm.undergate']);
    expect(readFileSync(path)).toHaveLength(0);
  });

  test('saving under the same name is refused as long as another file lies there', async () => {
    const { window, path, older } = await openedFarm(await startHost());
    copy(older, path);
    expect(codeOf(await window.project.saveAs({ path, replace: true }))).toBe('overwritten');
    expect(readFileSync(path).equals(readFileSync(older))).toBe(true);
  });

  test('a file that was deleted, or had another put in its place, is kept too', async () => {
    const host = await startHost();
    for (const remove of [
      (path: string) => rmSync(path),
      (path: string, older: string) => {
        copy(older, `${path}.new`);
        renameSync(`${path}.new`, path);
      },
    ]) {
      const { window, path, older } = await openedFarm(host);
      remove(path, older);
      unwrap(await window.project.close());
      expect(namesBeside(path)).toContain('Farm.kept.undergate');
      expect(thingsIn(path.replace('Farm', 'Farm.kept'))).toContain('p2');
    }
  });

  test('a file that was only moved goes on where it is now', async () => {
    const { window, path } = await openedFarm(await startHost());
    const movedTo = path.replace('Farm', 'Moved');
    renameSync(path, movedTo);
    expect(codeOf(await place(window, 'p3', 2))).toBe('not-found');
    const opened = unwrap(await window.project.open({ path: movedTo }));
    expect(opened).toMatchObject({ path: movedTo, state: { revision: 2, undo: 'Place p2' } });
    unwrap(await place(window, 'p3', 2));
    expect(namesBeside(path)).toEqual([basename(movedTo)]);
  });

  test('what can not be opened in its place leaves all on the screen', async () => {
    const { window, path } = await openedFarm(await startHost());
    const before = await shown(window);
    writeFileSync(path, 'no project');
    expect(codeOf(await window.project.open({ path }))).toBe('not-a-project');
    expect(await shown(window)).toEqual(before);
    expect(namesBeside(path)).toEqual(['Farm.kept.undergate', 'Farm.undergate']);
    unwrap(await window.project.close());
    expect(namesBeside(path)).toEqual(['Farm.kept.undergate', 'Farm.undergate']);
  });

  test('a file that was only moved holds all itself, and nothing is kept beside it', async () => {
    const { window, path } = await openedFarm(await startHost());
    const movedTo = path.replace('Farm', 'Moved');
    renameSync(path, movedTo);
    unwrap(await window.project.close());
    expect(namesBeside(path)).toEqual([basename(movedTo)]);
    expect(thingsIn(movedTo)).toContain('p2');
  });
});

describe('the end of the host', () => {
  async function farmOf(service: ProjectService): Promise<string> {
    const path = join(temporaryFolder(), 'Farm.undergate');
    const project = service.forWindow('one');
    unwrap(await project.create({ path, name: 'Home block' }));
    unwrap(await project.apply({ baseRevision: 0, label: 'Place', changes: [made(post('p1'))] }));
    return path;
  }

  test('keeps what is on the screen alone, and answers where', async () => {
    const service = testService(temporaryFolder());
    const path = await farmOf(service);
    truncateSync(path);
    expect(service.dispose()?.remedy).toBe(`What you saw is kept in ${path.replace('Farm', 'Farm.kept')}.`);
    expect(thingsIn(path.replace('Farm', 'Farm.kept'))).toContain('p1');
  });

  test.each(['F'.repeat(175), 'Ж'.repeat(88), '👍'.repeat(44), 'F'.repeat(237)])(
    'keeps it where its name is long: %s',
    async (name) => {
      const path = makeFile(join(temporaryFolder(), 'Farm.undergate'), [...startingThings, post('p1')]);
      const service = testService(temporaryFolder());
      const long = join(dirname(path), `${name}.undergate`);
      renameSync(path, long);
      unwrap(await service.forWindow('one').open({ path: long }));
      truncateSync(long);
      const remedy = service.dispose()?.remedy ?? '';
      const kept = namesBeside(long).find((other) => other.endsWith('.kept.undergate'))!;
      expect(remedy).toBe(`What you saw is kept in ${join(dirname(long), kept)}.`);
      expect(name.startsWith(kept.slice(0, -'.kept.undergate'.length))).toBe(true);
      expect(thingsIn(join(dirname(long), kept))).toContain('p1');
    },
  );

  test('keeps it in the folder for projects where its own folder is gone', async () => {
    const home = temporaryFolder();
    const service = testService(home);
    const path = await farmOf(service);
    rmSync(dirname(path), { recursive: true });
    const kept = join(home, 'projects', 'Farm.kept.undergate');
    expect(service.dispose()?.remedy).toContain(kept);
    expect(thingsIn(kept)).toContain('p1');
  });

  test('keeps it there too where its own folder is out of reach', async () => {
    const home = temporaryFolder();
    const service = testService(home);
    const path = await farmOf(service);
    const folder = dirname(path);
    renameSync(folder, `${folder}-away`);
    onTestFinished(() => rmSync(`${folder}-away`, { recursive: true }));
    // A link to itself: asking for anything in it fails.
    symlinkSync(folder, folder);
    expect(service.dispose()?.remedy).toContain(join(home, 'projects', 'Farm.kept.undergate'));
    expect(thingsIn(join(home, 'projects', 'Farm.kept.undergate'))).toContain('p1');
  });

  test('is not reached by closing while it can be kept nowhere; a copy elsewhere frees it', async () => {
    const home = temporaryFolder();
    const service = testService(home);
    const path = await farmOf(service);
    rmSync(dirname(path), { recursive: true });
    writeFileSync(join(home, 'projects'), 'a file where the folder should be');
    const project = service.forWindow('one');
    const refused = await project.close();
    expect(refused).toMatchObject({
      ok: false,
      problem: { code: 'overwritten', remedy: 'Save a copy on another disk first.' },
    });
    expect(unwrap(await project.current())?.things).toContainEqual(post('p1'));
    const copyPath = join(temporaryFolder(), 'Copy.undergate');
    expect(unwrap(await project.saveAs({ path: copyPath, replace: false })).things).toContainEqual(post('p1'));
    unwrap(await project.close());
  });

  test('has nothing to tell where nothing happened', async () => {
    const service = testService(temporaryFolder());
    await farmOf(service);
    expect(service.dispose()).toBeNull();
    expect(testService(temporaryFolder()).dispose()).toBeNull();
  });
});
