import { mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { type IncomingHttpHeaders, request } from 'node:http';
import { connect } from 'node:net';
import { networkInterfaces } from 'node:os';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import type { Result } from '../../../core/api/result.ts';
import { mostBodyBytes } from '../../../electron/loopback/readBody.ts';
import { type LoopbackHost, startLoopback } from '../../../electron/loopback/server.ts';
import { testService } from '../../support/hosts.ts';
import { temporaryFolder } from '../../support/temporaryFolder.ts';

const secret = 'secret of another file';

async function start(): Promise<LoopbackHost> {
  const folder = temporaryFolder();
  const pageFolder = join(folder, 'page');
  mkdirSync(join(pageFolder, 'assets'), { recursive: true });
  writeFileSync(join(pageFolder, 'index.html'), '<!doctype html><title>Page</title>');
  writeFileSync(join(pageFolder, 'assets', 'page.js'), 'export {};');
  writeFileSync(join(pageFolder, 'notes.txt'), secret);
  writeFileSync(join(folder, 'secret.html'), secret);
  symlinkSync(join(folder, 'secret.html'), join(pageFolder, 'link.html'));
  const host = await startLoopback({ service: testService(join(folder, 'home')), pageFolder });
  onTestFinished(() => host.close());
  return host;
}

interface Answer {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly body: string;
}

/** One request, by plain HTTP: no client that puts paths and headers right. */
function ask(
  host: LoopbackHost,
  method: string,
  path: string,
  headers: Readonly<Record<string, string>> = {},
  body = '',
): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const asked = request({ host: '127.0.0.1', port: host.port, method, path, headers }, (response) => {
      let text = '';
      response.setEncoding('utf8').on('data', (part: string) => {
        text += part;
      });
      response.on('end', () => resolve({ status: response.statusCode ?? 0, headers: response.headers, body: text }));
    });
    asked.on('error', reject);
    asked.end(body);
  });
}

const call = '/api/project/current';
const json = { 'Content-Type': 'application/json' };

function withToken(host: LoopbackHost, headers: Readonly<Record<string, string>> = {}): Record<string, string> {
  return { ...json, Authorization: `Bearer ${host.token}`, ...headers };
}

test('with the token, from its own page or from none, a call is answered', async () => {
  const host = await start();
  for (const headers of [{}, { Origin: `http://127.0.0.1:${host.port}`, 'Sec-Fetch-Site': 'same-origin' }]) {
    const answer = await ask(host, 'POST', call, withToken(host, headers));
    expect(answer.status).toBe(200);
    expect(JSON.parse(answer.body)).toEqual({ ok: true, value: null });
  }
});

test('without the token, or with a wrong one, nothing is answered', async () => {
  const host = await start();
  const wrong = [
    json,
    { ...json, Authorization: 'Bearer ' },
    { ...json, Authorization: `Bearer ${host.token}x` },
    { ...json, Authorization: host.token },
    { ...json, Cookie: `token=${host.token}` },
  ];
  for (const headers of wrong) expect((await ask(host, 'POST', call, headers)).status).toBe(401);
  expect((await ask(host, 'POST', `${call}?token=${host.token}`, json)).status).toBe(401);
  expect((await ask(host, 'GET', '/api/events', json)).status).toBe(401);
});

test('every start has a token of its own, 256 bits long', async () => {
  const tokens = [await start(), await start()].map(({ token }) => token);
  expect(new Set(tokens).size).toBe(2);
  for (const token of tokens) expect(Buffer.from(token, 'base64url')).toHaveLength(32);
});

test('another host name is refused, token or not: no page can reach it by DNS', async () => {
  const host = await start();
  for (const name of [
    'evil.example',
    'localhost',
    `localhost:${host.port}`,
    '127.0.0.1',
    `127.0.0.1:${host.port + 1}`,
  ]) {
    expect((await ask(host, 'POST', call, withToken(host, { Host: name }))).status, name).toBe(403);
    expect((await ask(host, 'GET', '/', { Host: name })).status, name).toBe(403);
  }
});

test('another origin is refused, token or not, and is never given leave to read', async () => {
  const host = await start();
  const origins = ['http://evil.example', 'null', 'http://127.0.0.1', `https://127.0.0.1:${host.port}`];
  for (const origin of origins) {
    const answer = await ask(host, 'POST', call, withToken(host, { Origin: origin }));
    expect(answer.status, origin).toBe(403);
    const asking = { Origin: origin, 'Access-Control-Request-Method': 'POST' };
    const preflight = await ask(host, 'OPTIONS', call, asking);
    expect(preflight.status, origin).toBe(403);
    for (const { headers } of [answer, preflight]) {
      expect(Object.keys(headers).filter((name) => name.startsWith('access-control-'))).toEqual([]);
    }
  }
  const crossSite = withToken(host, { 'Sec-Fetch-Site': 'cross-site' });
  expect((await ask(host, 'POST', call, crossSite)).status).toBe(403);
});

