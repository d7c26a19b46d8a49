import { mkdirSync, renameSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';

/**
 * Writes a small file of the app's own, whole or not at all. Such a file is a convenience: where it can't be written
 * (a full disk, a read-only home) it stays as it was, and the work on a project goes on.
 */
export function writeConfig(path: string, value: unknown): void {
  try {
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(`${path}.part`, `${JSON.stringify(value, null, 2)}\n`);
    renameSync(`${path}.part`, path);
  } catch {
    // As said above.
  }
}
