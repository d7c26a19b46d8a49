import { closeSync, constants, fstatSync, openSync, readSync } from 'node:fs';
import { applicationId } from './fileFormat.ts';

/** What the first bytes of a file say: SQLite's file header, https://www.sqlite.org/fileformat.html, section 1.3. */
export interface FileHeader {
  /** Whether the file says of itself that it is a project file. */
  readonly isProject: boolean;
  /** The number of the newest migration that it has been through. */
  readonly version: number;
  /** Whether its newest edits may lie in a file beside it (write-ahead logging), which ours never do. */
  readonly isWriteAhead: boolean;
}

/** So long is the header; the first page goes on behind it. */
export const headerBytes = 100;

/** Windows has no pipes with a path like a file's, and so not this. */
const neverWait = constants.O_NONBLOCK ?? 0;

const at = { readVersion: 19, userVersion: 60, applicationId: 68 };

/**
 * Reads a file's header. Looks without SQLite, which would change a foreign file that has a journal beside it. Never call
 * it on a file that this process has open: closing it would drop SQLite's lock. A pipe or a device has none: they are not
 * waited for.
 */
export function readHeader(path: string): FileHeader {
  const bytes = Buffer.alloc(headerBytes);
  const file = openSync(path, constants.O_RDONLY | neverWait);
  try {
    const stats = fstatSync(file);
    if (stats.isFile() || stats.isDirectory()) readSync(file, bytes, 0, bytes.length, 0);
  } finally {
    closeSync(file);
  }
  return {
    isProject: bytes.readUInt32BE(at.applicationId) === applicationId,
    version: bytes.readInt32BE(at.userVersion),
    isWriteAhead: bytes[at.readVersion] === 2,
  };
}
