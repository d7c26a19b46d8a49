import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, win32 } from 'node:path';
import { afterAll, describe, expect, onTestFinished, test, vi } from 'vitest';
import type { ProjectApi } from '../../../core/api/projectApi.ts';
import type { Result } from '../../../core/api/result.ts';
import { TileFiles } from '../../../electron/host/tileFiles.ts';
import { isBelow, tilePath } from '../../../electron/host/tilePaths.ts';
import { Child } from '../../support/child.ts';
import {
  linkToDevice,
  makeGreedyFile,
  makePipe,
  makeSilentFiles,
  makeSqlFile,
  makeTrapFile,
} from '../../support/hostileTiles.ts';
import { testService } from '../../support/hosts.ts';
import { temporaryFolder } from '../../support/temporaryFolder.ts';
import { makeTileFile, onePixelPng } from '../../support/tileFiles.ts';

const patience = { openMs: 1500, tileMs: 1500 };

function tileFiles(home = temporaryFolder()): TileFiles {
  const made = new TileFiles(join(home, 'map-files.json'), patience);
  onTestFinished(() => made.close());
  return made;
}

function goodFile(folder: string, name = 'Hills'): string {
  return makeTileFile(join(folder, `${name}.mbtiles`), {
    tiles: [{ zoom: 2, column: 1, rowFromSouth: 2, bytes: onePixelPng }],
    metadata: { name, format: 'png', bounds: '1,1,2,2' },
  });
}

/** The silent files are only read, so one set serves all tests. */
const silentFolder = mkdtempSync(join(tmpdir(), 'undergate-test-'));
const silentFiles = makeSilentFiles(silentFolder);
afterAll(() => rmSync(silentFolder, { recursive: true }));

const goodTile = { zoom: 2, column: 1, row: 1 };

/** Processes of this one, by what was started. */
function readers(): string[] {
  return readdirSync('/proc').filter((id) => /^\d+$/.test(id) && isReaderOf(id, process.pid));
}

function isReaderOf(id: string, parent: number): boolean {
  try {
    const [, , of] = readFileSync(`/proc/${id}/stat`, 'latin1').replace(/^.*\)/, ')').split(' ');
    const isRunning = !/\) [ZX] /.test(readFileSync(`/proc/${id}/stat`, 'latin1'));
    return isRunning && Number(of) === parent && readFileSync(`/proc/${id}/cmdline`, 'utf8').includes('tile.process');
  } catch {
    return false;
  }
}

function problemIn(result: Result<unknown>): string {
  return result.ok ? 'none' : `${result.problem.code}: ${result.problem.message}`;
}

