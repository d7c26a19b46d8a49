import { GeoTIFF, type GeoTIFFImage } from 'geotiff';
import { BlockFile } from '../blockFile.ts';
import { readTags, type TiffTags } from './tiffTags.ts';

/** A picture in a TIFF: what its tags say, and where its bytes are to be had. */
export interface TiffPicture {
  readonly tags: TiffTags;
  /** For the tags that say where it lies. */
  readonly image: GeoTIFFImage;
  readonly littleEndian: boolean;
  readonly bytes: BlockFile;
}

/** Opens a TIFF. The library reads its directory; its own readings of pixels are not used, as they are wrong for many. */
export async function openTiff(file: Blob): Promise<GeoTIFF> {
  const tiff = await GeoTIFF.fromSource(sourceOf(file));
  // What the library reads later on, it reads with the lowest byte first, whatever the file says.
  tiff.parser.eager = true;
  return tiff;
}

/** The picture of this number, from 0. Throws where the directory is damaged, or there is no such picture. */
export async function pictureOf(tiff: GeoTIFF, file: Blob, number: number): Promise<TiffPicture> {
  const image = await tiff.getImage(number);
  return { tags: readTags(image.fileDirectory), image, littleEndian: image.littleEndian, bytes: new BlockFile(file) };
}

/** Directories are looked for in this many pictures of a file; copies at other sizes are pictures too. */
const mostPictures = 32;
const reducedSize = 1;
const isMask = 4;

/** The mask that says which pixels of the first picture are shown (TIFF 6.0, NewSubfileType), or null. */
export async function maskOf(tiff: GeoTIFF, file: Blob, { tags }: TiffPicture): Promise<TiffPicture | null> {
  for (let number = 1; number < mostPictures; number++) {
    let picture: TiffPicture;
    try {
      picture = await pictureOf(tiff, file, number);
    } catch {
      return null;
    }
    const { subfileType, widthPx, heightPx } = picture.tags;
    const fits = widthPx === tags.widthPx && heightPx === tags.heightPx;
    if ((subfileType & isMask) !== 0 && (subfileType & reducedSize) === 0 && fits) return picture;
  }
  return null;
}

/** More than the library asks for where it only guesses how long something is. */
const guessedBytes = 8192;

/** The file as the library reads from it. What should lie beyond its end is refused before memory is made for it. */
function sourceOf(file: Blob): Parameters<typeof GeoTIFF.fromSource>[0] {
  const fetchSlice = async ({ offset, length }: { offset: number; length: number }) => {
    if (length > guessedBytes && offset + length > file.size) throw new RangeError('The file breaks off.');
    return { offset, length, data: await file.slice(offset, offset + length).arrayBuffer() };
  };
  return {
    fetchSlice,
    fetch: (slices) => Promise.all(slices.map(async (slice) => (await fetchSlice(slice)).data)),
    fileSize: file.size,
    close: () => Promise.resolve(),
  };
}
