import type { ReadOptions, ReadResult } from '../../core/exchange/preview/types.ts';

export interface ToReading {
  readonly fileName: string;
  readonly bytes: Uint8Array;
  readonly options: Omit<ReadOptions, 'progress'>;
}

export type FromReading =
  | { readonly type: 'progress'; readonly fraction: number }
  | { readonly type: 'read'; readonly result: ReadResult }
  | { readonly type: 'failed'; readonly message: string };
