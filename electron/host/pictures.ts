import { randomUUID } from 'node:crypto';
import type { PictureProgress, PictureTile } from '../../core/api/pictureApi.ts';
import type { Edit, FileState, ProjectApi } from '../../core/api/projectApi.ts';
import { whyNotSize } from '../../core/exchange/image/pyramid.ts';
import { plainly, plainWords } from '../../core/words/figures.ts';
import { ImageStaging } from '../store/imageStaging.ts';
import { ProblemError } from '../store/problems.ts';
import type { ProjectStore } from '../store/projectStore.ts';

/** The pictures of the open file: the one that is coming in. */
export class Pictures {
  #coming: { readonly staging: ImageStaging; readonly store: ProjectStore } | null = null;

  begin(
    store: ProjectStore,
    { fileName, widthPx, heightPx }: Parameters<ProjectApi['beginPicture']>[0],
  ): { imageId: string } {
    const why = whyNotSize(widthPx, heightPx);
    if (why) throw new ProblemError('not-valid', plainly(why), plainWords().host.maps.picture.smaller);
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
    if (!names) {
      const { notInEdit, remedy } = plainWords().host.maps.picture;
      throw new ProblemError('not-valid', notInEdit, remedy);
    }
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

  #wanted(imageId: string) {
    if (this.#coming?.staging.image.id === imageId) return this.#coming;
    throw givenUp();
  }
}

function givenUp(): ProblemError {
  const words = plainWords().host.maps.picture;
  return new ProblemError('stopped', words.givenUp, words.remedy);
}
