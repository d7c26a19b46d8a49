import type { GeoTIFFImage } from 'geotiff';
import { isReadable } from '../../../../core/exchange/image/tiff/samples.ts';
import { photometrics } from '../../../../core/exchange/image/tiff/tiffColours.ts';
import { type Message, message } from '../../../../core/words/message.ts';

/** What the tags of a picture in a TIFF say of how its pixels are kept, with what holds where one is missing. */
export interface TiffTags {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly subfileType: number;
  /** Blocks are tiles, or strips as wide as the picture. */
  readonly blockWidthPx: number;
  readonly blockHeightPx: number;
  readonly isTiled: boolean;
  readonly offsets: ArrayLike<number>;
  readonly byteCounts: ArrayLike<number> | null;
  readonly compression: number;
  readonly predictor: number;
  readonly photometric: number | null;
  readonly samplesPerPixel: number;
  /** The samples of a pixel lie in blocks of their own. */
  readonly apart: boolean;
  readonly bits: number;
  readonly format: number;
  readonly extraSamples: readonly number[];
  readonly palette: ArrayLike<number> | null;
  readonly bitsReversed: boolean;
  /** How many pixels share a sample of colour, where brightness and colour are kept apart. */
  readonly subsampling: readonly number[];
  /** Of a fax of group 3 (TIFF 6.0, T4Options): bit 0 says that rows may be packed by the row above. */
  readonly faxOptions: number;
  readonly jpegTables: Uint8Array | null;
  readonly noData: number | null;
}

type Directory = GeoTIFFImage['fileDirectory'];
type Tag = Parameters<Directory['hasTag']>[0];

/** Reads the tags of a directory that lies in memory whole. */
export function readTags(directory: Directory): TiffTags {
  const value = (tag: Tag): unknown => (directory.hasTag(tag) ? directory.getValue(tag as never) : undefined);
  const list = (tag: Tag): ArrayLike<number> | null => {
    const found = value(tag);
    if (typeof found === 'number') return [found];
    return typeof found === 'object' && found !== null && 'length' in found ? (found as ArrayLike<number>) : null;
  };
  const number = (tag: Tag): number | null => {
    const found = list(tag)?.[0];
    return typeof found === 'number' && Number.isFinite(found) ? found : null;
  };
  const [widthPx, heightPx] = [number('ImageWidth') ?? 0, number('ImageLength') ?? 0];
  const isTiled = !directory.hasTag('StripOffsets');
  const bits = Array.from(list('BitsPerSample') ?? [1]);
  const formats = Array.from(list('SampleFormat') ?? [1]);
  const alike = [bits, formats].every((all) => all.every((one) => one === all[0]));
  const tables = list('JPEGTables');
  const noData = value('GDAL_NODATA');
  return {
    widthPx,
    heightPx,
    subfileType: number('NewSubfileType') ?? 0,
    blockWidthPx: isTiled ? (number('TileWidth') ?? 0) : widthPx,
    blockHeightPx: isTiled ? (number('TileLength') ?? 0) : Math.min(heightPx, number('RowsPerStrip') || heightPx),
    isTiled,
    offsets: list(isTiled ? 'TileOffsets' : 'StripOffsets') ?? [],
    byteCounts: list(isTiled ? 'TileByteCounts' : 'StripByteCounts'),
    compression: number('Compression') ?? 1,
    predictor: number('Predictor') ?? 1,
    photometric: number('PhotometricInterpretation'),
    samplesPerPixel: number('SamplesPerPixel') ?? 1,
    apart: number('PlanarConfiguration') === 2,
    bits: alike ? bits[0]! : 0,
    // What is undefined is taken as whole numbers, as other programs do.
    format: alike ? (formats[0] === 4 ? 1 : formats[0]!) : 0,
    extraSamples: Array.from(list('ExtraSamples') ?? []),
    palette: list('ColorMap'),
    bitsReversed: number('FillOrder') === 2,
    subsampling: Array.from(list('YCbCrSubSampling') ?? [2, 2]),
    faxOptions: number('T4Options') ?? 0,
    jpegTables: tables ? Uint8Array.from(tables as ArrayLike<number>) : null,
    noData: typeof noData === 'string' ? noDataOf(noData) : null,
  };
}

