import { mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { type IncomingHttpHeaders, request } from 'node:http';
import { join } from 'node:path';
import { brotliDecompressSync, gunzipSync } from 'node:zlib';
import { expect, onTestFinished, test } from 'vitest';
import { encodingsTaken, packFiles } from '../../../electron/host/packedFiles.ts';
import { type LoopbackHost, startLoopback } from '../../../electron/loopback/server.ts';
import { testService } from '../../support/hosts.ts';
import { temporaryFolder } from '../../support/temporaryFolder.ts';

const script = 'export const words = "much the same";\n'.repeat(500);
const page = `<!doctype html><title>Page</title>${'<p>Words</p>'.repeat(500)}`;

async function builtPage(): Promise<string> {
  const folder = join(temporaryFolder(), 'page');
  mkdirSync(join(folder, 'assets'), { recursive: true });
  writeFileSync(join(folder, 'index.html'), page);
  writeFileSync(join(folder, 'assets', 'page-1a2b.js'), script);
  writeFileSync(join(folder, 'assets', 'small-3c4d.js'), 'export {};');
  writeFileSync(join(folder, 'assets', 'face-5e6f.woff2'), Buffer.alloc(5000));
  await packFiles(folder);
  return folder;
}

async function start(): Promise<LoopbackHost> {
  const host = await startLoopback({ service: testService(temporaryFolder()), pageFolder: await builtPage() });
  onTestFinished(() => host.close());
  return host;
}

interface Answer {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly body: Buffer;
}

/** One request whose answer is left as it came. */
function get(host: LoopbackHost, path: string, headers: Record<string, string> = {}, method = 'GET'): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const asked = request({ host: '127.0.0.1', port: host.port, path, headers, method }, (response) => {
      const parts: Buffer[] = [];
      response.on('data', (part: Buffer) => parts.push(part));
      response.on('end', () =>
        resolve({ status: response.statusCode ?? 0, headers: response.headers, body: Buffer.concat(parts) }),
      );
    });
    asked.on('error', reject);
    asked.end();
  });
}

test('the build packs its larger texts, and nothing that is packed already', async () => {
  const folder = await builtPage();
  expect(readdirSync(folder).sort()).toEqual(['assets', 'index.html', 'index.html.br', 'index.html.gz']);
  expect(readdirSync(join(folder, 'assets')).sort()).toEqual([
    'face-5e6f.woff2',
    'page-1a2b.js',
    'page-1a2b.js.br',
    'page-1a2b.js.gz',
    'small-3c4d.js',
  ]);
});

test.each([
  ['gzip, deflate, br, zstd', 'br', brotliDecompressSync],
  ['gzip', 'gzip', gunzipSync],
  ['br;q=0, gzip;q=0.5', 'gzip', gunzipSync],
  ['*', 'br', brotliDecompressSync],
  ['zstd', undefined, (bytes: Buffer) => bytes],
  ['', undefined, (bytes: Buffer) => bytes],
])('to who takes "%s" a text goes as %s, and comes out the same', async (accept, encoding, unpack) => {
  const { status, headers, body } = await get(await start(), '/assets/page-1a2b.js', { 'Accept-Encoding': accept });
  expect(status).toBe(200);
  expect(headers['content-encoding']).toBe(encoding);
  expect(headers).toMatchObject({
    'content-type': 'text/javascript; charset=utf-8',
    'content-length': String(body.length),
    vary: 'Accept-Encoding',
  });
  expect(unpack(body).toString()).toBe(script);
  if (encoding) expect(body.length).toBeLessThan(script.length / 20);
});

test('a font, and a text too small to pack, go as they are', async () => {
  const host = await start();
  for (const path of ['/assets/face-5e6f.woff2', '/assets/small-3c4d.js']) {
    expect((await get(host, path, { 'Accept-Encoding': 'br' })).headers['content-encoding']).toBeUndefined();
  }
});

test('what is named by its contents is asked for once; the page itself is asked for anew and not sent again', async () => {
  const host = await start();
  const taken = { 'Accept-Encoding': 'br' };
  const asset = await get(host, '/assets/page-1a2b.js', taken);
  expect(asset.headers['cache-control']).toBe('private, max-age=31536000, immutable');
  const first = await get(host, '/', taken);
  expect(first.headers['cache-control']).toBe('no-cache');
  const again = await get(host, '/', { ...taken, 'If-None-Match': first.headers.etag! });
  expect(again).toMatchObject({ status: 304, body: Buffer.alloc(0) });
  expect((await get(host, '/', { 'If-None-Match': first.headers.etag! })).status).toBe(200);
  expect((await get(host, '/assets/../index.html', taken)).headers['cache-control']).toBe('no-cache');
});

test('HEAD tells of a packed file without sending it, and a packed file is nothing by itself', async () => {
  const host = await start();
  const head = await get(host, '/', { 'Accept-Encoding': 'br' }, 'HEAD');
  expect(head).toMatchObject({ status: 200, body: Buffer.alloc(0) });
  expect(head.headers['content-encoding']).toBe('br');
  expect((await get(host, '/assets/page-1a2b.js.br')).status).toBe(404);
});

test.each([
  [undefined, []],
  ['GZIP', ['gzip']],
  ['identity;q=1, *;q=0', []],
  ['br; q=0.000, *', ['gzip']],
])('Accept-Encoding %s', (header, taken) => {
  expect(encodingsTaken(header)).toEqual(taken);
});
