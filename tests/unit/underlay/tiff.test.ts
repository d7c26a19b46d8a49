import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { deflateSync } from 'node:zlib';
import { describe, expect, it, test, vi } from 'vitest';
import { TiffDamaged, unpackDeflate, unpackLzw } from '../../../core/exchange/image/tiff/unpack.ts';
import { unpackFax } from '../../../core/exchange/image/tiff/unpackFax.ts';
import { tiffBands } from '../../../renderer/pictures/readers/tiff/tiffBands.ts';
import { maskOf, openTiff, pictureOf } from '../../../renderer/pictures/readers/tiff/tiffFile.ts';
import { tiffReader } from '../../../renderer/pictures/readers/tiffReader.ts';
import { describeWith } from '../../support/describeWith.ts';
import { inEnglish } from '../../support/english.ts';
import { type MadeTiff, madeTiff } from '../../support/madeTiff.ts';
import { randomNumbers } from '../../support/random.ts';

/** Its pixels as red, green, blue and opacity; read in bands of `rows`. */
async function coloursOf(bytes: Uint8Array, rows = Infinity) {
  const file = new Blob([new Uint8Array(bytes)]);
  const tiff = await openTiff(file);
  const picture = await pictureOf(tiff, file, 0);
  const { bands, whyNot } = tiffBands(picture, await maskOf(tiff, file, picture));
  if (!bands) throw new Error(inEnglish(whyNot));
  const { widthPx, heightPx } = picture.tags;
  const pieces: number[] = [];
  for (let top = 0; top < heightPx; top += rows) {
    for (const value of await bands.read(top, Math.min(rows, heightPx - top))) pieces.push(value);
  }
  const at = (x: number, y: number) => pieces.slice((y * widthPx + x) * 4, (y * widthPx + x) * 4 + 4);
  return { at, opaque: bands.opaque, all: pieces, widthPx, heightPx };
}

const white = [255, 255, 255, 255];

const plan: Pick<MadeTiff, 'width' | 'height'> = { width: 37, height: 29 };

describe('grey', () => {
  const cases = [1, 2, 4, 8, 16].flatMap((bits) =>
    (['none', 'lzw', 'deflate', 'packBits'] as const).map((packing) => [bits, packing] as const),
  );
  test.each(cases)(
    'of %i bits packed with %s: white is white and black is black in both polarities',
    async (bits, packing) => {
      const most = 2 ** bits - 1;
      const levelAt = (x: number, y: number) => (x + 3 * y) % (most + 1);
      for (const photometric of [0, 1]) {
        const made = madeTiff({ ...plan, bits, photometric, packing, rowsPerStrip: 5, valueAt: levelAt });
        const { at, opaque } = await coloursOf(made, 10);
        expect(opaque).toBe(true);
        for (const [x, y] of [
          [0, 0],
          [1, 0],
          [36, 28],
          [17, 11],
        ] as const) {
          const share = levelAt(x, y) / most;
          const level = Math.round(255 * (photometric === 0 ? 1 - share : share));
          expect(at(x, y)).toEqual([level, level, level, 255]);
        }
        const white = madeTiff({ ...plan, bits, photometric, packing, valueAt: () => (photometric === 0 ? 0 : most) });
        expect(new Set((await coloursOf(white)).all)).toEqual(new Set([255]));
      }
    },
  );

  it('of one bit in tiles, with the bits of a byte the other way round', async () => {
    const checked = (x: number, y: number) => (x + y) % 2;
    const made = madeTiff({ ...plan, bits: 1, photometric: 0, tile: 16, bitsReversed: true, valueAt: checked });
    const { at } = await coloursOf(made);
    expect([at(0, 0)[0], at(1, 0)[0], at(36, 28)[0], at(35, 28)[0]]).toEqual([255, 0, 255, 0]);
  });
});