/** GDAL writes it as text, closed by a zero. */
function noDataOf(text: string): number | null {
  const written = text.replace(/\0.*$/s, '').trim();
  const value = Number(written);
  return written === '' || Number.isNaN(value) ? null : value;
}

/** Numbers of the tag Compression. */
export const packings = {
  none: 1,
  faxRows: 2,
  faxGroup3: 3,
  faxGroup4: 4,
  lzw: 5,
  jpeg: 7,
  deflate: 8,
  packBits: 32773,
  deflateOfOld: 32946,
  webp: 50001,
} as const;

/** What can't be unpacked here. Zstandard and LERC would need WebAssembly, which the page's content policy forbids. */
const otherPackings: Readonly<Record<number, Message>> = {
  6: message('window.background.pictures.tiff.oldJpeg'),
  34887: message('window.background.pictures.tiff.named', { name: 'LERC' }),
  34925: message('window.background.pictures.tiff.named', { name: 'LZMA' }),
  50000: message('window.background.pictures.tiff.named', { name: 'Zstandard' }),
};

/** Black and white only, of one bit. */
export const byFax: readonly number[] = [packings.faxRows, packings.faxGroup3, packings.faxGroup4];

/** Unpacked by the library, to samples of 8 bits that lie together. */
export const byLibrary: readonly number[] = [packings.jpeg, packings.webp];

/** The most blocks of a picture; tiles of 16 by 16 pixels over the largest that is taken make so many. */
const mostBlocks = 6_000_000;
/** The most bytes of a block. */
const mostBlockBytes = 400_000_000;

/** Why the pixels of a picture can't be read, or null; for the user. */
export function whyNotPixels(tags: TiffTags): Message | null {
  const { widthPx, heightPx, blockWidthPx, blockHeightPx, samplesPerPixel, bits, format, compression } = tags;
  const sizes = [widthPx, heightPx, blockWidthPx, blockHeightPx, samplesPerPixel];
  const blocks = blocksOf(tags);
  if (!sizes.every((size) => Number.isInteger(size) && size > 0) || tags.offsets.length < blocks.count) {
    return message('window.background.pictures.tiff.header');
  }
  if (!Object.values<number>(packings).includes(compression)) {
    const how =
      otherPackings[compression] ?? message('window.background.pictures.tiff.compression', { number: compression });
    return message('window.background.pictures.tiff.packing', { how });
  }
  if (byFax.includes(compression) && (bits !== 1 || (samplesPerPixel > 1 && !tags.apart) || tags.faxOptions > 7)) {
    return message('window.background.pictures.tiff.fax');
  }
  if (!isReadable({ bits, format })) {
    return message('window.background.pictures.tiff.numbers');
  }
  if (blockWidthPx * blockHeightPx * samplesPerPixel * Math.ceil(bits / 8) > mostBlockBytes) {
    return message('window.background.pictures.tiff.onePiece');
  }
  if (blocks.count > mostBlocks) return message('window.background.pictures.tiff.smallPieces');
  const isCoarse = !byLibrary.includes(compression) && !tags.subsampling.every((every) => every === 1);
  if (tags.photometric === photometrics.yCbCr && isCoarse) {
    return message('window.background.pictures.tiff.coarse');
  }
  return null;
}

/** How many blocks there are across, down and in all. */
export function blocksOf({ widthPx, heightPx, blockWidthPx, blockHeightPx, samplesPerPixel, apart }: TiffTags) {
  const [across, down] = [Math.ceil(widthPx / blockWidthPx), Math.ceil(heightPx / blockHeightPx)];
  return { across, down, count: across * down * (apart ? samplesPerPixel : 1) };
}
