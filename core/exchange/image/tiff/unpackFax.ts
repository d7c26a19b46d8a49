import { rowBytes } from './samples.ts';
import { TiffDamaged } from './unpack.ts';

/**
 * Black and white as fax machines pack it: ITU-T T.4 (group 3, along a row or by the row above) and T.6 (group 4), as
 * TIFF 6.0, sections 10 and 11, keeps them. A row is runs of white and black in turn; which of the two is 0 is for the
 * picture's tags to say, and white is written as 0 here.
 */

/** `rows`: group 3 without marks, each row from a byte of its own (TIFF's compression 2). */
export interface FaxPacking {
  readonly way: 'rows' | 'group3' | 'group4';
  /** Of group 3: rows may be packed by the row above them. */
  readonly byRowAbove: boolean;
}

/** Codes of runs of 0 to 63 pixels, then of 64, 128 and so on to 1728: T.4, tables 2 and 3; from memory, agreed with libtiff. */
const whiteRuns = `
  00110101 000111 0111 1000 1011 1100 1110 1111 10011 10100 00111 01000 001000 000011 110100 110101
  101010 101011 0100111 0001100 0001000 0010111 0000011 0000100 0101000 0101011 0010011 0100100
  0011000 00000010 00000011 00011010 00011011 00010010 00010011 00010100 00010101 00010110 00010111
  00101000 00101001 00101010 00101011 00101100 00101101 00000100 00000101 00001010 00001011 01010010
  01010011 01010100 01010101 00100100 00100101 01011000 01011001 01011010 01011011 01001010 01001011
  00110010 00110011 00110100 11011 10010 010111 0110111 00110110 00110111 01100100 01100101 01101000
  01100111 011001100 011001101 011010010 011010011 011010100 011010101 011010110 011010111 011011000
  011011001 011011010 011011011 010011000 010011001 010011010 011000 010011011
`;
const blackRuns = `
  0000110111 010 11 10 011 0011 0010 00011 000101 000100 0000100 0000101 0000111 00000100 00000111
  000011000 0000010111 0000011000 0000001000 00001100111 00001101000 00001101100 00000110111
  00000101000 00000010111 00000011000 000011001010 000011001011 000011001100 000011001101 000001101000
  000001101001 000001101010 000001101011 000011010010 000011010011 000011010100 000011010101
  000011010110 000011010111 000001101100 000001101101 000011011010 000011011011 000001010100
  000001010101 000001010110 000001010111 000001100100 000001100101 000001010010 000001010011
  000000100100 000000110111 000000111000 000000100111 000000101000 000001011000 000001011001
  000000101011 000000101100 000001011010 000001100110 000001100111 0000001111 000011001000
  000011001001 000001011011 000000110011 000000110100 000000110101 0000001101100 0000001101101
  0000001001010 0000001001011 0000001001100 0000001001101 0000001110010 0000001110011 0000001110100
  0000001110101 0000001110110 0000001110111 0000001010010 0000001010011 0000001010100 0000001010101
  0000001011010 0000001011011 0000001100100 0000001100101
`;
/** Of 1792, 1856 and so on to 2560 pixels of either. */
const longRuns = `
  00000001000 00000001100 00000001101 000000010010 000000010011 000000010100 000000010101 000000010110
  000000010111 000000011100 000000011101 000000011110 000000011111
`;

/** Where a run of a row ends beside the row above, by T.4, table 4. */
const modes: Readonly<Record<string, number | 'pass' | 'runs'>> = {
  '0001': 'pass',
  '001': 'runs',
  '1': 0,
  '011': 1,
  '000011': 2,
  '0000011': 3,
  '010': -1,
  '000010': -2,
  '0000010': -3,
};

const mostCodeBits = 13;
/** Eleven zeros: the longest that no code begins with, so that it marks the end of a row. */
const endOfRowZeros = 11;

type Codes<T> = ReadonlyMap<number, T>;

/** A code with a one before it, so that its length counts. */
const keyOf = (code: string) => Number.parseInt(`1${code}`, 2);

function runCodes(written: string): Codes<number> {
  const short = written
    .trim()
    .split(/\s+/)
    .map((code, i): [number, number] => [keyOf(code), i < 64 ? i : (i - 63) * 64]);
  const long = longRuns
    .trim()
    .split(/\s+/)
    .map((code, i): [number, number] => [keyOf(code), 1792 + i * 64]);
  return new Map([...short, ...long]);
}

const runs = [runCodes(whiteRuns), runCodes(blackRuns)] as const;
const modeCodes: Codes<number | 'pass' | 'runs'> = new Map(
  Object.entries(modes).map(([code, mode]) => [keyOf(code), mode]),
);