describe('a fax', () => {
  // 40 by 24 pixels, written by libtiff 4.5.0: group 3 by the row above, each row filled to a byte.
  const group3 = Buffer.from(
    'SUkqAKYAAAAAAcUUUUUUIAEEVAYYYYYYYYYYbAABxRRRRRQgASBAgQIECBAgQIECUAHbt27dsAETVm2bZtm3AAHbt27dsAETWBgw' +
      'YMGDBgwcAAHh4eHhgAF/gAHh4eHhgAF/gAHxcXFYAAE223AB8XFxWAABBBBBBBQAAfj8fmABE1Z8Z8Z9AAH4/H5gARgZ8Z84AAHM' +
      'WYswAQQQQUABzFmLMAEklA0AAAEDAAEAAAAoAAAAAQEDAAEAAAAYAAAAAgEDAAEAAAABAAAAAwEDAAEAAAADAAAABgEDAAEAAAAA' +
      'AAAAEQEEAAEAAAAIAAAAEgEDAAEAAAABAAAAFQEDAAEAAAABAAAAFgEDAAEAAAAYAAAAFwEEAAEAAACeAAAAHAEDAAEAAAABAAAA' +
      'JAEEAAEAAAAFAAAAUwEDAAEAAAABAAAAAAAAAA==',
    'base64',
  );
  const whiteBits =
    'e38e38e38eb8e38e38e3e38e38e38edc71c71c71f0f0f0f0f00f0f0f0f0ff0f0f0f0f01e1e1e1e1ef83e0f83e0f83e0f83e0' +
    'f83e0f83e0f83e0f83e0fc0fc0fc0ffe07e07e07fc0fc0fc0ff03f03f03ffe03f80fe00fe03f80fefe03f80fe0e03f80fe0f' +
    'ff00ff00fffc03fc03ffff00ff00fffe01fe01ff';

  it('of group 3, packed by the row above, is white on white and black on black', async () => {
    const { at, all, widthPx, heightPx } = await coloursOf(group3);
    // In bands that end within its one strip, too.
    expect((await coloursOf(group3, 7)).all).toEqual(all);
    const bitAt = (x: number, y: number) =>
      (Number.parseInt(whiteBits.slice(y * 10, y * 10 + 10), 16) / 2 ** (39 - x)) & 1;
    for (let y = 0; y < heightPx; y++) {
      for (let x = 0; x < widthPx; x++) expect(at(x, y), `${x}, ${y}`).toEqual(bitAt(x, y) ? white : [0, 0, 0, 255]);
    }
  });

  it('of a whole plan in one strip, 144 million pixels, is read a band at a time', async () => {
    vi.stubGlobal('ImageData', class {});
    vi.stubGlobal('createImageBitmap', () => Promise.resolve(null));
    try {
      // Of group 4 a white row is one bit: as the row above.
      const entries = [
        [256, 12_000],
        [257, 12_000],
        [258, 1],
        [259, 4],
        [262, 0],
        [273, 8],
        [277, 1],
        [278, 12_000],
        [279, 1500],
      ] as const;
      const plan = Buffer.alloc(1508 + 2 + 12 * entries.length + 4, 0xff);
      plan.write('II*\0', 'latin1');
      plan.writeUInt32LE(1508, 4);
      plan.writeUInt16LE(entries.length, 1508);
      for (const [i, [tag, value]] of entries.entries()) {
        const at = 1510 + 12 * i;
        plan.writeUInt16LE(tag, at);
        plan.writeUInt16LE(4, at + 2);
        plan.writeUInt32LE(1, at + 4);
        plan.writeUInt32LE(value, at + 8);
      }
      plan.writeUInt32LE(0, plan.length - 4);
      const reader = await tiffReader(new Blob([plan]));
      const strips = reader.strips()[Symbol.asyncIterator]();
      for (const topPx of [0, 512]) {
        expect((await strips.next()).value).toMatchObject({ topPx, heightPx: 512 });
      }
    } finally {
      vi.unstubAllGlobals();
    }
  });

  it('that breaks off, or says that it is coloured, is refused', async () => {
    const short = Buffer.from(group3);
    short.writeUInt32LE(60, entryOf(short, 279) + 8);
    await expect(coloursOf(short)).rejects.toThrow('shortBlock');
    const deep = Buffer.from(group3);
    deep.writeUInt16LE(8, entryOf(deep, 258) + 8);
    await expect(coloursOf(deep)).rejects.toThrow(/a fax is black and white/);
  });

  it('whose bytes were spoilt ends, and takes no more than its block may hold', () => {
    const random = randomNumbers(12);
    for (let run = 0; run < 400; run++) {
      const packed = Uint8Array.from({ length: 300 }, () => Math.floor(random() * 256) & Math.floor(random() * 256));
      for (const way of ['rows', 'group3', 'group4'] as const) {
        try {
          const bytes = unpackFax(packed, 100, 20, { way, byRowAbove: run % 2 === 0 });
          expect(bytes.buffer.byteLength).toBe(13 * 20);
        } catch (error) {
          expect(error).toBeInstanceOf(TiffDamaged);
        }
      }
    }
  });
});

