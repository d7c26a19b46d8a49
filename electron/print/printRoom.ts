import { join } from 'node:path';
import { Worker } from 'node:worker_threads';
import type { FindOptions } from '../../core/api/findOptions.ts';
import type { OrderOptions } from '../../core/api/orderOptions.ts';
import type { PackOptions } from '../../core/api/packOptions.ts';
import type { MadeFile } from '../../core/api/projectApi.ts';
import type { SheetOptions } from '../../core/api/sheetOptions.ts';
import type { Thing } from '../../core/model/things.ts';
import { SheetProblem } from '../../core/sheets/sheetProblem.ts';
import type { Photos, PrintJob } from './printJob.ts';
import type { JobAnswered, JobAsked } from './printMessages.ts';

/** The worker's file: beside this one in the source, and beside the bundle that this one is part of. */
const workerFile = import.meta.filename.endsWith('.ts') ? 'print.worker.ts' : 'printWorker.js';

/**
 * The printers on a thread of their own, so that edits are not held up while pages are made. The thread begins with
 * the first job, stays for the next ones, and keeps no process alive. Each printer is as the one of its name, and throws
 * what that throws.
 */
export function createPrintRoom() {
  const waiting = new Map<number, PromiseWithResolvers<MadeFile>>();
  let worker: Worker | null = null;
  let jobs = 0;

  function print(job: PrintJob): Promise<MadeFile> {
    const answer = Promise.withResolvers<MadeFile>();
    const asked: JobAsked = { number: jobs++, job };
    waiting.set(asked.number, answer);
    worker ??= startWorker();
    worker.postMessage(asked);
    return answer.promise;
  }

  function startWorker(): Worker {
    const started = new Worker(join(import.meta.dirname, workerFile));
    started.unref();
    started.on('message', settle);
    started.on('error', giveUp);
    started.on('exit', () => giveUp(new Error('The thread that prints has ended.')));
    return started;
  }

  function settle(answered: JobAnswered): void {
    const answer = waiting.get(answered.number);
    waiting.delete(answered.number);
    if ('made' in answered) answer?.resolve(answered.made);
    else if ('problem' in answered) answer?.reject(new SheetProblem(answered.problem.message, answered.problem.remedy));
    else answer?.reject(answered.error);
  }

  /** The thread is lost; the next job gets a new one. */
  function giveUp(error: Error): void {
    worker = null;
    for (const { reject } of waiting.values()) reject(error);
    waiting.clear();
  }

  return {
    printSheets: (things: readonly Thing[], options: SheetOptions) => print({ what: 'sheets', things, options }),
    printOrder: (things: readonly Thing[], options: OrderOptions) => print({ what: 'order', things, options }),
    printFind: (things: readonly Thing[], options: FindOptions) => print({ what: 'find', things, options }),
    printPack: (things: readonly Thing[], photoBytes: (blobId: string) => Uint8Array | null, options: PackOptions) =>
      print({ what: 'pack', things, options, photos: photosForPack(things, photoBytes) }),
  };
}

/** The photos that a pack may show: it shows them small. */
function photosForPack(things: readonly Thing[], photoBytes: (blobId: string) => Uint8Array | null): Photos {
  const photos = new Map<string, Uint8Array>();
  for (const thing of things) {
    if (thing.kind !== 'photo') continue;
    const bytes = photoBytes(thing.thumbId);
    if (bytes) photos.set(thing.thumbId, bytes);
  }
  return photos;
}
