import { Inflate } from 'fflate';

/**
 * The packings of TIFF blocks (strips and tiles) that are unpacked here. Each stops at `mostBytes`, which is what the
 * block may hold by the tags of its picture: a damaged block, or one made to do harm, takes no more memory than a
 * sound one.
 */

/** Thrown where a block is not as it should be. */
export class TiffDamaged extends Error {
  /** What is wrong, for logs. */
  constructor(
    what:
      | 'breaksOff'
      | 'shortBlock'
      | 'noJpegBlock'
      | 'noSuchCode'
      | 'noZlibStream'
      | 'damagedBytes'
      | 'runBackwards'
      | 'runTooLong'
      | 'noFaxCode',
  ) {
    super(what);
  }
}

const firstCodeBits = 9;
const clearCode = 256;
const endCode = 257;
const mostCodes = 4096;

/** LZW as TIFF has it: codes from the highest bit on, one code early (TIFF 6.0, section 13). */
export function unpackLzw(packed: Uint8Array, mostBytes: number): Uint8Array {
  const out = new Uint8Array(mostBytes);
  // Each code stands for a piece of what was given already: where it begins there, and how long it is.
  const startOf = new Uint32Array(mostCodes);
  const lengthOf = new Uint32Array(mostCodes);
  let [next, bits] = [endCode + 1, firstCodeBits];
  let [held, heldBits, at, filled] = [0, 0, 0, 0];
  let [lastStart, lastLength] = [0, 0];
  while (filled < mostBytes) {
    while (heldBits < bits && at < packed.length) {
      held = ((held << 8) | packed[at++]!) & 0xffffff;
      heldBits += 8;
    }
    if (heldBits < bits) break;
    heldBits -= bits;
    const code = (held >> heldBits) & ((1 << bits) - 1);
    if (code === endCode) break;
    if (code === clearCode) {
      [next, bits, lastLength] = [endCode + 1, firstCodeBits, 0];
      continue;
    }
    const start = filled;
    if (code < clearCode) out[filled++] = code;
    else if (code < next) filled = copyWithin(out, startOf[code]!, lengthOf[code]!, filled);
    else if (code === next && lastLength > 0) filled = copyWithin(out, lastStart, lastLength + 1, filled);
    else throw new TiffDamaged('noSuchCode');
    if (lastLength > 0 && next < mostCodes) {
      // What the last code stood for, and the byte that came after it: they lie there one after the other.
      startOf[next] = lastStart;
      lengthOf[next] = lastLength + 1;
      next += 1;
      if (next + 1 >= 1 << bits && bits < 12) bits += 1;
    }
    [lastStart, lastLength] = [start, filled - start];
  }
  return out.subarray(0, filled);
}

/** Copies byte by byte, as the piece may reach into what is being written; up to the end of `out`. */
function copyWithin(out: Uint8Array, from: number, length: number, to: number): number {
  const end = Math.min(out.length, to + length);
  for (let at = to, source = from; at < end; at++, source++) out[at] = out[source]!;
  return end;
}

/** PackBits (TIFF 6.0, section 9). */
export function unpackBits(packed: Uint8Array, mostBytes: number): Uint8Array {
  const out = new Uint8Array(mostBytes);
  let filled = 0;
  for (let at = 0; at < packed.length && filled < mostBytes; ) {
    const count = packed[at++]!;
    if (count === 128) continue;
    if (count < 128) {
      const end = Math.min(at + count + 1, packed.length, at + mostBytes - filled);
      out.set(packed.subarray(at, end), filled);
      filled += end - at;
      at = end;
    } else {
      const end = Math.min(mostBytes, filled + 257 - count);
      out.fill(packed[at++] ?? 0, filled, end);
      filled = end;
    }
  }
  return out.subarray(0, filled);
}

const chunkBytes = 16 * 1024;
/** A zlib stream begins with two bytes of its own, whose lower half says that Deflate follows. */
const zlibHead = { bytes: 2, deflate: 8 } as const;

/** Deflate in a zlib stream (RFC 1950). What comes after `mostBytes` is left packed; checksums are not looked at. */
export function unpackDeflate(packed: Uint8Array, mostBytes: number): Uint8Array {
  if ((packed[0]! & 15) !== zlibHead.deflate) throw new TiffDamaged('noZlibStream');
  const out = new Uint8Array(mostBytes);
  let filled = 0;
  const inflate = new Inflate((piece) => {
    const taken = piece.subarray(0, mostBytes - filled);
    out.set(taken, filled);
    filled += taken.length;
  });
  try {
    for (let at = zlibHead.bytes; at < packed.length && filled < mostBytes; at += chunkBytes) {
      inflate.push(packed.subarray(at, at + chunkBytes), at + chunkBytes >= packed.length);
    }
  } catch {
    throw new TiffDamaged('damagedBytes');
  }
  return out.subarray(0, filled);
}