describe('colours', () => {
  const colourAt = (x: number, y: number, sample: number) => (x * 7 + y * 11 + sample * 50) % 256;

  test.each([1, 2, 4, 8])('of a palette of %i bits', async (bits) => {
    const size = 2 ** bits;
    const tints = Array.from({ length: 3 * size }, (_, i) => ((i * 89) % 256) * 257);
    const index = (x: number, y: number) => (x + y) % size;
    const { at } = await coloursOf(madeTiff({ ...plan, bits, photometric: 3, palette: tints, valueAt: index }));
    for (const [x, y] of [
      [0, 0],
      [5, 9],
      [36, 28],
    ] as const) {
      expect(at(x, y)).toEqual([0, 1, 2].map((part) => tints[part * size + index(x, y)]! / 257).concat(255));
    }
  });

  test.each([
    ['8 bits', { bits: 8 }],
    ['16 bits', { bits: 16 }],
    ['16 bits, the highest byte first, with differences', { bits: 16, bigEndian: true, predictor: 2, packing: 'lzw' }],
    ['8 bits with differences, in tiles', { bits: 8, predictor: 2, packing: 'deflate', tile: 16 }],
    ['8 bits, each colour apart', { bits: 8, apart: true, rowsPerStrip: 3 }],
    ['4 bits', { bits: 4 }],
  ] as const)('red, green and blue of %s', async (_, how) => {
    const most = 2 ** how.bits - 1;
    const valueAt = (x: number, y: number, sample: number) => Math.round((colourAt(x, y, sample) / 255) * most);
    const { at, opaque } = await coloursOf(madeTiff({ ...plan, photometric: 2, samples: 3, valueAt, ...how }));
    expect(opaque).toBe(true);
    for (const [x, y] of [
      [0, 0],
      [20, 13],
      [36, 28],
    ] as const) {
      expect(at(x, y)).toEqual([0, 1, 2].map((s) => Math.round((valueAt(x, y, s) / most) * 255)).concat(255));
    }
  });

  it('of inks: none is white', async () => {
    const inked = madeTiff({ ...plan, bits: 8, photometric: 5, samples: 4, valueAt: (x, _, s) => (s === x ? 255 : 0) });
    const { at } = await coloursOf(inked);
    expect(at(9, 0)).toEqual([255, 255, 255, 255]);
    expect([at(0, 0), at(3, 0)]).toEqual([
      [0, 255, 255, 255],
      [0, 0, 0, 255],
    ]);
  });

  it('of CIE L*a*b*: white, black and a grey', async () => {
    const valueAt = (x: number, _: number, s: number) => (s > 0 ? 0 : [255, 0, 136][x % 3]!);
    const { at } = await coloursOf(madeTiff({ ...plan, bits: 8, photometric: 8, samples: 3, valueAt }));
    for (const [x, level] of [
      [0, 255],
      [1, 0],
      // L* 53.3 is the grey whose light is 21.4 %: 127 in sRGB.
      [2, 127],
    ] as const) {
      for (const value of at(x, 0).slice(0, 3)) expect(Math.abs(value - level)).toBeLessThanOrEqual(1);
    }
  });
});

