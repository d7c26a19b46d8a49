/**
 * The quantised coefficients of a baseline JPEG, read bit by bit straight from ITU-T T.81: slow, and independent of the
 * code under test. Blocks in the order in which they are stored, for each component.
 */
export function jpegCoefficients(bytes: Uint8Array): {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly blocks: number[][][];
} {
  const codes = new Map<string, number>();
  const parts: { id: number; across: number; down: number; dc: number; ac: number }[] = [];
  let [widthPx, heightPx, restart, at] = [0, 0, 0, 2];
  for (;;) {
    const type = bytes[at + 1]!;
    const length = (bytes[at + 2]! << 8) | bytes[at + 3]!;
    const segment = bytes.subarray(at + 4, at + 2 + length);
    at += 2 + length;
    if (type === 0xc0) {
      heightPx = (segment[1]! << 8) | segment[2]!;
      widthPx = (segment[3]! << 8) | segment[4]!;
      for (let i = 6; i < segment.length; i += 3) {
        parts.push({ id: segment[i]!, across: segment[i + 1]! >> 4, down: segment[i + 1]! & 15, dc: 0, ac: 0 });
      }
    } else if (type === 0xc4) readTables(segment, codes);
    else if (type === 0xdd) restart = (segment[0]! << 8) | segment[1]!;
    else if (type === 0xda) {
      for (const [i, part] of parts.entries())
        Object.assign(part, { dc: segment[2 + 2 * i]! >> 4, ac: segment[2 + 2 * i]! & 15 });
      break;
    }
  }

  let bit = 0;
  const nextBit = (): number => {
    const value = (bytes[at]! >> (7 - bit)) & 1;
    bit += 1;
    if (bit === 8) {
      bit = 0;
      at += bytes[at] === 0xff ? 2 : 1;
    }
    return value;
  };
  const nextBits = (count: number) => Array.from({ length: count }, nextBit).reduce((value, one) => 2 * value + one, 0);
  const symbol = (table: string): number => {
    for (let code = '', tries = 0; tries < 17; tries++) {
      code += nextBit();
      const found = codes.get(`${table}:${code}`);
      if (found !== undefined) return found;
    }
    throw new Error('No such code.');
  };
  const signed = (size: number) => {
    const value = nextBits(size);
    return size > 0 && value < 2 ** (size - 1) ? value - 2 ** size + 1 : value;
  };

  const before = parts.map(() => 0);
  const blocks: number[][][] = parts.map(() => []);
  const unitWidth = 8 * Math.max(...parts.map(({ across }) => across));
  const unitHeight = 8 * Math.max(...parts.map(({ down }) => down));
  const units = Math.ceil(widthPx / unitWidth) * Math.ceil(heightPx / unitHeight);
  for (let unit = 0; unit < units; unit++) {
    if (restart > 0 && unit > 0 && unit % restart === 0) {
      if (bit > 0) at += bytes[at] === 0xff ? 2 : 1;
      bit = 0;
      at += 2;
      before.fill(0);
    }
    for (const [i, { across, down, dc, ac }] of parts.entries()) {
      for (let block = 0; block < across * down; block++) {
        before[i]! += signed(symbol(`0${dc}`));
        const coefficients = [before[i]!];
        while (coefficients.length < 64) {
          const next = symbol(`1${ac}`);
          if (next === 0) break;
          for (let zeros = next >> 4; zeros > 0; zeros--) coefficients.push(0);
          coefficients.push(signed(next & 15));
        }
        blocks[i]!.push(coefficients);
      }
    }
  }
  return { widthPx, heightPx, blocks };
}

function readTables(segment: Uint8Array, codes: Map<string, number>): void {
  for (let at = 0; at < segment.length; ) {
    const table = `${segment[at]! >> 4}${segment[at]! & 15}`;
    let code = 0;
    let next = at + 17;
    for (let length = 1; length <= 16; length++) {
      for (let i = 0; i < segment[at + length]!; i++) {
        codes.set(`${table}:${code.toString(2).padStart(length, '0')}`, segment[next++]!);
        code += 1;
      }
      code *= 2;
    }
    at = next;
  }
}
