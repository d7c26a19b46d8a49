import { useRef, useState } from 'react';
import { deleteThings } from '../../../core/model/edits/deleteThings.ts';
import type { Photo } from '../../../core/model/recordThings.ts';
import { placeText } from '../../../core/sheets/placeText.ts';
import { dateText, timeText } from '../../../core/words/dates.ts';
import { useOpenFile } from '../../state/appState.ts';
import { change } from '../../state/change.ts';
import { commit } from '../../state/session.ts';
import { TextField } from '../parts/fields.tsx';
import { addPhotos } from './addPhotos.ts';
import { usePhotoUrls } from './usePhotoUrls.ts';

/** So many photos are shown before more are asked for. */
const atOnce = 24;

/** Photos of one thing, or (`of` null) of the property as a whole. */
export function Photos({ of, what }: { readonly of: Photo['of']; readonly what: string }) {
  const { project } = useOpenFile();
  const own = [...project.photo.values()].filter((photo) => (photo.of?.id ?? null) === (of?.id ?? null));
  return (
    <section className="block" aria-label={`Photos of ${what}`}>
      <AddPhotos of={of} what={what} />
      {own.length === 0 ? <p className="field-hint">No photo of {what} yet.</p> : <PhotoList photos={own} />}
    </section>
  );
}

export function PhotoList({ photos }: { readonly photos: readonly Photo[] }) {
  const [most, setMost] = useState(atOnce);
  const shown = photos.slice(0, most);
  const urls = usePhotoUrls(shown.map(({ thumbId }) => thumbId));
  return (
    <>
      <ul className="photos">
        {shown.map((photo) => (
          <PhotoItem key={photo.id} photo={photo} url={urls.get(photo.thumbId)} />
        ))}
      </ul>
      {photos.length > most ? (
        <button type="button" onClick={() => setMost(most + atOnce)}>
          Show more ({photos.length - most} left)
        </button>
      ) : null}
    </>
  );
}

function PhotoItem({ photo, url }: { readonly photo: Photo; readonly url: string | undefined }) {
  const [large, setLarge] = useState(false);
  const urls = usePhotoUrls(large ? [photo.blobId] : []);
  const name = photo.caption || photo.fileName;
  const taken = photo.takenAt === null ? 'Date not known' : `${dateText(photo.takenAt)}, ${timeText(photo.takenAt)}`;
  const remove = () => void commit('Delete a photo', deleteThings([{ kind: 'photo', id: photo.id }]));
  return (
    <li className="photo">
      <button type="button" className="photo-frame" aria-expanded={large} onClick={() => setLarge(!large)}>
        {url ? <img src={(large && urls.get(photo.blobId)) || url} alt={name} /> : <span>{name}</span>}
      </button>
      <TextField
        label="Words"
        value={photo.caption}
        onCommit={(caption) => change('Write a photo’s words', 'photo', photo.id, { caption })}
      />
      <p className="field-hint">
        {taken}
        {photo.gps ? `; ${placeText(photo.gps)} by its camera` : ''}
      </p>
      <button type="button" onClick={remove}>
        Delete the photo
      </button>
    </li>
  );
}

function AddPhotos({ of, what }: { readonly of: Photo['of']; readonly what: string }) {
  const input = useRef<HTMLInputElement>(null);
  const [busy, setBusy] = useState(false);
  const add = async (files: readonly File[]) => {
    setBusy(true);
    await addPhotos(files, of, what);
    setBusy(false);
  };
  return (
    <>
      <button type="button" disabled={busy} onClick={() => input.current?.click()}>
        {busy ? 'Making them small…' : 'Add photos'}
      </button>
      <input
        ref={input}
        type="file"
        hidden
        multiple
        accept="image/jpeg,image/png,image/webp"
        aria-label={`Photos of ${what}`}
        onChange={(event) => {
          const files = Array.from(event.target.files ?? []);
          event.target.value = '';
          void add(files);
        }}
      />
      <p className="field-hint">
        A copy of at most 1600 pixels is kept in the property’s file, with the day and place that the camera wrote.
      </p>
    </>
  );
}