describe('what is not shown', () => {
  const orange = [240, 120, 0];

  it('opacity of its own is kept, premultiplied or not', async () => {
    for (const [kind, factor] of [
      [2, 1],
      [1, 0.5],
    ] as const) {
      const valueAt = (x: number, _: number, s: number) => {
        const alpha = x < 5 ? 0 : x < 10 ? 128 : 255;
        return s === 3 ? alpha : x < 10 ? orange[s]! * factor : orange[s]!;
      };
      const made = madeTiff({ ...plan, bits: 8, photometric: 2, samples: 4, extraSamples: [kind], valueAt });
      const { at, opaque } = await coloursOf(made);
      expect(opaque).toBe(false);
      expect([at(0, 3)[3], at(7, 3)[3], at(20, 3)[3]]).toEqual([0, 128, 255]);
      for (const [i, value] of at(7, 3).slice(0, 3).entries()) {
        expect(Math.abs(value - orange[i]!)).toBeLessThanOrEqual(1);
      }
    }
  });

  it('a fourth sample that is no opacity is left alone', async () => {
    const made = madeTiff({ ...plan, bits: 8, photometric: 2, samples: 4, extraSamples: [0], valueAt: () => 9 });
    expect(await coloursOf(made)).toMatchObject({ opaque: true });
  });

  it('pixels of the value that means nothing are clear', async () => {
    const valueAt = (x: number, _: number, s: number) => (x < 4 ? 0 : s === 0 ? 0 : 80);
    const { at, opaque } = await coloursOf(
      madeTiff({ ...plan, bits: 8, photometric: 2, samples: 3, noData: '0', valueAt }),
    );
    expect([opaque, at(0, 0)[3], at(9, 9)]).toEqual([false, 0, [0, 80, 80, 255]]);
    const none = madeTiff({ ...plan, bits: 8, photometric: 1, noData: '-9999', valueAt: () => 7 });
    expect((await coloursOf(none)).opaque).toBe(true);
  });

  it('pixels that a mask hides are clear', async () => {
    const made = madeTiff({
      ...plan,
      bits: 8,
      photometric: 1,
      rowsPerStrip: 4,
      valueAt: () => 200,
      shownAt: (x, y) => x > y,
    });
    const { at, opaque } = await coloursOf(made, 8);
    expect([opaque, at(3, 2), at(2, 3)[3], at(36, 28)[3]]).toEqual([false, [200, 200, 200, 255], 0, 255]);
  });
});

describe('a file with the highest byte first', () => {
  it('of many strips is read: their places lie behind what is read at first', async () => {
    const valueAt = (x: number, y: number, s: number) => (x + y + s) % 256;
    const made = { width: 50, height: 400, bits: 8, samples: 3, photometric: 2, rowsPerStrip: 1, valueAt };
    const { at } = await coloursOf(madeTiff({ ...made, bigEndian: true }), 100);
    for (const [x, y] of [
      [0, 0],
      [49, 399],
      [20, 210],
    ] as const) {
      expect(at(x, y)).toEqual([0, 1, 2].map((s) => valueAt(x, y, s)).concat(255));
    }
  });
});

