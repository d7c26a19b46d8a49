import { kindOfPicture, webpSize } from '../../../core/exchange/image/kindOfPicture.ts';
import { whyNotSize } from '../../../core/exchange/image/pyramid.ts';
import { message } from '../../../core/words/message.ts';
import { jpegReader } from './jpegReader.ts';
import { pngReader } from './pngReader.ts';
import { damagedPicture, PictureProblem, type PictureReader } from './reader.ts';
import { tiffReader } from './tiffReader.ts';
import { wholeReader } from './wholeReader.ts';

const largestFileBytes = 2 * 1024 * 1024 * 1024;

/** A reader for a picture file, by what is in it and not by its name. `turned`: see `WholeOptions`. */
export async function openReader(file: File, turned: boolean): Promise<PictureReader> {
  if (file.size > largestFileBytes) {
    throw new PictureProblem(message('window.background.pictures.tooManyBytes', { fileName: file.name }));
  }
  const reader = await readerFor(file, turned);
  const why = whyNotSize(reader.widthPx, reader.heightPx);
  if (why) throw new PictureProblem(why);
  return reader;
}

async function readerFor(file: File, turned: boolean): Promise<PictureReader> {
  const head = new Uint8Array(await file.slice(0, 64).arrayBuffer());
  switch (kindOfPicture(head)) {
    case 'jpeg':
      return jpegReader(file, turned);
    case 'png':
      return pngReader(file);
    case 'tiff':
      return tiffReader(file);
    case 'webp': {
      const size = webpSize(head);
      if (!size) throw new PictureProblem(damagedPicture);
      const [widthPx, heightPx] = size;
      return wholeReader(
        file,
        { widthPx, heightPx },
        { opaque: false, turned },
        message('window.background.pictures.atOnce.webp'),
      );
    }
    case null:
      throw new PictureProblem(message('window.background.pictures.otherKind', { fileName: file.name }));
  }
}
