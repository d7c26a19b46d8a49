import { rowOfBlock } from '../../../core/exchange/image/tiff/samples.ts';
import { tiffBlocks } from '../../pictures/readers/tiff/tiffBlocks.ts';
import type { TiffPicture } from '../../pictures/readers/tiff/tiffFile.ts';

/** Numbers of a window of a TIFF of one sample, row by row: those of every so many pixels, from its upper left one on. */
export interface ValueWindow {
  readonly values: Float64Array;
  readonly width: number;
  readonly height: number;
  readonly every: number;
}

/** Values held at once along either side; a larger window is read coarser. */
const mostSide = 3000;

/** Reads the pixels from `left` and `top` up to but without `right` and `bottom`. Throws where a block is damaged. */
export async function readWindow(
  picture: TiffPicture,
  [left, top, right, bottom]: readonly [number, number, number, number],
): Promise<ValueWindow> {
  const { blockWidthPx, blockHeightPx } = picture.tags;
  const every = Math.ceil(Math.max(right - left, bottom - top) / mostSide);
  const [width, height] = [right - left, bottom - top].map((side) => Math.ceil(side / every)) as [number, number];
  const values = new Float64Array(width * height);
  const blocks = tiffBlocks(picture);
  /** The first of the pixels that are wanted at or after one. */
  const first = (from: number, at: number) => Math.max(0, Math.ceil((at - from) / every));
  for (let blockRow = Math.floor(top / blockHeightPx); blockRow * blockHeightPx < bottom; blockRow++) {
    const rows = [first(top, blockRow * blockHeightPx), first(top, (blockRow + 1) * blockHeightPx)] as const;
    if (rows[0] >= Math.min(rows[1], height)) continue;
    for (let blockColumn = Math.floor(left / blockWidthPx); blockColumn * blockWidthPx < right; blockColumn++) {
      const columns = [first(left, blockColumn * blockWidthPx), first(left, (blockColumn + 1) * blockWidthPx)] as const;
      if (columns[0] >= Math.min(columns[1], width)) continue;
      const { bytes, shape } = await blocks.read(blockColumn, blockRow, 0);
      for (let row = rows[0]; row < Math.min(rows[1], height); row++) {
        const line = rowOfBlock(bytes, shape, top + row * every - blockRow * blockHeightPx);
        for (let column = columns[0]; column < Math.min(columns[1], width); column++) {
          values[row * width + column] = line[left + column * every - blockColumn * blockWidthPx]!;
        }
      }
    }
  }
  return { values, width, height, every };
}
