import type { PictureTile } from '../../core/api/pictureApi.ts';
import { type Pyramid, parentOf, pyramidOf, tilePx, tileSize } from '../../core/exchange/image/pyramid.ts';
import type { PictureReader, Strip } from './readers/reader.ts';

const jpeg = { type: 'image/jpeg', quality: 0.85 };
const webp = { type: 'image/webp', quality: 0.9 };

interface TileCanvas {
  readonly canvas: OffscreenCanvas;
  readonly ctx: OffscreenCanvasRenderingContext2D;
}

/** One row of tiles of a level while it is being filled. */
interface TileRow {
  readonly row: number;
  readonly tiles: TileCanvas[];
}

/**
 * Cuts a picture into the tiles of its pyramid while it is read from top to bottom. Only one row of tiles of each level is
 * held at a time: a finished row is handed out and drawn, halved, into the row above it in the pyramid.
 */
export async function* cutTiles(reader: PictureReader): AsyncGenerator<PictureTile[], void, undefined> {
  const pyramid = pyramidOf(reader.widthPx, reader.heightPx);
  const open: (TileRow | undefined)[] = [];
  for await (const strip of reader.strips()) {
    for (let row = Math.floor(strip.topPx / tilePx); row * tilePx < strip.topPx + strip.heightPx; row++) {
      const tiles = openRow(pyramid, open, 0, row, reader.opaque);
      drawStrip(tiles, strip);
      const bottom = Math.min((row + 1) * tilePx, reader.heightPx);
      if (strip.topPx + strip.heightPx >= bottom) yield* finishRow(pyramid, open, 0, reader.opaque);
    }
    strip.image.close();
  }
}

function openRow(
  pyramid: Pyramid,
  open: (TileRow | undefined)[],
  level: number,
  row: number,
  opaque: boolean,
): TileRow {
  const known = open[level];
  if (known?.row === row) return known;
  const tiles = Array.from({ length: pyramid.levels[level]!.columns }, (_, column) => {
    const canvas = new OffscreenCanvas(...tileSize(pyramid, { level, column, row }));
    const ctx = canvas.getContext('2d', { alpha: !opaque, willReadFrequently: true })!;
    return { canvas, ctx };
  });
  const made = { row, tiles };
  open[level] = made;
  return made;
}

function drawStrip({ row, tiles }: TileRow, { image, topPx, heightPx }: Strip): void {
  const top = Math.max(topPx, row * tilePx);
  const bottom = Math.min(topPx + heightPx, (row + 1) * tilePx);
  for (const [column, { canvas, ctx }] of tiles.entries()) {
    const height = Math.min(bottom - top, canvas.height);
    ctx.drawImage(
      image,
      column * tilePx,
      top - topPx,
      canvas.width,
      height,
      0,
      top - row * tilePx,
      canvas.width,
      height,
    );
  }
}

/** Hands a row out and draws it into its parents; a row of parents that is full by that is handed out too. */
async function* finishRow(
  pyramid: Pyramid,
  open: (TileRow | undefined)[],
  level: number,
  opaque: boolean,
): AsyncGenerator<PictureTile[], void, undefined> {
  const { row, tiles } = open[level]!;
  open[level] = undefined;
  if (level + 1 < pyramid.levels.length) {
    const parents = openRow(pyramid, open, level + 1, row >> 1, opaque);
    for (const [column, { canvas }] of tiles.entries()) {
      const parent = parents.tiles[parentOf({ level, column, row }).column]!;
      const half = tilePx / 2;
      const [width, height] = [Math.ceil(canvas.width / 2), Math.ceil(canvas.height / 2)];
      parent.ctx.drawImage(canvas, (column & 1) * half, (row & 1) * half, width, height);
    }
  }
  const encoded = tiles.map(async ({ canvas }, column): Promise<PictureTile> => {
    const blob = await canvas.convertToBlob(opaque ? jpeg : webp);
    return { level, column, row, bytes: new Uint8Array(await blob.arrayBuffer()) };
  });
  yield await Promise.all(encoded);
  const isLast = row === pyramid.levels[level]!.rows - 1;
  if (level + 1 < pyramid.levels.length && ((row & 1) === 1 || isLast)) {
    yield* finishRow(pyramid, open, level + 1, opaque);
  }
}
