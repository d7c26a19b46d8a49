import { type Dirent, readdirSync, type Stats, statSync } from 'node:fs';
import { dirname, extname, join } from 'node:path';
import type { FolderListing, ListedFile } from '../../core/api/projectApi.ts';
import { byName } from '../../core/words/text.ts';
import { fileEnding } from '../store/fileFormat.ts';
import { tileFileEnding } from './tilePaths.ts';

/** The folders, project files and tile files in a folder, by name; hidden ones are left out. */
export function listFolder(path: string): FolderListing {
  const entries = readdirSync(path, { withFileTypes: true })
    .filter((entry) => !entry.name.startsWith('.'))
    .flatMap((entry) => followed(path, entry))
    .sort(byName);
  const parent = dirname(path);
  return {
    path,
    parent: parent === path ? null : parent,
    folders: entries.filter(({ stats }) => stats.isDirectory()).map(({ name }) => name),
    projects: entries.filter(({ name, stats }) => stats.isFile() && extname(name) === fileEnding).map(listed),
    tileFiles: entries.filter(({ name, stats }) => stats.isFile() && isTileFile(name)).map(listed),
  };
}

function listed({ name, stats }: { name: string; stats: Stats }): ListedFile {
  return { name, sizeBytes: stats.size, changedAt: stats.mtime.toISOString() };
}

function isTileFile(name: string): boolean {
  return extname(name).toLowerCase() === tileFileEnding;
}

/** The entry with what it leads to; nothing for a link to nowhere, or where one may not look. */
function followed(folder: string, entry: Dirent): { name: string; stats: Stats }[] {
  if (!entry.isDirectory() && !entry.isSymbolicLink() && extname(entry.name) !== fileEnding && !isTileFile(entry.name))
    return [];
  try {
    return [{ name: entry.name, stats: statSync(join(folder, entry.name)) }];
  } catch {
    return [];
  }
}
