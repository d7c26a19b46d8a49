export type PictureKind = 'jpeg' | 'png' | 'webp' | 'tiff';

/** What kind of picture a file is, by its first bytes (16 are enough), whatever its name says; null: none of ours. */
export function kindOfPicture(bytes: Uint8Array): PictureKind | null {
  const begins = (at: number, ...wanted: readonly number[]) => wanted.every((byte, i) => bytes[at + i] === byte);
  if (begins(0, 0xff, 0xd8, 0xff)) return 'jpeg';
  if (begins(0, 0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a)) return 'png';
  if (begins(0, 0x52, 0x49, 0x46, 0x46) && begins(8, 0x57, 0x45, 0x42, 0x50)) return 'webp';
  // Little-endian or big-endian, classic or BigTIFF.
  if (begins(0, 0x49, 0x49, 0x2a, 0) || begins(0, 0x49, 0x49, 0x2b, 0)) return 'tiff';
  if (begins(0, 0x4d, 0x4d, 0, 0x2a) || begins(0, 0x4d, 0x4d, 0, 0x2b)) return 'tiff';
  return null;
}

/** Width and height of a WebP picture, from its first 30 bytes (RFC 9649); null where they can't be told. */
export function webpSize(bytes: Uint8Array): readonly [number, number] | null {
  const chunk = String.fromCharCode(...bytes.subarray(12, 16));
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (bytes.length < 30) return null;
  if (chunk === 'VP8X') return [1 + (view.getUint32(24, true) & 0xffffff), 1 + (view.getUint32(26, true) >>> 8)];
  if (chunk === 'VP8 ') return [view.getUint16(26, true) & 0x3fff, view.getUint16(28, true) & 0x3fff];
  if (chunk !== 'VP8L') return null;
  const packed = view.getUint32(21, true);
  return [1 + (packed & 0x3fff), 1 + ((packed >>> 14) & 0x3fff)];
}
