import { chmodSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, onTestFinished, test, vi } from 'vitest';
import type { Result } from '../../../core/api/result.ts';
import { enterPath, newAddressPath } from '../../../core/api/wire.ts';
import { ownerIn } from '../../../electron/loopback/peer.ts';
import { type LoopbackHost, startLoopback } from '../../../electron/loopback/server.ts';
import { Tickets, ticketLifeMs } from '../../../electron/loopback/tickets.ts';
import { openAsApp } from '../../../electron/start/browser.ts';
import { Child } from '../../support/child.ts';
import { testService } from '../../support/hosts.ts';
import { temporaryFolder } from '../../support/temporaryFolder.ts';

async function start(onAddressWanted?: () => void): Promise<LoopbackHost> {
  const home = temporaryFolder();
  const wanted = onAddressWanted ? { onAddressWanted } : {};
  const host = await startLoopback({ service: testService(home), pageFolder: home, ...wanted });
  onTestFinished(() => host.close());
  return host;
}

const ticketIn = (address: string) => address.split('#ticket=')[1]!;

async function post(
  host: LoopbackHost,
  path: string,
  body: string,
  headers: Readonly<Record<string, string>> = {},
): Promise<{ status: number; result: Result<{ token: string }> }> {
  const answer = await fetch(`http://127.0.0.1:${host.port}${path}`, { method: 'POST', body, headers });
  return { status: answer.status, result: (await answer.json()) as Result<{ token: string }> };
}

test('a ticket is good once, and not after two minutes', () => {
  let now = 5;
  const tickets = new Tickets(() => now);
  const [first, second] = [tickets.issue(), tickets.issue()];
  expect(tickets.redeem(first)).toBe('good');
  expect(tickets.redeem(first)).toBe('used');
  now += ticketLifeMs;
  expect(tickets.redeem(second)).toBe('expired');
  expect(tickets.redeem('')).toBe('unknown');
  expect(tickets.redeem(`${second}x`)).toBe('unknown');
});

test('after ten wrong tickets in a minute nobody is let in until it is over', () => {
  let now = 0;
  const tickets = new Tickets(() => now);
  for (let tried = 0; tried < 10; tried++) expect(tickets.redeem(`guess ${tried}`)).toBe('unknown');
  const ticket = tickets.issue();
  expect(tickets.redeem(ticket)).toBe('too-many');
  now = 59_999;
  expect(tickets.redeem(ticket)).toBe('too-many');
  now = 60_000;
  expect(tickets.redeem(ticket)).toBe('good');
});

test('the address carries no token; its ticket is exchanged for it, once', async () => {
  const host = await start();
  const address = host.newAddress();
  expect(address).not.toContain(host.token);
  const ticket = ticketIn(address);
  expect(await post(host, enterPath, ticket)).toEqual({
    status: 200,
    result: { ok: true, value: { token: host.token } },
  });
  const again = await post(host, enterPath, ticket);
  expect(again.status).toBe(401);
  expect(again.result).toMatchObject({ ok: false, problem: { message: expect.stringContaining('used already') } });
  expect(JSON.stringify(again.result)).not.toContain(host.token);
});

test('a page that is loaded anew is let in by its token', async () => {
  const host = await start();
  const answer = await post(host, enterPath, '', { Authorization: `Bearer ${host.token}` });
  expect(answer.result).toEqual({ ok: true, value: { token: host.token } });
  expect((await post(host, enterPath, '', { Authorization: 'Bearer x' })).status).toBe(401);
});

test('no ticket is taken from a page elsewhere, by GET, or in a message of any length', async () => {
  const host = await start();
  const ticket = ticketIn(host.newAddress());
  for (const headers of [{ Origin: 'https://evil.example' }, { 'Sec-Fetch-Site': 'cross-site' }]) {
    expect((await post(host, enterPath, ticket, headers)).status).toBe(403);
    expect((await post(host, newAddressPath, '', headers)).status).toBe(403);
  }
  expect((await fetch(`http://127.0.0.1:${host.port}${enterPath}`)).status).toBe(405);
  expect((await post(host, enterPath, ticket + ' '.repeat(5000))).status).toBe(401);
  expect((await post(host, enterPath, ticket)).status).toBe(200);
});

test('a page can have a new address written in the terminal, and is told nothing of it', async () => {
  const write = vi.fn();
  const host = await start(write);
  expect(await post(host, newAddressPath, '')).toEqual({ status: 200, result: { ok: true, value: null } });
  expect((await post(host, newAddressPath, '')).status).toBe(429);
  expect(write).toHaveBeenCalledTimes(1);
});

test('the account of a connection is found in the list of sockets that Linux keeps', () => {
  const list = [
    '  sl  local_address rem_address   st tx_queue rx_queue tr tm->when retrnsmt   uid  timeout inode',
    '   0: 0200007F:C350 0100007F:9C40 01 00000000:00000000 00:00000000 00000000  1000        0 41 1 0 20 4 30 10 -1',
    '   1: 0100007F:C350 0100007F:9C40 01 00000000:00000000 00:00000000 00000000 65534        0 42 1 0 20 4 30 10 -1',
  ].join('\n');
  const there = { address: '127.0.0.1', port: 50_000 };
  const here = { address: '127.0.0.1', port: 40_000 };
  expect(ownerIn(list, there, here)).toBe(65_534);
  expect(ownerIn(list, here, there)).toBeNull();
  const mapped = list.replaceAll(/ (0[12]00007F):/g, ' 0000000000000000FFFF0000$1:');
  expect(ownerIn(mapped, there, here)).toBe(65_534);
  expect(ownerIn('', there, here)).toBeNull();
});

test('what other accounts can read of the browser opens nothing for them', async (context) => {
  if (process.platform !== 'linux') return context.skip('there is no /proc to read');
  const host = await start();
  const address = host.newAddress();
  const browser = standInBrowser();
  const closed = openAsApp(browser.program, address);
  const seen = await vi.waitFor(() => argumentsThatName(address), 10_000);
  expect(seen).not.toContain(host.token);

  if (process.getuid?.() === 0) {
    const other = new Child('enterAsAnother', [String(host.port)]);
    await other.end();
    expect(other.lines).toEqual([`--app=${address}`, '403']);
  }
  expect((await post(host, enterPath, ticketIn(address))).status).toBe(200);
  expect((await post(host, enterPath, ticketIn(address))).status).toBe(401);
  browser.close();
  expect(await closed).toBe(true);
});

/** A program that takes a browser's arguments and stays until it is closed. */
function standInBrowser(): { program: string; close(): void } {
  const program = join(temporaryFolder(), 'browser');
  writeFileSync(program, '#!/bin/sh\nuntil [ -e "$0.closed" ]; do sleep 0.1; done\n');
  chmodSync(program, 0o755);
  return { program, close: () => writeFileSync(`${program}.closed`, '') };
}

/** The arguments of the process that was given this address. */
function argumentsThatName(address: string): string {
  for (const id of readdirSync('/proc').filter((name) => /^\d+$/.test(name))) {
    try {
      const line = readFileSync(`/proc/${id}/cmdline`, 'utf8');
      if (line.includes(`--app=${address}`)) return line;
    } catch {
      // It has ended meanwhile.
    }
  }
  throw new Error('There is no such process.');
}