/** Unpacks a block of one bit a pixel. Rows that it breaks off before are missing; a code that is none is damage. */
export function unpackFax(
  packed: Uint8Array,
  widthPx: number,
  rows: number,
  { way, byRowAbove }: FaxPacking,
): Uint8Array {
  const bits = new Bits(packed);
  const length = rowBytes(widthPx, 1);
  const out = new Uint8Array(length * rows);
  /** Where the colour changes in the row above, and the width as an end. */
  let above: number[] = [widthPx];
  for (let row = 0; row < rows; row++) {
    let flat = way !== 'group4';
    if (way === 'rows') bits.toNextByte();
    else if (way === 'group3') {
      bits.skipEndOfRow();
      if (byRowAbove) flat = bits.next() !== 0;
    }
    if (bits.isAtEnd) return out.subarray(0, row * length);
    const changes = flat ? rowOfRuns(bits, widthPx) : rowByRowAbove(bits, widthPx, above);
    if (changes === null) return out.subarray(0, row * length);
    paintRow(out, row * length, changes, widthPx);
    above = [...realChanges(changes), widthPx];
  }
  return out;
}

/** Places where the colour changes, white first; null where the block ends. */
function rowOfRuns(bits: Bits, widthPx: number): number[] | null {
  const changes: number[] = [];
  for (let [at, colour] = [0, 0]; at < widthPx; colour ^= 1) {
    const run = bits.run(colour);
    if (run === null) return null;
    at = within(at + run, widthPx);
    changes.push(at);
  }
  return changes;
}

function rowByRowAbove(bits: Bits, widthPx: number, above: readonly number[]): number[] | null {
  const changes: number[] = [];
  let [at, colour, beside] = [0, 0, 0];
  while (at < widthPx) {
    const mode = bits.code(modeCodes);
    if (mode === null) return null;
    // The first change above to the other colour that lies past the place; at the very beginning it may lie on it.
    const isBegun = at > 0 || changes.length > 0;
    while (beside > 0 && above[beside - 1]! > at) beside--;
    while (
      beside < above.length - 1 &&
      (above[beside]! < at || (above[beside]! === at && isBegun) || beside % 2 !== colour)
    )
      beside++;
    const first = above[beside] ?? widthPx;
    if (mode === 'pass') at = above[beside + 1] ?? widthPx;
    else if (mode === 'runs') {
      for (const each of [colour, colour ^ 1]) {
        const run = bits.run(each);
        if (run === null) return null;
        at = within(at + run, widthPx);
        changes.push(at);
      }
    } else {
      const to = within(first + mode, widthPx);
      if (to < at) throw new TiffDamaged('runBackwards');
      at = to;
      changes.push(at);
      colour ^= 1;
    }
  }
  return changes;
}

/** Without runs of no pixels, between which nothing changes. */
function realChanges(changes: readonly number[]): number[] {
  const real: number[] = [];
  for (const at of changes) {
    if (real.at(-1) === at) real.pop();
    else real.push(at);
  }
  return real;
}

function within(at: number, widthPx: number): number {
  if (at > widthPx) throw new TiffDamaged('runTooLong');
  return at;
}

/** Sets the bits of every second run. */
function paintRow(out: Uint8Array, from: number, changes: readonly number[], widthPx: number): void {
  for (let i = 0; i < changes.length; i += 2) {
    const end = changes[i + 1] ?? widthPx;
    for (let x = changes[i]!; x < end; x++) out[from + (x >> 3)]! |= 0x80 >> (x & 7);
  }
}

/** Bits from the highest of each byte on. */
class Bits {
  readonly #bytes: Uint8Array;
  #at = 0;

  constructor(bytes: Uint8Array) {
    this.#bytes = bytes;
  }

  get isAtEnd(): boolean {
    return this.#at >= this.#bytes.length * 8;
  }

  /** Past the end they are 0. */
  next(): number {
    const at = this.#at++;
    return ((this.#bytes[at >> 3] ?? 0) >> (7 - (at & 7))) & 1;
  }

  toNextByte(): void {
    this.#at = Math.ceil(this.#at / 8) * 8;
  }

  /** Fill and the mark at the end of a row: zeros and a one. Stays where it is if there is none. */
  skipEndOfRow(): void {
    for (;;) {
      const before = this.#at;
      let zeros = 0;
      while (!this.isAtEnd && this.next() === 0) zeros++;
      if (zeros < endOfRowZeros) {
        this.#at = before;
        return;
      }
    }
  }

  /** What the next code stands for; null at the end of the block. */
  code<T>(codes: Codes<T>): T | null {
    let key = 1;
    for (let length = 1; length <= mostCodeBits; length++) {
      if (this.isAtEnd) return null;
      key = (key << 1) | this.next();
      const found = codes.get(key);
      if (found !== undefined) return found;
    }
    // Twelve zeros and more are no code: the end is marked there, or nothing but fill follows.
    if (key >> (mostCodeBits - endOfRowZeros) === 1 << endOfRowZeros) return null;
    throw new TiffDamaged('noFaxCode');
  }

  /** The length of a run; long ones are written in several codes. */
  run(colour: number): number | null {
    let length = 0;
    for (;;) {
      const part = this.code(runs[colour as 0 | 1]);
      if (part === null) return null;
      length += part;
      if (part < 64) return length;
    }
  }
}
