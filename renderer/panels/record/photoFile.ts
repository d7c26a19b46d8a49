import { photoLimits } from '../../../core/api/photoApi.ts';
import { type PhotoTags, photoTags } from '../../../core/exchange/photo/exif.ts';
import { plainWords } from '../../../core/words/figures.ts';

/** The longer side of the kept picture, and of its small copy. */
const keptPx = 1600;
const smallPx = 640;
const quality = 0.82;

/** A picture made ready for the file. */
export interface ReadyPhoto extends PhotoTags {
  readonly fileName: string;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly picture: PictureBytes;
  readonly small: PictureBytes;
}

export interface PictureBytes {
  /** SHA-256 in hexadecimal. */
  readonly blobId: string;
  readonly bytes: Uint8Array;
}

/**
 * Makes a picture small enough to keep: at most 1600 px, JPEG, upright, with date and place from its tags beside it.
 * Throws an `Error` with words for people where the browser can't read it.
 */
export async function readyPhoto(file: File): Promise<ReadyPhoto> {
  const tags = photoTags(new Uint8Array(await file.slice(0, 256 * 1024).arrayBuffer()));
  const bitmap = await decoded(file);
  try {
    const picture = await drawn(bitmap, keptPx);
    const small = await drawn(bitmap, smallPx);
    if (picture.bytes.length > photoLimits.bytes)
      throw new Error(plainWords().window.record.photos.tooLarge({ fileName: file.name }));
    const { widthPx, heightPx } = picture;
    const fileName = file.name.slice(0, 200);
    return { ...tags, fileName, widthPx, heightPx, picture: bytesOf(picture), small: bytesOf(small) };
  } finally {
    bitmap.close();
  }
}

function bytesOf({ blobId, bytes }: PictureBytes): PictureBytes {
  return { blobId, bytes };
}

async function decoded(file: File): Promise<ImageBitmap> {
  try {
    return await createImageBitmap(file, { imageOrientation: 'from-image' });
  } catch {
    throw new Error(plainWords().window.record.photos.notReadable({ fileName: file.name }));
  }
}

async function drawn(
  bitmap: ImageBitmap,
  longestPx: number,
): Promise<PictureBytes & { widthPx: number; heightPx: number }> {
  const scale = Math.min(1, longestPx / Math.max(bitmap.width, bitmap.height));
  const widthPx = Math.max(1, Math.round(bitmap.width * scale));
  const heightPx = Math.max(1, Math.round(bitmap.height * scale));
  const canvas = new OffscreenCanvas(widthPx, heightPx);
  const context = canvas.getContext('2d')!;
  // JPEG has no transparency: what shines through is white.
  context.fillStyle = '#ffffff';
  context.fillRect(0, 0, widthPx, heightPx);
  context.imageSmoothingQuality = 'high';
  context.drawImage(bitmap, 0, 0, widthPx, heightPx);
  const blob = await canvas.convertToBlob({ type: 'image/jpeg', quality });
  const bytes = new Uint8Array(await blob.arrayBuffer());
  return { widthPx, heightPx, bytes, blobId: await sha256(bytes) };
}

async function sha256(bytes: Uint8Array<ArrayBuffer>): Promise<string> {
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, '0')).join('');
}
