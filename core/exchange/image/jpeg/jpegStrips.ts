import { pushAll } from '../../../model/pushAll.ts';
import { message } from '../../../words/message.ts';
import { FileFault } from '../../fault.ts';
import { BitReader, BitWriter } from './bits.ts';
import { type JpegComponent, type JpegFile, unrolled } from './readJpeg.ts';

/** A band of a picture, as wide as the whole, that is a JPEG picture itself. */
export interface JpegStrip {
  readonly topPx: number;
  readonly heightPx: number;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

/** Thrown where the data are damaged or break off. */
export class JpegDamaged extends FileFault {}

/** Codes for every size of difference that 8-bit pictures have: the luminance table of T.81, annex K.3. */
const dcCounts = Uint8Array.from([0, 1, 5, 1, 1, 1, 1, 1, 1, 0, 0, 0, 0, 0, 0, 0]);
const dcSymbols = Uint8Array.from([0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11]);
const dcCodes = codesOf(dcCounts, dcSymbols);

function codesOf(counts: Uint8Array, symbols: Uint8Array): readonly { code: number; length: number }[] {
  const { lengthOf, symbolOf } = unrolled(counts, symbols)!;
  const codes: { code: number; length: number }[] = [];
  for (let bits = 0; bits < 65_536; bits++) {
    const length = lengthOf[bits]!;
    if (length > 0) codes[symbolOf[bits]!] ??= { code: bits >>> (16 - length), length };
  }
  return codes;
}

/**
 * Cuts a sequential JPEG picture into bands of about `heightPx` without decoding it to pixels: the coded coefficients
 * are copied as they are, and only each block's first one, which is stored as a difference from the block before, is
 * coded anew. So a picture of any size is brought in with the memory of one band, and without loss.
 */
export function* jpegStrips(bytes: Uint8Array, jpeg: JpegFile, heightPx: number): Generator<JpegStrip> {
  const unitsAcross = Math.ceil(jpeg.widthPx / jpeg.unitWidthPx);
  const unitRows = Math.ceil(jpeg.heightPx / jpeg.unitHeightPx);
  const rowsPerStrip = Math.max(1, Math.floor(heightPx / jpeg.unitHeightPx));
  const copier = new UnitCopier(bytes, jpeg);
  for (let row = 0; row < unitRows; row += rowsPerStrip) {
    const rows = Math.min(rowsPerStrip, unitRows - row);
    const topPx = row * jpeg.unitHeightPx;
    const stripPx = Math.min(rows * jpeg.unitHeightPx, jpeg.heightPx - topPx);
    copier.begin(headerOf(jpeg, stripPx));
    for (let unit = 0; unit < rows * unitsAcross; unit++) copier.copyUnit();
    const strip = copier.end();
    if (copier.ranOut) {
      const percent = Math.round((100 * topPx) / jpeg.heightPx);
      throw new JpegDamaged(message('exchange.picture.breaksOff', { percent }));
    }
    yield { topPx, heightPx: stripPx, bytes: strip };
  }
}

class UnitCopier {
  readonly #reader: BitReader;
  readonly #writer = new BitWriter();
  readonly #jpeg: JpegFile;
  readonly #before: Int32Array;
  readonly #written: Int32Array;
  #unitsSinceRestart = 0;

  constructor(bytes: Uint8Array, jpeg: JpegFile) {
    this.#jpeg = jpeg;
    this.#reader = new BitReader(bytes, jpeg.dataAt);
    this.#before = new Int32Array(jpeg.components.length);
    this.#written = new Int32Array(jpeg.components.length);
  }

  get ranOut(): boolean {
    return this.#reader.ranOut;
  }

  begin(header: Uint8Array): void {
    this.#writer.raw(header);
    this.#written.fill(0);
  }

  end(): Uint8Array<ArrayBuffer> {
    this.#writer.flush();
    this.#writer.raw([0xff, 0xd9]);
    return this.#writer.taken();
  }

