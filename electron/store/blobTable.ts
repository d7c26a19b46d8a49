import { createHash } from 'node:crypto';
import type { Database, Statement } from 'better-sqlite3';
import type { NewPhotoBytes } from '../../core/api/photoApi.ts';
import { plainWords } from '../../core/words/figures.ts';
import { ProblemError } from './problems.ts';
import { notNamed } from './unused.ts';

/** The pictures of photos, each once, by the SHA-256 of its bytes. */
export class BlobTable {
  readonly #bytes: Statement<[string], Buffer>;
  readonly #insert: Statement<[string, string, Uint8Array]>;

  constructor(database: Database) {
    this.#bytes = database.prepare<[string], Buffer>('SELECT bytes FROM blob WHERE id = ?').pluck();
    this.#insert = database.prepare('INSERT INTO blob (id, media_type, bytes) VALUES (?, ?, ?) ON CONFLICT DO NOTHING');
  }

  bytes(id: string): Uint8Array | null {
    const bytes = this.#bytes.get(id);
    return bytes ? new Uint8Array(bytes) : null;
  }

  /** Puts photos in, within the caller's transaction. One that is there already is kept. */
  add(photos: readonly NewPhotoBytes[]): void {
    for (const { blobId, bytes } of photos) {
      if (!isBlob(blobId, bytes)) {
        const { message, remedy } = plainWords().host.files.spoiltPhoto;
        throw new ProblemError('not-valid', message, remedy);
      }
      this.#insert.run(blobId, 'image/jpeg', bytes);
    }
  }
}

/** Whether these bytes are the picture of that id. */
export function isBlob(id: string, bytes: Uint8Array): boolean {
  return createHash('sha256').update(bytes).digest('hex') === id;
}

/** The pictures that nothing names any more: neither a photo, nor a handover, nor a step that undo or redo could bring back. */
export function unusedBlobs(database: Database): string[] {
  const ids = database.prepare<[], string>('SELECT id FROM blob').pluck().all();
  return notNamed(database, ids, ['photo', 'handover']);
}

/** Takes pictures out, within the caller's transaction. */
export function dropBlobs(database: Database, ids: readonly string[]): void {
  const drop = database.prepare('DELETE FROM blob WHERE id = ?');
  for (const id of ids) drop.run(id);
}
