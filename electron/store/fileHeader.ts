import { closeSync, openSync, readSync } from 'node:fs';
import { applicationId } from './fileFormat.ts';

/** SQLite's file header: https://www.sqlite.org/fileformat.html, section 1.3. */
const header = { lengthBytes: 100, applicationIdAt: 68 };

/**
 * Whether the file says of itself that it is a project file. Looks without SQLite, which would change a foreign file
 * that has a journal beside it. Never call it on a file that this process has open: closing it would drop SQLite's lock.
 */
export function looksLikeProject(path: string): boolean {
  const bytes = Buffer.alloc(header.lengthBytes);
  const file = openSync(path, 'r');
  try {
    readSync(file, bytes, 0, bytes.length, 0);
  } finally {
    closeSync(file);
  }
  return bytes.readUInt32BE(header.applicationIdAt) === applicationId;
}
