import { Inflate } from 'fflate';
import { message } from '../../words/message.ts';
import { FileFault } from '../fault.ts';
import { decodeText } from '../text/decodeText.ts';

/**
 * Packed (zip) files, by PKWARE's APPNOTE 6.3. Names in an archive are only looked at, never used as paths. What an
 * archive says of its sizes is not believed: unpacking stops as soon as it has given more than it may.
 */

/** A fault of the archive: a sentence about it. */
export class ZipFault extends FileFault {}

export interface ZipEntry {
  /** Without its folders. */
  readonly name: string;
  /** As it stands in the archive. */
  readonly path: string;
  readonly method: number;
  readonly encrypted: boolean;
  readonly headerAt: number;
  readonly packedBytes: number;
}

const most = { entries: 10_000, commentBytes: 65_535, unpackedBytes: 192 * 1024 * 1024 };
const signatures = { local: 0x04034b50, central: 0x02014b50, end: 0x06054b50 } as const;
const chunkBytes = 64 * 1024;

export function isZip(bytes: Uint8Array): boolean {
  return bytes[0] === 0x50 && bytes[1] === 0x4b && bytes[2] === 3 && bytes[3] === 4;
}

export interface Archive {
  readonly entries: readonly ZipEntry[];
  /** The bytes of one of its files. All that is unpacked together is bounded. Throws a `ZipFault`. */
  readonly unpack: (entry: ZipEntry) => Uint8Array;
}

/** Opens an archive; nothing is unpacked yet. Throws a `ZipFault`. */
export function openZip(bytes: Uint8Array): Archive {
  let leftBytes = most.unpackedBytes;
  return {
    entries: listZip(bytes),
    unpack: (entry) => {
      const content = unpack(bytes, entry, leftBytes);
      leftBytes -= content.length;
      return content;
    },
  };
}

/** The files in an archive, folders left out. */
function listZip(bytes: Uint8Array): ZipEntry[] {
  const view = viewOf(bytes);
  const end = endRecord(view);
  const count = view.getUint16(end + 10, true);
  if (count > most.entries) {
    throw new ZipFault(message('exchange.zip.tooManyFiles', { files: count, most: most.entries }));
  }
  let at = view.getUint32(end + 16, true);
  if (at === 0xffffffff) throw new ZipFault(message('exchange.zip.zip64'));
  const entries: ZipEntry[] = [];
  for (let i = 0; i < count; i++) {
    if (at + 46 > bytes.length || view.getUint32(at, true) !== signatures.central) throw damaged();
    const flags = view.getUint16(at + 8, true);
    const [nameLength, extraLength, commentLength] = [28, 30, 32].map((offset) => view.getUint16(at + offset, true));
    const path = decodeText(bytes.subarray(at + 46, at + 46 + nameLength!)).text;
    const name = path.split(/[\\/]/).pop()!;
    if (name !== '') {
      entries.push({
        name,
        path,
        method: view.getUint16(at + 10, true),
        encrypted: (flags & 1) === 1,
        headerAt: view.getUint32(at + 42, true),
        packedBytes: view.getUint32(at + 20, true),
      });
    }
    at += 46 + nameLength! + extraLength! + commentLength!;
  }
  return entries;
}

function unpack(bytes: Uint8Array, entry: ZipEntry, limitBytes: number): Uint8Array {
  const { name, method, headerAt, packedBytes } = entry;
  if (entry.encrypted) throw new ZipFault(message('exchange.zip.locked', { name }));
  const view = viewOf(bytes);
  if (headerAt + 30 > bytes.length || view.getUint32(headerAt, true) !== signatures.local) throw damaged();
  const start = headerAt + 30 + view.getUint16(headerAt + 26, true) + view.getUint16(headerAt + 28, true);
  if (start + packedBytes > bytes.length) throw new ZipFault(message('exchange.zip.notWhole', { name }));
  const packed = bytes.subarray(start, start + packedBytes);
  if (method === 0) {
    if (packed.length > limitBytes) throw tooLarge(name, limitBytes);
    return packed;
  }
  if (method !== 8) throw new ZipFault(message('exchange.zip.unknownPacking', { name, method }));
  return inflated(packed, name, limitBytes);
}

function inflated(packed: Uint8Array, name: string, limitBytes: number): Uint8Array {
  const pieces: Uint8Array[] = [];
  let total = 0;
  let whole = false;
  const inflate = new Inflate((piece, final) => {
    total += piece.length;
    whole ||= final;
    if (total > limitBytes) throw tooLarge(name, limitBytes);
    pieces.push(piece);
  });
  try {
    for (let at = 0; at < packed.length; at += chunkBytes) {
      inflate.push(packed.subarray(at, at + chunkBytes), at + chunkBytes >= packed.length);
    }
  } catch (error) {
    if (error instanceof ZipFault) throw error;
    throw new ZipFault(message('exchange.zip.damagedContents', { name }));
  }
  if (!whole) throw new ZipFault(message('exchange.zip.notWhole', { name }));
  const all = new Uint8Array(total);
  let at = 0;
  for (const piece of pieces) {
    all.set(piece, at);
    at += piece.length;
  }
  return all;
}

function endRecord(view: DataView): number {
  const first = Math.max(0, view.byteLength - 22 - most.commentBytes);
  for (let at = view.byteLength - 22; at >= first; at--) if (view.getUint32(at, true) === signatures.end) return at;
  throw new ZipFault(message('exchange.zip.noList'));
}

function viewOf(bytes: Uint8Array): DataView {
  return new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
}

function damaged(): ZipFault {
  return new ZipFault(message('exchange.zip.damagedList'));
}

function tooLarge(name: string, limitBytes: number): ZipFault {
  const megabytes = Math.floor(limitBytes / 1024 / 1024);
  return new ZipFault(message('exchange.zip.tooLarge', { name, megabytes }));
}
