import { describe, expect, test } from 'vitest';
import { createLocalPlane } from '../../../core/geometry/localPlane.ts';
import { lonLatInTile, tilePlaceOf } from '../../../core/geometry/picture/webMercator.ts';
import type { LonLat, Xy } from '../../../core/geometry/types.ts';
import type { Placement, TileFileSource, Underlay } from '../../../core/model/underlayThings.ts';
import { pictureSheet } from '../../../renderer/map/underlay/pictureSheet.ts';
import { tileFileSheet } from '../../../renderer/map/underlay/tileFileSheet.ts';

const home: LonLat = [175.3, -37.9];
const plane = createLocalPlane(home);
const noTiles = {
  picture: () => Promise.resolve(null),
  tileFile: () => Promise.resolve(null),
  isOpen: () => true,
  onTileFiles: () => () => {},
};
const thing = { id: 'u', opacity: 1 } as Underlay;

/** A view of this many metres a side around a place. */
function look([x, y]: Xy, sideM: number, screenPx = 1000) {
  const half = sideM / 2;
  const outline: Xy[] = [
    [x - half, y - half],
    [x + half, y - half],
    [x + half, y + half],
    [x - half, y + half],
  ];
  return { outline, screenPxPerM: screenPx / sideM };
}

describe('a picture’s tiles for a view', () => {
  const source = { from: 'picture', imageId: 'i', fileName: 'a', widthPx: 8192, heightPx: 8192 } as const;
  const placement: Placement = { by: 'eye', at: home, metresPerPixel: 1, upDeg: 0 };
  const sheet = pictureSheet(thing, source, placement, plane, noTiles);

  test('all of it far off is the coarsest tile alone, which is sent for', () => {
    const tiles = sheet.tilesFor(look([0, 0], 40_000));
    expect(tiles.map(({ tile, wanted }) => [tile.key, wanted])).toEqual([['i/4/0/0', true]]);
  });

  test('near by, the fine tiles that are in view, under them what is at hand, coarse to fine', () => {
    const tiles = sheet.tilesFor(look([0, 0], 600, 600));
    const keys = tiles.map(({ tile }) => tile.key);
    expect(keys[0]).toBe('i/4/0/0');
    expect(keys.filter((key) => key.startsWith('i/0/'))).toEqual(['i/0/7/7', 'i/0/8/7', 'i/0/7/8', 'i/0/8/8']);
    expect(tiles.filter(({ wanted }) => wanted).map(({ tile }) => tile.key)).toEqual([
      'i/4/0/0',
      ...keys.filter((key) => key.startsWith('i/0/')),
    ]);
    const levels = keys.map((key) => Number(key.split('/')[1]));
    expect(levels).toEqual([...levels].sort((a, b) => b - a));
  });

  test('beside it there is nothing', () => {
    expect(sheet.tilesFor(look([9000, 0], 100))).toEqual([]);
  });
});

describe('a tile file’s tiles for a view', () => {
  const source: TileFileSource = {
    from: 'tileFile',
    path: '/m',
    fileName: 'm',
    minZoom: 10,
    maxZoom: 16,
    bounds: [175, -38, 175.6, -37.8],
  };
  const sheet = tileFileSheet(thing, source, plane, noTiles);
  const zooms = (sideM: number, at: Xy = [0, 0]) =>
    sheet.tilesFor(look(at, sideM)).map(({ tile }) => Number(tile.key.split('/')[2]));

  test('the zoom that is sharp, within what the file has, and what is above it', () => {
    expect(Math.max(...zooms(100))).toBe(16);
    expect(Math.max(...zooms(20_000))).toBeLessThan(14);
    expect(Math.min(...zooms(200_000))).toBe(10);
  });

  test('the tile in the middle is among them, and lies where its corners are', () => {
    const [column, row] = tilePlaceOf(16, home).map(Math.floor) as [number, number];
    const found = sheet.tilesFor(look([0, 0], 100)).find(({ tile }) => tile.key === `/m/16/${column}/${row}`);
    expect(found?.wanted).toBe(true);
    const [x, y] = found!.tile.toXy([1, 0]);
    const [cornerX, cornerY] = plane.toXy(lonLatInTile(16, column + 1, row, [0, 0]));
    expect(Math.hypot(x - cornerX, y - cornerY)).toBeLessThan(1e-6);
  });

  test('outside its bounds there is nothing, and never more tiles than can be drawn', () => {
    expect(zooms(1000, [100_000, 0])).toEqual([]);
    const fine = tileFileSheet(thing, { ...source, minZoom: 16 }, plane, noTiles);
    expect(fine.tilesFor(look([0, 0], 100_000))).toEqual([]);
  });
});
