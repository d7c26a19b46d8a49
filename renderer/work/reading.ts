import { proxy } from 'comlink';
import type { ImportChoices } from '../../core/exchange/intake/importFeatures.ts';
import type { ReadResult } from '../../core/exchange/preview/types.ts';
import { allThings, type Project } from '../../core/model/project.ts';
import { message } from '../../core/words/message.ts';
import { faultText } from '../state/report.ts';
import { callWorker, Ended } from './callWorker.ts';
import type { ReadingFunctions } from './reading.worker.ts';
import type { FileToRead, LineCounts, TakenIn } from './readingMessages.ts';

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
  const room = callWorker<ReadingFunctions>(worker);
  room
    .ask<ReadResult>(({ read }) => read(file, proxy(news.progress)))
    .then(news.read, (error: unknown) => {
      if (error instanceof Ended) return;
      room.end();
      news.read(unreadable(faultText(error)));
    });
  return {
    count: (simplifyM) => room.ask<LineCounts>(({ count }) => count(simplifyM)).catch(() => null),
    takeIn: (project, choices) =>
      room
        .ask<TakenIn>(({ takeIn }) => takeIn([...allThings(project)], choices))
        .catch((error: unknown) => ({
          ok: false,
          message: message('exchange.file.notImported', { fault: faultText(error) }),
        })),
    end: room.end,
  };
}

function unreadable(fault: string): ReadResult {
  return {
    ok: false,
    message: message('exchange.file.failed', { fault }),
    remedy: message('exchange.remedy.nothingChanged'),
  };
}
