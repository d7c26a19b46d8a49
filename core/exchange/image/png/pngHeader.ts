/** What the header of a PNG picture says (W3C PNG, third edition). */
export interface PngHeader {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly bitDepth: number;
  /** 0 grey, 2 colour, 3 palette, 4 grey with alpha, 6 colour with alpha. */
  readonly colourType: number;
  readonly interlaced: boolean;
}

/** The header from the file's first 33 bytes; null where it is damaged. */
export function readPngHeader(bytes: Uint8Array): PngHeader | null {
  if (bytes.length < 33 || String.fromCharCode(...bytes.subarray(12, 16)) !== 'IHDR') return null;
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const header = {
    widthPx: view.getUint32(16),
    heightPx: view.getUint32(20),
    bitDepth: bytes[24]!,
    colourType: bytes[25]!,
    interlaced: bytes[28] === 1,
  };
  const depths = { 0: [1, 2, 4, 8, 16], 2: [8, 16], 3: [1, 2, 4, 8], 4: [8, 16], 6: [8, 16] }[header.colourType];
  const sound = depths?.includes(header.bitDepth) && header.widthPx > 0 && header.heightPx > 0;
  return sound && bytes[26] === 0 && bytes[27] === 0 ? header : null;
}

const channelsOf: Readonly<Record<number, number>> = { 0: 1, 2: 3, 3: 1, 4: 2, 6: 4 };

/** Bytes of one row without its filter's byte. */
export function rowBytes({ widthPx, bitDepth, colourType }: PngHeader): number {
  return Math.ceil((widthPx * channelsOf[colourType]! * bitDepth) / 8);
}

/** Bytes between a sample and the one left of it, as the filters count them. */
export function filterStep({ bitDepth, colourType }: PngHeader): number {
  return Math.max(1, (channelsOf[colourType]! * bitDepth) >> 3);
}

/** Whether some of it may be seen through, given whether it has a tRNS chunk. */
export function hasAlpha({ colourType }: PngHeader, transparency: Uint8Array | null): boolean {
  return colourType === 4 || colourType === 6 || transparency !== null;
}
