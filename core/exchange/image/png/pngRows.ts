import { filterStep, type PngHeader } from './pngHeader.ts';

/** Thrown where the data are damaged. */
export class PngDamaged extends Error {}

/** Takes a row's filter off in place; `before` is the row above as it came out (zeros above the first). */
export function unfilter(filter: number, row: Uint8Array, before: Uint8Array, header: PngHeader): void {
  const step = filterStep(header);
  const { length } = row;
  switch (filter) {
    case 0:
      return;
    case 1:
      for (let i = step; i < length; i++) row[i] = row[i]! + row[i - step]!;
      return;
    case 2:
      for (let i = 0; i < length; i++) row[i] = row[i]! + before[i]!;
      return;
    case 3:
      for (let i = 0; i < length; i++) row[i] = row[i]! + (((i < step ? 0 : row[i - step]!) + before[i]!) >> 1);
      return;
    case 4:
      for (let i = 0; i < length; i++) {
        const left = i < step ? 0 : row[i - step]!;
        row[i] = row[i]! + paeth(left, before[i]!, i < step ? 0 : before[i - step]!);
      }
      return;
    default:
      throw new PngDamaged();
  }
}

function paeth(left: number, up: number, upLeft: number): number {
  const [byLeft, byUp, byUpLeft] = [Math.abs(up - upLeft), Math.abs(left - upLeft), Math.abs(left + up - 2 * upLeft)];
  if (byLeft <= byUp && byLeft <= byUpLeft) return left;
  return byUp <= byUpLeft ? up : upLeft;
}

export interface PngColours {
  /** Three bytes a colour. */
  readonly palette: Uint8Array | null;
  /** The tRNS chunk. */
  readonly transparency: Uint8Array | null;
}

/** Writes one row as red, green, blue, alpha, a byte each, into `rgba` from `at` on. Sixteen bits lose their lower eight. */
export function rowToRgba(
  row: Uint8Array,
  header: PngHeader,
  colours: PngColours,
  rgba: Uint8ClampedArray,
  at: number,
): void {
  const { widthPx, bitDepth, colourType } = header;
  const bytesEach = bitDepth === 16 ? 2 : 1;
  for (let x = 0, to = at; x < widthPx; x++, to += 4) {
    if (colourType === 3) {
      const index = packed(row, x, bitDepth);
      const from = 3 * index;
      if (!colours.palette || from + 2 >= colours.palette.length) throw new PngDamaged();
      rgba[to] = colours.palette[from]!;
      rgba[to + 1] = colours.palette[from + 1]!;
      rgba[to + 2] = colours.palette[from + 2]!;
      rgba[to + 3] = colours.transparency?.[index] ?? 255;
    } else if (colourType === 0 || colourType === 4) {
      const stride = bytesEach * (colourType === 4 ? 2 : 1);
      const raw = bitDepth < 8 ? packed(row, x, bitDepth) : row[x * stride]!;
      const grey = bitDepth < 8 ? (raw * 255) / (2 ** bitDepth - 1) : raw;
      rgba[to] = grey;
      rgba[to + 1] = grey;
      rgba[to + 2] = grey;
      rgba[to + 3] = colourType === 4 ? row[x * stride + bytesEach]! : isClear(colours, row, x, raw, header) ? 0 : 255;
    } else {
      const stride = bytesEach * (colourType === 6 ? 4 : 3);
      const from = x * stride;
      rgba[to] = row[from]!;
      rgba[to + 1] = row[from + bytesEach]!;
      rgba[to + 2] = row[from + 2 * bytesEach]!;
      rgba[to + 3] = colourType === 6 ? row[from + 3 * bytesEach]! : isClear(colours, row, from, 0, header) ? 0 : 255;
    }
  }
}

/** A sample of fewer than 8 bits. */
function packed(row: Uint8Array, x: number, bitDepth: number): number {
  if (bitDepth === 8) return row[x]!;
  const bit = x * bitDepth;
  return (row[bit >> 3]! >> (8 - bitDepth - (bit & 7))) & ((1 << bitDepth) - 1);
}

/** Whether this is the one colour that the tRNS chunk makes clear. */
function isClear({ transparency }: PngColours, row: Uint8Array, at: number, raw: number, header: PngHeader): boolean {
  if (!transparency) return false;
  const { colourType, bitDepth } = header;
  if (colourType === 0) {
    const wanted = (transparency[0]! << 8) | transparency[1]!;
    return (bitDepth === 16 ? (row[2 * at]! << 8) | row[2 * at + 1]! : raw) === wanted;
  }
  const bytesEach = bitDepth === 16 ? 2 : 1;
  for (let channel = 0; channel < 3; channel++) {
    const from = at + channel * bytesEach;
    const value = bytesEach === 2 ? (row[from]! << 8) | row[from + 1]! : row[from]!;
    if (value !== ((transparency[2 * channel]! << 8) | transparency[2 * channel + 1]!)) return false;
  }
  return true;
}
