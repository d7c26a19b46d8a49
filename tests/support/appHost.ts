import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import { createInterface } from 'node:readline';

const program = join(import.meta.dirname, '..', '..', 'electron', 'loopback', 'main.ts');

/** The app's host as a process of its own, with its data in one folder. */
export class AppHost {
  /** The page's address, token and all. */
  readonly address: string;
  readonly #process: ChildProcess;

  private constructor(address: string, child: ChildProcess) {
    this.address = address;
    this.#process = child;
  }

  /** Starts it; `args` are those of the command line: a project file, say. */
  static async start(home: string, args: readonly string[] = []): Promise<AppHost> {
    const child = spawn(process.execPath, [program, ...args], {
      env: { ...process.env, UNDERGATE_HOME: home },
      stdio: ['ignore', 'pipe', 'inherit'],
    });
    const [address] = (await Promise.race([
      once(createInterface({ input: child.stdout }), 'line'),
      once(child, 'exit').then(() => Promise.reject(new Error('The host ended before it said its address.'))),
    ])) as [string];
    return new AppHost(address, child);
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
