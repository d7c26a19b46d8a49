import { basename, extname } from 'node:path';
import { plainWords } from '../../core/words/figures.ts';
import { ProblemError } from './problems.ts';

/** What a project file's name ends in. */
export const fileEnding = '.undergate';

/** SQLite's application_id of a project file: "UGAT" in ASCII. Set by the first migration. */
export const applicationId = 0x55474154;

/** The file's name without folder and ending: what people call it. */
export function nameOfFile(path: string): string {
  return basename(path, extname(path) === fileEnding ? fileEnding : undefined);
}

/** The path with the project file's ending, added where it is missing. */
export function withEnding(path: string): string {
  return extname(path) === fileEnding ? path : path + fileEnding;
}

/**
 * Bytes of a file's name. The most that file systems take is 255; SQLite's journal beside it is called "-journal" more, and
 * a picture on its way in 65 more: see `imageStaging.ts`.
 */
const mostNameBytes = { open: 255 - 8, make: 255 - 65 };

/**
 * Throws where a file of this name can't be worked with: better-sqlite3 drops blanks at the end of a name, and so would open
 * the file beside it; and where a name is too long for the files beside it, no edit could be written.
 */
export function assertUsableName(path: string, use: 'open' | 'make' = 'open'): void {
  const name = basename(path);
  if (path.trim() !== path) {
    const { message, remedy } = plainWords().host.files.nameWithBlank;
    throw new ProblemError('not-valid', message({ name }), remedy);
  }
  if (Buffer.byteLength(name) > mostNameBytes[use]) {
    const { message, remedy } = plainWords().host.files.nameTooLong;
    throw new ProblemError('not-valid', message({ name }), remedy);
  }
}

/** The name with as much of `stem` before `rest` as may be made. */
export function fittingName(stem: string, rest: string): string {
  const letters = Array.from(stem);
  while (Buffer.byteLength(letters.join('') + rest) > mostNameBytes.make) letters.pop();
  return letters.join('') + rest;
}
