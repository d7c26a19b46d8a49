import nodePath from 'node:path';
import { plainWords } from '../../core/words/figures.ts';
import { ProblemError } from '../store/problems.ts';

/** What an MBTiles file's name ends in. */
export const tileFileEnding = '.mbtiles';

/**
 * The path of a tile file, made plain. Throws where it is none: not whole, of another kind, or on a computer of the network by
 * its name (\\server\share): Windows signs the user in there as soon as such a path is touched, whoever wrote it.
 */
export function tilePath(asked: string, at: typeof nodePath.posix = nodePath): string {
  if (/^[\\/]{2}/.test(asked)) {
    const { message, remedy } = plainWords().host.maps.elsewhere;
    throw new ProblemError('not-valid', message({ path: asked }), remedy);
  }
  const path = at.normalize(asked);
  const isWhole = at.sep === '\\' ? /^[a-z]:\\/i.test(path) : at.isAbsolute(path);
  if (isWhole && at.extname(path).toLowerCase() === tileFileEnding) return path;
  const { message, remedy } = plainWords().host.maps.notTilePath;
  throw new ProblemError('not-valid', message({ path: asked }), remedy);
}

/** Whether the path lies in the folder or below it, by its words alone. */
export function isBelow(folder: string, path: string, at: typeof nodePath.posix = nodePath): boolean {
  const way = at.relative(folder, path);
  return way !== '' && !at.isAbsolute(way) && way.split(at.sep)[0] !== '..';
}