test.each([
  '/../secret.html',
  '/assets/../../secret.html',
  '/%2e%2e/secret.html',
  '/..%2fsecret.html',
  '/%2e%2e%2fsecret.html',
  '/..%5csecret.html',
  '/..\\secret.html',
  '/assets/..%2f..%2fsecret.html',
  '//secret.html',
  '/secret.html%00.html',
  '/%',
  '/link.html',
  '/notes.txt',
  'http://127.0.0.1/../secret.html',
])('no way out of the page folder by %s', async (path) => {
  const host = await start();
  const answer = await ask(host, 'GET', path);
  expect(answer.status).toBe(404);
  expect(answer.body).not.toContain(secret);
});

test('the page comes with its content policy and without a referrer', async () => {
  const host = await start();
  const page = await ask(host, 'GET', '/');
  expect(page).toMatchObject({ status: 200, body: expect.stringContaining('<title>Page') as string });
  const policy = page.headers['content-security-policy'];
  expect(policy).toContain("default-src 'none'");
  expect(policy).toContain("script-src 'self';");
  expect(policy).not.toMatch(/unsafe|\*|http/);
  expect(page.headers).toMatchObject({
    'referrer-policy': 'no-referrer',
    'x-content-type-options': 'nosniff',
    'x-frame-options': 'DENY',
    'cross-origin-resource-policy': 'same-origin',
  });
  expect((await ask(host, 'GET', '/assets/page.js')).headers['content-type']).toBe('text/javascript; charset=utf-8');
  expect((await ask(host, 'POST', '/')).status).toBe(405);
});

test('a message that is not JSON, or too long, or not declared as JSON', async () => {
  const host = await start();
  expect((await ask(host, 'POST', call, withToken(host), '{"half')).status).toBe(400);
  expect((await ask(host, 'POST', call, withToken(host, { 'Content-Type': 'text/plain' }))).status).toBe(415);
  expect((await ask(host, 'GET', call, withToken(host))).status).toBe(405);
  expect((await ask(host, 'POST', call, withToken(host), ' '.repeat(mostBodyBytes + 1))).status).toBe(413);
  expect((await ask(host, 'POST', call, withToken(host))).status).toBe(200);
});

test('a message that is too long is refused while it comes, whatever it declared', async () => {
  const host = await start();
  const status = await new Promise<string>((resolve) => {
    const socket = connect(host.port, '127.0.0.1');
    socket.once('data', (part) => {
      resolve(part.toString().slice(9, 12));
      socket.destroy();
    });
    socket.on('error', () => resolve('an error'));
    const head = ['POST /api/project/current HTTP/1.1', `Host: 127.0.0.1:${host.port}`, 'Transfer-Encoding: chunked'];
    const headers = Object.entries(withToken(host)).map(([name, value]) => `${name}: ${value}`);
    socket.write(`${[...head, ...headers].join('\r\n')}\r\n\r\n`);
    const megabyte = Buffer.alloc(1024 * 1024, 'x');
    const pump = () => {
      while (
        !socket.destroyed &&
        socket.write(Buffer.concat([Buffer.from('100000\r\n'), megabyte, Buffer.from('\r\n')]))
      );
      if (!socket.destroyed) socket.once('drain', pump);
    };
    pump();
  });
  expect(status).toBe('413');
});

test.each([
  'project/nothing',
  'nothing/current',
  'project/__proto__',
  'project/subscribe',
  '__proto__/toString',
  'desktop/then',
])('the call %s, which there is not', async (name) => {
  const host = await start();
  const { body } = await ask(host, 'POST', `/api/${name}`, withToken(host));
  const result = JSON.parse(body) as Result<unknown>;
  expect(result).toMatchObject({ ok: false, problem: { code: 'not-valid' } });
});

test('only this machine can reach it', async (context) => {
  const host = await start();
  const others = Object.values(networkInterfaces())
    .flatMap((addresses) => addresses ?? [])
    .filter(({ internal, family }) => !internal && family === 'IPv4');
  if (others.length === 0) return context.skip('this machine has no other address');
  for (const { address } of others) {
    const reached = await new Promise((resolve) => {
      const socket = connect(host.port, address);
      socket.once('connect', () => resolve('reached'));
      socket.once('error', () => resolve('refused'));
    });
    expect(reached).toBe('refused');
  }
});
