import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { photoTags } from '../../../core/exchange/photo/exif.ts';

interface Written {
  readonly little: boolean;
  readonly taken: string;
  readonly lat: readonly [number, number, number];
  readonly latRef: string;
  readonly lon: readonly [number, number, number];
  readonly lonRef: string;
}

/** A JPEG with nothing but an Exif segment, laid out by hand after CIPA DC-008 and TIFF 6.0. */
function jpegWith({ little, taken, lat, latRef, lon, lonRef }: Written): Uint8Array {
  const tiff = new DataView(new ArrayBuffer(400));
  const u16 = (at: number, value: number) => tiff.setUint16(at, value, little);
  const u32 = (at: number, value: number) => tiff.setUint32(at, value, little);
  const ascii = (at: number, text: string) => {
    for (let i = 0; i < text.length; i++) tiff.setUint8(at + i, text.charCodeAt(i));
  };
  const entry = (at: number, tag: number, type: number, count: number, value: number) => {
    u16(at, tag);
    u16(at + 2, type);
    u32(at + 4, count);
    u32(at + 8, value);
  };
  const rationals = (at: number, values: readonly number[]) => {
    values.forEach((value, i) => {
      u32(at + i * 8, Math.round(value * 10_000));
      u32(at + i * 8 + 4, 10_000);
    });
  };
  u16(0, little ? 0x4949 : 0x4d4d);
  u16(2, 42);
  u32(4, 8);
  // First directory at 8: two pointers.
  u16(8, 2);
  entry(10, 0x8769, 4, 1, 60);
  entry(22, 0x8825, 4, 1, 100);
  // Exif directory at 60: the date, kept at 200.
  u16(60, 1);
  entry(62, 0x9003, 2, 20, 200);
  ascii(200, taken);
  // GPS directory at 100: letters stand in the entry itself, figures at 240 and 280.
  u16(100, 4);
  entry(102, 1, 2, 2, 0);
  ascii(110, latRef);
  entry(114, 2, 5, 3, 240);
  entry(126, 3, 2, 2, 0);
  ascii(134, lonRef);
  entry(138, 4, 5, 3, 280);
  rationals(240, lat);
  rationals(280, lon);
  const body = new Uint8Array(tiff.buffer);
  const length = body.length + 8;
  const app0 = [0xff, 0xe0, 0, 4, 0, 0];
  const head = [0xff, 0xe1, length >> 8, length & 0xff, 0x45, 0x78, 0x69, 0x66, 0, 0];
  return Uint8Array.from([0xff, 0xd8, ...app0, ...head, ...body, 0xff, 0xd9]);
}

const written: Written = {
  little: true,
  taken: '2031:05:02 09:30:15',
  lat: [42, 15, 30.5],
  latRef: 'S',
  lon: [31, 30, 0.25],
  lonRef: 'W',
};

describe('tags of a photo', () => {
  test.each([true, false])('date and place, little-endian %s', (little) => {
    const { takenAt, gps } = photoTags(jpegWith({ ...written, little }));
    expect(takenAt).toBe('2031-05-02T09:30:15');
    expect(gps![0]).toBeCloseTo(-(31 + 30 / 60 + 0.25 / 3600), 9);
    expect(gps![1]).toBeCloseTo(-(42 + 15 / 60 + 30.5 / 3600), 9);
  });

  test('north and east are above 0', () => {
    const { gps } = photoTags(jpegWith({ ...written, latRef: 'N', lonRef: 'E' }));
    expect(gps!.every((value) => value > 0)).toBe(true);
  });

  test.each(['0000:00:00 00:00:00', '    :  :     :  :  ', 'yesterday'])('a clock that was never set: %s', (taken) => {
    expect(photoTags(jpegWith({ ...written, taken })).takenAt).toBeNull();
  });

  test('a place off the earth is none', () => {
    expect(photoTags(jpegWith({ ...written, lat: [95, 0, 0] })).gps).toBeNull();
  });

  test('a picture without tags, and what is no picture', () => {
    const none = { takenAt: null, gps: null };
    expect(photoTags(Uint8Array.of(0xff, 0xd8, 0xff, 0xd9))).toEqual(none);
    expect(photoTags(new Uint8Array())).toEqual(none);
    expect(photoTags(new TextEncoder().encode('GIF89a and some'))).toEqual(none);
  });

  test('never throws, whatever is cut off or spoilt', () => {
    const whole = jpegWith(written);
    const at = fc.integer({ min: 2, max: whole.length - 1 });
    const spoilt = fc.array(fc.tuple(at, fc.integer({ min: 0, max: 255 })), { maxLength: 12 });
    fc.assert(
      fc.property(at, spoilt, (length, changes) => {
        const bytes = whole.slice(0, length);
        for (const [place, value] of changes) if (place < length) bytes[place] = value;
        const { gps } = photoTags(bytes);
        if (gps) expect(Math.abs(gps[1])).toBeLessThanOrEqual(90);
      }),
      { numRuns: 2000, seed: 11 },
    );
  });
});
