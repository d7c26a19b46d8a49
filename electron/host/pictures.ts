import { randomUUID } from 'node:crypto';
import { extname, isAbsolute, normalize } from 'node:path';
import type { PictureApi, PictureProgress, PictureTile, TileFileFacts } from '../../core/api/pictureApi.ts';
import type { Edit, FileState } from '../../core/api/projectApi.ts';
import { whyNotSize } from '../../core/exchange/image/pyramid.ts';
import { ImageStaging } from '../store/imageStaging.ts';
import { ProblemError } from '../store/problems.ts';
import type { ProjectStore } from '../store/projectStore.ts';
import { TileFile } from '../store/tileFile.ts';

/** What an MBTiles file's name ends in. */
export const tileFileEnding = '.mbtiles';

const mostTileFiles = 8;

type Asked<Call extends keyof PictureApi> = Parameters<PictureApi[Call]>[0];

/** The pictures of the open file: the one that is coming in, and the tile files that are being read. */
export class Pictures {
  #coming: { readonly staging: ImageStaging; readonly store: ProjectStore } | null = null;
  readonly #tileFiles = new Map<string, TileFile>();

  begin(store: ProjectStore, { fileName, widthPx, heightPx }: Asked<'beginPicture'>): { imageId: string } {
    const why = whyNotSize(widthPx, heightPx);
    if (why) throw new ProblemError('not-valid', why, 'Bring in a smaller picture.');
    this.dropComing();
    const id = `image-${randomUUID()}`;
    this.#coming = { staging: new ImageStaging(store.path, { id, fileName, widthPx, heightPx }), store };
    return { imageId: id };
  }

  add(imageId: string, tiles: readonly PictureTile[]): PictureProgress {
    const { staging } = this.#wanted(imageId);
    staging.add(tiles);
    return staging.progress;
  }

  finish(store: ProjectStore, imageId: string, edit: Edit): FileState {
    const { staging, store: begunOn } = this.#wanted(imageId);
    if (begunOn !== store) throw givenUp();
    const names = edit.changes.some(
      ({ after }) => after?.kind === 'underlay' && after.source.from === 'picture' && after.source.imageId === imageId,
    );
    if (!names) throw new ProblemError('not-valid', 'The edit does not show the picture.', 'Bring it in again.');
    const state = store.applyWithImage(edit, staging);
    this.dropComing();
    return state;
  }

  drop(imageId: string): null {
    if (this.#coming?.staging.image.id === imageId) this.dropComing();
    return null;
  }

  /** Gives up the picture that is coming in, if any. */
  dropComing(): void {
    this.#coming?.staging.discard();
    this.#coming = null;
  }

  openTileFile(path: string): TileFileFacts {
    return this.#tileFile(path, true).facts;
  }

  tileFileTile({ path, zoom, column, row }: Asked<'tileFileTile'>): Uint8Array | null {
    return this.#tileFile(path, false).tile(zoom, column, row);
  }

  /** As the last thing before another file is opened, or the host ends. */
  close(): void {
    this.dropComing();
    for (const file of this.#tileFiles.values()) file.close();
    this.#tileFiles.clear();
  }

  #wanted(imageId: string) {
    if (this.#coming?.staging.image.id === imageId) return this.#coming;
    throw givenUp();
  }

  /** The newest use is kept last, so that the first is the one to close. */
  #tileFile(asked: string, anew: boolean): TileFile {
    const path = normalize(asked);
    if (!isAbsolute(path) || extname(path).toLowerCase() !== tileFileEnding) {
      throw new ProblemError(
        'not-valid',
        `${asked} is not the whole path of an MBTiles file.`,
        'Choose it in the list.',
      );
    }
    const known = this.#tileFiles.get(path);
    if (known && anew) known.close();
    const file = known && !anew ? known : new TileFile(path);
    this.#tileFiles.delete(path);
    this.#tileFiles.set(path, file);
    for (const [oldest, old] of this.#tileFiles) {
      if (this.#tileFiles.size <= mostTileFiles) break;
      old.close();
      this.#tileFiles.delete(oldest);
    }
    return file;
  }
}

function givenUp(): ProblemError {
  return new ProblemError('stopped', 'This picture is not being brought in any more.', 'Bring it in again.');
}
