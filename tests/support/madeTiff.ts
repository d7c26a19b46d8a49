import { deflateSync } from 'node:zlib';

/** TIFFs of any make, written on the spot (TIFF 6.0, GeoTIFF 1.1). */

export interface MadeTiff {
  readonly width: number;
  readonly height: number;
  readonly bits: number;
  /** Samples of a pixel; 1 where it is not said. */
  readonly samples?: number;
  readonly photometric: number;
  /** 1 whole numbers, 2 with a sign, 3 floating. */
  readonly format?: 1 | 2 | 3;
  readonly valueAt: (x: number, y: number, sample: number) => number;
  readonly packing?: 'none' | 'lzw' | 'deflate' | 'packBits';
  readonly predictor?: 1 | 2 | 3;
  readonly bigEndian?: boolean;
  readonly rowsPerStrip?: number;
  /** Side of square tiles, instead of strips. */
  readonly tile?: number;
  /** Each sample in blocks of its own. */
  readonly apart?: boolean;
  readonly bitsReversed?: boolean;
  readonly extraSamples?: readonly number[];
  readonly palette?: readonly number[];
  readonly noData?: string;
  readonly gdalMetadata?: string;
  readonly geo?: MadeGeo;
  /** A mask of one bit a pixel, as a second picture. */
  readonly shownAt?: (x: number, y: number) => boolean;
}

export interface MadeGeo {
  readonly pixel: number;
  readonly west: number;
  readonly north: number;
  /** GeoKeys by number, whole numbers only. */
  readonly keys: Readonly<Record<number, number>>;
}

type Entry = readonly [tag: number, type: number, values: readonly number[] | string];
const packings = { none: 1, lzw: 5, deflate: 8, packBits: 32773 } as const;
const sizes: Readonly<Record<number, number>> = { 2: 1, 3: 2, 4: 4, 12: 8 };

export function madeTiff(made: MadeTiff): Buffer {
  const endian = made.bigEndian ? 'BE' : 'LE';
  const out: Buffer[] = [Buffer.alloc(8)];
  let length = 8;
  const append = (bytes: Buffer): number => {
    const even = bytes.length % 2 === 0 ? bytes : Buffer.concat([bytes, Buffer.alloc(1)]);
    out.push(even);
    length += even.length;
    return length - even.length;
  };
  const first = writePicture(made, append);
  const pictures = [first];
  if (made.shownAt) {
    const { shownAt } = made;
    const mask = { width: made.width, height: made.height, bits: 1, photometric: 4, packing: 'deflate' } as const;
    const entries = writePicture(
      { ...mask, bigEndian: made.bigEndian ?? false, valueAt: (x, y) => (shownAt(x, y) ? 1 : 0) },
      append,
    );
    pictures.push([[254, 4, [4]], ...entries]);
  }
  const linkAt: { in: Buffer; at: number }[] = [{ in: out[0]!, at: 4 }];
  for (const entries of pictures) {
    const sorted = [...entries].sort(([a], [b]) => a - b);
    const directory = Buffer.alloc(2 + 12 * sorted.length + 4);
    directory[`writeUInt16${endian}`](sorted.length, 0);
    for (const [i, [tag, type, values]] of sorted.entries()) {
      const content = contentOf(type, values, endian);
      const at = 2 + 12 * i;
      directory[`writeUInt16${endian}`](tag, at);
      directory[`writeUInt16${endian}`](type, at + 2);
      directory[`writeUInt32${endian}`](content.length / sizes[type]!, at + 4);
      if (content.length <= 4) content.copy(directory, at + 8);
      else directory[`writeUInt32${endian}`](append(content), at + 8);
    }
    const { in: link, at } = linkAt.at(-1)!;
    link[`writeUInt32${endian}`](length, at);
    append(directory);
    linkAt.push({ in: directory, at: directory.length - 4 });
  }
  out[0]!.write(made.bigEndian ? 'MM' : 'II', 'latin1');
  out[0]![`writeUInt16${endian}`](42, 2);
  return Buffer.concat(out);
}

