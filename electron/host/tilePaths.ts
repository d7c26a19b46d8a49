import nodePath from 'node:path';
import { ProblemError } from '../store/problems.ts';

/** What an MBTiles file's name ends in. */
export const tileFileEnding = '.mbtiles';

/**
 * The path of a tile file, made plain. Throws where it is none: not whole, of another kind, or on a computer of the network by
 * its name (\\server\share): Windows signs the user in there as soon as such a path is touched, whoever wrote it.
 */
export function tilePath(asked: string, at: typeof nodePath.posix = nodePath): string {
  if (/^[\\/]{2}/.test(asked)) {
    throw new ProblemError(
      'not-valid',
      `${asked} lies on another computer, so it is not opened.`,
      'Copy the map to this computer, or give the shared folder a drive letter and choose the map there.',
    );
  }
  const path = at.normalize(asked);
  const isWhole = at.sep === '\\' ? /^[a-z]:\\/i.test(path) : at.isAbsolute(path);
  if (isWhole && at.extname(path).toLowerCase() === tileFileEnding) return path;
  throw new ProblemError('not-valid', `${asked} is not the whole path of an MBTiles file.`, 'Choose it in the list.');
}

/** Whether the path lies in the folder or below it, by its words alone. */
export function isBelow(folder: string, path: string, at: typeof nodePath.posix = nodePath): boolean {
  const way = at.relative(folder, path);
  return way !== '' && !at.isAbsolute(way) && way.split(at.sep)[0] !== '..';
}
