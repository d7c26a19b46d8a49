import { createHash } from 'node:crypto';
import { readFile, realpath } from 'node:fs/promises';
import { extname, join, sep } from 'node:path';
import { type Encoding, packedEndings } from './packedFiles.ts';

export interface PageFile {
  readonly bytes: Buffer<ArrayBuffer>;
  readonly mediaType: string;
  /** How the bytes are packed; null: not at all. */
  readonly encoding: Encoding | null;
  /** Its name changes with what is in it, so that whoever has it need never ask again. */
  readonly lasting: boolean;
  /** Entity tag (RFC 9110, 8.8.3): another one means other bytes. */
  readonly tag: string;
}

const mediaTypes: Readonly<Record<string, string>> = {
  '.css': 'text/css; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.woff': 'font/woff',
  '.woff2': 'font/woff2',
};

/** Where the build puts what it names by its contents. */
const lastingPath = /^\/assets\/[^/]+$/;

/**
 * The file of the built page at a URL's path ("/" is the page itself), or null: not there, of no kind that a page
 * has, or not inside `folder`, whatever dots, escapes and links the path is made of. In the first of `encodings` that the
 * build has packed it in.
 */
export async function pageFile(
  folder: string,
  urlPath: string,
  encodings: readonly Encoding[] = [],
): Promise<PageFile | null> {
  const wanted = decoded(urlPath === '/' ? '/index.html' : urlPath);
  const mediaType = wanted === null ? undefined : mediaTypes[extname(wanted)];
  if (wanted === null || mediaType === undefined) return null;
  const lasting = lastingPath.test(wanted);
  for (const encoding of [...encodings, null]) {
    const ending = encoding === null ? '' : packedEndings[encoding];
    const bytes = await bytesOf(folder, wanted + ending);
    if (bytes) return { bytes, mediaType, encoding, lasting, tag: tagOf(bytes) };
  }
  return null;
}

async function bytesOf(folder: string, wanted: string): Promise<Buffer<ArrayBuffer> | null> {
  try {
    const root = await realpath(folder);
    const path = await realpath(join(root, wanted));
    return path.startsWith(root + sep) ? await readFile(path) : null;
  } catch {
    return null;
  }
}

function tagOf(bytes: Uint8Array): string {
  return `"${createHash('sha256').update(bytes).digest('base64url').slice(0, 22)}"`;
}

function decoded(urlPath: string): string | null {
  try {
    const path = decodeURIComponent(urlPath);
    return path.includes('\0') || path.includes('\\') ? null : path;
  } catch {
    return null;
  }
}
