import { largestOf } from '../../../model/extremes.ts';
import { type Message, message } from '../../../words/message.ts';

/** The parts of a JPEG file (ITU-T T.81) that are needed to cut it in strips without decoding it to pixels. */
export interface JpegFile {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly components: readonly JpegComponent[];
  /** Pixels of one minimum coded unit. */
  readonly unitWidthPx: number;
  readonly unitHeightPx: number;
  /** Minimum coded units between two restart markers; 0: none. */
  readonly restartUnits: number;
  readonly dcTables: ReadonlyMap<number, HuffmanTable>;
  readonly acTables: ReadonlyMap<number, HuffmanTable>;
  /** Segments that every strip needs as they are: quantisation, colour transform, colour profile. */
  readonly kept: readonly Uint8Array[];
  /** Where the entropy-coded data begin. */
  readonly dataAt: number;
}

export interface JpegComponent {
  readonly id: number;
  readonly across: number;
  readonly down: number;
  readonly quantisation: number;
  readonly dc: number;
  readonly ac: number;
}

/** A Huffman table as it stands in the file, and unrolled: what any 16 bits begin with. */
export interface HuffmanTable {
  readonly counts: Uint8Array;
  readonly symbols: Uint8Array;
  /** Length of the code that the 16 bits begin with; 0: none. */
  readonly lengthOf: Uint8Array;
  readonly symbolOf: Uint8Array;
}

export type JpegRead =
  | { readonly jpeg: JpegFile; readonly size: JpegSize; readonly whyNot: null }
  /** Not to be cut in strips; the size is given where the header could be read. */
  | { readonly jpeg: null; readonly size: JpegSize | null; readonly whyNot: Message };

export interface JpegSize {
  readonly widthPx: number;
  readonly heightPx: number;
}

const marker = {
  soi: 0xd8,
  eoi: 0xd9,
  sos: 0xda,
  dqt: 0xdb,
  dri: 0xdd,
  dht: 0xc4,
  app0: 0xe0,
  app2: 0xe2,
  app14: 0xee,
};

export function readJpeg(bytes: Uint8Array): JpegRead {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const dcTables = new Map<number, HuffmanTable>();
  const acTables = new Map<number, HuffmanTable>();
  const kept: Uint8Array[] = [];
  let frame: { size: JpegSize; parts: Omit<JpegComponent, 'dc' | 'ac'>[]; why: Message | null } | null = null;
  let restartUnits = 0;
  const not = (whyNot: Message): JpegRead => ({ jpeg: null, size: frame?.size ?? null, whyNot });

  if (bytes.length < 4 || view.getUint16(0) !== 0xffd8) return not(message('exchange.pixels.noJpeg'));
  for (let at = 2; at + 4 <= bytes.length; ) {
    if (bytes[at] !== 0xff) return not(message('exchange.pixels.damagedHeader'));
    const type = bytes[at + 1]!;
    if (type === 0xff) {
      at += 1;
      continue;
    }
    const length = view.getUint16(at + 2);
    const end = at + 2 + length;
    if (length < 2 || end > bytes.length) return not(message('exchange.pixels.headerBreaksOff'));
    const segment = bytes.subarray(at + 4, end);
    if (type === marker.dqt || type === marker.app14 || type === marker.app2) kept.push(bytes.subarray(at, end));
    else if (type === marker.dri) restartUnits = view.getUint16(at + 4);
    else if (type === marker.dht) {
      if (!readTables(segment, dcTables, acTables)) return not(message('exchange.pixels.damagedTables'));
    } else if (type >= 0xc0 && type <= 0xcf && type !== 0xc8 && type !== 0xcc) {
      frame = readFrame(type, segment);
      if (!frame) return not(message('exchange.pixels.damagedHeader'));
    } else if (type === marker.sos) {
      if (!frame) return not(message('exchange.pixels.noSize'));
      if (frame.why) return not(frame.why);
      const components = componentsOf(segment, frame.parts);
      if (!components) return not(message('exchange.pixels.coloursApart'));
      if (!components.every(({ dc, ac }) => dcTables.has(dc) && acTables.has(ac)))
        return not(message('exchange.pixels.tablesMissing'));
      // A single colour is never interleaved: its unit is one block whatever the factors say.
      const single = components.length === 1;
      const shaped = single ? components.map((each) => ({ ...each, across: 1, down: 1 })) : components;
      return {
        jpeg: {
          ...frame.size,
          components: shaped,
          unitWidthPx: 8 * largestOf(shaped.map(({ across }) => across)),
          unitHeightPx: 8 * largestOf(shaped.map(({ down }) => down)),
          restartUnits,
          dcTables,
          acTables,
          kept,
          dataAt: end,
        },
        size: frame.size,
        whyNot: null,
      };
    }
    at = end;
  }
  return not(message('exchange.pixels.headerBreaksOff'));
}

