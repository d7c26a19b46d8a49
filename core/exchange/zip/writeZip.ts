import { strToU8, zipSync } from 'fflate';

/** The date that archives carry: the first that the format knows, so that the same contents give the same bytes. */
const firstDate = '1980-01-01T00:00:00';

export function writeZip(files: readonly { readonly name: string; readonly text: string }[]): Uint8Array {
  const contents = Object.fromEntries(files.map(({ name, text }) => [name, strToU8(text)]));
  return zipSync(contents, { level: 6, mtime: firstDate });
}
