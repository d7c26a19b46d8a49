import type { TileProblem } from './tileProblem.ts';

/** To the process that reads tile files. */
export type TileCall = {
  readonly path: string;
  /** Where the file was not chosen by the user but lies below this folder: no link on the way there is followed. */
  readonly below: string | null;
} & (
  | { readonly what: 'facts' }
  | { readonly what: 'tile'; readonly zoom: number; readonly column: number; readonly row: number }
);

export interface TileAsked {
  readonly call: TileCall;
  /** So long the answer is waited for. */
  readonly withinMs: number;
}

/** Back from it: once, that it is there; then one for each call, in order. */
export type TileTold =
  | { readonly ready: true }
  | { readonly value: unknown }
  /** What is wrong with the file. */
  | { readonly problem: TileProblem['told'] }
  /** An error of SQLite or of the system, with its code. */
  | { readonly error: { readonly code: string; readonly message: string } };
