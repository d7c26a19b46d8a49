import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { kindOfPicture, webpSize } from '../../../core/exchange/image/kindOfPicture.ts';
import { hasAlpha, type PngHeader, readPngHeader, rowBytes } from '../../../core/exchange/image/png/pngHeader.ts';
import { PngDamaged, rowToRgba, unfilter } from '../../../core/exchange/image/png/pngRows.ts';
import { framedPng } from '../../support/madePictures.ts';
import { onePixelPng } from '../../support/tileFiles.ts';

const header = (widthPx: number, bitDepth: number, colourType: number): PngHeader => ({
  widthPx,
  heightPx: 1,
  bitDepth,
  colourType,
  interlaced: false,
});

const none = { palette: null, transparency: null };

function rgbaOf(row: number[], from: PngHeader, colours: Parameters<typeof rowToRgba>[2] = none): number[] {
  const rgba = new Uint8ClampedArray(from.widthPx * 4);
  rowToRgba(Uint8Array.from(row), from, colours, rgba, 0);
  return [...rgba];
}

describe('rows of a PNG', () => {
  /** Filters each way by the formulas of W3C PNG, chapter 9, then takes them off. */
  test('every filter comes off', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 4 }),
        fc.constantFrom(header(5, 8, 2), header(5, 8, 6), header(9, 16, 0), header(30, 1, 0)),
        fc.array(fc.nat(255), { minLength: 60, maxLength: 60 }),
        (filter, shape, values) => {
          const length = rowBytes(shape);
          const [above, row] = [values.slice(0, length), values.slice(30, 30 + length)];
          const step = { 2: 3, 6: 4, 0: shape.bitDepth === 16 ? 2 : 1 }[shape.colourType]!;
          const filtered = row.map((value, i) => {
            const [a, b, c] = [row[i - step] ?? 0, above[i]!, above[i - step] ?? 0];
            const estimate = a + b - c;
            const nearest = [a, b, c].reduce((best, one) =>
              Math.abs(estimate - one) < Math.abs(estimate - best) ? one : best,
            );
            return (value - [0, a, b, Math.floor((a + b) / 2), nearest][filter]! + 512) % 256;
          });
          const out = Uint8Array.from(filtered);
          unfilter(filter, out, Uint8Array.from(above), shape);
          expect([...out]).toEqual(row);
        },
      ),
      { seed: 4, numRuns: 500 },
    );
  });

  test('a filter that there is not', () => {
    expect(() => unfilter(5, new Uint8Array(3), new Uint8Array(3), header(1, 8, 2))).toThrow(PngDamaged);
  });

  test('grey, colour, palette, alpha, few bits and many', () => {
    expect(rgbaOf([0b10110000], header(4, 1, 0))).toEqual([
      255, 255, 255, 255, 0, 0, 0, 255, 255, 255, 255, 255, 255, 255, 255, 255,
    ]);
    expect(rgbaOf([0b00011011], header(4, 2, 0)).filter((_, i) => i % 4 === 0)).toEqual([0, 85, 170, 255]);
    expect(rgbaOf([0x4f], header(2, 4, 0)).filter((_, i) => i % 4 === 0)).toEqual([68, 255]);
    expect(rgbaOf([7, 9], header(1, 8, 4))).toEqual([7, 7, 7, 9]);
    expect(rgbaOf([1, 2, 3], header(1, 8, 2))).toEqual([1, 2, 3, 255]);
    expect(rgbaOf([1, 2, 3, 4], header(1, 8, 6))).toEqual([1, 2, 3, 4]);
    expect(rgbaOf([1, 99, 2, 99, 3, 99, 4, 99], header(1, 16, 6))).toEqual([1, 2, 3, 4]);
    expect(rgbaOf([5, 77], header(1, 16, 0))).toEqual([5, 5, 5, 255]);
    const palette = { palette: Uint8Array.from([9, 8, 7, 6, 5, 4]), transparency: Uint8Array.from([30]) };
    expect(rgbaOf([0b01000000], header(2, 1, 3), palette)).toEqual([9, 8, 7, 30, 6, 5, 4, 255]);
  });

  test('the one colour that is clear', () => {
    const clear = (...bytes: number[]) => ({ palette: null, transparency: Uint8Array.from(bytes) });
    expect(rgbaOf([1, 2, 3, 1, 2, 4], header(2, 8, 2), clear(0, 1, 0, 2, 0, 3)).filter((_, i) => i % 4 === 3)).toEqual([
      0, 255,
    ]);
    expect(rgbaOf([5, 6], header(2, 8, 0), clear(0, 6)).filter((_, i) => i % 4 === 3)).toEqual([255, 0]);
    expect(rgbaOf([5, 77, 5, 78], header(2, 16, 0), clear(5, 77)).filter((_, i) => i % 4 === 3)).toEqual([0, 255]);
  });

  test('a colour that the palette does not have', () => {
    expect(() => rgbaOf([3], header(1, 8, 3), { palette: new Uint8Array(6), transparency: null })).toThrow(PngDamaged);
    expect(() => rgbaOf([0], header(1, 8, 3))).toThrow(PngDamaged);
  });
});

describe('headers', () => {
  test('of a PNG', () => {
    expect(readPngHeader(framedPng('a', 123, 45).buffer)).toMatchObject({
      widthPx: 123,
      heightPx: 45,
      bitDepth: 1,
      colourType: 0,
    });
    const spoilt = Buffer.from(onePixelPng);
    spoilt[25] = 5;
    expect(readPngHeader(spoilt)).toBeNull();
    expect(readPngHeader(onePixelPng.subarray(0, 20))).toBeNull();
    expect(hasAlpha(header(1, 8, 6), null)).toBe(true);
    expect(hasAlpha(header(1, 8, 2), null)).toBe(false);
    expect(hasAlpha(header(1, 8, 2), new Uint8Array(6))).toBe(true);
  });

  test('what a file is, by its first bytes', () => {
    expect(kindOfPicture(onePixelPng)).toBe('png');
    expect(kindOfPicture(Uint8Array.from([0xff, 0xd8, 0xff, 0xe0]))).toBe('jpeg');
    expect(kindOfPicture(Buffer.from('II*\0', 'latin1'))).toBe('tiff');
    expect(kindOfPicture(Buffer.from('MM\0+', 'latin1'))).toBe('tiff');
    expect(kindOfPicture(Buffer.from('RIFF....WEBPVP8 ', 'latin1'))).toBe('webp');
    expect(kindOfPicture(Buffer.from('GIF89a', 'latin1'))).toBeNull();
    expect(kindOfPicture(new Uint8Array())).toBeNull();
  });

  test('the size of a WebP, of each make', () => {
    const webp = (chunk: string, ...tail: number[]) =>
      Buffer.concat([Buffer.from(`RIFF....WEBP${chunk}....`, 'latin1'), Buffer.from(tail), Buffer.alloc(20)]);
    expect(webpSize(webp('VP8X', 0, 0, 0, 0, 0x0f, 1, 0, 0xff, 2, 0))).toEqual([0x110, 0x300]);
    expect(webpSize(webp('VP8 ', 0, 0, 0, 0x9d, 1, 0x2a, 0x40, 1, 0xf0, 0x40))).toEqual([320, 240]);
    expect(webpSize(webp('VP8L', 0x2f, 0x3f, 0x41, 0x1d, 0))).toEqual([320, 118]);
    expect(webpSize(webp('XXXX'))).toBeNull();
    expect(webpSize(Buffer.from('RIFF....WEBPVP8X', 'latin1'))).toBeNull();
  });
});
