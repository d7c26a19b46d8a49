import { type Message, message } from '../../words/message.ts';

/**
 * The geometries of a .shp file, after "ESRI Shapefile Technical Description", an ESRI white paper, July 1998: the
 * header is 100 bytes, then come records with their length; sizes are big-endian in 16-bit words, contents little-endian.
 */

export interface ShpRecord {
  /** As GeoJSON has it; null: the shape is empty, or of a sort that is not read (`fault`). */
  readonly geometry: { readonly type: string; readonly coordinates: unknown } | null;
  readonly fault: Message | null;
}

export type ShpRead =
  | { readonly ok: true; readonly records: ShpRecord[]; readonly cutShort: boolean }
  | { readonly ok: false; readonly why: Message };

const headerBytes = 100;
const fileCode = 9994;

export function isShp(bytes: Uint8Array): boolean {
  return bytes.length >= headerBytes && viewOf(bytes).getInt32(0) === fileCode;
}

export function readShp(bytes: Uint8Array): ShpRead {
  if (!isShp(bytes)) return { ok: false, why: message('exchange.shp.noShapefile') };
  const view = viewOf(bytes);
  const records: ShpRecord[] = [];
  let at = headerBytes;
  while (at + 12 <= bytes.length) {
    const contentBytes = view.getInt32(at + 4) * 2;
    if (contentBytes < 4) {
      return { ok: false, why: message('exchange.shp.recordLength', { record: records.length + 1 }) };
    }
    if (at + 8 + contentBytes > bytes.length) return { ok: true, records, cutShort: true };
    records.push(readRecord(new DataView(bytes.buffer, bytes.byteOffset + at + 8, contentBytes)));
    at += 8 + contentBytes;
  }
  return { ok: true, records, cutShort: at !== bytes.length };
}

/** Types 1, 3, 5 and 8; 10 more with heights and measures (Z), 20 more with measures (M). */
function readRecord(view: DataView): ShpRecord {
  const type = view.getInt32(0, true);
  if (type === 0) return { geometry: null, fault: null };
  const plain = type >= 21 ? type - 20 : type >= 11 ? type - 10 : type;
  const hasZ = type >= 11 && type <= 18;
  try {
    if (plain === 1) return sound('Point', pointAt(view, hasZ));
    if (plain === 8) return sound('MultiPoint', multiPoint(view, hasZ));
    if (plain === 3 || plain === 5) return sound(plain === 3 ? 'MultiLineString' : 'Polygon', partsAt(view, hasZ));
  } catch (error) {
    if (error instanceof RangeError) return { geometry: null, fault: message('exchange.piece.damagedRecord') };
    throw error;
  }
  const fault = type === 31 ? message('exchange.piece.surface') : message('exchange.piece.shapeType', { type });
  return { geometry: null, fault };
}

function sound(type: string, coordinates: unknown): ShpRecord {
  return { geometry: { type, coordinates }, fault: null };
}

function pointAt(view: DataView, hasZ: boolean): number[] {
  const xy = [view.getFloat64(4, true), view.getFloat64(12, true)];
  return hasZ ? [...xy, view.getFloat64(20, true)] : xy;
}

function multiPoint(view: DataView, hasZ: boolean): number[][] {
  const count = countAt(view, 36, 16);
  const heightsAt = 40 + 16 * count + 16;
  return Array.from({ length: count }, (_, i) => vertex(view, 40, i, hasZ ? heightsAt : null));
}

function partsAt(view: DataView, hasZ: boolean): number[][][] {
  const parts = countAt(view, 36, 4);
  const points = countAt(view, 40, 16);
  const pointsAt = 44 + 4 * parts;
  const heightsAt = hasZ ? pointsAt + 16 * points + 16 : null;
  const starts = Array.from({ length: parts }, (_, i) => view.getInt32(44 + 4 * i, true));
  return starts.map((start, i) => {
    const end = starts[i + 1] ?? points;
    if (start < 0 || end < start || end > points) throw new RangeError('parts out of order');
    return Array.from({ length: end - start }, (_, j) => vertex(view, pointsAt, start + j, heightsAt));
  });
}

/** A count that what follows it has room for. */
function countAt(view: DataView, at: number, bytesEach: number): number {
  const count = view.getInt32(at, true);
  if (count < 0 || count * bytesEach > view.byteLength) throw new RangeError('count too large');
  return count;
}

function vertex(view: DataView, pointsAt: number, index: number, heightsAt: number | null): number[] {
  const at = pointsAt + 16 * index;
  const xy = [view.getFloat64(at, true), view.getFloat64(at + 8, true)];
  return heightsAt === null ? xy : [...xy, view.getFloat64(heightsAt + 8 * index, true)];
}

function viewOf(bytes: Uint8Array): DataView {
  return new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
}
