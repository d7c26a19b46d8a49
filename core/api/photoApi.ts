import type { Edit, FileState } from './projectApi.ts';
import type { Result } from './result.ts';

/** A photo's bytes on their way into the file, once for each picture and once for its small copy. */
export interface NewPhotoBytes {
  /** SHA-256 of the bytes in hexadecimal; the host checks it. */
  readonly blobId: string;
  readonly bytes: Uint8Array;
}

/** The part of `ProjectApi` that is about photos. They are JPEG files, made small before they are sent. */
export interface PhotoApi {
  /** Takes photos in and makes the edit that names them: all of it or nothing, one step of undo. */
  addPhotos(request: { readonly photos: readonly NewPhotoBytes[]; readonly edit: Edit }): Promise<Result<FileState>>;
  /** Bytes of photos or their small copies, in the order asked for; null where the file has none of that id. */
  photoBytes(request: { readonly blobIds: readonly string[] }): Promise<Result<readonly (Uint8Array | null)[]>>;
}

/** The most photos, and bytes of one, that may pass in one message. */
export const photoLimits = { atOnce: 64, bytes: 4 * 1024 * 1024 };
