import { parentPort } from 'node:worker_threads';
import { SheetProblem } from '../../core/sheets/sheetProblem.ts';
import { runJob } from './printJob.ts';
import type { JobAnswered, JobAsked } from './printMessages.ts';

// The thread that prints: see `printRoom.ts`.
parentPort!.on('message', (asked: JobAsked) => void print(asked));

async function print({ number, job }: JobAsked): Promise<void> {
  try {
    const made = await runJob(job);
    answer({ number, made }, [made.bytes.buffer as ArrayBuffer]);
  } catch (error) {
    if (error instanceof SheetProblem) answer({ number, problem: { message: error.message, remedy: error.remedy } });
    else answer({ number, error });
  }
}

function answer(message: JobAnswered, moved: ArrayBuffer[] = []): void {
  parentPort!.postMessage(message, moved);
}
