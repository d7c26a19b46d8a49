import type { Imported } from '../../core/exchange/intake/importFeatures.ts';
import type { ReadOptions } from '../../core/exchange/preview/types.ts';
import type { Change } from '../../core/model/difference.ts';
import type { Message } from '../../core/words/message.ts';

export interface FileToRead {
  readonly fileName: string;
  readonly bytes: Uint8Array;
  readonly options: Omit<ReadOptions, 'progress'>;
}

/** Points of all lines of a file, as they come and as simplifying leaves them. */
export interface LineCounts {
  readonly before: number;
  readonly after: number;
}

/** What the file makes of the property, or why it can't come in. */
export type TakenIn =
  | ({ readonly ok: true; readonly changes: readonly Change[] } & Pick<Imported, 'problems' | 'notes'>)
  | { readonly ok: false; readonly message: Message };