function contentOf(type: number, values: readonly number[] | string, endian: 'LE' | 'BE'): Buffer {
  if (typeof values === 'string') return Buffer.from(`${values}\0`, 'latin1');
  const content = Buffer.alloc(values.length * sizes[type]!);
  for (const [i, value] of values.entries()) {
    if (type === 3) content[`writeUInt16${endian}`](value, 2 * i);
    else if (type === 4) content[`writeUInt32${endian}`](value, 4 * i);
    else content[`writeDouble${endian}`](value, 8 * i);
  }
  return content;
}

function writePicture(made: MadeTiff, append: (bytes: Buffer) => number): Entry[] {
  const { width, height, bits, photometric, tile, palette, extraSamples, noData, gdalMetadata, geo } = made;
  const { samples = 1, format = 1, packing = 'none', predictor = 1, rowsPerStrip = height, apart = false } = made;
  const [blockWidth, blockHeight] = tile ? [tile, tile] : [width, rowsPerStrip];
  const [offsets, counts]: [number[], number[]] = [[], []];
  for (const sample of apart ? Array.from({ length: samples }, (_, i) => i) : [null]) {
    for (let top = 0; top < height; top += blockHeight) {
      for (let left = 0; left < width; left += blockWidth) {
        const rows = tile ? tile : Math.min(blockHeight, height - top);
        const bytes = packed(blockBytes(made, left, top, blockWidth, rows, sample), packing);
        const written = made.bitsReversed ? Buffer.from(bytes.map(turned)) : bytes;
        offsets.push(append(written));
        counts.push(written.length);
      }
    }
  }
  const entries: Entry[] = [
    [256, 4, [width]],
    [257, 4, [height]],
    [258, 3, Array<number>(samples).fill(bits)],
    [259, 3, [packings[packing]]],
    [262, 3, [photometric]],
    [277, 3, [samples]],
    [284, 3, [apart ? 2 : 1]],
    [339, 3, Array<number>(samples).fill(format)],
    [tile ? 324 : 273, 4, offsets],
    [tile ? 325 : 279, 4, counts],
  ];
  if (tile) entries.push([322, 3, [tile]], [323, 3, [tile]]);
  else entries.push([278, 4, [rowsPerStrip]]);
  if (predictor !== 1) entries.push([317, 3, [predictor]]);
  if (made.bitsReversed) entries.push([266, 3, [2]]);
  if (extraSamples) entries.push([338, 3, extraSamples]);
  if (palette) entries.push([320, 3, palette]);
  if (noData !== undefined) entries.push([42113, 2, noData]);
  if (gdalMetadata !== undefined) entries.push([42112, 2, gdalMetadata]);
  if (geo) {
    const keys = Object.entries(geo.keys).flatMap(([key, value]) => [Number(key), 0, 1, value]);
    entries.push([33550, 12, [geo.pixel, geo.pixel, 0]], [33922, 12, [0, 0, 0, geo.west, geo.north, 0]]);
    entries.push([34735, 3, [1, 1, 0, keys.length / 4, ...keys]]);
  }
  return entries;
}

/** The bytes of one block before they are packed, with what a predictor makes of them. */
function blockBytes(
  made: MadeTiff,
  left: number,
  top: number,
  blockWidth: number,
  rows: number,
  sample: number | null,
): Buffer {
  const { width, height, bits, samples = 1, format = 1, predictor = 1, bigEndian = false } = made;
  const together = sample === null ? samples : 1;
  const lines: Buffer[] = [];
  for (let y = 0; y < rows; y++) {
    const values: number[] = [];
    for (let x = 0; x < blockWidth; x++) {
      for (let i = 0; i < together; i++) {
        const inside = left + x < width && top + y < height;
        values.push(inside ? made.valueAt(left + x, top + y, sample ?? i) : 0);
      }
    }
    if (predictor === 2) {
      for (let i = values.length - 1; i >= together; i--) values[i] = (values[i]! - values[i - together]!) % 2 ** bits;
    }
    const line = lineOf(values, bits, format, bigEndian || predictor === 3);
    lines.push(predictor === 3 ? floatingDifferences(line, bits / 8, together) : line);
  }
  return Buffer.concat(lines);
}

