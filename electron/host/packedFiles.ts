import { readdir, readFile, writeFile } from 'node:fs/promises';
import { extname, join } from 'node:path';
import { promisify } from 'node:util';
import { brotliCompress, constants, gzip } from 'node:zlib';

/** How a file of the page may be packed, the best first. */
export const encodings = ['br', 'gzip'] as const;
export type Encoding = (typeof encodings)[number];

/** The packed file lies beside the plain one. */
export const packedEndings: Readonly<Record<Encoding, string>> = { br: '.br', gzip: '.gz' };

/** Fonts and pictures are packed already. */
const texts: ReadonlySet<string> = new Set(['.css', '.html', '.js', '.json', '.svg']);

/** A smaller one goes in one packet of the network as it is. */
const leastBytes = 1400;

/** Packs the text files of the built page as small as they go. */
export async function packFiles(folder: string): Promise<void> {
  const files = await readdir(folder, { recursive: true });
  await Promise.all(files.filter((file) => texts.has(extname(file))).map((file) => packFile(join(folder, file))));
}

async function packFile(path: string): Promise<void> {
  const bytes = await readFile(path);
  if (bytes.length < leastBytes) return;
  const packed = {
    br: await promisify(brotliCompress)(bytes, {
      params: { [constants.BROTLI_PARAM_QUALITY]: 11, [constants.BROTLI_PARAM_SIZE_HINT]: bytes.length },
    }),
    gzip: await promisify(gzip)(bytes, { level: 9 }),
  };
  for (const encoding of encodings) await writeFile(path + packedEndings[encoding], packed[encoding]);
}

/** The packings that a request takes (RFC 9110, 12.5.3), the best first. */
export function encodingsTaken(acceptEncoding: string | undefined): Encoding[] {
  const taken = new Map<string, boolean>();
  for (const part of (acceptEncoding ?? '').toLowerCase().split(',')) {
    const [name = '', ...parameters] = part.split(';').map((text) => text.trim());
    taken.set(name, !parameters.some((parameter) => /^q=0(\.0*)?$/.test(parameter)));
  }
  return encodings.filter((encoding) => taken.get(encoding) ?? taken.get('*') ?? false);
}
