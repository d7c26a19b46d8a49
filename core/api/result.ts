/** What can go wrong between a window and its host. Each code has one meaning; the words are for people. */
export type ProblemCode =
  | 'no-file-open'
  | 'not-found'
  | 'not-a-project'
  | 'newer-version'
  | 'damaged'
  | 'read-only'
  | 'disk-full'
  | 'in-use'
  | 'exists-already'
  | 'out-of-date'
  | 'overwritten'
  | 'kept'
  | 'not-valid'
  | 'not-available'
  | 'stopped'
  | 'ask-first'
  | 'failed';

export interface Problem {
  readonly code: ProblemCode;
  /** What is wrong and where, as a sentence. */
  readonly message: string;
  /** What to do about it, as a sentence. */
  readonly remedy: string;
}

/** The outcome of anything that may fail. Errors do not cross the border as exceptions. */
export type Result<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problem: Problem };

export function succeed<T>(value: T): Result<T> {
  return { ok: true, value };
}

export function fail(code: ProblemCode, message: string, remedy: string): { ok: false; problem: Problem } {
  return { ok: false, problem: { code, message, remedy } };
}