describe('a file that never answers', () => {
  test.each(Object.keys(silentFiles))('%s: given up in time, once, and the others go on', async (what) => {
    const files = tileFiles();
    const path = silentFiles[what]!;
    const good = goodFile(temporaryFolder());
    await files.open(good, true, null);
    let isAnswered = false;
    const opening = files
      .open(path, true, null)
      .then(
        () => 'opened',
        (error: Error) => error.message,
      )
      .finally(() => {
        isAnswered = true;
      });
    // Its tiles are asked for meanwhile, as the map does, and a good file's.
    const tiles = Array.from({ length: 12 }, () => files.tile({ path, ...goodTile }, null).catch(() => 'none'));
    expect([...(await files.tile({ path: good, ...goodTile }, null))!]).toEqual([...onePixelPng]);
    // Also a new file is opened meanwhile.
    await files.open(goodFile(temporaryFolder(), 'New'), true, null);
    expect(isAnswered).toBe(false);
    expect(await opening).toMatch(
      /does not answer \((it was waited for 2 s|reading it broke off)\), so it is left out/,
    );
    expect(await Promise.all(tiles)).toEqual(tiles.map(() => 'none'));
    // It is not asked again.
    await expect(files.open(path, false, null)).rejects.toThrow('does not answer');
  });

  test('one that falls silent at a tile is given up there', async () => {
    const files = tileFiles();
    const folder = temporaryFolder();
    const path = makeTrapFile(folder);
    const good = goodFile(folder);
    await files.open(path, true, null);
    await files.open(good, true, null);
    expect(await files.tile({ path, zoom: 2, column: 1, row: 2 }, null)).not.toBeNull();
    await expect(files.tile({ path, zoom: 2, column: 3, row: 3 }, null)).rejects.toThrow('does not answer');
    expect(await files.tile({ path: good, ...goodTile }, null)).not.toBeNull();
    await expect(files.tile({ path, zoom: 2, column: 1, row: 2 }, null)).rejects.toThrow('does not answer');
    // Opened anew by the user it gets another chance.
    await files.open(path, true, null);
    expect(await files.tile({ path, zoom: 2, column: 1, row: 2 }, null)).not.toBeNull();
  });

  test('one that wants all the memory there is is stopped before it has it', async () => {
    const patient = new TileFiles(join(temporaryFolder(), 'map-files.json'), { openMs: 60_000, tileMs: 60_000 });
    onTestFinished(() => patient.close());
    const opening = patient.open(makeGreedyFile(temporaryFolder()), true, null);
    await expect(opening).rejects.toThrow('does not answer (reading it broke off), so it is left out');
  });

  test('pipes and devices are not even opened', async (context) => {
    if (process.platform === 'win32') return context.skip('Windows has none that lie in a folder');
    const files = tileFiles();
    const folder = temporaryFolder();
    const pipe = join(folder, 'Pipe.mbtiles');
    expect(makePipe(pipe)).toBe(true);
    for (const path of [pipe, linkToDevice(folder)]) {
      await expect(files.open(path, true, null)).rejects.toThrow('it is no file but a folder, a pipe or a device');
    }
  });

  test('a pipe beside a file, under the name of its journal, is given up too', async (context) => {
    if (process.platform === 'win32') return context.skip('Windows has none that lie in a folder');
    const files = tileFiles();
    const path = goodFile(temporaryFolder());
    expect(makePipe(`${path}-journal`)).toBe(true);
    await expect(files.open(path, true, null)).rejects.toThrow('does not answer');
  });

  test('a tile and a fact of many megabytes are answered in bounds', async () => {
    const files = tileFiles();
    const path = makeSqlFile(
      temporaryFolder(),
      'Large',
      `CREATE TABLE metadata (name text, value text);
       INSERT INTO metadata VALUES ('name', printf('%.*c', 30000000, 'n')), ('format', 'png'), ('bounds', '1,1,2,2');
       CREATE TABLE tiles (zoom_level integer, tile_column integer, tile_row integer, tile_data blob);
       INSERT INTO tiles VALUES (2, 1, 1, zeroblob(50000000)), (2, 2, 1, x'89504e47');`,
    );
    expect((await files.open(path, true, null)).name).toBe('n'.repeat(200));
    expect(await files.tile({ path, zoom: 2, column: 1, row: 2 }, null)).toBeNull();
    expect(await files.tile({ path, zoom: 2, column: 2, row: 2 }, null)).not.toBeNull();
  });

  test('the view over map and images that the specification allows goes on working', async () => {
    const files = tileFiles();
    const path = makeSqlFile(
      temporaryFolder(),
      'Shared',
      `CREATE TABLE metadata (name text, value text);
       CREATE TABLE map (zoom_level integer, tile_column integer, tile_row integer, tile_id text);
       CREATE TABLE images (tile_id text, tile_data blob);
       CREATE UNIQUE INDEX map_index ON map (zoom_level, tile_column, tile_row);
       CREATE UNIQUE INDEX images_id ON images (tile_id);
       INSERT INTO images VALUES ('sea', x'89504e470d0a1a0a0000000d');
       INSERT INTO map VALUES (3, 4, 4, 'sea'), (3, 5, 4, 'sea');
       CREATE VIEW tiles AS SELECT map.zoom_level AS zoom_level, map.tile_column AS tile_column,
         map.tile_row AS tile_row, images.tile_data AS tile_data
         FROM map JOIN images ON images.tile_id = map.tile_id;`,
    );
    expect(await files.open(path, true, null)).toMatchObject({ minZoom: 3, maxZoom: 3, name: 'Shared.mbtiles' });
    expect(await files.tile({ path, zoom: 3, column: 5, row: 3 }, null)).toHaveLength(12);
    expect(await files.tile({ path, zoom: 3, column: 6, row: 3 }, null)).toBeNull();
  });
});

describe('the rest of the app', () => {
  test('it answers, saves and closes while a file is silent, and leaves no process', async (context) => {
    if (process.platform !== 'linux') return context.skip('processes are counted in /proc');
    const before = readers();
    const service = testService(temporaryFolder());
    const project: ProjectApi = service.forWindow('w');
    const folder = temporaryFolder();
    await project.create({ path: join(folder, 'Farm.undergate'), name: 'Farm' });
    const path = silentFiles['endless tiles']!;
    const opening = project.openTileFile({ path, chosen: true });
    await vi.waitFor(() => expect(readers().length).toBeGreaterThan(before.length), 20_000);
    expect((await project.current()).ok).toBe(true);
    const { value } = (await project.current()) as { value: { state: { revision: number } } };
    const edit = { baseRevision: value.state.revision, label: 'Nothing', changes: [] };
    expect((await project.apply(edit)).ok).toBe(true);
    expect((await project.close()).ok).toBe(true);
    expect(problemIn(await opening)).toBe('stopped: The property was closed meanwhile.');
    await vi.waitFor(() => expect(readers()).toEqual(before), 20_000);

    void project.openTileFile({ path, chosen: true });
    await vi.waitFor(() => expect(readers().length).toBeGreaterThan(before.length), 20_000);
    service.dispose();
    await vi.waitFor(() => expect(readers()).toEqual(before), 20_000);
  });

  test('a host that is killed takes its reader with it, also one that is caught in an endless view', async (context) => {
    if (process.platform !== 'linux') return context.skip('processes are counted in /proc');
    const host = new Child('readTileFile', [temporaryFolder(), silentFiles['endless tiles']!]);
    await host.untilLines(1);
    const ofHost = () => readdirSync('/proc').filter((id) => /^\d+$/.test(id) && isReaderOf(id, Number(host.lines[0])));
    await vi.waitFor(() => expect(ofHost()).toHaveLength(1), 20_000);
    const [reader] = ofHost();
    await host.kill();
    await vi.waitFor(() => expect(isAlive(Number(reader))).toBe(false), 20_000);
  });
});