function readFrame(type: number, segment: Uint8Array) {
  if (segment.length < 6) return null;
  const size = { heightPx: (segment[1]! << 8) | segment[2]!, widthPx: (segment[3]! << 8) | segment[4]! };
  const count = segment[5]!;
  if (segment.length < 6 + 3 * count || count === 0) return null;
  const parts = Array.from({ length: count }, (_, i) => {
    const [id, factors, quantisation] = segment.subarray(6 + 3 * i, 9 + 3 * i) as unknown as [number, number, number];
    return { id, across: factors >> 4, down: factors & 15, quantisation };
  });
  if (parts.some(({ across, down }) => across < 1 || across > 4 || down < 1 || down > 4)) return null;
  return { size, parts, why: whyNotFrame(type, segment[0]!, size) };
}

function whyNotFrame(type: number, precision: number, { widthPx, heightPx }: JpegSize): Message | null {
  if (widthPx === 0 || heightPx === 0) return message('exchange.pixels.noSizeInHeader');
  if (type === 0xc2 || type === 0xc6) return message('exchange.pixels.progressive');
  if (type !== 0xc0 && type !== 0xc1) return message('exchange.pixels.rare');
  return precision === 8 ? null : message('exchange.pixels.moreThan8Bits');
}

function componentsOf(segment: Uint8Array, parts: readonly Omit<JpegComponent, 'dc' | 'ac'>[]): JpegComponent[] | null {
  if (segment[0] !== parts.length || segment.length < 1 + 2 * parts.length) return null;
  return parts.map((part, i) => ({ ...part, dc: segment[2 + 2 * i]! >> 4, ac: segment[2 + 2 * i]! & 15 }));
}

function readTables(
  segment: Uint8Array,
  dcTables: Map<number, HuffmanTable>,
  acTables: Map<number, HuffmanTable>,
): boolean {
  for (let at = 0; at < segment.length; ) {
    const counts = segment.slice(at + 1, at + 17);
    const total = counts.reduce((sum, count) => sum + count, 0);
    const symbols = segment.slice(at + 17, at + 17 + total);
    const table = counts.length === 16 && symbols.length === total ? unrolled(counts, symbols) : null;
    if (!table) return false;
    (segment[at]! >> 4 === 0 ? dcTables : acTables).set(segment[at]! & 15, table);
    at += 17 + total;
  }
  return true;
}

/** The table for a list of code counts by length (T.81, annex C); null where they are no Huffman code. */
export function unrolled(counts: Uint8Array, symbols: Uint8Array): HuffmanTable | null {
  const lengthOf = new Uint8Array(65_536);
  const symbolOf = new Uint8Array(65_536);
  let code = 0;
  let next = 0;
  for (let length = 1; length <= 16; length++) {
    for (let i = 0; i < counts[length - 1]!; i++) {
      const from = code << (16 - length);
      const to = (code + 1) << (16 - length);
      if (to > 65_536) return null;
      lengthOf.fill(length, from, to);
      symbolOf.fill(symbols[next]!, from, to);
      next += 1;
      code += 1;
    }
    code <<= 1;
  }
  return { counts, symbols, lengthOf, symbolOf };
}
