import { getDecoder } from 'geotiff';
import { readJpeg } from '../../../../core/exchange/image/jpeg/readJpeg.ts';
import { type BlockShape, reversedBits, rowBytes, settleBlock } from '../../../../core/exchange/image/tiff/samples.ts';
import { TiffDamaged, unpackBits, unpackDeflate, unpackLzw } from '../../../../core/exchange/image/tiff/unpack.ts';
import { type FaxPacking, unpackFax } from '../../../../core/exchange/image/tiff/unpackFax.ts';
import type { TiffPicture } from './tiffFile.ts';
import { blocksOf, byFax, byLibrary, packings, type TiffTags } from './tiffTags.ts';

/** A block of a picture, unpacked and in our order of bytes. */
export interface TiffBlock {
  readonly bytes: Uint8Array;
  readonly shape: BlockShape;
}

/** Reads the blocks of a picture; `whyNotPixels` has found nothing against it. */
export interface TiffBlocks {
  /**
   * The block in this column and row of blocks, of this sample where the samples lie apart. Throws where it is
   * damaged or breaks off.
   */
  read(column: number, row: number, sample: number): Promise<TiffBlock>;
}

export function tiffBlocks({ tags, littleEndian, bytes: file }: TiffPicture): TiffBlocks {
  const { across, down } = blocksOf(tags);
  let last: { readonly index: number; readonly block: TiffBlock } | null = null;
  return {
    async read(column, row, sample) {
      const index = (tags.apart ? sample * across * down : 0) + row * across + column;
      if (last?.index !== index) last = { index, block: await readBlock(index, row) };
      return last.block;
    },
  };

  async function readBlock(index: number, row: number): Promise<TiffBlock> {
    const shape = shapeOf(tags, row);
    const size = shape.rows * rowBytes(shape.rowSamples, shape.bits);
    const [offset, length] = [tags.offsets[index]!, lengthOf(tags, index, size)];
    if (length === 0) return { bytes: emptyBlock(tags, size), shape };
    const times = byFax.includes(tags.compression) ? mostTimesOfFax : 2;
    const wanted = Math.min(length, times * size + spareBytes);
    const packed = await file.read(offset, wanted);
    if (packed.length < wanted) throw new TiffDamaged('breaksOff');
    const bytes = await unpacked(tags, packed, size, shape);
    if (bytes.length < size) throw new TiffDamaged('shortBlock');
    if (!byLibrary.includes(tags.compression)) settleBlock(bytes, shape, littleEndian, tags.predictor);
    return { bytes, shape };
  }
}

/** Packing makes nothing more than twice as large, but for a header and tables. */
const spareBytes = 65_536;
/** But a fax of single pixels: twelve bits for two of them. */
const mostTimesOfFax = 8;

function faxPackingOf({ compression, faxOptions }: TiffTags): FaxPacking {
  const way = compression === packings.faxGroup4 ? 'group4' : compression === packings.faxGroup3 ? 'group3' : 'rows';
  return { way, byRowAbove: (faxOptions & 1) !== 0 };
}

function shapeOf(tags: TiffTags, row: number): BlockShape {
  const { blockWidthPx, blockHeightPx, heightPx, samplesPerPixel, apart, bits, format, isTiled } = tags;
  const together = apart ? 1 : samplesPerPixel;
  // A tile at the lower edge is whole all the same; the last strip is not.
  const rows = isTiled ? blockHeightPx : Math.min(blockHeightPx, heightPx - row * blockHeightPx);
  return { rowSamples: blockWidthPx * together, together, rows, bits, format };
}

/** Old programs leave the lengths out where nothing is packed. */
function lengthOf({ byteCounts, compression }: TiffTags, index: number, size: number): number {
  return byteCounts?.[index] ?? (compression === packings.none ? size : 0);
}

/** A block that was left out of the file, as nothing is known there. */
function emptyBlock({ noData, bits, format }: TiffTags, size: number): Uint8Array {
  const bytes = new Uint8Array(size);
  if (noData === null || noData === 0) return bytes;
  if (format === 3) {
    if (bits === 32) new Float32Array(bytes.buffer).fill(noData);
    if (bits === 64) new Float64Array(bytes.buffer).fill(noData);
  } else if (bits === 8) bytes.fill(noData);
  else if (bits === 16) new Int16Array(bytes.buffer).fill(noData);
  else if (bits === 32) new Int32Array(bytes.buffer).fill(noData);
  return bytes;
}

async function unpacked(tags: TiffTags, packed: Uint8Array, size: number, shape: BlockShape): Promise<Uint8Array> {
  const turned = tags.bitsReversed && !byLibrary.includes(tags.compression) ? reversedBits(packed) : packed;
  switch (tags.compression) {
    case packings.none:
      return turned.slice(0, size);
    case packings.lzw:
      return unpackLzw(turned, size);
    case packings.deflate:
    case packings.deflateOfOld:
      return unpackDeflate(turned, size);
    case packings.packBits:
      return unpackBits(turned, size);
    case packings.faxRows:
    case packings.faxGroup3:
    case packings.faxGroup4:
      return unpackFax(turned, shape.rowSamples, shape.rows, faxPackingOf(tags));
    default:
      return unpackedByLibrary(tags, packed, shape);
  }
}

/** Most pixels that a JPEG in a block may have beyond the block's own, along each side: it comes in cells of 16. */
const jpegCellPx = 16;

async function unpackedByLibrary(tags: TiffTags, packed: Uint8Array, { rows }: BlockShape): Promise<Uint8Array> {
  if (tags.compression === packings.jpeg) {
    const { size } = readJpeg(packed);
    const fits = size && size.widthPx === tags.blockWidthPx && size.heightPx <= tags.blockHeightPx + jpegCellPx;
    if (!fits || size.heightPx < rows) throw new TiffDamaged('noJpegBlock');
  }
  const parameters = {
    tileWidth: tags.blockWidthPx,
    tileHeight: tags.blockHeightPx,
    planarConfiguration: tags.apart ? 2 : 1,
    bitsPerSample: tags.bits,
    predictor: 1,
    samplesPerPixel: tags.samplesPerPixel,
    JPEGTables: tags.jpegTables ?? undefined,
  };
  const decoder = await getDecoder(tags.compression, parameters);
  return new Uint8Array(await decoder.decodeBlock(packed.slice().buffer));
}
