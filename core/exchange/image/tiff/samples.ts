/**
 * Samples in the blocks of a TIFF. Every machine that this runs on keeps numbers with their lowest byte first, so a
 * block is brought into that order once and then read as it lies.
 */

/** How one sample is written; `format` as in the tag SampleFormat: 1 whole, 2 whole with a sign, 3 floating. */
export interface SampleKind {
  readonly bits: number;
  readonly format: number;
}

/** Whether samples of this kind can be read. */
export function isReadable({ bits, format }: SampleKind): boolean {
  if (format === 1) return (bits >= 1 && bits <= 16) || bits === 32;
  if (format === 2) return bits === 8 || bits === 16 || bits === 32;
  return format === 3 && (bits === 16 || bits === 32 || bits === 64);
}

/** Bytes of one row of a block: a row begins with a byte of its own. */
export function rowBytes(samples: number, bits: number): number {
  return Math.ceil((samples * bits) / 8);
}

export interface BlockShape extends SampleKind {
  /** Samples of a row: its pixels times the samples that lie together for each. */
  readonly rowSamples: number;
  /** Samples that lie together for each pixel. */
  readonly together: number;
  readonly rows: number;
}

/** Brings the bytes of a block, as they were unpacked, into our order and takes a predictor back, in place. */
export function settleBlock(block: Uint8Array, shape: BlockShape, littleEndian: boolean, predictor: number): void {
  if (predictor === 3) {
    undoFloatingPredictor(block, shape);
    return;
  }
  if (!littleEndian) swapBytes(block, shape.bits);
  if (predictor === 2) undoDifferences(block, shape);
}

function swapBytes(block: Uint8Array, bits: number): void {
  const bytes = bits / 8;
  if (bytes !== 2 && bytes !== 4 && bytes !== 8) return;
  for (let at = 0; at + bytes <= block.length; at += bytes) block.subarray(at, at + bytes).reverse();
}

/** Horizontal differencing (TIFF 6.0, section 14), for samples of 8, 16 and 32 bits. */
function undoDifferences(block: Uint8Array, { bits, rowSamples, together, rows }: BlockShape): void {
  const values = bits === 8 ? block : bits === 16 ? as(Uint16Array, block) : as(Uint32Array, block);
  for (let row = 0; row < rows; row++) {
    const end = (row + 1) * rowSamples;
    for (let at = row * rowSamples + together; at < end; at++) values[at] = values[at]! + values[at - together]!;
  }
}

/** Differences of the bytes of floating numbers, which lie byte by byte from the highest on (TIFF Technical Note 3). */
function undoFloatingPredictor(block: Uint8Array, { bits, rowSamples, together, rows }: BlockShape): void {
  const bytes = bits / 8;
  const length = rowSamples * bytes;
  for (let row = 0; row < rows; row++) {
    const line = block.subarray(row * length, (row + 1) * length);
    for (let at = together; at < line.length; at++) line[at] = line[at]! + line[at - together]!;
    const apart = line.slice();
    for (let sample = 0; sample < rowSamples; sample++) {
      for (let byte = 0; byte < bytes; byte++) {
        line[sample * bytes + byte] = apart[(bytes - 1 - byte) * rowSamples + sample]!;
      }
    }
  }
}

type Numbers = ArrayLike<number> & { [index: number]: number };

/** The whole numbers of that many bits that lie in some bytes, which begin at an even place. */
function as<T extends Numbers>(
  Kind: { new (buffer: ArrayBufferLike, from: number, length: number): T; readonly BYTES_PER_ELEMENT: number },
  { buffer, byteOffset, byteLength }: Uint8Array,
): T {
  return new Kind(buffer, byteOffset, Math.floor(byteLength / Kind.BYTES_PER_ELEMENT));
}

/** The samples of one row of a settled block, in the order in which they lie there. */
export function rowOfBlock(
  block: Uint8Array,
  { bits, format, rowSamples }: BlockShape,
  row: number,
): ArrayLike<number> {
  const length = rowBytes(rowSamples, bits);
  const line = block.subarray(row * length, (row + 1) * length);
  if (bits === 8) return format === 2 ? as(Int8Array, line) : line;
  if (bits === 16) return format === 3 ? halves(line) : format === 2 ? as(Int16Array, line) : as(Uint16Array, line);
  if (bits === 32) {
    return format === 3 ? as(Float32Array, line) : format === 2 ? as(Int32Array, line) : as(Uint32Array, line);
  }
  return bits === 64 ? as(Float64Array, line) : unpackedBits(line, bits, rowSamples);
}

/** Numbers of up to 15 bits, one after the other from the highest bit on. */
function unpackedBits(line: Uint8Array, bits: number, count: number): Uint16Array {
  const values = new Uint16Array(count);
  const mask = (1 << bits) - 1;
  for (let i = 0, bit = 0; i < count; i++, bit += bits) {
    const at = bit >> 3;
    const three = (line[at]! << 16) | ((line[at + 1] ?? 0) << 8) | (line[at + 2] ?? 0);
    values[i] = (three >> (24 - bits - (bit & 7))) & mask;
  }
  return values;
}

/** Floating numbers of 16 bits (IEEE 754, binary16). */
function halves(line: Uint8Array): Float32Array {
  return Float32Array.from(as(Uint16Array, line), (half) => {
    const [sign, exponent, fraction] = [half & 0x8000 ? -1 : 1, (half >> 10) & 31, half & 1023];
    if (exponent === 0) return sign * fraction * 2 ** -24;
    if (exponent === 31) return fraction ? Number.NaN : sign * Infinity;
    return sign * (1 + fraction / 1024) * 2 ** (exponent - 15);
  });
}

/** Bytes whose bits lie the other way round (the tag FillOrder 2, as some scanners write). */
export function reversedBits(bytes: Uint8Array): Uint8Array {
  return bytes.map((byte) => reversed[byte]!);
}

const reversed = Uint8Array.from({ length: 256 }, (_, byte) => {
  let turned = 0;
  for (let bit = 0; bit < 8; bit++) if ((byte >> bit) & 1) turned |= 128 >> bit;
  return turned;
});
