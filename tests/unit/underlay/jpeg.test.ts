import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { JpegDamaged, jpegStrips } from '../../../core/exchange/image/jpeg/jpegStrips.ts';
import { readJpeg } from '../../../core/exchange/image/jpeg/readJpeg.ts';
import { allInEnglish, inEnglish } from '../../support/english.ts';
import { flatJpeg } from '../../support/flatJpeg.ts';
import { jpegCoefficients } from '../../support/jpegCoefficients.ts';

const levelsAt = (column: number, row: number) =>
  [(column * 13 + row * 29) % 256, (column * 7) % 256, (row * 5) % 256] as const;

/** Cuts a picture and reads the strips' coefficients, with a reader of their own, one below the other. */
function coefficientsOfStrips(bytes: Uint8Array, heightPx: number): number[][][] {
  const { jpeg } = readJpeg(bytes);
  const strips = [...jpegStrips(bytes, jpeg!, heightPx)];
  let topPx = 0;
  const joined: number[][][] = [];
  for (const strip of strips) {
    expect(strip.topPx).toBe(topPx);
    topPx += strip.heightPx;
    const read = jpegCoefficients(strip.bytes);
    expect(read.heightPx).toBe(strip.heightPx);
    expect(read.widthPx).toBe(jpeg!.widthPx);
    for (const [i, blocks] of read.blocks.entries()) joined[i] = [...(joined[i] ?? []), ...blocks];
  }
  expect(topPx).toBe(jpeg!.heightPx);
  return joined;
}

describe('a JPEG cut in strips', () => {
  test('has the very coefficients of the whole, whatever its sampling, restarts and size', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 150 }),
        fc.integer({ min: 1, max: 150 }),
        fc.constantFrom<readonly [1 | 2, 1 | 2]>([1, 1], [2, 1], [2, 2], [1, 2]),
        fc.constantFrom(0, 1, 3, 7),
        fc.integer({ min: 1, max: 80 }),
        (widthPx, heightPx, sampling, restartUnits, stripPx) => {
          const bytes = flatJpeg({ widthPx, heightPx, levelsAt, sampling, restartUnits });
          expect(coefficientsOfStrips(bytes, stripPx)).toEqual(jpegCoefficients(bytes).blocks);
        },
      ),
      { seed: 4, numRuns: 150 },
    );
  });

  test('says how large it is, and why it can’t be cut', () => {
    const bytes = flatJpeg({ widthPx: 40, heightPx: 24, levelsAt });
    expect(readJpeg(bytes)).toMatchObject({ size: { widthPx: 40, heightPx: 24 }, whyNot: null });
    const progressive = Buffer.from(bytes);
    progressive[progressive.indexOf(Buffer.from([0xff, 0xc0])) + 1] = 0xc2;
    expect(allInEnglish(readJpeg(progressive))).toMatchObject({
      jpeg: null,
      size: { widthPx: 40 },
      whyNot: expect.stringMatching(/progressive/),
    });
    expect(readJpeg(new Uint8Array([1, 2, 3, 4, 5]))).toMatchObject({ jpeg: null, size: null });
  });

  test('one that breaks off says where', () => {
    const bytes = flatJpeg({ widthPx: 400, heightPx: 400, levelsAt });
    const { jpeg } = readJpeg(bytes);
    const strips = jpegStrips(bytes.subarray(0, Math.floor(bytes.length / 2)), jpeg!, 40);
    const said = () => {
      try {
        return [...strips];
      } catch (error) {
        return error instanceof JpegDamaged ? inEnglish(error.said) : error;
      }
    };
    expect(said()).toMatch(/breaks off [3-6]0 % of the way down/);
  });

  test('cut off or spoilt anywhere, it ends with a word for it', () => {
    const whole = flatJpeg({ widthPx: 200, heightPx: 120, levelsAt, sampling: [2, 2], restartUnits: 5 });
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: whole.length - 1 }),
        fc.integer({ min: 0, max: 255 }),
        fc.boolean(),
        (at, value, cut) => {
          const spoilt = Buffer.from(cut ? whole.subarray(0, at) : whole);
          if (!cut) spoilt[at] = value;
          const { jpeg, whyNot } = readJpeg(spoilt);
          if (!jpeg) {
            expect(inEnglish(whyNot)).not.toBe('');
            return;
          }
          // A header that lies about the size must not make endless work.
          if (jpeg.widthPx * jpeg.heightPx > 1e7) return;
          try {
            for (const strip of jpegStrips(spoilt, jpeg, 32)) expect(strip.bytes.length).toBeGreaterThan(0);
          } catch (error) {
            expect(error).toBeInstanceOf(JpegDamaged);
          }
        },
      ),
      { seed: 4, numRuns: 1500 },
    );
  });
});
