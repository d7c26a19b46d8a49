import { headerBytes } from './fileHeader.ts';

/** How many tables, views and the like a file holds, and how many bytes of SQL they are made with. */
export interface SchemaWeight {
  readonly entries: number;
  readonly bytes: number;
}

/** Bytes of a file from a place on; fewer where it ends before. */
export type Read = (at: number, length: number) => Buffer;

const pageKinds = { interior: 0x05, leaf: 0x0d };
const mostPages = 1000;

/**
 * Weighs the table `sqlite_schema` as it lies on the disk: https://www.sqlite.org/fileformat.html, sections 1.6 and 2.6.
 * SQLite reads that table whole before it answers anything, so a stranger's could keep it busy without end: by its size, or
 * by pages that lead to each other over and over. Null where it is no tree of pages, or one past all measure.
 */
export function schemaWeight(read: Read): SchemaWeight | null {
  try {
    return weigh(read);
  } catch (error) {
    // Places beyond the end of a page, or of the file.
    if (error instanceof RangeError) return null;
    throw error;
  }
}

function weigh(read: Read): SchemaWeight | null {
  const pageBytes = pageBytesOf(read(0, headerBytes));
  const seen = new Set<number>();
  const toVisit = [1];
  let [entries, bytes] = [0, 0];
  for (let page = toVisit.pop(); page !== undefined; page = toVisit.pop()) {
    if (page === 0 || seen.has(page) || seen.size >= mostPages) return null;
    seen.add(page);
    const content = read((page - 1) * pageBytes, pageBytes);
    const start = page === 1 ? headerBytes : 0;
    const kind = content.readUInt8(start);
    const cells = content.readUInt16BE(start + 3);
    if (kind === pageKinds.leaf) {
      entries += cells;
      for (let cell = 0; cell < cells; cell++) {
        bytes += varint(content, content.readUInt16BE(start + 8 + 2 * cell));
      }
    } else if (kind === pageKinds.interior) {
      toVisit.push(content.readUInt32BE(start + 8));
      for (let cell = 0; cell < cells; cell++) {
        toVisit.push(content.readUInt32BE(content.readUInt16BE(start + 12 + 2 * cell)));
      }
    } else {
      return null;
    }
  }
  return { entries, bytes };
}

function pageBytesOf(header: Buffer): number {
  const said = header.readUInt16BE(16);
  return said === 1 ? 65_536 : Math.max(512, said);
}

/** SQLite's whole number of 1 to 9 bytes, the highest first; past 2^53 only roughly. */
function varint(bytes: Buffer, at: number): number {
  let value = 0;
  for (let i = 0; i < 8; i++) {
    const byte = bytes.readUInt8(at + i);
    value = value * 128 + (byte & 0x7f);
    if (byte < 0x80) return value;
  }
  return value * 256 + bytes.readUInt8(at + 8);
}
