import { type Message, message } from '../../../words/message.ts';

/** What the numbers of a TIFF's samples mean as colours (TIFF 6.0, sections 4 to 7, 16, 18, 20 to 23). */

/** What the tags of a picture say of its samples. */
export interface TiffColourTags {
  /** PhotometricInterpretation; null where it is missing. */
  readonly photometric: number | null;
  readonly samplesPerPixel: number;
  /** Bits of each sample; whole numbers without a sign. */
  readonly bits: number;
  /** ExtraSamples: what the samples beyond the colours are; 1 and 2 are opacity. */
  readonly extraSamples: readonly number[];
  /** ColorMap: all reds, all greens, all blues. */
  readonly palette: ArrayLike<number> | null;
  /** The value of a pixel that shows nothing. */
  readonly noData: number | null;
}

export interface TiffColours {
  /** Indices of the samples that `toRgba` wants for each pixel, in this order. */
  readonly samples: readonly number[];
  /** Nothing in it may be seen through. */
  readonly opaque: boolean;
  /** Turns the samples of `count` pixels into red, green, blue and opacity, 8 bits each, from `at` on. */
  readonly toRgba: (samples: ArrayLike<number>, count: number, rgba: Uint8ClampedArray, at: number) => void;
}

export type TiffColoursOrProblem =
  | { readonly colours: TiffColours; readonly whyNot: null }
  | { readonly colours: null; readonly whyNot: Message };

export const photometrics = {
  whiteIsZero: 0,
  blackIsZero: 1,
  rgb: 2,
  palette: 3,
  cmyk: 5,
  yCbCr: 6,
  cieLab: 8,
} as const;

const associatedAlpha = 1;
const unassociatedAlpha = 2;

type Rgb = (samples: ArrayLike<number>, from: number, rgba: Uint8ClampedArray, to: number) => void;

/** How the samples become colours, or why they can't. */
export function tiffColours(tags: TiffColourTags): TiffColoursOrProblem {
  const { samplesPerPixel, bits, extraSamples, noData } = tags;
  const photometric = tags.photometric ?? (samplesPerPixel >= 3 ? photometrics.rgb : photometrics.blackIsZero);
  const how = colourOf(photometric, tags);
  if ('code' in how) return { colours: null, whyNot: how };
  const { count: colourSamples, paint } = how;
  if (samplesPerPixel < colourSamples) return { colours: null, whyNot: message('exchange.pixels.colourMissing') };
  const alphaKind = extraSamples.findIndex((kind) => kind === associatedAlpha || kind === unassociatedAlpha);
  const alphaSample = alphaKind < 0 ? -1 : samplesPerPixel - extraSamples.length + alphaKind;
  const hasAlpha = alphaSample >= colourSamples && alphaSample < samplesPerPixel;
  const samples = [...Array(colourSamples).keys(), ...(hasAlpha ? [alphaSample] : [])];
  const each = samples.length;
  const opacity = scaleTo8(bits);
  const isAssociated = hasAlpha && extraSamples[alphaKind] === associatedAlpha;
  const gap = noData !== null && Number.isInteger(noData) && noData >= 0 && noData < 2 ** bits ? noData : null;

  const isGap = (values: ArrayLike<number>, from: number): boolean => {
    for (let i = 0; i < colourSamples; i++) if (values[from + i] !== gap) return false;
    return true;
  };
  const toRgba: TiffColours['toRgba'] = (values, count, rgba, at) => {
    for (let pixel = 0, from = 0, to = at; pixel < count; pixel++, from += each, to += 4) {
      paint(values, from, rgba, to);
      const alpha = hasAlpha ? opacity(values[from + colourSamples]!) : 255;
      if (isAssociated && alpha > 0) for (let i = to; i < to + 3; i++) rgba[i] = (rgba[i]! * 255) / alpha;
      rgba[to + 3] = gap !== null && isGap(values, from) ? 0 : alpha;
    }
  };
  return { colours: { samples, opaque: !hasAlpha && gap === null, toRgba }, whyNot: null };
}

