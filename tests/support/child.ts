import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';

/** Root may write everywhere; with these words before it a program must keep to the rights that files give. */
const ordinaryRights = process.getuid?.() === 0 ? ['setpriv', '--bounding-set', '-dac_override', '--'] : [];

/** Whether `ordinaryRights` can be had on this system. */
export function canGiveUpRootsRights(): boolean {
  const [program, ...args] = [...ordinaryRights, process.execPath, '--version'];
  return spawnSync(program!, args).status === 0;
}

/** One of the programs in `tests/support/children`, run by the same Node. */
export class Child {
  readonly lines: string[] = [];
  readonly #process: ChildProcess;
  readonly #ended: Promise<void>;
  #errors = '';
  #onLine: (() => void) | undefined;

  constructor(name: string, args: readonly string[], rights: 'all' | 'ordinary' = 'all') {
    const program = join(import.meta.dirname, 'children', `${name}.ts`);
    const words = [...(rights === 'ordinary' ? ordinaryRights : []), process.execPath, program, ...args];
    const child = spawn(words[0]!, words.slice(1), { stdio: ['ignore', 'pipe', 'pipe'] });
    this.#process = child;
    let rest = '';
    child.stdout.setEncoding('utf8').on('data', (text: string) => {
      const lines = (rest + text).split('\n');
      rest = lines.pop() ?? '';
      this.lines.push(...lines);
      this.#onLine?.();
    });
    child.stderr.setEncoding('utf8').on('data', (text: string) => {
      this.#errors += text;
    });
    this.#ended = new Promise((resolve) => child.once('close', () => resolve()));
    onTestFinished(() => this.kill());
  }

  /** Waits until it has printed so many lines. */
  untilLines(count: number): Promise<void> {
    return this.#until(() => this.lines.length >= count);
  }

  /** Waits until it has printed this line so many times. */
  untilLine(line: string, count: number): Promise<void> {
    return this.#until(() => this.lines.filter((printed) => printed === line).length >= count);
  }

  async #until(enough: () => boolean): Promise<void> {
    while (!enough()) {
      const next = new Promise<void>((resolve) => {
        this.#onLine = resolve;
      });
      const ended = this.#ended.then(() => 'ended' as const);
      if ((await Promise.race([next, ended])) === 'ended' && !enough()) {
        throw new Error(`The child ended after ${this.lines.length} lines: ${this.#errors}`);
      }
    }
  }

  /** Ends it as a power cut would: no handler of its own runs. All it printed before is in `lines` then. */
  async kill(): Promise<void> {
    this.#process.kill('SIGKILL');
    await this.#ended;
  }

  /** Waits for its own end. */
  async end(): Promise<void> {
    await this.#ended;
  }
}
