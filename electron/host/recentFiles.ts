import { existsSync, readFileSync } from 'node:fs';
import * as z from 'zod';
import type { RecentFile } from '../../core/api/projectApi.ts';
import { nameOfFile } from '../store/fileFormat.ts';
import { writeConfig } from './writeConfig.ts';

const most = 20;
const entries = z.array(z.object({ path: z.string(), openedAt: z.string() }));

/** The files that were opened last, newest first, kept in a small JSON file. */
export class RecentFiles {
  readonly #listPath: string;

  constructor(listPath: string) {
    this.#listPath = listPath;
  }

  list(): RecentFile[] {
    return this.#read().map(({ path, openedAt }) => ({
      path,
      fileName: nameOfFile(path),
      openedAt,
      present: existsSync(path),
    }));
  }

  /** Puts the file at the top. */
  add(path: string, openedAt: string): void {
    const others = this.#read().filter((entry) => entry.path !== path);
    writeConfig(this.#listPath, [{ path, openedAt }, ...others].slice(0, most));
  }

  #read(): z.infer<typeof entries> {
    try {
      return entries.parse(JSON.parse(readFileSync(this.#listPath, 'utf8')));
    } catch {
      // Not there yet, or spoilt: begin a new one.
      return [];
    }
  }
}