describe('a file that is not as it should be', () => {
  it('says what is wrong', async () => {
    const whole = madeTiff({ ...plan, bits: 8, photometric: 1, packing: 'lzw', valueAt: (x, y) => x ^ y });
    await expect(coloursOf(whole.subarray(0, 300))).rejects.toThrow();
    const floats = madeTiff({ ...plan, bits: 32, format: 3, photometric: 1, valueAt: () => 700.5 });
    await expect(coloursOf(floats)).rejects.toThrow(/measured values/);
    const heights = madeTiff({ ...plan, bits: 16, format: 2, photometric: 1, valueAt: () => 700 });
    await expect(coloursOf(heights)).rejects.toThrow(/measured values/);
    await expect(coloursOf(madeTiff({ ...plan, bits: 64, photometric: 1, valueAt: () => 0 }))).rejects.toThrow(
      /numbers that can’t be read/,
    );
    const odd = madeTiff({ ...plan, bits: 8, photometric: 32803, valueAt: () => 0 });
    await expect(coloursOf(odd)).rejects.toThrow(/PhotometricInterpretation 32803/);
    const packed = Buffer.from(madeTiff({ ...plan, bits: 1, photometric: 0, valueAt: () => 0 }));
    packed.writeUInt16LE(34_925, entryOf(packed, 259) + 8);
    await expect(coloursOf(packed)).rejects.toThrow(/LZMA/);
    packed.writeUInt16LE(50_000, entryOf(packed, 259) + 8);
    await expect(coloursOf(packed)).rejects.toThrow(/Zstandard/);
  });

  it('with more tiles than it has room for is refused at once', async () => {
    const made = Buffer.from(madeTiff({ ...plan, bits: 8, photometric: 1, tile: 16, valueAt: () => 0 }));
    for (const [tag, value] of [
      [256, 20_000],
      [257, 20_000],
    ] as const) {
      made.writeUInt32LE(value, entryOf(made, tag) + 8);
    }
    for (const tag of [322, 323]) made.writeUInt16LE(1, entryOf(made, tag) + 8);
    await expect(coloursOf(made)).rejects.toThrow(/header is damaged/);
    made.writeUInt32LE(400_000_000, entryOf(made, 324) + 4);
    await expect(coloursOf(made)).rejects.toThrow(/breaks off/);
  });

  it('that swells takes no more room than its block may hold', () => {
    const swollen = deflateSync(Buffer.alloc(50_000_000));
    expect(unpackDeflate(swollen, 1000)).toHaveLength(1000);
    expect(unpackDeflate(swollen, 1000).buffer.byteLength).toBe(1000);
    // A code for the longest piece so far, again and again.
    const endless = new Uint8Array(200_000).fill(0xff);
    endless.set([0x80, 0x00], 0);
    try {
      expect(unpackLzw(endless, 4096).buffer.byteLength).toBe(4096);
    } catch (error) {
      expect(String(error)).toContain('noSuchCode');
    }
  });

  it('whose bytes were spoilt is read or refused, never more', async () => {
    const random = randomNumbers(11);
    for (const packing of ['none', 'lzw', 'deflate', 'packBits'] as const) {
      const whole = madeTiff({
        ...plan,
        bits: 8,
        samples: 3,
        photometric: 2,
        packing,
        tile: 16,
        valueAt: (x, y) => x * y,
      });
      for (let run = 0; run < 150; run++) {
        const spoilt = Buffer.from(whole);
        for (let i = 0; i < 4; i++) spoilt[Math.floor(random() * spoilt.length)] = Math.floor(random() * 256);
        const read = await coloursOf(spoilt, 16).catch((error: unknown) => error);
        if (read instanceof Error) continue;
        expect(read).toMatchObject({ all: expect.anything() as unknown });
      }
    }
  });
});

/** Where a tag's entry stands in a little-endian TIFF of one directory. */
function entryOf(file: Buffer, tag: number): number {
  const directory = file.readUInt32LE(4);
  for (let at = directory + 2; at < directory + 2 + 12 * file.readUInt16LE(directory); at += 12) {
    if (file.readUInt16LE(at) === tag) return at;
  }
  throw new Error(`No tag ${tag}`);
}

