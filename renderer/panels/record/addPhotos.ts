import { addThing } from '../../../core/model/edits/addThing.ts';
import type { Photo } from '../../../core/model/recordThings.ts';
import { plainWords } from '../../../core/words/figures.ts';
import { say } from '../../state/choose.ts';
import { newId } from '../../state/newId.ts';
import { commit, host } from '../../state/session.ts';
import { type ReadyPhoto, readyPhoto } from './photoFile.ts';

/** Puts pictures into the file, one step of undo each; says of which it could not. `what` names what they show. */
export async function addPhotos(files: readonly File[], of: Photo['of'], what: string): Promise<void> {
  for (const file of files) {
    try {
      await addPhoto(await readyPhoto(file), of, what);
    } catch (error) {
      say(error instanceof Error ? error.message : String(error), 'refused');
    }
  }
}

function addPhoto(ready: ReadyPhoto, of: Photo['of'], what: string): Promise<boolean> {
  const { picture, small, ...tags } = ready;
  const photo = {
    kind: 'photo',
    of,
    blobId: picture.blobId,
    thumbId: small.blobId,
    ...tags,
    caption: '',
  } as const;
  return commit(plainWords().window.record.photos.addOne({ what }), addThing(photo, newId), {
    write: (edit) => host().project.addPhotos({ photos: [picture, small], edit }),
  });
}
