import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { setTimeout } from 'node:timers/promises';
import type { Result } from '../../core/api/result.ts';
import { enterPath, newAddressPath, ticketKey } from '../../core/api/wire.ts';

const program = join(import.meta.dirname, '..', '..', 'electron', 'loopback', 'main.ts');

/** The app's host as a process of its own, with its data in one folder. */
export class AppHost {
  /** "http://127.0.0.1:40123" */
  readonly origin: string;
  readonly token: string;
  readonly #process: ChildProcess;
  readonly #lines: AsyncIterator<string>;

  private constructor(address: Address, child: ChildProcess, lines: AsyncIterator<string>) {
    this.origin = address.origin;
    this.token = address.token;
    this.#process = child;
    this.#lines = lines;
  }

  /** Starts it; `args` are those of the command line: a project file, say. */
  static async start(home: string, args: readonly string[] = []): Promise<AppHost> {
    const child = spawn(process.execPath, [program, ...args], {
      env: { ...process.env, UNDERGATE_HOME: home },
      stdio: ['ignore', 'pipe', 'inherit'],
    });
    const lines = createInterface({ input: child.stdout })[Symbol.asyncIterator]();
    return new AppHost(await entered(await nextLine(lines)), child, lines);
  }

  /** An address of the page that lets in once, as the host writes it in its terminal. */
  async newAddress(): Promise<string> {
    for (;;) {
      const { status } = await fetch(`${this.origin}${newAddressPath}`, { method: 'POST' });
      if (status === 200) return nextLine(this.#lines);
      // Only one is written each second.
      if (status !== 429) throw new Error(`Asked for a new address, the host answered ${status}.`);
      await setTimeout(200);
    }
  }

  /** Ends it as the user would. */
  stop(): Promise<void> {
    return this.#end('SIGTERM');
  }

  /** Ends it as a power cut would. */
  kill(): Promise<void> {
    return this.#end('SIGKILL');
  }

  async #end(signal: NodeJS.Signals): Promise<void> {
    if (this.#process.exitCode !== null || this.#process.signalCode !== null) return;
    const ended = once(this.#process, 'exit');
    this.#process.kill(signal);
    await ended;
  }
}

interface Address {
  readonly origin: string;
  readonly token: string;
}

/** Uses the ticket in the address up. */
async function entered(address: string): Promise<Address> {
  const { origin, hash } = new URL(address);
  const ticket = new URLSearchParams(hash.slice(1)).get(ticketKey) ?? '';
  const answer = await fetch(`${origin}${enterPath}`, { method: 'POST', body: ticket });
  const result = (await answer.json()) as Result<{ readonly token: string }>;
  if (!result.ok) throw new Error(result.problem.message);
  return { origin, token: result.value.token };
}

async function nextLine(lines: AsyncIterator<string>): Promise<string> {
  const line = await lines.next();
  if (line.done) throw new Error('The host ended before it said its address.');
  return line.value;
}
