import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import * as z from 'zod';
import type { RecentFile } from '../../core/api/projectApi.ts';
import { nameOfFile } from '../store/fileFormat.ts';

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

  /** Puts the file at the top. The list is a convenience: where it can't be written it stays as it was. */
  add(path: string, openedAt: string): void {
    const others = this.#read().filter((entry) => entry.path !== path);
    const list = [{ path, openedAt }, ...others].slice(0, most);
    try {
      mkdirSync(dirname(this.#listPath), { recursive: true });
      writeFileSync(`${this.#listPath}.part`, `${JSON.stringify(list, null, 2)}\n`);
      renameSync(`${this.#listPath}.part`, this.#listPath);
    } catch {
      // A full disk or a read-only home must not stop the work on a project.
    }
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
