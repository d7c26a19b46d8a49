import { message } from '../../../core/words/message.ts';
import { placeOfTiff } from './placeOfTiff.ts';
import { damagedPicture, mostAtOnce, PictureProblem, type PictureReader, stripPx } from './reader.ts';
import { tiffBands } from './tiff/tiffBands.ts';
import { maskOf, openTiff, pictureOf } from './tiff/tiffFile.ts';
import type { TiffTags } from './tiff/tiffTags.ts';

export async function tiffReader(file: Blob): Promise<PictureReader> {
  const { picture, mask } = await open(file);
  const { widthPx, heightPx } = picture.tags;
  const rowsAtOnce = Math.min(heightPx, rowsOfBand(picture.tags));
  const { bands, whyNot } = tiffBands(picture, mask);
  if (!bands) throw new PictureProblem(whyNot);
  if (widthPx * rowsAtOnce > mostAtOnce) {
    throw new PictureProblem(message('window.background.pictures.tiff.onePiece'));
  }
  return {
    widthPx,
    heightPx,
    opaque: bands.opaque,
    place: await placeOfTiff(picture.image),
    async *strips() {
      for (let topPx = 0; topPx < heightPx; topPx += rowsAtOnce) {
        const rows = Math.min(rowsAtOnce, heightPx - topPx);
        const rgba = await bands.read(topPx, rows).catch((error: unknown) => {
          console.error(error);
          throw new PictureProblem(damagedPicture);
        });
        yield { topPx, heightPx: rows, image: await createImageBitmap(new ImageData(rgba, widthPx, rows)) };
      }
    },
  };
}

async function open(file: Blob) {
  try {
    const tiff = await openTiff(file);
    const picture = await pictureOf(tiff, file, 0);
    return { picture, mask: await maskOf(tiff, file, picture) };
  } catch {
    throw new PictureProblem(message('window.background.pictures.tiff.header'));
  }
}

/**
 * Whole blocks, so that none is read twice. A strip as wide as the picture, as scanners write one for a whole plan, is
 * kept from band to band and may be taken in pieces.
 */
function rowsOfBand({ blockHeightPx, isTiled, apart }: TiffTags): number {
  if (blockHeightPx >= stripPx) return isTiled || apart ? blockHeightPx : stripPx;
  return Math.floor(stripPx / blockHeightPx) * blockHeightPx;
}
