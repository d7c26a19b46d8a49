import { rowOfBlock } from '../../../../core/exchange/image/tiff/samples.ts';
import { photometrics, type TiffColours, tiffColours } from '../../../../core/exchange/image/tiff/tiffColours.ts';
import { type Message, message } from '../../../../core/words/message.ts';
import { type TiffBlock, type TiffBlocks, tiffBlocks } from './tiffBlocks.ts';
import type { TiffPicture } from './tiffFile.ts';
import { blocksOf, type TiffTags, whyNotPixels } from './tiffTags.ts';

/** A picture in a TIFF as colours, a band at a time. */
export interface TiffBands {
  /** Nothing in it may be seen through. */
  readonly opaque: boolean;
  /** Red, green, blue and opacity of the rows from `top` on: whole rows of blocks. Throws where a block is damaged. */
  read(top: number, rows: number): Promise<Uint8ClampedArray<ArrayBuffer>>;
}

export type TiffBandsOrProblem =
  | { readonly bands: TiffBands; readonly whyNot: null }
  | { readonly bands: null; readonly whyNot: Message };

/** `mask`: another picture of the same size that says which pixels are shown. */
export function tiffBands(picture: TiffPicture, mask: TiffPicture | null): TiffBandsOrProblem {
  const whyNotPicture = whyNotPixels(picture.tags) ?? whyNotColours(picture.tags);
  if (whyNotPicture) return { bands: null, whyNot: whyNotPicture };
  const { colours, whyNot } = tiffColours(picture.tags);
  if (!colours) return { bands: null, whyNot: message('window.background.pictures.tiff.colours', { why: whyNot }) };
  const usable = mask && whyNotPixels(mask.tags) === null && mask.tags.samplesPerPixel === 1 ? mask : null;
  const blocks = tiffBlocks(picture);
  const masking = usable && tiffBlocks(usable);
  return {
    bands: {
      opaque: colours.opaque && !usable,
      async read(top, rows) {
        const rgba = new Uint8ClampedArray(picture.tags.widthPx * rows * 4);
        await paint(picture.tags, blocks, colours, top, rows, rgba);
        if (usable && masking) await hide(usable.tags, masking, top, rows, rgba);
        return rgba;
      },
    },
    whyNot: null,
  };
}

/** Numbers with a sign or with decimals are heights or the like, and no colours. */
function whyNotColours({ format }: TiffTags): Message | null {
  if (format === 1) return null;
  return message('window.background.pictures.tiff.measured');
}

async function paint(
  tags: TiffTags,
  blocks: TiffBlocks,
  { samples, toRgba }: TiffColours,
  top: number,
  rows: number,
  rgba: Uint8ClampedArray,
): Promise<void> {
  const { widthPx, blockWidthPx, samplesPerPixel, apart } = tags;
  const each = samples.length;
  const pixels = new Float64Array(blockWidthPx * each);
  const direct = !apart && each === samplesPerPixel;
  await eachBlock(tags, top, rows, async (column, row, span) => {
    const parts: TiffBlock[] = [];
    for (const sample of apart ? samples : [0]) parts.push(await blocks.read(column, row, sample));
    const count = Math.min(blockWidthPx, widthPx - column * blockWidthPx);
    for (let y = span.first; y < span.end; y++) {
      const lines = parts.map(({ bytes, shape }) => rowOfBlock(bytes, shape, y));
      const at = ((span.topPx + y - top) * widthPx + column * blockWidthPx) * 4;
      if (direct) {
        toRgba(lines[0]!, count, rgba, at);
        continue;
      }
      for (let i = 0; i < each; i++) {
        const line = lines[apart ? i : 0]!;
        const [from, step] = apart ? [0, 1] : [samples[i]!, samplesPerPixel];
        for (let pixel = 0; pixel < count; pixel++) pixels[pixel * each + i] = line[from + pixel * step]!;
      }
      toRgba(pixels, count, rgba, at);
    }
  });
}

/** Makes the pixels clear for which the mask has 0, or 1 where it says that white is zero. */
async function hide(
  tags: TiffTags,
  blocks: TiffBlocks,
  top: number,
  rows: number,
  rgba: Uint8ClampedArray,
): Promise<void> {
  const { widthPx, blockWidthPx } = tags;
  const shown = tags.photometric === photometrics.whiteIsZero ? 0 : 1;
  await eachBlock(tags, top, rows, async (column, row, span) => {
    const { bytes, shape } = await blocks.read(column, row, 0);
    const count = Math.min(blockWidthPx, widthPx - column * blockWidthPx);
    for (let y = span.first; y < span.end; y++) {
      const line = rowOfBlock(bytes, shape, y);
      const at = ((span.topPx + y - top) * widthPx + column * blockWidthPx) * 4;
      for (let pixel = 0; pixel < count; pixel++) {
        if ((line[pixel]! === 0 ? 0 : 1) !== shown) rgba[at + pixel * 4 + 3] = 0;
      }
    }
  });
}

/** The rows of a block that a band needs, counted within the block, and where the block begins. */
interface Span {
  readonly topPx: number;
  readonly first: number;
  readonly end: number;
}

/** Goes through the blocks that a band lies in, from left to right and from top to bottom. */
async function eachBlock(
  tags: TiffTags,
  top: number,
  rows: number,
  visit: (column: number, row: number, span: Span) => Promise<void>,
): Promise<void> {
  const { across } = blocksOf(tags);
  const { blockHeightPx } = tags;
  for (let row = Math.floor(top / blockHeightPx); row * blockHeightPx < top + rows; row++) {
    const topPx = row * blockHeightPx;
    const span = { topPx, first: Math.max(0, top - topPx), end: Math.min(blockHeightPx, top + rows - topPx) };
    for (let column = 0; column < across; column++) await visit(column, row, span);
  }
}
