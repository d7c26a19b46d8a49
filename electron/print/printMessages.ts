import type { MadeFile } from '../../core/api/projectApi.ts';
import type { PrintJob } from './printJob.ts';

/** To the thread that prints. */
export interface JobAsked {
  readonly number: number;
  readonly job: PrintJob;
}

/** Back from it, by the number of the job. */
export type JobAnswered = { readonly number: number } & (
  | { readonly made: MadeFile }
  /** Of a `SheetProblem`: it can't be made as asked. */
  | { readonly problem: { readonly message: string; readonly remedy: string } }
  | { readonly error: unknown }
);
