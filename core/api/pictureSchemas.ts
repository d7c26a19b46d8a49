import * as z from 'zod';
import { plainWords } from '../words/figures.ts';
import { path } from './pathSchema.ts';
import { pictureLimits } from './pictureApi.ts';

/** What a window may send with the calls about pictures, and what it is answered out of tile files. */

export const imageId = z.string().min(1).max(200);
const index = z.int().min(0).max(1_000_000);

const pictureTileKey = { level: z.int().min(0).max(30), column: index, row: index };

export const tileBytes = z
  .instanceof(Uint8Array)
  .refine(({ length }) => length > 0 && length <= pictureLimits.tileBytes, {
    error: () => plainWords().host.calls.message.tileBytes,
  });

const tile = z.strictObject({ ...pictureTileKey, bytes: tileBytes });

const sidePx = z.int().min(1).max(1_000_000);

export const newPicture = z.strictObject({ fileName: z.string().max(1000), widthPx: sidePx, heightPx: sidePx });
export const pictureTiles = z.strictObject({ imageId, tiles: z.array(tile).max(pictureLimits.tilesAtOnce) });
export const tileOfPicture = z.strictObject({ imageId, ...pictureTileKey });
export const tileOfTileFile = z.strictObject({
  path,
  zoom: z.int().min(0).max(30),
  column: z.int().min(0),
  row: z.int().min(0),
});

const degrees = (most: number) => z.number().min(-most).max(most);
const zoom = z.int().min(0).max(30);

export const tileFileFacts = z.strictObject({
  path,
  name: z.string().max(2000),
  fileName: z.string().max(1000),
  minZoom: zoom,
  maxZoom: zoom,
  bounds: z.tuple([degrees(180), degrees(90), degrees(180), degrees(90)]),
  attribution: z.string().max(2000),
});
