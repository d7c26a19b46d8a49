import { readFileSync } from 'node:fs';
import { join } from 'node:path';

const folder = process.env.REFERENCE_DATA ?? join(import.meta.dirname, 'data');

/**
 * One file of independently computed values, from `tests/reference/data/` or from the folder that the
 * environment variable `REFERENCE_DATA` names (same file names and shapes, other numbers).
 */
export function referenceData<T>(fileName: string): T {
  return JSON.parse(readFileSync(join(folder, fileName), 'utf8')) as T;
}
