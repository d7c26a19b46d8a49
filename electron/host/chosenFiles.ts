import { readFileSync } from 'node:fs';
import * as z from 'zod';
import { writeConfig } from './writeConfig.ts';

const most = 500;
const paths = z.array(z.string());

/** The map files that the user chose on this machine, newest first, kept in a small JSON file. */
export class ChosenFiles {
  readonly #listPath: string;
  /** As in the file, and what could not be written there. */
  #paths: readonly string[];

  constructor(listPath: string) {
    this.#listPath = listPath;
    this.#paths = read(listPath);
  }

  has(path: string): boolean {
    return this.#paths.includes(path);
  }

  add(path: string): void {
    if (this.#paths[0] === path) return;
    this.#paths = [path, ...[...this.#paths, ...read(this.#listPath)].filter((other) => other !== path)];
    this.#paths = [...new Set(this.#paths)].slice(0, most);
    writeConfig(this.#listPath, this.#paths);
  }
}

function read(listPath: string): string[] {
  try {
    return paths.parse(JSON.parse(readFileSync(listPath, 'utf8')));
  } catch {
    // Not there yet, or spoilt: begin a new one.
    return [];
  }
}
