import { deflateSync } from 'node:zlib';
import type { Page } from '@playwright/test';

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
  const rowsPerStrip = 64;
  const strips = Math.ceil(heightPx / rowsPerStrip);
  const pixels = Buffer.alloc(widthPx * heightPx * 3);
  for (let y = 0, at = 0; y < heightPx; y++) {
    for (let x = 0; x < widthPx; x++) for (const value of patternAt(x, y)) pixels[at++] = value;
  }
  const packed = Array.from({ length: strips }, (_, i) => {
    const from = i * rowsPerStrip * widthPx * 3;
    return deflateSync(pixels.subarray(from, from + rowsPerStrip * widthPx * 3));
  });
  const stripAt = packed.map((_, i) => 8 + packed.slice(0, i).reduce((sum, { length }) => sum + length, 0));
  const extra: Buffer[] = [];
  let extraAt = 8 + packed.reduce((sum, { length }) => sum + length, 0);
  const put = (bytes: Buffer) => {
    const at = extraAt;
    extra.push(bytes);
    extraAt += bytes.length;
    return at;
  };
  const shorts = (...values: number[]) => {
    const bytes = Buffer.alloc(2 * values.length);
    for (const [i, value] of values.entries()) bytes.writeUInt16LE(value, 2 * i);
    return bytes;
  };
  const longs = (...values: number[]) => {
    const bytes = Buffer.alloc(4 * values.length);
    for (const [i, value] of values.entries()) bytes.writeUInt32LE(value, 4 * i);
    return bytes;
  };
  const doubles = (...values: number[]) => {
    const bytes = Buffer.alloc(8 * values.length);
    for (const [i, value] of values.entries()) bytes.writeDoubleLE(value, 8 * i);
    return bytes;
  };
  const entries: [tag: number, type: number, count: number, value: number][] = [
    [256, 4, 1, widthPx],
    [257, 4, 1, heightPx],
    [258, 3, 3, put(shorts(8, 8, 8))],
    [259, 3, 1, 8],
    [262, 3, 1, 2],
    [273, 4, strips, put(longs(...stripAt))],
    [277, 3, 1, 3],
    [278, 4, 1, rowsPerStrip],
    [279, 4, strips, put(longs(...packed.map(({ length }) => length)))],
  ];
  if (geo) {
    entries.push([33550, 12, 3, put(doubles(geo.pixelM, geo.pixelM, 0))]);
    entries.push([33922, 12, 6, put(doubles(0, 0, 0, geo.west, geo.north, 0))]);
    const keys = shorts(1, 1, 0, 3, 1024, 0, 1, 1, 1025, 0, 1, 1, 3072, 0, 1, geo.epsg);
    entries.push([34735, 3, keys.length / 2, put(keys)]);
  }
  const directory = Buffer.alloc(2 + 12 * entries.length + 4);
  directory.writeUInt16LE(entries.length, 0);
  for (const [i, [tag, type, count, value]] of entries.entries()) {
    const at = 2 + 12 * i;
    directory.writeUInt16LE(tag, at);
    directory.writeUInt16LE(type, at + 2);
    directory.writeUInt32LE(count, at + 4);
    if (type === 3 && count === 1) directory.writeUInt16LE(value, at + 8);
    else directory.writeUInt32LE(value, at + 8);
  }
  const header = Buffer.from('II*\0\0\0\0\0', 'latin1');
  header.writeUInt32LE(extraAt, 4);
  return { name, mimeType: 'image/tiff', buffer: Buffer.concat([header, ...packed, ...extra, directory]) };
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
