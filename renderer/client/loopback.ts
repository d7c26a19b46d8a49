import { callNamed, callsBy, type Half } from '../../core/api/calls.ts';
import type { Host, HostEvent } from '../../core/api/projectApi.ts';
import { fail, type Result } from '../../core/api/result.ts';
import { bytesKey, windowHeader } from '../../core/api/wire.ts';
import { eventsOf } from './eventStream.ts';
import { words } from './words.ts';

export interface LoopbackAddress {
  /** "http://127.0.0.1:40123" */
  readonly origin: string;
  readonly token: string;
}

/** So long a window waits before it looks for a host again that it has lost. */
const retryMs = 1000;

/** The host at this address, by HTTP. */
export function connectLoopback({ origin, token }: LoopbackAddress): Host {
  const headers = { Authorization: `Bearer ${token}`, [windowHeader]: crypto.randomUUID() };

  const by =
    (half: Half) =>
    async (name: string, message?: unknown): Promise<Result<unknown>> => {
      const call = callNamed(half, name);
      const bytes = call?.bytes;
      try {
        const response = await fetch(`${origin}/api/${half}/${name}`, {
          method: 'POST',
          headers: { ...headers, 'Content-Type': 'application/json' },
          body: message === undefined ? '' : JSON.stringify(message, bytes === 'taken' ? bytesAsBase64 : undefined),
        });
        const answer = await response.text();
        return JSON.parse(answer, bytes === 'answered' ? base64AsBytes : undefined) as Result<unknown>;
      } catch {
        const { message, saved, savedButLast } = (await words()).host.calls.silent;
        return fail('failed', message, call?.writes ? savedButLast : saved);
      }
    };

  const project = callsBy('project', by('project'));
  return {
    project: {
      ...project,
      subscribe: (listener) => {
        const stop = new AbortController();
        void listen(`${origin}/api/events`, headers, listener, stop.signal, async () => {
          const current = await project.current();
          if (current.ok) listener({ type: 'opened', path: current.value?.path ?? null });
        });
        return () => stop.abort();
      },
    },
    desktop: callsBy('desktop', by('desktop')),
  };
}

/** Passes events on until stopped. Where the stream breaks it is taken up again, and `caughtUp` makes up for the gap. */
async function listen(
  url: string,
  headers: Readonly<Record<string, string>>,
  listener: (event: HostEvent) => void,
  signal: AbortSignal,
  caughtUp: () => Promise<void>,
): Promise<void> {
  for (let broken = false; !signal.aborted; broken = true) {
    try {
      const response = await fetch(url, { headers, signal });
      if (broken && response.ok) await caughtUp();
      if (response.ok && response.body) for await (const event of eventsOf(response.body)) listener(event);
    } catch {
      // The host is gone or the window closes; the next turn tells which.
    }
    if (!signal.aborted) await new Promise((resolve) => setTimeout(resolve, retryMs));
  }
}

function base64AsBytes(_key: string, part: unknown): unknown {
  if (typeof part !== 'object' || part === null || !(bytesKey in part)) return part;
  const base64 = part[bytesKey];
  return typeof base64 === 'string' ? Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0)) : part;
}

function bytesAsBase64(_key: string, part: unknown): unknown {
  return part instanceof Uint8Array ? { [bytesKey]: base64Of(part) } : part;
}

/** In pieces: a call takes only so many arguments. */
function base64Of(bytes: Uint8Array): string {
  let letters = '';
  for (let at = 0; at < bytes.length; at += 0x8000) letters += String.fromCharCode(...bytes.subarray(at, at + 0x8000));
  return btoa(letters);
}
