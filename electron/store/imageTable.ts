import type { Database, Statement } from 'better-sqlite3';
import type { PictureTileKey } from '../../core/api/pictureApi.ts';
import { notNamed } from './unused.ts';

/** The tiles of pictures that lie under the drawing. */
export class ImageTable {
  readonly #tile: Statement<[string, number, number, number], Buffer>;

  constructor(database: Database) {
    this.#tile = database
      .prepare<[string, number, number, number], Buffer>(
        'SELECT bytes FROM image_tile WHERE image_id = ? AND level = ? AND tile_column = ? AND tile_row = ?',
      )
      .pluck();
  }

  tile({ imageId, level, column, row }: PictureTileKey): Uint8Array | null {
    const bytes = this.#tile.get(imageId, level, column, row);
    // Plain bytes: a Buffer turns itself into something else on its way through JSON.
    return bytes ? new Uint8Array(bytes) : null;
  }
}

/** The pictures that nothing names any more: neither a thing, nor a step that undo or redo could bring back. */
export function unusedImages(database: Database): string[] {
  const ids = database.prepare<[], string>('SELECT id FROM image').pluck().all();
  return notNamed(database, ids, ['underlay']);
}

/** Takes pictures out, within the caller's transaction. */
export function dropImages(database: Database, ids: readonly string[]): void {
  const dropTiles = database.prepare('DELETE FROM image_tile WHERE image_id = ?');
  const dropImage = database.prepare('DELETE FROM image WHERE id = ?');
  for (const id of ids) {
    dropTiles.run(id);
    dropImage.run(id);
  }
}
