import { dirname } from 'node:path';
import type { TileFileFacts } from '../../core/api/pictureApi.ts';
import type { ProjectApi } from '../../core/api/projectApi.ts';
import type { Problem } from '../../core/api/result.ts';
import { plainWords } from '../../core/words/figures.ts';
import { ProblemError } from '../store/problems.ts';
import type { TileCall } from '../store/tileMessages.ts';
import { NoAnswer, TileReader } from '../store/tileReader.ts';
import { ChosenFiles } from './chosenFiles.ts';
import { isBelow, tilePath } from './tilePaths.ts';

/** So long a tile file is waited for: a drive that sleeps takes some seconds to turn. */
export interface TilePatience {
  readonly openMs: number;
  readonly tileMs: number;
}

const openingAtOnce = 3;

const usualPatience: TilePatience = { openMs: 15_000, tileMs: 10_000 };

/**
 * The tile files under the drawing. A file is opened only if the user chose it on this machine, or if it lies with the
 * property's own file, in its folder or below; one that a property merely names, as a property from someone else may, waits until the
 * user has it opened. One that does not answer is given up until it is opened anew.
 */
export class TileFiles {
  readonly #chosen: ChosenFiles;
  readonly #patience: TilePatience;
  /** For files that nothing is known of yet: one that is silent holds up neither the tiles of the others nor many new ones. */
  readonly #opening = Array.from({ length: openingAtOnce }, () => new TileReader('end'));
  readonly #reading = new TileReader('stay');
  /** Openings under way, so that all who ask for a file meanwhile wait for one. */
  readonly #openings = new Map<string, Promise<TileFileFacts>>();
  readonly #givenUp = new Map<string, Problem>();
  /** Those that were open in this run. They stay allowed where the property is saved elsewhere. */
  readonly #wereOpen = new Set<string>();

  constructor(listPath: string, patience: TilePatience = usualPatience) {
    this.#chosen = new ChosenFiles(listPath);
    this.#patience = patience;
  }

  /** `projectPath`: of the open property's file, if any. `chosen`: by the user, here and now. */
  async open(asked: string, chosen: boolean, projectPath: string | null): Promise<TileFileFacts> {
    const path = tilePath(asked);
    if (chosen) {
      this.#chosen.add(path);
      this.#givenUp.delete(path);
    }
    const allowed = this.#allowed(path, projectPath);
    const opening = this.#openings.get(path) ?? this.#look(allowed);
    this.#openings.set(path, opening);
    try {
      return await opening;
    } finally {
      if (this.#openings.get(path) === opening) this.#openings.delete(path);
    }
  }

  async tile(
    { path: asked, zoom, column, row }: Parameters<ProjectApi['tileFileTile']>[0],
    projectPath: string | null,
  ): Promise<Uint8Array | null> {
    const path = tilePath(asked);
    const allowed = this.#allowed(path, projectPath);
    if (!this.#wereOpen.has(path)) await this.open(path, false, projectPath);
    const tile = await this.#ask(this.#reading, { what: 'tile', ...allowed, zoom, column, row });
    return tile as Uint8Array | null;
  }

  /** Ends what is being read, and the processes that read. */
  close(): void {
    for (const reader of this.#opening) reader.stop();
    this.#reading.stop();
    this.#openings.clear();
    this.#givenUp.clear();
  }

  async #look(allowed: Pick<TileCall, 'path' | 'below'>): Promise<TileFileFacts> {
    const [least] = [...this.#opening].sort((a, b) => a.pending - b.pending);
    const facts = await this.#ask(least!, { what: 'facts', ...allowed });
    this.#wereOpen.add(allowed.path);
    return facts as TileFileFacts;
  }

  #allowed(path: string, projectPath: string | null): Pick<TileCall, 'path' | 'below'> {
    if (this.#chosen.has(path) || this.#wereOpen.has(path)) return { path, below: null };
    const folder = projectPath === null ? null : dirname(projectPath);
    if (folder !== null && isBelow(folder, path)) return { path, below: folder };
    const { message, remedy } = plainWords().host.maps.named;
    throw new ProblemError('ask-first', message({ path }), remedy);
  }

  async #ask(reader: TileReader, call: TileCall): Promise<unknown> {
    const { path } = call;
    const withinMs = call.what === 'facts' ? this.#patience.openMs : this.#patience.tileMs;
    try {
      return await reader.ask(call, withinMs, () => this.#assertNotGivenUp(path));
    } catch (error) {
      if (!(error instanceof NoAnswer)) throw error;
      this.#givenUp.set(path, wordsFor(path, error, withinMs));
      return this.#assertNotGivenUp(path);
    }
  }

  #assertNotGivenUp(path: string): void {
    const problem = this.#givenUp.get(path);
    if (problem) throw new ProblemError(problem.code, problem.message, problem.remedy);
  }
}

function wordsFor(path: string, { why }: NoAnswer, withinMs: number): Problem {
  const { late, brokeOff, remedy } = plainWords().host.maps.silent;
  const message = why === 'late' ? late({ path, waitedS: Math.round(withinMs / 1000) }) : brokeOff({ path });
  return { code: 'failed', message, remedy };
}