describe('whose files are opened', () => {
  test('what a property merely names is not touched until the user has it opened; that is remembered', async () => {
    const home = temporaryFolder();
    const path = goodFile(temporaryFolder());
    const farm = join(temporaryFolder(), 'Farm.undergate');
    const files = tileFiles(home);
    await expect(files.open(path, false, farm)).rejects.toMatchObject({ problem: { code: 'ask-first' } });
    await expect(files.tile({ path, ...goodTile }, farm)).rejects.toMatchObject({ problem: { code: 'ask-first' } });
    // Not even whether it is there is found out.
    const nowhere = join(temporaryFolder(), 'nowhere.mbtiles');
    await expect(files.open(nowhere, false, farm)).rejects.toMatchObject({ problem: { code: 'ask-first' } });
    await files.open(path, true, farm);
    expect(await files.tile({ path, ...goodTile }, farm)).not.toBeNull();
    const nextRun = tileFiles(home);
    expect(await nextRun.tile({ path, ...goodTile }, farm)).not.toBeNull();
  });

  test('what lies with the property’s file is opened, but for what a link there leads to', async (context) => {
    const folder = temporaryFolder();
    mkdirSync(join(folder, 'maps', 'north'), { recursive: true });
    const beside = goodFile(folder);
    const below = goodFile(join(folder, 'maps', 'north'));
    const elsewhere = temporaryFolder();
    goodFile(elsewhere);
    const farm = join(folder, 'Farm.undergate');
    const files = tileFiles();
    for (const path of [beside, below]) expect((await files.open(path, false, farm)).name).toBe('Hills');
    // Saved elsewhere, the property still has them for this run.
    expect(await files.tile({ path: beside, ...goodTile }, join(elsewhere, 'Copy.undergate'))).not.toBeNull();
    if (process.platform === 'win32') return context.skip('links need rights on Windows');
    symlinkSync(elsewhere, join(folder, 'link'));
    symlinkSync(join(elsewhere, 'Hills.mbtiles'), join(folder, 'Linked.mbtiles'));
    for (const name of ['Linked.mbtiles', join('link', 'Hills.mbtiles')]) {
      const asking = files.open(join(folder, name), false, farm);
      await expect(asking).rejects.toMatchObject({ problem: { code: 'ask-first' } });
    }
    expect((await files.open(join(folder, 'Linked.mbtiles'), true, farm)).name).toBe('Hills');
  });

  test('a computer of the network is never touched by its name, and on Windows a path begins with a drive', () => {
    for (const path of [
      '\\\\attacker\\share\\map.mbtiles',
      '//attacker/share/map.mbtiles',
      '\\/attacker\\share\\map.mbtiles',
      '\\\\?\\UNC\\attacker\\share\\map.mbtiles',
      '\\\\.\\pipe\\map.mbtiles',
    ]) {
      expect(() => tilePath(path, win32)).toThrow('lies on another computer');
      expect(() => tilePath(path)).toThrow('lies on another computer');
    }
    for (const path of [
      '\\??\\UNC\\attacker\\share\\map.mbtiles',
      '\\maps\\map.mbtiles',
      'C:map.mbtiles',
      'map.mbtiles',
    ]) {
      expect(() => tilePath(path, win32)).toThrow('not the whole path');
    }
    expect(() => tilePath('C:\\maps\\map.db', win32)).toThrow('not the whole path');
    expect(tilePath('C:/maps/../Hills.MBTiles', win32)).toBe('C:\\Hills.MBTiles');
  });

  test('below a folder is what its words say, on Windows without regard to case', () => {
    const farm = 'C:\\Farms\\Hill';
    expect(isBelow(farm, 'c:\\farms\\hill\\maps\\a.mbtiles', win32)).toBe(true);
    for (const path of ['C:\\Farms\\Hill2\\a.mbtiles', 'C:\\Farms\\a.mbtiles', 'D:\\Farms\\Hill\\a.mbtiles', farm]) {
      expect(isBelow(farm, path, win32)).toBe(false);
    }
    expect(isBelow('/farm', '/farm/..a.mbtiles')).toBe(true);
    expect(isBelow('/farm', '/farms/a.mbtiles')).toBe(false);
  });
});

function isAlive(id: number): boolean {
  try {
    process.kill(id, 0);
    return true;
  } catch {
    return false;
  }
}
