import type { Figures, Phrase } from '../../../types.ts';

const tiff = 'The TIFF picture can’t be read';
const again = 'Save it anew, or fetch it again.';

/** A picture that comes in: how far it is, and why it can't. */
export const pictures = {
  comingIn: 'Picture coming in',
  byEyeThen: 'Not known: lay it by eye',
  reading: ({ fileName }: { fileName: string }) => `${fileName}: reading`,
  tiles: ({ fileName, done, all }: { fileName: string; done: number; all: number }) =>
    `${fileName}: ${done} of ${all} tiles`,
  howFar: 'How far it is',
  /** What is wrong with a file, after its name. */
  ofFile: ({ fileName, problem }: { fileName: string; problem: string }) => `${fileName}: ${problem}`,
  worldFileAlone: 'Select a picture; a world file goes along with one.',
  byEyeUntil: ({ why }: { why: Phrase }, f: Figures) => `${f.say(why)} Until then it lies by eye.`,
  /** A picture whose file has no name but its ending. */
  unnamed: 'Map',
  lost: 'The picture can’t be read. Save it anew, or smaller.',
  noMemory: 'The picture can’t be read; this machine may have too little memory for it.',
  tooManyBytes: ({ fileName }: { fileName: string }) =>
    `${fileName} is larger than 2 GB. Cut it in parts, or save it smaller.`,
  otherKind: ({ fileName }: { fileName: string }) => `${fileName} is no JPEG, PNG, WebP or TIFF picture.`,
  damaged: `The picture is damaged or breaks off. ${again}`,
  jpeg: ({ why }: { why: Phrase }, f: Figures) => `The JPEG picture can't be read: ${f.say(why)}. ${again}`,
  tooManyPixels: ({ mostMillions, why }: { mostMillions: number; why: Phrase }, f: Figures) =>
    `The picture has more than ${f.number(mostMillions)} million pixels and can't be read in bands, because ${f.say(why)}. Save it as an ordinary (baseline) JPEG, a PNG without interlacing, or a TIFF.`,
  /** Why a picture is decoded at once. */
  atOnce: { webp: 'it is a WebP picture', interlaced: 'it is interlaced', damaged: 'it is damaged' },
  tiff: {
    header: `${tiff}: its header is damaged. ${again}`,
    packing: ({ how }: { how: Phrase }, f: Figures) =>
      `This TIFF is packed in a way that can’t be read (${f.say(how)}). Save it with LZW, Deflate or JPEG, or unpacked.`,
    /** Ways of packing that are not read. */
    oldJpeg: 'old-style JPEG',
    named: ({ name }: { name: string }) => name,
    compression: ({ number }: { number: number }) => `Compression ${number}`,
    fax: `${tiff}: a fax is black and white, and this one says otherwise. Save it anew.`,
    numbers: 'This TIFF keeps its colours in numbers that can’t be read. Save it with 8 or 16 bits a colour.',
    onePiece: 'This TIFF is stored in one piece too large to be read. Save it as a tiled TIFF, or in strips.',
    smallPieces: 'This TIFF is stored in too many small pieces. Save it with larger tiles.',
    coarse:
      'This TIFF keeps its colours coarser than its brightness, and not as a JPEG, which can’t be read. Save it as RGB.',
    colours: ({ why }: { why: Phrase }, f: Figures) =>
      `This TIFF can’t be read: ${f.say(why)}. Save it as an RGB picture.`,
    measured: 'This TIFF holds measured values (such as heights), not a picture. Select a picture.',
  },
};