/** How many samples make a colour, and how; or why they can't be told. */
function colourOf(photometric: number, { bits, palette }: TiffColourTags): { count: number; paint: Rgb } | Message {
  switch (photometric) {
    case photometrics.whiteIsZero:
    case photometrics.blackIsZero: {
      const scale = scaleTo8(bits);
      return {
        count: 1,
        paint: grey(photometric === photometrics.whiteIsZero ? (value) => 255 - scale(value) : scale),
      };
    }
    case photometrics.rgb:
      return { count: 3, paint: rgb(scaleTo8(bits)) };
    case photometrics.palette:
      if (bits > 16 || !palette || palette.length < 3 * 2 ** bits) return message('exchange.pixels.noPalette');
      return { count: 1, paint: byPalette(palette, 2 ** bits) };
    case photometrics.cmyk:
      return { count: 4, paint: cmyk(scaleTo8(bits)) };
    case photometrics.yCbCr:
      return bits === 8 ? { count: 3, paint: yCbCr } : notKnown(photometric, bits);
    case photometrics.cieLab:
      return bits === 8 ? { count: 3, paint: cieLab } : notKnown(photometric, bits);
    default:
      return notKnown(photometric, bits);
  }
}

function notKnown(photometric: number, bits: number): Message {
  return message('exchange.pixels.unknownColours', { photometric, bits });
}

/** From 0 to 2^bits - 1 to 0 to 255, by table where there are not too many values. */
function scaleTo8(bits: number): (value: number) => number {
  const most = 2 ** bits - 1;
  if (bits === 8) return (value) => value;
  if (bits > 16) return (value) => Math.round((value / most) * 255);
  const table = Uint8Array.from({ length: most + 1 }, (_, value) => Math.round((value / most) * 255));
  return (value) => table[value]!;
}

function grey(scale: (value: number) => number): Rgb {
  return (samples, from, rgba, to) => {
    const value = scale(samples[from]!);
    rgba[to] = value;
    rgba[to + 1] = value;
    rgba[to + 2] = value;
  };
}

function rgb(scale: (value: number) => number): Rgb {
  return (samples, from, rgba, to) => {
    rgba[to] = scale(samples[from]!);
    rgba[to + 1] = scale(samples[from + 1]!);
    rgba[to + 2] = scale(samples[from + 2]!);
  };
}

/** Tables of 16 bits as the specification has them; some programs write 8 bits into them. */
function byPalette(palette: ArrayLike<number>, size: number): Rgb {
  let shift = 0;
  for (let i = 0; i < 3 * size; i++) if (palette[i]! > 255) shift = 8;
  return (samples, from, rgba, to) => {
    const index = samples[from]!;
    rgba[to] = palette[index]! >> shift;
    rgba[to + 1] = palette[size + index]! >> shift;
    rgba[to + 2] = palette[2 * size + index]! >> shift;
  };
}

/** Inks, 0 for none; no more than plain arithmetic, as no profile of a press is asked. */
function cmyk(scale: (value: number) => number): Rgb {
  return (samples, from, rgba, to) => {
    const light = 255 - scale(samples[from + 3]!);
    for (let i = 0; i < 3; i++) rgba[to + i] = ((255 - scale(samples[from + i]!)) * light) / 255;
  };
}

/** ITU-R BT.601, the values of TIFF's own defaults. */
const yCbCr: Rgb = (samples, from, rgba, to) => {
  const [y, cb, cr] = [samples[from]!, samples[from + 1]! - 128, samples[from + 2]! - 128];
  rgba[to] = y + 1.402 * cr;
  rgba[to + 1] = y - 0.344136 * cb - 0.714136 * cr;
  rgba[to + 2] = y + 1.772 * cb;
};

/** White of CIE L*a*b* in TIFF (D50), and the way from there to sRGB (IEC 61966-2-1, adapted to D50 after Bradford). */
const whiteD50 = [0.9642, 1, 0.8249] as const;
const xyzToSrgb = [
  [3.1339, -1.6169, -0.4906],
  [-0.9788, 1.9161, 0.0335],
  [0.0719, -0.229, 1.4052],
] as const;

const cieLab: Rgb = (samples, from, rgba, to) => {
  const lightness = (samples[from]! * 100) / 255;
  const [a, b] = [signed(samples[from + 1]!), signed(samples[from + 2]!)];
  const y = (lightness + 16) / 116;
  const xyz = [y + a / 500, y, y - b / 200].map(
    (f, i) => whiteD50[i]! * (f > 6 / 29 ? f ** 3 : (f - 4 / 29) * 0.128419),
  );
  for (const [i, row] of xyzToSrgb.entries()) {
    const linear = row[0] * xyz[0]! + row[1] * xyz[1]! + row[2] * xyz[2]!;
    rgba[to + i] = 255 * (linear > 0.0031308 ? 1.055 * linear ** (1 / 2.4) - 0.055 : 12.92 * linear);
  }
};

function signed(byte: number): number {
  return byte < 128 ? byte : byte - 256;
}
