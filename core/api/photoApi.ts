/**
 * A photo's bytes on their way into the file, once for each picture and once for its small copy. Photos are JPEG files, made small
 * before they are sent.
 */
export interface NewPhotoBytes {
  /** SHA-256 of the bytes in hexadecimal; the host checks it. */
  readonly blobId: string;
  readonly bytes: Uint8Array;
}

/** The most photos, and bytes of one, that may pass in one message. */
export const photoLimits = { atOnce: 64, bytes: 4 * 1024 * 1024 };
