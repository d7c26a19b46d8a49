import { fromBlob, type GeoTIFFImage } from 'geotiff';
import { placeOfTiff } from './placeOfTiff.ts';
import { mostAtOnce, PictureProblem, type PictureReader, stripPx } from './reader.ts';

const floatFormat = 3;

export async function tiffReader(file: Blob): Promise<PictureReader> {
  const image = await firstImage(file);
  const [widthPx, heightPx] = [image.getWidth(), image.getHeight()];
  assertPicture(image);
  return {
    widthPx,
    heightPx,
    opaque: true,
    place: await placeOfTiff(image),
    async *strips() {
      const rows = Math.max(1, Math.min(heightPx, rowsAtOnce(image)));
      for (let topPx = 0; topPx < heightPx; topPx += rows) {
        const height = Math.min(rows, heightPx - topPx);
        const window = [0, topPx, widthPx, topPx + height] as [number, number, number, number];
        const colours = await image.readRGB({ window, interleave: true }).catch((error: unknown) => {
          throw new PictureProblem(unreadable(error));
        });
        const picture = toImageData(colours as unknown as ArrayLike<number>, widthPx, height, shiftOf(image));
        yield { topPx, heightPx: height, image: await createImageBitmap(picture) };
      }
    },
  };
}

async function firstImage(file: Blob): Promise<GeoTIFFImage> {
  try {
    return await (await fromBlob(file)).getImage(0);
  } catch {
    throw new PictureProblem('The TIFF picture can’t be read: its header is damaged. Save it anew, or fetch it again.');
  }
}

function assertPicture(image: GeoTIFFImage): void {
  if (image.getSampleFormat(0) === floatFormat) {
    throw new PictureProblem('This TIFF holds measured values (such as heights), not a picture. Choose a picture.');
  }
  if (image.getWidth() * image.getBlockHeight(0) > mostAtOnce) {
    throw new PictureProblem(
      'This TIFF is stored in one piece too large to be read. Save it as a tiled TIFF, or in strips.',
    );
  }
}

/** Whole blocks, so that none is read twice. */
function rowsAtOnce(image: GeoTIFFImage): number {
  const blockRows = image.getTileHeight();
  return blockRows >= stripPx ? blockRows : Math.floor(stripPx / blockRows) * blockRows;
}

/** Sixteen bits a colour lose their lower eight. */
function shiftOf(image: GeoTIFFImage): number {
  const photometric = image.fileDirectory.getValue('PhotometricInterpretation');
  // The library brings grey and palette pictures down to eight bits itself.
  return photometric === 2 ? Math.max(0, image.getBitsPerSample(0) - 8) : 0;
}

function toImageData(colours: ArrayLike<number>, width: number, height: number, shift: number): ImageData {
  const picture = new ImageData(width, height);
  const { data } = picture;
  for (let from = 0, to = 0; to < data.length; from += 3, to += 4) {
    data[to] = colours[from]! >> shift;
    data[to + 1] = colours[from + 1]! >> shift;
    data[to + 2] = colours[from + 2]! >> shift;
    data[to + 3] = 255;
  }
  return picture;
}

function unreadable(error: unknown): string {
  const reason = error instanceof Error ? error.message : '';
  return /compression/i.test(reason)
    ? 'This TIFF is packed in a way that can’t be read. Save it with LZW, Deflate or JPEG, or unpacked.'
    : 'The TIFF picture is damaged or breaks off. Save it anew, or fetch it again.';
}
