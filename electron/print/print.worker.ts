import { parentPort } from 'node:worker_threads';
import { expose, transfer } from 'comlink';
import nodeEndpoint from 'comlink/dist/umd/node-adapter.js';
import type { PrintJob } from '../../core/api/printJob.ts';
import type { MadeFile } from '../../core/api/projectApi.ts';
import type { Thing } from '../../core/model/things.ts';
import { SheetProblem } from '../../core/sheets/sheetProblem.ts';
import { languageOf, setLanguage } from '../../core/words/language.ts';
import { type Photos, printJob } from './printJob.ts';

/** What a job became; with `problem`, of a `SheetProblem`, it can't be made as asked. */
export type Printout = { readonly made: MadeFile } | { readonly problem: Pick<SheetProblem, 'message' | 'remedy'> };

/** What the thread that prints answers to: see `printRoom.ts`. */
const printThread = {
  /** `language`: the tag of that in which the pages and what is wrong with them are said. */
  async print(job: PrintJob, things: readonly Thing[], photos: Photos, language: string): Promise<Printout> {
    setLanguage(languageOf(language));
    try {
      const made = await printJob(job, things, photos);
      return transfer({ made }, [made.bytes.buffer as ArrayBuffer]);
    } catch (error) {
      if (error instanceof SheetProblem) return { problem: { message: error.message, remedy: error.remedy } };
      throw error;
    }
  },
};
export type PrintThread = typeof printThread;

expose(printThread, nodeEndpoint(parentPort!));
