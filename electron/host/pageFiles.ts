import { readFile, realpath } from 'node:fs/promises';
import { extname, join, sep } from 'node:path';

export interface PageFile {
  readonly bytes: Buffer<ArrayBuffer>;
  readonly mediaType: string;
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

/**
 * The file of the built page at a URL's path ("/" is the page itself), or null: not there, of no kind that a page
 * has, or not inside `folder`, whatever dots, escapes and links the path is made of.
 */
export async function pageFile(folder: string, urlPath: string): Promise<PageFile | null> {
  const wanted = decoded(urlPath === '/' ? '/index.html' : urlPath);
  const mediaType = wanted === null ? undefined : mediaTypes[extname(wanted)];
  if (wanted === null || mediaType === undefined) return null;
  try {
    const root = await realpath(folder);
    const path = await realpath(join(root, wanted));
    if (!path.startsWith(root + sep)) return null;
    return { bytes: await readFile(path), mediaType };
  } catch {
    return null;
  }
}

function decoded(urlPath: string): string | null {
  try {
    const path = decodeURIComponent(urlPath);
    return path.includes('\0') || path.includes('\\') ? null : path;
  } catch {
    return null;
  }
}
