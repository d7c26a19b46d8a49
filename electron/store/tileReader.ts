import { type ChildProcess, fork } from 'node:child_process';
import { join } from 'node:path';
import { plainly, plainWords } from '../../core/words/figures.ts';
import { ProblemError, problemOf } from './problems.ts';
import type { TileAsked, TileCall, TileTold } from './tileMessages.ts';
import type { TileProblem } from './tileProblem.ts';

/** The process's file: beside this one in the source, and beside the bundle that this one is part of. */
const processFile = import.meta.filename.endsWith('.ts') ? 'tile.process.ts' : 'tileProcess.js';

/** A call that was not answered: not in time, or the process that reads broke off. */
export class NoAnswer extends Error {
  readonly why: 'late' | 'broke-off';

  constructor(why: 'late' | 'broke-off') {
    super(`No answer: ${why}`);
    this.name = 'NoAnswer';
    this.why = why;
  }
}

/** So long a process may take to start, on a machine that is busy. */
const startWithinMs = 60_000;

interface Running {
  readonly child: ChildProcess;
  readonly ready: Promise<unknown>;
}

/**
 * Reads tile files in a process of its own, one call after another. A thread would not do: SQLite, once in an endless view, and
 * the system, once opening a pipe, give a thread no chance to be ended, and a process with such a thread can't even exit.
 * A process can be ended whatever it does; the next call gets a new one. It keeps no host alive and ends with it.
 */
export class TileReader {
  readonly #whenIdle: 'stay' | 'end';
  #pending = 0;
  #running: Running | null = null;
  #last: Promise<unknown> = Promise.resolve();
  #stopped = new AbortController();

  /** `whenIdle`: what becomes of the process when nothing more is asked of it. */
  constructor(whenIdle: 'stay' | 'end') {
    this.#whenIdle = whenIdle;
  }

  /** Calls that are not answered yet. */
  get pending(): number {
    return this.#pending;
  }

  /**
   * Throws a `ProblemError` with what is wrong with the file, or `NoAnswer`; or what `assertWanted` throws, which is called when
   * the calls before are done.
   */
  ask(call: TileCall, withinMs: number, assertWanted: () => void): Promise<unknown> {
    const { signal } = this.#stopped;
    const answer = this.#last.then(() => {
      assertWanted();
      return this.#askNow({ call, withinMs }, signal);
    });
    this.#pending += 1;
    this.#last = answer.then(
      () => this.#answered(),
      () => this.#answered(),
    );
    return answer;
  }

  /** Ends the process and whatever was asked of it. */
  stop(): void {
    this.#stopped.abort(stopped());
    this.#stopped = new AbortController();
    this.#end();
  }

  async #askNow(asked: TileAsked, signal: AbortSignal): Promise<unknown> {
    signal.throwIfAborted();
    this.#running ??= start();
    const running = this.#running;
    try {
      await running.ready;
      signal.throwIfAborted();
      running.child.send(asked);
      const told = await nextMessage(running.child, asked.withinMs, signal);
      if ('value' in told) return told.value;
      if ('problem' in told) throw problemTold(told.problem);
      if ('error' in told) throw problemWith(told.error, asked.call.path);
      throw new NoAnswer('broke-off');
    } catch (error) {
      if (error instanceof ProblemError) throw error;
      if (this.#running === running) this.#end();
      signal.throwIfAborted();
      throw error;
    }
  }

  #answered(): void {
    this.#pending -= 1;
    if (this.#pending === 0 && this.#whenIdle === 'end') this.#end();
  }

  #end(): void {
    this.#running?.child.kill('SIGKILL');
    this.#running = null;
  }
}

function start(): Running {
  const child = fork(join(import.meta.dirname, processFile), [], {
    execArgv: [],
    // Electron runs as the Node that it holds where it is told so.
    env: { ...process.env, ELECTRON_RUN_AS_NODE: '1' },
    serialization: 'advanced',
    stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
  });
  child.unref();
  child.channel?.unref();
  const ready = nextMessage(child, startWithinMs).catch(() => {
    throw new Error('The part of Undergate that reads map files does not start');
  });
  // Whoever waits for it hears of a failure.
  ready.catch(() => undefined);
  return { child, ready };
}

function nextMessage(child: ChildProcess, withinMs: number, signal?: AbortSignal): Promise<TileTold> {
  const { promise, resolve, reject } = Promise.withResolvers<TileTold>();
  const timer = setTimeout(() => reject(new NoAnswer('late')), withinMs);
  const onEnd = () => reject(new NoAnswer('broke-off'));
  const onStop = () => reject(signal?.reason as Error);
  child.once('message', resolve).once('exit', onEnd).once('error', onEnd);
  signal?.addEventListener('abort', onStop);
  return promise.finally(() => {
    clearTimeout(timer);
    child.off('message', resolve).off('exit', onEnd).off('error', onEnd);
    signal?.removeEventListener('abort', onStop);
  });
}

function problemTold({ code, message, remedy }: TileProblem['told']): ProblemError {
  return new ProblemError(code, plainly(message), plainly(remedy));
}

function problemWith({ code, message }: { readonly code: string; readonly message: string }, path: string) {
  const problem = problemOf(Object.assign(new Error(message), { code }), path);
  return new ProblemError(problem.code, problem.message, problem.remedy);
}

function stopped(): ProblemError {
  const { message, remedy } = plainWords().host.files.closed;
  return new ProblemError('stopped', message, remedy);
}
