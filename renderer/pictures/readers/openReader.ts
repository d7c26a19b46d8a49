import { kindOfPicture, webpSize } from '../../../core/exchange/image/kindOfPicture.ts';
import { whyNotSize } from '../../../core/exchange/image/pyramid.ts';
import { figures } from '../../../core/words/figures.ts';
import { jpegReader } from './jpegReader.ts';
import { pngReader } from './pngReader.ts';
import { damagedPicture, PictureProblem, type PictureReader } from './reader.ts';
import { tiffReader } from './tiffReader.ts';
import { wholeReader } from './wholeReader.ts';

const largestFileBytes = 2 * 1024 * 1024 * 1024;

/** A reader for a picture file, by what is in it and not by its name. `turned`: see `WholeOptions`. */
export async function openReader(file: File, turned: boolean): Promise<PictureReader> {
  if (file.size > largestFileBytes) {
    throw new PictureProblem(`${file.name} is larger than 2 GB. Cut it in parts, or save it smaller.`);
  }
  const reader = await readerFor(file, turned);
  const why = whyNotSize(reader.widthPx, reader.heightPx);
  if (why) throw new PictureProblem(figures('metric').say(why));
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
      return wholeReader(file, { widthPx, heightPx }, { opaque: false, turned }, 'it is a WebP picture');
    }
    case null:
      throw new PictureProblem(`${file.name} is no JPEG, PNG, WebP or TIFF picture.`);
  }
}
