import { type Message, message } from '../../words/message.ts';

/**
 * A picture cut into square tiles at full size (level 0), at half size (level 1), at a quarter (level 2) and so on,
 * until one tile holds it all. Tiles at the right and lower edge are only as large as what is left of the picture.
 */
export interface Pyramid {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly levels: readonly PyramidLevel[];
}

export interface PyramidLevel {
  readonly level: number;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly columns: number;
  readonly rows: number;
}

export interface TileKey {
  readonly level: number;
  readonly column: number;
  readonly row: number;
}

/** Side of a tile. */
export const tilePx = 512;

/** More than that is no map but a mistake, or more than this app is made for. */
export const largest = { sidePx: 100_000, pixels: 1_500_000_000 };

export function pyramidOf(widthPx: number, heightPx: number): Pyramid {
  const levels: PyramidLevel[] = [];
  for (let level = 0; ; level++) {
    const width = Math.ceil(widthPx / 2 ** level);
    const height = Math.ceil(heightPx / 2 ** level);
    const [columns, rows] = [Math.ceil(width / tilePx), Math.ceil(height / tilePx)];
    levels.push({ level, widthPx: width, heightPx: height, columns, rows });
    if (columns === 1 && rows === 1) return { widthPx, heightPx, levels };
  }
}

export function tileCount({ levels }: Pyramid): number {
  return levels.reduce((sum, { columns, rows }) => sum + columns * rows, 0);
}

/** Width and height of a tile in its own pixels. */
export function tileSize({ levels }: Pyramid, { level, column, row }: TileKey): readonly [number, number] {
  const { widthPx, heightPx } = levels[level]!;
  return [Math.min(tilePx, widthPx - column * tilePx), Math.min(tilePx, heightPx - row * tilePx)];
}

/** What a tile shows of the picture, in pixels of the full size: x, y, width, height; at the edges up to the picture's. */
export function tileExtent(pyramid: Pyramid, key: TileKey): readonly [number, number, number, number] {
  const scale = 2 ** key.level;
  const [x, y] = [key.column * tilePx * scale, key.row * tilePx * scale];
  return [x, y, Math.min(tilePx * scale, pyramid.widthPx - x), Math.min(tilePx * scale, pyramid.heightPx - y)];
}

/** The level to show where one pixel of the picture is `screenPx` pixels on the screen: the coarsest that is sharp. */
export function levelFor({ levels }: Pyramid, screenPx: number): number {
  const wanted = Math.floor(-Math.log2(screenPx) + 0.15);
  return Math.max(0, Math.min(levels.length - 1, wanted));
}

/** The tile one level up that shows this one too. */
export function parentOf({ level, column, row }: TileKey): TileKey {
  return { level: level + 1, column: column >> 1, row: row >> 1 };
}

/** Why a picture of this size is not taken, or null. */
export function whyNotSize(widthPx: number, heightPx: number): Message | null {
  if (!(widthPx >= 1 && heightPx >= 1)) return message('exchange.picture.noSize');
  if (widthPx <= largest.sidePx && heightPx <= largest.sidePx && widthPx * heightPx <= largest.pixels) return null;
  return message('exchange.picture.tooLarge', { widthPx, heightPx, mostMillions: largest.pixels / 1e6 });
}
