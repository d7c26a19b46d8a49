import { type PictureTile, pictureLimits } from '../../core/api/pictureApi.ts';
import { hearLocale } from '../work/workerLocale.ts';
import { cutTiles } from './cutTiles.ts';
import type { FromCutter, ToCutter } from './messages.ts';
import { openReader } from './readers/openReader.ts';
import { PictureProblem } from './readers/reader.ts';

/** Cuts one picture into tiles, a piece at a time, as fast as the window stores them. */

let pieces: AsyncGenerator<PictureTile[], void, undefined> | null = null;
let rest: PictureTile[] = [];

hearLocale();

self.addEventListener('message', ({ data }: MessageEvent<ToCutter>) => {
  const work = data.type === 'open' ? open(data.file, data.turned) : next();
  work.catch((error: unknown) => {
    const known = error instanceof PictureProblem;
    if (!known) console.error(error);
    say({
      type: 'problem',
      message: known ? error.message : 'The picture can’t be read; this machine may have too little memory for it.',
    });
  });
});

async function open(file: File, turned: boolean): Promise<void> {
  const reader = await openReader(file, turned);
  pieces = cutTiles(reader);
  say({ type: 'described', widthPx: reader.widthPx, heightPx: reader.heightPx, place: reader.place });
}

async function next(): Promise<void> {
  while (rest.length === 0) {
    const piece = await pieces!.next();
    if (piece.done) return say({ type: 'done' });
    rest = piece.value;
  }
  const tiles = rest.splice(0, pictureLimits.tilesAtOnce / 2);
  say(
    { type: 'tiles', tiles },
    tiles.map(({ bytes }) => bytes.buffer as ArrayBuffer),
  );
}

function say(message: FromCutter, given: Transferable[] = []): void {
  (self as unknown as { postMessage(message: FromCutter, given: Transferable[]): void }).postMessage(message, given);
}
