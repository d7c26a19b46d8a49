import { JpegDamaged, jpegStrips } from '../../../core/exchange/image/jpeg/jpegStrips.ts';
import { type JpegFile, readJpeg } from '../../../core/exchange/image/jpeg/readJpeg.ts';
import { message } from '../../../core/words/message.ts';
import { damagedPicture, PictureProblem, type PictureReader, stripPx } from './reader.ts';
import { wholeReader } from './wholeReader.ts';

/** Up to here a picture is decoded at once, which is quicker and knows how the camera was held. */
const smallPixels = 24_000_000;

export async function jpegReader(file: Blob, turned: boolean): Promise<PictureReader> {
  const bytes = new Uint8Array(await file.arrayBuffer());
  const { jpeg, size, whyNot } = readJpeg(bytes);
  const why = whyNot ?? message('window.background.pictures.atOnce.damaged');
  if (!size) throw new PictureProblem(message('window.background.pictures.jpeg', { why }));
  if (jpeg && size.widthPx * size.heightPx > smallPixels) return stripReader(bytes, jpeg);
  return wholeReader(file, size, { opaque: true, turned }, why);
}

function stripReader(bytes: Uint8Array, jpeg: JpegFile): PictureReader {
  return {
    widthPx: jpeg.widthPx,
    heightPx: jpeg.heightPx,
    opaque: true,
    place: null,
    async *strips() {
      try {
        for (const strip of jpegStrips(bytes, jpeg, stripPx)) {
          const image = await createImageBitmap(new Blob([strip.bytes], { type: 'image/jpeg' }), {
            imageOrientation: 'none',
          });
          yield { ...strip, image };
        }
      } catch (error) {
        throw new PictureProblem(error instanceof JpegDamaged ? error.said : damagedPicture);
      }
    },
  };
}
