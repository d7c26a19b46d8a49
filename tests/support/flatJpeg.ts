/**
 * A baseline JPEG of flat 8 by 8 blocks, written without an encoder's help, so that huge ones are made in a moment and
 * every block's colour is known. Tables: ITU-T T.81, annex K; quantisation 8 throughout, so that a first coefficient is
 * the block's level less 128.
 */

const dcCounts = [0, 1, 5, 1, 1, 1, 1, 1, 1, 0, 0, 0, 0, 0, 0, 0];
const dcSymbols = [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11];
/** One code for "nothing more" and one for a coefficient that is never written. */
const acCounts = [0, 2, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0];
const acSymbols = [0x00, 0x01];
const endOfBlock = { code: 0, length: 2 };

const dcCodes = (() => {
  const codes: { code: number; length: number }[] = [];
  let code = 0;
  let next = 0;
  for (let length = 1; length <= 16; length++) {
    for (let i = 0; i < dcCounts[length - 1]!; i++) codes[dcSymbols[next++]!] = { code: code++, length };
    code <<= 1;
  }
  return codes;
})();

export interface FlatJpegOptions {
  readonly widthPx: number;
  readonly heightPx: number;
  /** Luminance and the two colour differences of a block, 0 to 255 each. */
  readonly levelsAt: (column: number, row: number) => readonly [number, number, number];
  /** Blocks of luminance to one of colour, across and down. */
  readonly sampling?: readonly [1 | 2, 1 | 2];
  /** Units between two restart markers; 0: none. */
  readonly restartUnits?: number;
}

export function flatJpeg({
  widthPx,
  heightPx,
  levelsAt,
  sampling = [1, 1],
  restartUnits = 0,
}: FlatJpegOptions): Buffer {
  const [across, down] = sampling;
  let out = Buffer.alloc(1 << 20);
  let length = 0;
  const byte = (value: number) => {
    if (length === out.length) out = Buffer.concat([out, Buffer.alloc(out.length)]);
    out[length++] = value;
  };
  const bytes = (...values: number[]) => values.forEach(byte);
  const two = (value: number) => [value >> 8, value & 255] as const;

  bytes(0xff, 0xd8);
  bytes(0xff, 0xdb, ...two(67), 0, ...Array.from({ length: 64 }, () => 8));
  bytes(0xff, 0xc0, ...two(17), 8, ...two(heightPx), ...two(widthPx), 3);
  bytes(1, (across << 4) | down, 0, 2, 0x11, 0, 3, 0x11, 0);
  bytes(0xff, 0xc4, ...two(19 + dcSymbols.length), 0x00, ...dcCounts, ...dcSymbols);
  bytes(0xff, 0xc4, ...two(19 + acSymbols.length), 0x10, ...acCounts, ...acSymbols);
  if (restartUnits > 0) bytes(0xff, 0xdd, ...two(4), ...two(restartUnits));
  bytes(0xff, 0xda, ...two(12), 3, 1, 0x00, 2, 0x00, 3, 0x00, 0, 63, 0);

  let bits = 0;
  let count = 0;
  const put = (value: number, size: number) => {
    bits = (bits << size) | value;
    count += size;
    while (count >= 8) {
      count -= 8;
      const full = (bits >>> count) & 255;
      byte(full);
      if (full === 255) byte(0);
    }
  };
  const flush = () => {
    if (count > 0) put((1 << (8 - count)) - 1, 8 - count);
  };
  const before = [0, 0, 0];
  const block = (component: number, level: number) => {
    const difference = level - 128 - before[component]!;
    before[component] = level - 128;
    const size = 32 - Math.clz32(Math.abs(difference));
    put(dcCodes[size]!.code, dcCodes[size]!.length);
    if (size > 0) put(difference < 0 ? difference + (1 << size) - 1 : difference, size);
    put(endOfBlock.code, endOfBlock.length);
  };

  const [unitsAcross, unitsDown] = [Math.ceil(widthPx / (8 * across)), Math.ceil(heightPx / (8 * down))];
  for (let unit = 0; unit < unitsAcross * unitsDown; unit++) {
    if (restartUnits > 0 && unit > 0 && unit % restartUnits === 0) {
      flush();
      bytes(0xff, 0xd0 + ((unit / restartUnits - 1) % 8));
      before.fill(0);
    }
    const [column, row] = [(unit % unitsAcross) * across, Math.floor(unit / unitsAcross) * down];
    for (let y = 0; y < down; y++) for (let x = 0; x < across; x++) block(0, levelsAt(column + x, row + y)[0]);
    const [, blue, red] = levelsAt(column, row);
    block(1, blue);
    block(2, red);
  }
  flush();
  bytes(0xff, 0xd9);
  return out.subarray(0, length);
}
