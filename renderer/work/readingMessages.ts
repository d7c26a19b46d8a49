import type { ImportChoices, Imported } from '../../core/exchange/intake/importFeatures.ts';
import type { ReadOptions, ReadResult } from '../../core/exchange/preview/types.ts';
import type { Change } from '../../core/model/difference.ts';
import type { Thing } from '../../core/model/things.ts';

export interface FileToRead {
  readonly fileName: string;
  readonly bytes: Uint8Array;
  readonly options: Omit<ReadOptions, 'progress'>;
}

/** What passes between the window and the worker that reads one file and takes it in. Questions have a number. */
export type ToReading =
  | ({ readonly type: 'read' } & FileToRead)
  | { readonly type: 'count'; readonly number: number; readonly simplifyM: number }
  | {
      readonly type: 'takeIn';
      readonly number: number;
      /** All things of the property, as it is. */
      readonly things: readonly Thing[];
      readonly choices: ImportChoices;
    };

export type FromReading =
  | { readonly type: 'progress'; readonly fraction: number }
  | { readonly type: 'read'; readonly result: ReadResult }
  | { readonly type: 'failed'; readonly message: string }
  | { readonly type: 'counted'; readonly number: number; readonly counts: LineCounts }
  | { readonly type: 'takenIn'; readonly number: number; readonly takenIn: TakenIn };

/** Points of all lines of a file, as they come and as simplifying leaves them. */
export interface LineCounts {
  readonly before: number;
  readonly after: number;
}

/** What the file makes of the property, or why it can't come in. */
export type TakenIn =
  | ({ readonly ok: true; readonly changes: readonly Change[] } & Pick<Imported, 'problems' | 'notes'>)
  | { readonly ok: false; readonly message: string };