function lineOf(values: readonly number[], bits: number, format: number, bigEndian: boolean): Buffer {
  if (bits >= 16) {
    const line = Buffer.alloc((values.length * bits) / 8);
    const view = new DataView(line.buffer, line.byteOffset, line.length);
    for (const [i, value] of values.entries()) {
      if (format === 3 && bits === 32) view.setFloat32(4 * i, value, !bigEndian);
      else if (bits === 64) view.setFloat64(8 * i, value, !bigEndian);
      else if (bits === 16) view.setInt16(2 * i, value, !bigEndian);
      else view.setInt32(4 * i, value, !bigEndian);
    }
    return line;
  }
  const line = Buffer.alloc(Math.ceil((values.length * bits) / 8));
  for (const [i, value] of values.entries()) {
    for (let bit = 0; bit < bits; bit++) {
      const at = i * bits + bit;
      if ((value >> (bits - 1 - bit)) & 1) line[at >> 3]! |= 128 >> (at & 7);
    }
  }
  return line;
}

function floatingDifferences(line: Buffer, bytes: number, together: number): Buffer {
  const count = line.length / bytes;
  const apart = Buffer.alloc(line.length);
  for (let i = 0; i < count; i++) {
    for (let byte = 0; byte < bytes; byte++) apart[byte * count + i] = line[i * bytes + byte]!;
  }
  for (let i = apart.length - 1; i >= together; i--) apart[i] = apart[i]! - apart[i - together]!;
  return apart;
}

function turned(byte: number): number {
  return Number.parseInt(byte.toString(2).padStart(8, '0').split('').reverse().join(''), 2);
}

function packed(bytes: Buffer, packing: NonNullable<MadeTiff['packing']>): Buffer {
  if (packing === 'deflate') return deflateSync(bytes);
  if (packing === 'lzw') return lzw(bytes);
  return packing === 'packBits' ? packBits(bytes) : bytes;
}

function packBits(bytes: Buffer): Buffer {
  const out: number[] = [];
  for (let at = 0; at < bytes.length; ) {
    let run = 1;
    while (run < 128 && bytes[at + run] === bytes[at]) run++;
    if (run > 1) out.push(257 - run, bytes[at]!);
    else out.push(0, bytes[at]!);
    at += run;
  }
  return Buffer.from(out);
}

/** As TIFF 6.0, section 13, describes it. */
function lzw(bytes: Buffer): Buffer {
  const out: number[] = [];
  let [held, heldBits, bits] = [0, 0, 9];
  const put = (code: number) => {
    held = (held << bits) | code;
    heldBits += bits;
    while (heldBits >= 8) {
      heldBits -= 8;
      out.push((held >> heldBits) & 255);
      held &= (1 << heldBits) - 1;
    }
  };
  let table = new Map<string, number>();
  const clear = () => {
    put(256);
    bits = 9;
    table = new Map(Array.from({ length: 256 }, (_, i) => [String.fromCharCode(i), i]));
  };
  clear();
  let [next, word] = [258, ''];
  for (const byte of bytes) {
    const longer = word + String.fromCharCode(byte);
    if (table.has(longer)) {
      word = longer;
      continue;
    }
    put(table.get(word)!);
    table.set(longer, next++);
    if (next > (1 << bits) - 1) bits++;
    if (next === 4095) {
      clear();
      next = 258;
    }
    word = String.fromCharCode(byte);
  }
  if (word !== '') put(table.get(word)!);
  next++;
  if (next > (1 << bits) - 1 && bits < 12) bits++;
  put(257);
  if (heldBits > 0) out.push((held << (8 - heldBits)) & 255);
  return Buffer.from(out);
}