  copyUnit(): void {
    const { restartUnits, components } = this.#jpeg;
    if (restartUnits > 0 && this.#unitsSinceRestart === restartUnits) {
      if (!this.#reader.restart()) throw new JpegDamaged(message('exchange.picture.damagedInMiddle'));
      this.#before.fill(0);
      this.#unitsSinceRestart = 0;
    }
    this.#unitsSinceRestart += 1;
    for (const [index, component] of components.entries()) {
      for (let block = component.across * component.down; block > 0; block--) {
        this.#copyFirst(index, component);
        this.#copyRest(component);
      }
    }
  }

  #copyFirst(index: number, { dc }: JpegComponent): void {
    const reader = this.#reader;
    const size = this.#symbol(this.#jpeg.dcTables.get(dc)!);
    if (size > 11) throw damagedCode();
    const bits = reader.take(size);
    // T.81, F.2.2.1: a first bit of 0 means a negative difference.
    const difference = size > 0 && bits < 1 << (size - 1) ? bits - (1 << size) + 1 : bits;
    this.#before[index]! += difference;
    this.#writeFirst(this.#before[index]! - this.#written[index]!);
    this.#written[index] = this.#before[index]!;
  }

  #writeFirst(difference: number): void {
    const size = 32 - Math.clz32(Math.abs(difference));
    const code = dcCodes[size];
    if (!code) throw damagedCode();
    this.#writer.bits(code.code, code.length);
    if (size > 0) this.#writer.bits(difference < 0 ? difference + (1 << size) - 1 : difference, size);
  }

  #copyRest({ ac }: JpegComponent): void {
    const reader = this.#reader;
    const writer = this.#writer;
    const { lengthOf, symbolOf } = this.#jpeg.acTables.get(ac)!;
    for (let at = 1; at < 64; at++) {
      const next = reader.peek16();
      const length = lengthOf[next]!;
      if (length === 0) throw damagedCode();
      const symbol = symbolOf[next]!;
      reader.skip(length);
      writer.bits(next >>> (16 - length), length);
      const size = symbol & 15;
      if (size > 0) writer.bits(reader.take(size), size);
      else if (symbol !== 0xf0) return;
      at += symbol >> 4;
    }
  }

  #symbol({ lengthOf, symbolOf }: { lengthOf: Uint8Array; symbolOf: Uint8Array }): number {
    const next = this.#reader.peek16();
    const length = lengthOf[next]!;
    if (length === 0) throw damagedCode();
    this.#reader.skip(length);
    return symbolOf[next]!;
  }
}

function damagedCode(): JpegDamaged {
  return new JpegDamaged(message('exchange.picture.damaged'));
}

/** Everything before the entropy-coded data of a strip. */
function headerOf({ kept, widthPx, components, acTables }: JpegFile, heightPx: number): Uint8Array {
  const parts: number[] = [0xff, 0xd8];
  for (const segment of kept) pushAll(parts, segment);
  pushAll(parts, [
    0xff,
    0xc0,
    ...two(8 + 3 * components.length),
    8,
    ...two(heightPx),
    ...two(widthPx),
    components.length,
  ]);
  for (const { id, across, down, quantisation } of components) parts.push(id, (across << 4) | down, quantisation);
  pushAll(parts, [0xff, 0xc4, ...two(2 + 17 + dcSymbols.length), 0, ...dcCounts, ...dcSymbols]);
  for (const [number, { counts, symbols }] of acTables) {
    pushAll(parts, [0xff, 0xc4, ...two(2 + 17 + symbols.length), 0x10 | number, ...counts, ...symbols]);
  }
  pushAll(parts, [0xff, 0xda, ...two(6 + 2 * components.length), components.length]);
  for (const { id, ac } of components) parts.push(id, ac);
  parts.push(0, 63, 0);
  return Uint8Array.from(parts);
}

function two(value: number): readonly [number, number] {
  return [value >> 8, value & 0xff];
}
