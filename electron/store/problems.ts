import type { Problem, ProblemCode } from '../../core/api/result.ts';
import { plainWords } from '../../core/words/figures.ts';
import type { Message, Texts } from '../../core/words/message.ts';

/** A problem on its way to the window; thrown inside the host only. */
export class ProblemError extends Error {
  readonly problem: Problem;

  constructor(code: ProblemCode, message: string, remedy: string) {
    super(message);
    this.name = 'ProblemError';
    this.problem = { code, message, remedy };
  }
}

const said = () => plainWords().host.files;

/** A file that can't be read safely; `what` is a sentence about it. */
export function damaged(what: (words: Texts['host']['files']['damaged']) => string): ProblemError {
  const words = said().damaged;
  return new ProblemError('damaged', words.message({ what: what(words) }), words.remedy);
}

/** A file that is not made as we make ours; `why` says how. */
export function notOurs(path: string, why: Message): ProblemError {
  const words = said().notOurs;
  return new ProblemError('damaged', words.message({ path, why }), words.remedy);
}

/** A file that is no longer where it was opened. */
export function moved(path: string): ProblemError {
  const words = said().moved;
  return new ProblemError('not-found', words.message({ path }), words.remedy);
}

/** The same, seen while nobody was changing anything; `kept`: where what was open is kept, as a sentence. */
export function movedMeanwhile(path: string, kept: string | null): ProblemError {
  const words = said().moved;
  return new ProblemError(
    'not-found',
    words.meanwhile({ path }),
    kept === null ? words.remedy : words.openCopy({ kept }),
  );
}

/** A file that somebody else wrote into, or laid another one over, while it was open. */
export function overwritten(path: string): ProblemError {
  const words = said().overwritten;
  return new ProblemError('overwritten', words.message({ path }), words.remedy);
}

/** The same, seen while nobody was changing anything; `kept`: where what was open is kept, as a sentence. */
export function overwrittenMeanwhile(path: string, kept: string | null): ProblemError {
  const words = said().overwritten;
  return new ProblemError(
    'overwritten',
    words.meanwhile({ path }),
    kept === null ? words.remedy : words.openCopy({ kept }),
  );
}

/** A copy of a file that was overwritten, made of what was kept of it; `lost`: what is not in it. */
export function savedFromMemory(copyPath: string, lost: string | null): ProblemError {
  const words = said().fromMemory;
  return new ProblemError('kept', words.message({ path: copyPath }), lost ?? words.whole);
}

/** What was open when a file was left that others had written into or deleted; it is in `copyPath` now. */
export function keptBeside(path: string, copyPath: string, lost: string | null): ProblemError {
  const words = said().kept;
  return new ProblemError(
    'kept',
    words.message({ path }),
    lost ? words.whereWithout({ copyPath, lost }) : words.where({ copyPath }),
  );
}

/** What was open is in no file any more, and no copy could be made of it. */
export function notKept(path: string, why: string): ProblemError {
  const words = said().notKept;
  return new ProblemError('overwritten', words.message({ path, why }), words.remedy);
}

/** A file that is not opened since there is no room to bring it up to date. */
export function noRoomToOpen(path: string): ProblemError {
  const words = said().noRoomToOpen;
  return new ProblemError('disk-full', words.message({ path }), words.remedy);
}

export function isDiskFull(error: unknown): boolean {
  return familyOf(error) === 'full';
}

/** The words for anything that went wrong while working on the file at `path`. */
export function problemOf(error: unknown, path: string): Problem {
  if (error instanceof ProblemError) return error.problem;
  const words = wordsOf[familyOf(error)];
  if (words) return words(path);
  const reason = error instanceof Error ? error.message : String(error);
  const { message, remedy } = said().failed;
  return { code: 'failed', message: message({ what: path, reason }), remedy };
}

type OfPath = { readonly message: (values: { readonly path: string }) => string; readonly remedy: string };

function problem(code: ProblemCode, path: string, { message, remedy }: OfPath): Problem {
  return { code, message: message({ path }), remedy };
}

const wordsOf: Record<string, (path: string) => Problem> = {
  inUse: (path) => problem('in-use', path, said().inUse),
  full: (path) => problem('disk-full', path, said().full),
  readOnly: (path) => problem('read-only', path, said().readOnly),
  damaged: (path) => damaged((words) => words.file({ path })).problem,
  missing: (path) => problem('not-found', path, said().missing),
  moved: (path) => moved(path).problem,
  taken: (path) => problem('exists-already', path, said().taken),
  tooLong: (path) => problem('not-valid', path, said().tooLong),
  folder: (path) => problem('not-a-project', path, said().folder),
};

/** Error codes of SQLite (https://www.sqlite.org/rescode.html) and of the operating system, sorted by what they mean here. */
const families: readonly (readonly [RegExp, string])[] = [
  [/^SQLITE_(BUSY|LOCKED)/, 'inUse'],
  [/^(SQLITE_FULL|ENOSPC|EDQUOT|EFBIG)/, 'full'],
  [/^SQLITE_READONLY_DBMOVED/, 'moved'],
  [/^(SQLITE_READONLY|SQLITE_PERM|EROFS|EACCES|EPERM)/, 'readOnly'],
  [/^SQLITE_(CORRUPT|NOTADB)/, 'damaged'],
  [/^(SQLITE_CANTOPEN|ENOENT|ENOTDIR)/, 'missing'],
  [/^EEXIST/, 'taken'],
  [/^EISDIR/, 'folder'],
  [/^ENAMETOOLONG/, 'tooLong'],
];

function familyOf(error: unknown): string {
  const code = errorCode(error);
  return families.find(([pattern]) => pattern.test(code))?.[1] ?? '';
}

function errorCode(error: unknown): string {
  return error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : '';
}
