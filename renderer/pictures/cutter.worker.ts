import { expose, transfer } from 'comlink';
import { type PictureTile, pictureLimits } from '../../core/api/pictureApi.ts';
import type { GeoTiffPlace } from '../../core/exchange/image/geoTiffTags.ts';
import { plainWords } from '../../core/words/figures.ts';
import { hearLocale } from '../work/workerLocale.ts';
import { cutTiles } from './cutTiles.ts';
import { openReader } from './readers/openReader.ts';
import { PictureProblem } from './readers/reader.ts';

/** Cuts one picture into tiles, a piece at a time, as fast as the window stores them. */

let pieces: AsyncGenerator<PictureTile[], void, undefined> | null = null;
let rest: PictureTile[] = [];

export interface Described {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly place: GeoTiffPlace | null;
}

const cutter = {
  /** Looks into the picture. */
  open: (file: File, turned: boolean): Promise<Described> =>
    inWords(async () => {
      const reader = await openReader(file, turned);
      pieces = cutTiles(reader);
      return { widthPx: reader.widthPx, heightPx: reader.heightPx, place: reader.place };
    }),
  /** Cuts the next piece, now that the last one is stored; null: that was all. */
  next: (): Promise<readonly PictureTile[] | null> =>
    inWords(async () => {
      while (rest.length === 0) {
        const piece = await pieces!.next();
        if (piece.done) return null;
        rest = piece.value;
      }
      const tiles = rest.splice(0, pictureLimits.tilesAtOnce / 2);
      return transfer(
        tiles,
        tiles.map(({ bytes }) => bytes.buffer as ArrayBuffer),
      );
    }),
};
export type CutterFunctions = typeof cutter;

/** Any error in words for the user. */
async function inWords<T>(work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    if (error instanceof PictureProblem) throw error;
    console.error(error);
    throw new Error(plainWords().window.background.pictures.noMemory, { cause: error });
  }
}

hearLocale();
expose(cutter);
