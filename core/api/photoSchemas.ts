import * as z from 'zod';
import { plainWords } from '../words/figures.ts';
import { photoLimits } from './photoApi.ts';

/** What a window may send with the calls about photos. */

const blobId = z.string().regex(/^[0-9a-f]{64}$/, { error: () => plainWords().host.calls.message.photoId });

/** Every JPEG file begins so (ITU-T T.81, start of image). */
const isJpeg = (bytes: Uint8Array) => bytes[0] === 0xff && bytes[1] === 0xd8;

export const newPhotoBytes = z
  .array(
    z.strictObject({
      blobId,
      bytes: z.instanceof(Uint8Array).refine((bytes) => isJpeg(bytes) && bytes.length <= photoLimits.bytes, {
        error: () => plainWords().host.calls.message.photoBytes,
      }),
    }),
  )
  .max(photoLimits.atOnce);

export const wantedPhotos = z.strictObject({ blobIds: z.array(blobId).max(photoLimits.atOnce) });
