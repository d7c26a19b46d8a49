import { join } from 'node:path';
import { Worker } from 'node:worker_threads';
import { type Remote, wrap } from 'comlink';
import nodeEndpoint from 'comlink/dist/umd/node-adapter.js';
import type { PrintJob } from '../../core/api/printJob.ts';
import type { MadeFile } from '../../core/api/projectApi.ts';
import { Waiting } from '../../core/api/waiting.ts';
import type { Thing } from '../../core/model/things.ts';
import { SheetProblem } from '../../core/sheets/sheetProblem.ts';
import { activeLanguage } from '../../core/words/language.ts';
import type { Printout, PrintThread } from './print.worker.ts';
import type { Photos } from './printJob.ts';

/**
 * Prints a job from everything in a file and its photos, as one PDF. Throws a `SheetProblem` where it can't be made as asked.
 */
export type Printer = (
  job: PrintJob,
  things: readonly Thing[],
  photoBytes: (blobId: string) => Uint8Array | null,
) => Promise<MadeFile>;

/** The worker's file: beside this one in the source, and beside the bundle that this one is part of. */
const workerFile = join(
  import.meta.dirname,
  import.meta.filename.endsWith('.ts') ? 'print.worker.ts' : 'printWorker.js',
);

/**
 * The printer on a thread of its own, so that edits are not held up while pages are made. The thread begins with
 * the first job, stays for the next ones, and keeps no process alive; where it is lost, its jobs fail and the next one gets
 * another.
 */
export function createPrintRoom(file = workerFile): Printer {
  const waiting = new Waiting();
  let thread: Remote<PrintThread> | null = null;

  function startThread(): Remote<PrintThread> {
    const worker = new Worker(file);
    const started = wrap<PrintThread>(nodeEndpoint(worker));
    worker.unref();
    const lose = (error: Error) => {
      if (thread !== started) return;
      thread = null;
      waiting.lose(error);
    };
    worker.on('error', lose);
    worker.on('messageerror', (error) => {
      lose(new Error('What the thread that prints has made can’t be read.', { cause: error }));
      void worker.terminate();
    });
    worker.on('exit', () => lose(new Error('The thread that prints has ended.')));
    return started;
  }

  return async (job, things, photoBytes) => {
    thread ??= startThread();
    const photos: Photos = job.what === 'pack' ? smallPhotos(things, photoBytes) : new Map();
    const printout = await waiting.until<Printout>(thread.print(job, things, photos, activeLanguage().tag));
    if ('made' in printout) return printout.made;
    throw new SheetProblem(printout.problem.message, printout.problem.remedy);
  };
}

/** The photos that a pack may show: it shows them small. */
export function smallPhotos(things: readonly Thing[], photoBytes: (blobId: string) => Uint8Array | null): Photos {
  const photos = new Map<string, Uint8Array>();
  for (const thing of things) {
    if (thing.kind !== 'photo') continue;
    const bytes = photoBytes(thing.thumbId);
    if (bytes) photos.set(thing.thumbId, bytes);
  }
  return photos;
}
