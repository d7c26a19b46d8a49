import type { GeoTiffPlace } from '../../../core/exchange/image/geoTiffTags.ts';
import { plainly } from '../../../core/words/figures.ts';
import { type Message, message } from '../../../core/words/message.ts';

/** A picture that is read from top to bottom, as wide as it is and a band at a time. */
export interface PictureReader {
  readonly widthPx: number;
  readonly heightPx: number;
  /** Nothing in it may be seen through. */
  readonly opaque: boolean;
  /** Where its own tags say that it lies. */
  readonly place: GeoTiffPlace | null;
  strips(): AsyncGenerator<Strip, void, undefined>;
}

/** A band of a picture. Whoever takes it closes its image. */
export interface Strip {
  readonly topPx: number;
  readonly heightPx: number;
  readonly image: ImageBitmap;
}

/** Thrown where a picture can't be read; the message is for the user and says what to do, in the language of this thread. */
export class PictureProblem extends Error {
  constructor(why: Message) {
    super(plainly(why));
  }
}

/** Rows of a band; the memory for one is the picture's width times this times 4 bytes, twice over. */
export const stripPx = 512;

/** The most pixels that are decoded at once, where a picture can't be read in bands: 400 MB of them. */
export const mostAtOnce = 100_000_000;

export const damagedPicture = message('window.background.pictures.damaged');
