import type { Problem, ProblemCode } from '../../core/api/result.ts';

/** A problem on its way to the window; thrown inside the host only. */
export class ProblemError extends Error {
  readonly problem: Problem;

  constructor(code: ProblemCode, message: string, remedy: string) {
    super(message);
    this.name = 'ProblemError';
    this.problem = { code, message, remedy };
  }
}

/** A file that can't be read safely; `what` is a sentence about it. */
export function damaged(what: string): ProblemError {
  return new ProblemError(
    'damaged',
    `${what} The file was left as it is.`,
    'Open your newest copy of it, and keep the damaged file for whoever helps you with it.',
  );
}

/** A file that is not made as we make ours; `what` says how. */
export function notOurs(path: string, what: string): ProblemError {
  return new ProblemError(
    'damaged',
    `${path} was not opened: ${what}. The file was left as it is.`,
    'If you had another program add or change it, undo that there; else open your newest copy of the file.',
  );
}

/** A file that is no longer where it was opened. */
export function moved(path: string): ProblemError {
  return new ProblemError(
    'not-found',
    `${path} was moved, renamed or deleted while it was open, so the last change was not saved.`,
    'Save a copy under a new name to go on with all you see, or open the file where it is now.',
  );
}

/** The same, seen while nobody was changing anything; `kept`: where what was open is kept, as a sentence. */
export function movedMeanwhile(path: string, kept: string | null): ProblemError {
  return new ProblemError(
    'not-found',
    `${path} is no longer there: it was moved, renamed or deleted while it was open, or its drive is gone. Nothing can be saved in it.`,
    kept === null ? moved(path).problem.remedy : `${kept} Open that copy to go on.`,
  );
}

/** A file that somebody else wrote into, or laid another one over, while it was open. */
export function overwritten(path: string): ProblemError {
  return new ProblemError(
    'overwritten',
    `Another program wrote into ${path} while it was open here (a copy or a backup was laid over it, say), so the last change was not saved. Nothing was written into what is there now.`,
    'Save a copy under a new name to keep what you see, or open the file again to see what is in it now.',
  );
}

/** The same, seen while nobody was changing anything; `kept`: where what was open is kept, as a sentence. */
export function overwrittenMeanwhile(path: string, kept: string | null): ProblemError {
  return new ProblemError(
    'overwritten',
    `Another program wrote into ${path} while it was open here (a copy or a backup was laid over it, say). Nothing will be written into what is there now.`,
    kept === null
      ? overwritten(path).problem.remedy
      : `${kept} Open that copy to go on, or open the file again to see what is in it now.`,
  );
}

/** A copy of a file that was overwritten, made of what was kept of it; `lost`: what is not in it. */
export function savedFromMemory(copyPath: string, lost: string | null): ProblemError {
  return new ProblemError(
    'kept',
    `${copyPath} holds all that was drawn and recorded. What was done before it can't be undone in it.`,
    lost ?? 'Its photos and background maps are complete.',
  );
}

/** What was open when a file was left that others had written into or deleted; it is in `copyPath` now. */
export function keptBeside(path: string, copyPath: string, lost: string | null): ProblemError {
  return new ProblemError(
    'kept',
    `${path} was deleted while it was open here, or another program wrote into it, or its drive is gone. It was left as it is now.`,
    [`What you saw is kept in ${copyPath}.`, ...(lost ? [lost] : [])].join(' '),
  );
}

/** What was open is in no file any more, and no copy could be made of it. */
export function notKept(path: string, why: string): ProblemError {
  return new ProblemError(
    'overwritten',
    `What you see is no longer in ${path}, or that is out of reach, and it could not be kept in a copy: ${why}`,
    'Save a copy on another disk first.',
  );
}

/** A file that is not opened since there is no room to bring it up to date. */
export function noRoomToOpen(path: string): ProblemError {
  return new ProblemError(
    'disk-full',
    `The disk that holds ${path} is full: there is no room to bring the file up to date for this Undergate. The file was left as it is.`,
    'Make room on the disk and open it again, or copy the file to another disk and open it there.',
  );
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
  return problem(
    'failed',
    `Something went wrong with ${path}: ${reason}.`,
    'Try again; what was saved before is kept.',
  );
}

const wordsOf: Record<string, (path: string) => Problem> = {
  inUse: (path) =>
    problem(
      'in-use',
      `${path} is open in another Undergate.`,
      'Go on in that window, or close it there and open the file here again.',
    ),
  full: (path) =>
    problem(
      'disk-full',
      `The disk that holds ${path} is full, so the last change was not saved.`,
      'Make room on the disk and make the change again, or save a copy on another disk. The file holds everything up to that change.',
    ),
  readOnly: (path) =>
    problem(
      'read-only',
      `${path} can't be written: the file or its folder is read-only.`,
      'Copy the file to a folder of your own and open it there, or ask for the right to write here.',
    ),
  damaged: (path) => damaged(`${path} is damaged and can't be read safely.`).problem,
  missing: (path) =>
    problem(
      'not-found',
      `${path} is not there.`,
      'It may have been moved, renamed or deleted, or its drive is not plugged in: look for it and open it there.',
    ),
  moved: (path) => moved(path).problem,
  taken: (path) =>
    problem('exists-already', `There is a file at ${path} already. It was not touched.`, 'Choose another name.'),
  tooLong: (path) => problem('not-valid', `The name ${path} is too long.`, 'Choose a shorter one.'),
  folder: (path) => problem('not-a-project', `${path} is a folder, not a project file.`, 'Choose a file inside it.'),
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

function problem(code: ProblemCode, message: string, remedy: string): Problem {
  return { code, message, remedy };
}
