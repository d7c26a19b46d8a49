import { type Remote, wrap } from 'comlink';
import { Waiting } from '../../core/api/waiting.ts';
import { plainWords } from '../../core/words/figures.ts';
import { sayLocale } from './workerLocale.ts';

const words = () => plainWords().window.exchange.work;

/**
 * Hears of all ways in which a worker can be lost: its script does not load or throws outside of a call, or an answer can't be read.
 * Such a worker is ended.
 */
export function hearLoss(worker: Worker, lose: (why: string) => void): void {
  const end = (why: string) => {
    worker.terminate();
    lose(why);
  };
  worker.addEventListener('error', ({ message }) => end(message || words().noScript));
  worker.addEventListener('messageerror', () => end(words().unreadable));
}

/** A worker whose functions are called from here. */
export interface Called<Functions> {
  /** Rejects with the error of the function that is called, `Lost` where the worker is lost before it answers, and `Ended`. */
  ask<T>(question: (functions: Remote<Functions>) => Promise<T>): Promise<T>;
  /** Ends it, whatever it is doing. */
  end(): void;
}

/** The worker failed as a whole. */
export class Lost extends Error {}

/** The worker was ended from here. */
export class Ended extends Error {}

export interface CallOptions {
  /** It is lost, and takes no further questions. */
  readonly onLoss?: () => void;
  /** A question that is not answered for so long is given up, and the worker with it. */
  readonly patienceMs?: number;
}

/**
 * Lets a worker's functions (`expose` in its script) be called, their errors coming back as rejections. Comlink by itself never
 * answers for a worker that is lost.
 */
export function callWorker<Functions>(worker: Worker, { onLoss, patienceMs }: CallOptions = {}): Called<Functions> {
  const waiting = new Waiting();
  let over: Error | null = null;
  const finish = (error: Error) => {
    if (over) return;
    over = error;
    worker.terminate();
    waiting.lose(error);
    if (error instanceof Lost) onLoss?.();
  };
  hearLoss(worker, (why) => finish(new Lost(why)));
  sayLocale(worker);
  const functions = wrap<Functions>(worker);
  return {
    async ask(question) {
      if (over) throw over;
      const timer =
        patienceMs === undefined
          ? undefined
          : setTimeout(() => finish(new Lost(words().noAnswer({ seconds: patienceMs / 1000 }))), patienceMs);
      try {
        return await waiting.until(question(functions));
      } finally {
        clearTimeout(timer);
      }
    },
    end: () => finish(new Ended()),
  };
}
