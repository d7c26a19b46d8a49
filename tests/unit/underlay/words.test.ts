import { afterEach, expect, test } from 'vitest';
import { english } from '../../../core/words/en.ts';
import { figures } from '../../../core/words/figures.ts';
import { setLanguage } from '../../../core/words/language.ts';
import { message } from '../../../core/words/message.ts';
import { pseudo } from '../../../core/words/pseudo.ts';
import { formatPixel } from '../../../renderer/panels/underlay/formatPixel.ts';
import { openReader } from '../../../renderer/pictures/readers/openReader.ts';
import { damagedPicture, PictureProblem } from '../../../renderer/pictures/readers/reader.ts';
import { packings, type TiffTags, whyNotPixels } from '../../../renderer/pictures/readers/tiff/tiffTags.ts';
import { inEnglish } from '../../support/english.ts';
import { englishIn, expectFromCatalogue } from '../../support/pseudo.ts';

afterEach(() => setLanguage(english));

const sound: TiffTags = {
  widthPx: 100,
  heightPx: 100,
  subfileType: 0,
  blockWidthPx: 100,
  blockHeightPx: 10,
  isTiled: false,
  offsets: new Array<number>(10).fill(8),
  byteCounts: new Array<number>(10).fill(1000),
  compression: packings.none,
  predictor: 1,
  photometric: 2,
  samplesPerPixel: 3,
  apart: false,
  bits: 8,
  format: 1,
  extraSamples: [],
  palette: null,
  bitsReversed: false,
  subsampling: [1, 1],
  faxOptions: 0,
  jpegTables: null,
  noData: null,
};

test.each<[string, Partial<TiffTags>, string]>([
  ['no header', { widthPx: 0 }, 'its header is damaged'],
  ['a packing by its name', { compression: 50_000 }, 'can’t be read (Zstandard)'],
  ['another packing', { compression: 12 }, 'can’t be read (Compression 12)'],
  ['the first JPEG', { compression: 6 }, 'can’t be read (old-style JPEG)'],
  ['a fax in colour', { compression: packings.faxGroup4 }, 'a fax is black and white'],
  ['odd numbers', { bits: 0, format: 0 }, 'keeps its colours in numbers that can’t be read'],
  ['one huge piece', { blockHeightPx: 100_000_000 }, 'in one piece too large'],
  ['coarse colours', { photometric: 6, subsampling: [2, 2] }, 'keeps its colours coarser'],
])('why a TIFF is not read comes from the catalogue: %s', (_what, tags, says) => {
  const why = whyNotPixels({ ...sound, ...tags })!;
  expect(inEnglish(why)).toContain(says);
  expectFromCatalogue(why, new Set(['Zstandard', 'JPEG']));
});

test('a thread that reads pictures says what is wrong in the language it was told', async () => {
  setLanguage(pseudo());
  for (const why of [damagedPicture, message('window.background.pictures.jpeg', { why: damagedPicture })]) {
    expect(englishIn(new PictureProblem(why).message)).toBe('');
  }
  const wrong = await openReader(new File(['no picture'], 'Notes.txt'), false).catch((error: unknown) => error);
  expect(wrong).toBeInstanceOf(PictureProblem);
  expect(englishIn((wrong as PictureProblem).message)).toBe('');
});

test('what a pixel covers is written as before, from thousandths of a millimetre to kilometres', () => {
  const f = figures('metric', english);
  expect([1e-9, 0.0005, 0.0123, 0.25, 250].map((m) => formatPixel(m, f))).toEqual([
    'under 0.001 mm',
    '0.500 mm',
    '12.3 mm',
    '0.25 m',
    '250 m',
  ]);
  expect(englishIn(formatPixel(1e-9, figures('metric', pseudo())))).toBe('');
});
