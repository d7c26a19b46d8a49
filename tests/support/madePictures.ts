import { deflateSync } from 'node:zlib';
import type { Page } from '@playwright/test';
import { madeTiff } from './madeTiff.ts';

/** Pictures made on the spot, so that no file of anybody's is needed. */

export interface PictureFile {
  readonly name: string;
  readonly mimeType: string;
  readonly buffer: Buffer;
}

/**
 * The colour of the test pattern at a pixel: its cell of 64 pixels says in red and green where it is, so that any
 * place of the picture can be told from any other.
 */
export function patternAt(x: number, y: number): readonly [number, number, number] {
  const [column, row] = [Math.floor(x / 64), Math.floor(y / 64)];
  return [(column * 37) % 256, (row * 53) % 256, (column + row) % 2 === 0 ? 200 : 90];
}

/** The test pattern as a picture of this size, written by the browser. */
export async function patternBy(
  page: Page,
  name: string,
  type: 'image/jpeg' | 'image/png' | 'image/webp',
  widthPx: number,
  heightPx: number,
): Promise<PictureFile> {
  const base64 = await page.evaluate(
    async ([mime, width, height]) => {
      const canvas = new OffscreenCanvas(width, height);
      const ctx = canvas.getContext('2d', { willReadFrequently: true })!;
      for (let row = 0; row * 64 < height; row++) {
        for (let column = 0; column * 64 < width; column++) {
          ctx.fillStyle = `rgb(${(column * 37) % 256} ${(row * 53) % 256} ${(column + row) % 2 === 0 ? 200 : 90})`;
          ctx.fillRect(column * 64, row * 64, 64, 64);
        }
      }
      const blob = await canvas.convertToBlob({ type: mime, quality: 0.9 });
      const reader = new FileReader();
      await new Promise((resolve) => {
        reader.onload = resolve;
        reader.readAsDataURL(blob);
      });
      return (reader.result as string).split(',')[1]!;
    },
    [type, widthPx, heightPx] as const,
  );
  return { name, mimeType: type, buffer: Buffer.from(base64, 'base64') };
}

/** The test pattern as a TIFF in strips, packed with Deflate, with the tags of a GeoTIFF if asked for. */
export function patternTiff(
  name: string,
  widthPx: number,
  heightPx: number,
  geo: { readonly epsg: number; readonly west: number; readonly north: number; readonly pixelM: number } | null,
): PictureFile {
  const buffer = madeTiff({
    width: widthPx,
    height: heightPx,
    bits: 8,
    samples: 3,
    photometric: 2,
    packing: 'deflate',
    rowsPerStrip: 64,
    valueAt: (x, y, sample) => patternAt(x, y)[sample]!,
    ...(geo && {
      geo: { pixel: geo.pixelM, west: geo.west, north: geo.north, keys: { 1024: 1, 1025: 1, 3072: geo.epsg } },
    }),
  });
  return { name, mimeType: 'image/tiff', buffer };
}

/** A PNG of one colour with a black frame, of any size and small all the same. */
export function framedPng(name: string, widthPx: number, heightPx: number): PictureFile {
  const row = Buffer.alloc(1 + Math.ceil(widthPx / 8), 0xff);
  row[0] = 0;
  row[1] = 0x7f;
  const line = Buffer.alloc(row.length, 0);
  const rows = Buffer.concat(Array.from({ length: heightPx }, (_, y) => (y === 0 || y === heightPx - 1 ? line : row)));
  const head = Buffer.alloc(13);
  head.writeUInt32BE(widthPx, 0);
  head.writeUInt32BE(heightPx, 4);
  head[8] = 1;
  const chunks = [chunk('IHDR', head), chunk('IDAT', deflateSync(rows, { level: 1 })), chunk('IEND', Buffer.alloc(0))];
  const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
  return { name, mimeType: 'image/png', buffer: Buffer.concat([signature, ...chunks]) };
}

function chunk(type: string, content: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(type, 'latin1'), content]);
  const ends = Buffer.alloc(8);
  ends.writeUInt32BE(content.length, 0);
  ends.writeUInt32BE(crc32(body), 4);
  return Buffer.concat([ends.subarray(0, 4), body, ends.subarray(4)]);
}

/** W3C PNG, annex D. */
function crc32(bytes: Buffer): number {
  let crc = 0xffffffff;
  for (const byte of bytes) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit++) crc = crc & 1 ? (crc >>> 1) ^ 0xedb88320 : crc >>> 1;
  }
  return (crc ^ 0xffffffff) >>> 0;
}
