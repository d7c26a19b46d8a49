import type { RawObject } from '../preview/raw.ts';
import { decodeText } from '../text/decodeText.ts';

/**
 * The table beside a .shp file, in the dBASE III format as the Shapefile paper asks: a header with 32 bytes for each
 * field, then rows of fixed width. Logical and date fields are read as text.
 */
export function readDbf(bytes: Uint8Array, encoding: string | null): RawObject[] | null {
  if (bytes.length < 33) return null;
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const [headerBytes, rowBytes] = [view.getUint16(8, true), view.getUint16(10, true)];
  const fields = fieldsOf(bytes, Math.min(headerBytes, bytes.length));
  if (fields.length === 0 || rowBytes === 0) return null;
  const count = Math.min(view.getUint32(4, true), Math.floor((bytes.length - headerBytes) / rowBytes));
  const rows: RawObject[] = [];
  for (let row = 0; row < count; row++) {
    const at = headerBytes + row * rowBytes;
    rows.push(Object.fromEntries(fields.map((field) => [field.name, cell(bytes, at, field, encoding)])));
  }
  return rows;
}

interface Field {
  readonly name: string;
  readonly type: string;
  /** From the beginning of the row; its first byte tells deleted rows. */
  readonly at: number;
  readonly bytes: number;
}

const endOfFields = 0x0d;

function fieldsOf(bytes: Uint8Array, headerBytes: number): Field[] {
  const fields: Field[] = [];
  let offset = 1;
  for (let at = 32; at + 32 <= headerBytes && bytes[at] !== endOfFields; at += 32) {
    const name = decodeText(bytes.subarray(at, at + 11))
      .text.split('\0', 1)[0]!
      .trim();
    const field = { name, type: String.fromCharCode(bytes[at + 11]!), at: offset, bytes: bytes[at + 16]! };
    fields.push(field);
    offset += field.bytes;
  }
  return fields;
}

function cell(bytes: Uint8Array, rowAt: number, field: Field, encoding: string | null): string | number {
  const start = rowAt + field.at;
  const raw = bytes.subarray(start, start + field.bytes);
  const text = decodeText(raw, encoding).text.replaceAll('\0', '').trim();
  if ((field.type === 'N' || field.type === 'F') && text !== '') {
    const number = Number(text);
    if (Number.isFinite(number)) return number;
  }
  return text;
}
