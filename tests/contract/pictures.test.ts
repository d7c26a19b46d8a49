import { mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import Sqlite from 'better-sqlite3';
import { describe, expect, test, vi } from 'vitest';
import type { PictureTile } from '../../core/api/pictureApi.ts';
import type { Host } from '../../core/api/projectApi.ts';
import type { Result } from '../../core/api/result.ts';
import { pyramidOf } from '../../core/exchange/image/pyramid.ts';
import type { Underlay } from '../../core/model/underlayThings.ts';
import { ipcHost, loopbackHost, type TestHost } from '../support/hosts.ts';
import { gone, made, withSqlite } from '../support/projectFile.ts';
import { temporaryFolder } from '../support/temporaryFolder.ts';
import { makeTileFile, onePixelPng } from '../support/tileFiles.ts';

vi.mock('electron', async () => import('../support/fakeElectron.ts'));

function unwrap<T>(result: Result<T>): T {
  if (result.ok) return result.value;
  throw new Error(`${result.problem.code}: ${result.problem.message}`);
}

const codeOf = (result: Result<unknown>): string => (result.ok ? 'ok' : result.problem.code);

const size = { widthPx: 1100, heightPx: 600 };

/** All tiles of the picture, each with bytes of its own, every value among them. */
const tiles: readonly PictureTile[] = pyramidOf(size.widthPx, size.heightPx).levels.flatMap(
  ({ level, columns, rows }) =>
    Array.from({ length: columns * rows }, (_, i) => {
      const [column, row] = [i % columns, Math.floor(i / columns)];
      return {
        level,
        column,
        row,
        bytes: Uint8Array.from({ length: 300 }, (_, at) => (at + 7 * level + column + row) % 256),
      };
    }),
);

function underlay(imageId: string): Underlay {
  return {
    kind: 'underlay',
    id: 'u1',
    name: 'Aerial photo',
    source: { from: 'picture', imageId, fileName: 'a.jpg', ...size },
    placement: { by: 'eye', at: [0, 0], metresPerPixel: 0.5, upDeg: 0 },
    opacity: 1,
    rank: 1,
    shown: true,
    note: '',
  };
}

async function withNewFile(host: TestHost): Promise<{ window: Host; path: string }> {
  const window = await host.openWindow();
  const path = join(temporaryFolder(), 'Farm.undergate');
  unwrap(await window.project.create({ path, name: 'Home block' }));
  return { window, path };
}

async function bringIn({ project }: Host, baseRevision = 0): Promise<string> {
  const { imageId } = unwrap(await project.beginPicture({ fileName: 'a.jpg', ...size }));
  unwrap(await project.addPictureTiles({ imageId, tiles: tiles.slice(0, 4) }));
  unwrap(await project.addPictureTiles({ imageId, tiles: tiles.slice(4) }));
  const edit = { baseRevision, label: 'Lay a map under', changes: [made(underlay(imageId))] };
  expect(unwrap(await project.finishPicture({ imageId, edit }))).toMatchObject({ undo: 'Lay a map under' });
  return imageId;
}

const imagesIn = (path: string) =>
  withSqlite(path, (database) => database.prepare('SELECT count(*) FROM image_tile').pluck().get());

const leftBeside = (path: string) => readdirSync(dirname(path)).filter((name) => name.endsWith('.part'));

describe.each([
  ['desktop window', ipcHost, 'desktop'],
  ['loopback', loopbackHost, 'loopback'],
] as const)('%s', (_name, startHost, transport) => {
  test('a picture comes in tile by tile, and every byte comes back', async () => {
    const { window, path } = await withNewFile(await startHost());
    const imageId = await bringIn(window);
    for (const { bytes, ...key } of tiles) {
      const tile = unwrap(await window.project.pictureTile({ imageId, ...key }));
      expect(tile).toBeInstanceOf(Uint8Array);
      expect([...tile!]).toEqual([...bytes]);
    }
    expect(unwrap(await window.project.pictureTile({ imageId, level: 0, column: 3, row: 0 }))).toBeNull();
    expect(unwrap(await window.project.pictureTile({ imageId: 'other', level: 0, column: 0, row: 0 }))).toBeNull();
    expect(leftBeside(path)).toEqual([]);
  });

  test('it says how far it is', async () => {
    const { window } = await withNewFile(await startHost());
    const { imageId } = unwrap(await window.project.beginPicture({ fileName: 'a.jpg', ...size }));
    expect(unwrap(await window.project.addPictureTiles({ imageId, tiles: tiles.slice(0, 3) }))).toEqual({
      tilesDone: 3,
      tilesInAll: tiles.length,
    });
  });

  test('given up half-way, nothing of it is left', async () => {
    const { window, path } = await withNewFile(await startHost());
    const { project } = window;
    const { imageId } = unwrap(await project.beginPicture({ fileName: 'a.jpg', ...size }));
    unwrap(await project.addPictureTiles({ imageId, tiles: tiles.slice(0, 4) }));
    expect(leftBeside(path)).toHaveLength(1);
    unwrap(await project.dropPicture({ imageId }));
    expect(leftBeside(path)).toEqual([]);
    expect(codeOf(await project.addPictureTiles({ imageId, tiles: tiles.slice(4) }))).toBe('stopped');
    expect(unwrap(await project.current())).toMatchObject({ state: { revision: 0, undo: null } });
    unwrap(await project.close());
    expect(imagesIn(path)).toBe(0);
  });

  test('closing the file, and another picture, give up the one that is coming in', async () => {
    const { window, path } = await withNewFile(await startHost());
    const first = unwrap(await window.project.beginPicture({ fileName: 'a.jpg', ...size }));
    const second = unwrap(await window.project.beginPicture({ fileName: 'b.jpg', ...size }));
    expect(codeOf(await window.project.addPictureTiles({ ...first, tiles }))).toBe('stopped');
    unwrap(await window.project.addPictureTiles({ ...second, tiles }));
    unwrap(await window.project.close());
    expect(leftBeside(path)).toEqual([]);
  });

  test('a picture with tiles missing, outside it, twice, or shown by no edit is not taken', async () => {
    const { window, path } = await withNewFile(await startHost());
    const { project } = window;
    const { imageId } = unwrap(await project.beginPicture({ fileName: 'a.jpg', ...size }));
    const edit = { baseRevision: 0, label: 'Lay', changes: [made(underlay(imageId))] };
    unwrap(await project.addPictureTiles({ imageId, tiles: tiles.slice(1) }));
    expect(codeOf(await project.finishPicture({ imageId, edit }))).toBe('not-valid');
    const outside = { level: 0, column: 9, row: 0, bytes: new Uint8Array(4) };
    expect(codeOf(await project.addPictureTiles({ imageId, tiles: [outside] }))).toBe('not-valid');
    expect(codeOf(await project.addPictureTiles({ imageId, tiles: [tiles[1]!] }))).not.toBe('ok');
    unwrap(await project.addPictureTiles({ imageId, tiles: [tiles[0]!] }));
    const foreign = { ...edit, changes: [made(underlay('another'))] };
    expect(codeOf(await project.finishPicture({ imageId, edit: foreign }))).toBe('not-valid');
    expect(codeOf(await project.finishPicture({ imageId, edit: { ...edit, baseRevision: 7 } }))).toBe('out-of-date');
    expect(unwrap(await project.finishPicture({ imageId, edit }))).toMatchObject({ revision: 1 });
    unwrap(await project.close());
    expect(imagesIn(path)).toBe(tiles.length);
  });

  test.each<[string, object]>([
    ['too wide', { fileName: 'a', widthPx: 200_000, heightPx: 10 }],
    ['too many pixels', { fileName: 'a', widthPx: 90_000, heightPx: 90_000 }],
    ['nothing', { fileName: 'a', widthPx: 0, heightPx: 10 }],
  ])('a picture that is %s is refused at once', async (_what, request) => {
    const { window } = await withNewFile(await startHost());
    expect(codeOf(await window.project.beginPicture(request as never))).toBe('not-valid');
  });

  test('undo and redo bring it back, also after a restart; its tiles go when nothing names it', async () => {
    const { window, path } = await withNewFile(await startHost());
    const { project } = window;
    const imageId = await bringIn(window);
    const shown = async () => unwrap(await project.pictureTile({ imageId, level: 0, column: 0, row: 0 })) !== null;
    unwrap(await project.undo());
    expect(await shown()).toBe(true);
    unwrap(await project.close());
    unwrap(await project.open({ path }));
    expect(unwrap(await project.redo())?.changes).toEqual([made(underlay(imageId))]);
    expect(await shown()).toBe(true);
    const edit = { baseRevision: 3, label: 'Delete', changes: [gone(underlay(imageId))] };
    unwrap(await project.apply(edit));
    unwrap(await project.close());
    expect(imagesIn(path)).toBe(tiles.length);
    withSqlite(path, (database) => database.exec('DELETE FROM step'));
    unwrap(await project.open({ path }));
    unwrap(await project.close());
    expect(imagesIn(path)).toBe(0);
  });

  test('save as takes the tiles along', async () => {
    const { window } = await withNewFile(await startHost());
    const imageId = await bringIn(window);
    unwrap(await window.project.saveAs({ path: join(temporaryFolder(), 'Copy.undergate'), replace: false }));
    expect(unwrap(await window.project.pictureTile({ imageId, level: 1, column: 1, row: 0 }))).not.toBeNull();
  });

  test('an MBTiles file is read where it is, rows from the north', async () => {
    const { project } = (await withNewFile(await startHost())).window;
    const path = makeTileFile(join(temporaryFolder(), 'Hills.mbtiles'), {
      tiles: [
        { zoom: 2, column: 3, rowFromSouth: 1, bytes: onePixelPng },
        { zoom: 3, column: 6, rowFromSouth: 2, bytes: onePixelPng },
      ],
      metadata: { name: 'Hills', format: 'png', bounds: '100,-40,110,-30', attribution: '<a href="x">Ours</a>' },
    });
    expect(unwrap(await project.openTileFile({ path, chosen: true }))).toEqual({
      path,
      name: 'Hills',
      fileName: 'Hills.mbtiles',
      minZoom: 2,
      maxZoom: 3,
      bounds: [100, -40, 110, -30],
      attribution: 'Ours',
    });
    const tile = await project.tileFileTile({ path, zoom: 2, column: 3, row: 2 });
    expect([...unwrap(tile)!]).toEqual([...onePixelPng]);
    expect(unwrap(await project.tileFileTile({ path, zoom: 2, column: 3, row: 1 }))).toBeNull();
  });

  test('an MBTiles file without bounds or kind says them by its tiles', async () => {
    const { project } = (await withNewFile(await startHost())).window;
    const tilesAt = [{ zoom: 1, column: 1, rowFromSouth: 0, bytes: onePixelPng }];
    const path = makeTileFile(join(temporaryFolder(), 'Bare.mbtiles'), { tiles: tilesAt, metadata: {} });
    const facts = unwrap(await project.openTileFile({ path, chosen: true }));
    expect(facts.bounds.map((side) => Math.round(side * 100) / 100)).toEqual([0, -85.05, 180, 0]);
    expect(facts.name).toBe('Bare.mbtiles');
  });

  test('an MBTiles file that only the property names waits until the user chooses it', async () => {
    const { window, path: farm } = await withNewFile(await startHost());
    const { project } = window;
    const tilesAt = [{ zoom: 1, column: 1, rowFromSouth: 0, bytes: onePixelPng }];
    const path = makeTileFile(join(temporaryFolder(), 'Hills.mbtiles'), { tiles: tilesAt, metadata: {} });
    const tile = { path, zoom: 1, column: 1, row: 1 };
    expect(codeOf(await project.openTileFile({ path, chosen: false }))).toBe('ask-first');
    expect(codeOf(await project.tileFileTile(tile))).toBe('ask-first');
    expect(codeOf(await project.openTileFile({ path, chosen: true }))).toBe('ok');
    unwrap(await project.close());
    unwrap(await project.open({ path: farm }));
    expect([...unwrap(await project.tileFileTile(tile))!]).toEqual([...onePixelPng]);
    const share = '\\\\attacker\\share\\Hills.mbtiles';
    expect(codeOf(await project.openTileFile({ path: share, chosen: true }))).toBe('not-valid');
  });

  test('what is no MBTiles file of pictures is refused, each with its reason', async () => {
    const { project } = (await withNewFile(await startHost())).window;
    const folder = temporaryFolder();
    const at = (name: string) => join(folder, name);
    writeFileSync(at('text.mbtiles'), 'x'.repeat(2000));
    new Sqlite(at('empty.mbtiles')).exec('CREATE TABLE a (b)').close();
    makeTileFile(at('none.mbtiles'), { tiles: [], metadata: {} });
    makeTileFile(at('vector.mbtiles'), {
      tiles: [{ zoom: 1, column: 0, rowFromSouth: 0, bytes: new Uint8Array(9) }],
      metadata: { format: 'pbf' },
    });
    for (const [name, words] of [
      ['text.mbtiles', /no SQLite database/],
      ['empty.mbtiles', /has not the tables/],
      ['none.mbtiles', /holds no tiles/],
      ['vector.mbtiles', /kind “pbf”/],
      ['gone.mbtiles', /is not there/],
      ['Farm.undergate', /not the whole path of an MBTiles file/],
    ] as const) {
      const result = await project.openTileFile({ path: at(name), chosen: true });
      expect(result).toMatchObject({ ok: false, problem: { message: expect.stringMatching(words) } });
    }
  });

  test('a listing shows the tile files too', async () => {
    const { project } = await (await startHost()).openWindow();
    const folder = temporaryFolder();
    mkdirSync(join(folder, 'x.mbtiles'));
    makeTileFile(join(folder, 'Hills.mbtiles'), { tiles: [], metadata: {} });
    const listing = unwrap(await project.listFolder({ path: folder }));
    expect(listing.tileFiles.map(({ name }) => name)).toEqual(['Hills.mbtiles']);
    expect(listing.folders).toEqual(['x.mbtiles']);
  });

  test('the system’s dialog for tile files belongs to the desktop', async () => {
    const { desktop } = await (await startHost()).openWindow();
    const answer = await desktop.chooseTileFile();
    expect(transport === 'desktop' ? unwrap(answer) : codeOf(answer)).toBe(
      transport === 'desktop' ? null : 'not-available',
    );
  });
});
