import { type Remote, wrap } from 'comlink';
import { Waiting } from '../../core/api/waiting.ts';

/**
 * Hears all ways in which a worker can be lost: its script does not load or throws outside of a call, or one of its answers can't be
 * read. Such a worker is ended.
 */
export function hearLoss(worker: Worker, lose: (why: string) => void): void {
  const end = (why: string) => {
    worker.terminate();
    lose(why);
  };
  worker.addEventListener('error', ({ message }) => end(message || 'its script could not be loaded'));
  worker.addEventListener('messageerror', () => end('an answer could not be read'));
}

/** A worker whose functions are called from here. */
export interface Called<Functions> {
  /** Calls a function of it; rejects with its error, or where the worker is lost or ended before it has answered. */
  ask<T>(question: (functions: Remote<Functions>) => Promise<T>): Promise<T>;
  /** Ends it, whatever it is doing. */
  end(): void;
}

/** The worker was ended from here: nobody needs telling. */
export class Ended extends Error {}

/**
 * Has a worker's functions called (`expose` in its script), its errors coming back as rejections. Comlink itself never answers for a
 * worker that is lost. `onLoss`: it is lost, and takes no further questions.
 */
export function callWorker<Functions>(worker: Worker, onLoss: () => void = () => {}): Called<Functions> {
  const waiting = new Waiting();
  let lost: Error | null = null;
  const lose = (error: Error) => {
    lost ??= error;
    waiting.lose(lost);
  };
  hearLoss(worker, (why) => {
    lose(new Error(why));
    onLoss();
  });
  const functions = wrap<Functions>(worker);
  return {
    ask: (question) => (lost ? Promise.reject(lost) : waiting.until(question(functions))),
    end() {
      worker.terminate();
      lose(new Ended('it was ended'));
    },
  };
}
