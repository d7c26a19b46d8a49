import { type Message, message } from '../../../core/words/message.ts';
import { damagedPicture, mostAtOnce, PictureProblem, type PictureReader } from './reader.ts';

export interface WholeOptions {
  readonly opaque: boolean;
  /** Turn it as the camera was held. Not where a world file counts pixels as they are stored. */
  readonly turned: boolean;
}

/** A picture that the browser decodes at once; its header has said how large it is. */
export async function wholeReader(
  file: Blob,
  size: { readonly widthPx: number; readonly heightPx: number },
  { opaque, turned }: WholeOptions,
  whyAtOnce: Message,
): Promise<PictureReader> {
  if (size.widthPx * size.heightPx > mostAtOnce) {
    const mostMillions = mostAtOnce / 1_000_000;
    throw new PictureProblem(message('window.background.pictures.tooManyPixels', { mostMillions, why: whyAtOnce }));
  }
  const image = await createImageBitmap(file, { imageOrientation: turned ? 'from-image' : 'none' }).catch(() => {
    throw new PictureProblem(damagedPicture);
  });
  return {
    widthPx: image.width,
    heightPx: image.height,
    opaque,
    place: null,
    async *strips() {
      yield { topPx: 0, heightPx: image.height, image };
    },
  };
}
