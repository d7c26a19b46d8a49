import * as z from 'zod';
import { pictureLimits } from './pictureApi.ts';

/** What a window may send with the calls about pictures. */

const imageId = z.string().min(1).max(200);
const index = z.int().min(0).max(1_000_000);
const path = z
  .string()
  .min(1)
  .max(4096)
  .refine((text) => !text.includes('\0'), 'A path has no zero character.');

export const pictureTileKey = { level: z.int().min(0).max(30), column: index, row: index };

const tile = z.strictObject({
  ...pictureTileKey,
  bytes: z
    .instanceof(Uint8Array)
    .refine(({ length }) => length > 0 && length <= pictureLimits.tileBytes, 'A tile is empty or too large.'),
});

const sidePx = z.int().min(1).max(1_000_000);

export const newPicture = z.strictObject({ fileName: z.string().max(1000), widthPx: sidePx, heightPx: sidePx });
export const pictureTiles = z.strictObject({ imageId, tiles: z.array(tile).max(pictureLimits.tilesAtOnce) });
export const pictureId = z.strictObject({ imageId });
export const tileOfPicture = z.strictObject({ imageId, ...pictureTileKey });
export const wantedTileFile = z.strictObject({ path, chosen: z.boolean() });
export const tileOfTileFile = z.strictObject({
  path,
  zoom: z.int().min(0).max(30),
  column: z.int().min(0),
  row: z.int().min(0),
});
export { imageId };
