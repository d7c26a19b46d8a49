import { rmSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import Sqlite, { type Database } from 'better-sqlite3';
import type { PictureTile } from '../../core/api/pictureApi.ts';
import { type Pyramid, pyramidOf, tileCount, tilePx } from '../../core/exchange/image/pyramid.ts';
import { plainWords } from '../../core/words/figures.ts';
import { type Message, message } from '../../core/words/message.ts';
import { ProblemError } from './problems.ts';

export interface NewImage {
  readonly id: string;
  readonly fileName: string;
  readonly widthPx: number;
  readonly heightPx: number;
}

/** What the name of a picture on its way in ends in. */
export const stagingEnding = '.picture.part';

/**
 * A picture on its way in. Its tiles gather in a hidden file beside the project file, which is not touched before all are
 * there; then they are taken over in one transaction. Whoever stops before that leaves nothing behind.
 */
export class ImageStaging {
  readonly image: NewImage;
  readonly #path: string;
  readonly #database: Database;
  readonly #pyramid: Pyramid;
  #done = 0;

  constructor(projectPath: string, image: NewImage) {
    this.image = image;
    this.#pyramid = pyramidOf(image.widthPx, image.heightPx);
    this.#path = join(dirname(projectPath), `.${basename(projectPath)}.${image.id}${stagingEnding}`);
    this.#database = new Sqlite(this.#path);
    // Nothing in here has to outlive this process.
    this.#database.pragma('journal_mode = OFF');
    this.#database.pragma('synchronous = OFF');
    this.#database.exec(
      'CREATE TABLE tile (level INTEGER, tile_column INTEGER, tile_row INTEGER, bytes BLOB, PRIMARY KEY (level, tile_column, tile_row)) STRICT',
    );
  }

  get progress(): { readonly tilesDone: number; readonly tilesInAll: number } {
    return { tilesDone: this.#done, tilesInAll: tileCount(this.#pyramid) };
  }

  add(tiles: readonly PictureTile[]): void {
    const insert = this.#database.prepare('INSERT INTO tile VALUES (?, ?, ?, ?)');
    for (const tile of tiles) {
      this.#assertInside(tile);
      insert.run(tile.level, tile.column, tile.row, tile.bytes);
      this.#done += 1;
    }
  }

  /**
   * Runs `work` while the tiles lie ready beside the project's own tables, for `copyInto` within one of its transactions.
   * Throws where tiles are missing.
   */
  beside<T>(project: Database, work: () => T): T {
    const { tilesDone, tilesInAll } = this.progress;
    if (tilesDone !== tilesInAll)
      throw notValid(message('host.maps.picture.tilesMissing', { done: tilesDone, all: tilesInAll }));
    project.prepare('ATTACH DATABASE ? AS staging').run(this.#path);
    try {
      return work();
    } finally {
      if (project.open) project.exec('DETACH DATABASE staging');
    }
  }

  /** Writes the picture into the project's tables. */
  copyInto(project: Database): void {
    const { id, fileName, widthPx, heightPx } = this.image;
    project.prepare('INSERT INTO image VALUES (?, ?, ?, ?, ?)').run(id, fileName, widthPx, heightPx, tilePx);
    project.prepare('INSERT INTO image_tile SELECT ?, level, tile_column, tile_row, bytes FROM staging.tile').run(id);
  }

  discard(): void {
    this.#database.close();
    rmSync(this.#path, { force: true });
  }

  #assertInside({ level, column, row }: PictureTile): void {
    const at = this.#pyramid.levels[level];
    if (at && column < at.columns && row < at.rows) return;
    throw notValid(message('host.maps.picture.noSuchTile', { level, column, row }));
  }
}

function notValid(why: Message): ProblemError {
  const words = plainWords().host.maps.picture;
  return new ProblemError('not-valid', words.message({ why }), words.remedy);
}
