import type { ImportChoices } from '../../core/exchange/intake/importFeatures.ts';
import type { ReadResult } from '../../core/exchange/preview/types.ts';
import { allThings, type Project } from '../../core/model/project.ts';
import type { FileToRead, FromReading, LineCounts, TakenIn, ToReading } from './readingMessages.ts';
import { sayLocale } from './workerLocale.ts';

export interface ReadingNews {
  readonly progress: (fraction: number) => void;
  readonly read: (result: ReadResult) => void;
}

/** A file that is being read beside the window, and taken in there. */
export interface ReadingRoom {
  /** Points of its lines before and after simplifying; null: they could not be counted. */
  readonly count: (simplifyM: number) => Promise<LineCounts | null>;
  /** What the file makes of the property. */
  readonly takeIn: (project: Project, choices: ImportChoices) => Promise<TakenIn>;
  /** Stops it, whatever it is doing: nothing is heard of it from then on. */
  readonly end: () => void;
}

/** Reads a file beside the window. */
export function startReading(file: FileToRead, news: ReadingNews): ReadingRoom {
  const worker = new Worker(new URL('./reading.worker.ts', import.meta.url), { type: 'module' });
  sayLocale(worker);
  let isRead = false;
  let lastNumber = 0;
  const waiting = new Map<number, (answer: FromReading) => void>();
  const send = (message: ToReading) => worker.postMessage(message);
  const ask = (question: (number: number) => ToReading): Promise<FromReading> =>
    new Promise((resolve) => {
      const number = ++lastNumber;
      waiting.set(number, resolve);
      send(question(number));
    });
  const fail = (message: string) => {
    const failure = { type: 'failed', message } as const;
    for (const answer of waiting.values()) answer(failure);
    waiting.clear();
    if (isRead) return;
    worker.terminate();
    news.read(unreadable(message));
  };
  worker.addEventListener('message', ({ data }: MessageEvent<FromReading>) => {
    if (data.type === 'progress') news.progress(data.fraction);
    else if (data.type === 'read') {
      isRead = true;
      news.read(data.result);
    } else if (data.type === 'failed') fail(data.message);
    else {
      waiting.get(data.number)?.(data);
      waiting.delete(data.number);
    }
  });
  worker.addEventListener('error', (event) => fail(event.message));
  send({ type: 'read', ...file });
  return {
    async count(simplifyM) {
      const answer = await ask((number) => ({ type: 'count', number, simplifyM }));
      return answer.type === 'counted' ? answer.counts : null;
    },
    async takeIn(project, choices) {
      const answer = await ask((number) => ({ type: 'takeIn', number, things: [...allThings(project)], choices }));
      if (answer.type === 'takenIn') return answer.takenIn;
      const why = answer.type === 'failed' ? answer.message.slice(0, 200) : answer.type;
      return { ok: false, message: `The file could not be taken in, by a fault of this program (${why}).` };
    },
    end: () => worker.terminate(),
  };
}

function unreadable(message: string): ReadResult {
  return {
    ok: false,
    message: `The file could not be read (${message.slice(0, 200)}).`,
    remedy: 'Nothing was changed. Save the file again from the program that made it, or split it.',
  };
}
