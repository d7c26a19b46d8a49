import { basename, extname } from 'node:path';

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
