import { readFile } from 'node:fs/promises';
import type { Socket } from 'node:net';
import { endianness } from 'node:os';

/** Linux lists every TCP socket with the number of the account that owns it (proc(5), /proc/net/tcp). */
const lists = ['/proc/net/tcp', '/proc/net/tcp6'];

/** One end of a connection by IPv4. */
export interface End {
  /** "127.0.0.1" */
  readonly address: string;
  readonly port: number;
}

/**
 * Whether the other end of a connection from this machine is known to be a process of another account. Only Linux tells;
 * elsewhere, and where it does not, the answer is no. The administrator, who may do anything anyhow, is not another: a
 * virtual machine's forwarded connections come from there too.
 */
export async function isOtherAccount({ remoteAddress, remotePort, localAddress, localPort }: Socket): Promise<boolean> {
  const own = process.getuid?.();
  if (process.platform !== 'linux' || own === undefined) return false;
  if (!remoteAddress || !remotePort || !localAddress || !localPort) return false;
  const there = { address: remoteAddress, port: remotePort };
  const here = { address: localAddress, port: localPort };
  for (const list of lists) {
    const owner = ownerIn(await readFile(list, 'latin1').catch(() => ''), there, here);
    if (owner !== null) return owner !== own && owner !== 0;
  }
  return false;
}

/** The account, in such a list, of the socket that lies at `end` and is connected to `other`. */
export function ownerIn(list: string, end: End, other: End): number | null {
  const [ending, otherEnding] = [asListed(end), asListed(other)];
  for (const line of list.split('\n').slice(1)) {
    const [, at = '', to = '', , , , , account] = line.trim().split(/\s+/);
    if (at.endsWith(ending) && to.endsWith(otherEnding)) return Number(account);
  }
  return null;
}

/** "0100007F:9C40": the address as a number in the machine's own order of bytes; among addresses of IPv6 the end of one. */
function asListed({ address, port }: End): string {
  const bytes = address.split('.').map((part) => Number(part).toString(16).padStart(2, '0'));
  const inOrder = endianness() === 'LE' ? bytes.reverse() : bytes;
  return `${inOrder.join('')}:${port.toString(16).padStart(4, '0')}`.toUpperCase();
}
