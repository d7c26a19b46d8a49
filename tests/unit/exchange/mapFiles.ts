import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Preview, ReadOptions } from '../../../core/exchange/preview/types.ts';
import { readAny } from '../../../core/exchange/readAny.ts';
import { inEnglish } from '../../support/english.ts';

const folder = join(import.meta.dirname, 'files');

/** Every map file that another program wrote, by name. */
export const mapFileNames = readdirSync(folder).filter((name) => !name.endsWith('.md'));

export function mapFile(name: string): Uint8Array {
  return new Uint8Array(readFileSync(join(folder, name)));
}

export function bytesOf(text: string): Uint8Array {
  return new TextEncoder().encode(text);
}

export function previewOfBytes(name: string, bytes: Uint8Array, options: ReadOptions = {}): Preview {
  const read = readAny(name, bytes, options);
  if (!read.ok) throw new Error(`${inEnglish(read.message)} ${inEnglish(read.remedy)}`);
  return read.preview;
}

export function previewOfFile(name: string, options: ReadOptions = {}): Preview {
  return previewOfBytes(name, mapFile(name), options);
}

/** What is said of a file that can't be read. */
export function refusalOf(name: string, contents: Uint8Array | string, options: ReadOptions = {}): string {
  const read = readAny(name, typeof contents === 'string' ? bytesOf(contents) : contents, options);
  if (read.ok) throw new Error(`${name} was read.`);
  return `${inEnglish(read.message)} ${inEnglish(read.remedy)}`;
}