/** What GDAL reads, and how white it takes it to be. */
describeWith(['gdal_translate'], 'beside GDAL', () => {
  const greyAt = (x: number, y: number) => (x * 5 + y * 3) % 256;
  const size = { width: 70, height: 50 };
  const valueAt = (x: number, y: number, s: number) => (greyAt(x, y) + 60 * s) % 256;
  const colourful = madeTiff({ ...size, bits: 8, samples: 3, photometric: 2, valueAt });
  const many = madeTiff({ ...size, bits: 8, photometric: 1, valueAt: greyAt });
  const smooth = madeTiff({ ...size, bits: 8, samples: 3, photometric: 2, valueAt: (x, y, s) => 60 + x + y + 15 * s });
  const wide = madeTiff({ ...size, bits: 16, photometric: 1, valueAt: (x, y) => greyAt(x, y) * 257 });

  interface Case {
    readonly from: Buffer;
    /** Options of creation. */
    readonly co: readonly string[];
    readonly how?: readonly string[];
    /** How GDAL is asked for 8 bits a colour. */
    readonly as?: readonly string[];
    /** GDAL gives the numbers as they stand, white as 0. */
    readonly turned?: boolean;
    readonly within?: number;
  }
  const few = (bits: number, polarity: string, packing: string): Case => ({
    from: many,
    how: ['-scale', '0', '255', '0', String(2 ** bits - 1)],
    co: [`NBITS=${bits}`, `PHOTOMETRIC=${polarity}`, `COMPRESS=${packing}`],
    as: polarity === 'MINISWHITE' ? ['-expand', 'rgb'] : ['-scale', '0', String(2 ** bits - 1), '0', '255'],
  });
  const cases: [string, Case][] = [
    ...[1, 2, 4].flatMap((bits) =>
      ['MINISWHITE', 'MINISBLACK'].flatMap((polarity) =>
        ['LZW', 'PACKBITS', ...(bits === 1 ? ['CCITTRLE', 'CCITTFAX3', 'CCITTFAX4'] : [])].map(
          (packing): [string, Case] => [`${bits} bits ${polarity} ${packing}`, few(bits, polarity, packing)],
        ),
      ),
    ),
    ['8 bits MINISWHITE', { from: many, co: ['PHOTOMETRIC=MINISWHITE', 'BLOCKYSIZE=8'], as: ['-expand', 'rgb'] }],
    ['8 bits, big-endian', { from: many, co: ['ENDIANNESS=BIG', 'BLOCKYSIZE=1'] }],
    ['16 bits', { from: wide, co: ['BLOCKYSIZE=8'], as: ['-scale', '0', '65535', '0', '255'] }],
    [
      '16 bits MINISWHITE, big-endian, LZW with differences',
      {
        from: wide,
        co: ['PHOTOMETRIC=MINISWHITE', 'ENDIANNESS=BIG', 'COMPRESS=LZW', 'PREDICTOR=2'],
        as: ['-scale', '0', '65535', '0', '255'],
        turned: true,
      },
    ],
    [
      'RGB, LZW with differences, in tiles',
      { from: colourful, co: ['TILED=YES', 'BLOCKXSIZE=16', 'BLOCKYSIZE=16', 'COMPRESS=LZW', 'PREDICTOR=2'] },
    ],
    ['RGB, band by band', { from: colourful, co: ['INTERLEAVE=BAND', 'COMPRESS=DEFLATE'] }],
    ['RGB, BigTIFF', { from: colourful, co: ['BIGTIFF=YES', 'BLOCKYSIZE=8'] }],
    ['RGB, JPEG', { from: colourful, co: ['COMPRESS=JPEG', 'JPEG_QUALITY=95'], within: 3 }],
    // Colours at half the size are smoothed differently.
    ['YCbCr, JPEG', { from: smooth, co: ['COMPRESS=JPEG', 'PHOTOMETRIC=YCBCR', 'JPEG_QUALITY=95'], within: 6 }],
    ['grey, JPEG', { from: many, co: ['COMPRESS=JPEG'], within: 3 }],
  ];

  test.each(cases)('%s', async (_, { from, co, how = [], as = [], turned = false, within = 1 }) => {
    const folder = mkdtempSync(join(tmpdir(), 'tiff-'));
    try {
      const [source, target, shown] = ['source.tif', 'target.tif', 'shown.bin'].map((file) => join(folder, file));
      writeFileSync(source!, from);
      run('gdal_translate', '-q', ...how, ...co.flatMap((option) => ['-co', option]), source!, target!);
      run('gdal_translate', '-q', '-ot', 'Byte', '-of', 'ENVI', '-co', 'INTERLEAVE=BIP', ...as, target!, shown!);
      const wanted = readFileSync(shown!);
      const { all, widthPx, heightPx } = await coloursOf(readFileSync(target!));
      const bands = wanted.length / (widthPx * heightPx);
      expect([1, 3]).toContain(bands);
      let worst = 0;
      for (let pixel = 0; pixel < widthPx * heightPx; pixel++) {
        for (let part = 0; part < 3; part++) {
          const level = wanted[pixel * bands + (bands === 1 ? 0 : part)]!;
          worst = Math.max(worst, Math.abs(all[pixel * 4 + part]! - (turned ? 255 - level : level)));
        }
      }
      expect(worst).toBeLessThanOrEqual(within);
    } finally {
      rmSync(folder, { recursive: true });
    }
  });
});

function run(command: string, ...args: string[]): void {
  const { status, stderr } = spawnSync(command, args, { encoding: 'utf8' });
  expect(`${status} ${stderr}`).toMatch(/^0 /);
}
