import { useRef, useState } from 'react';
import { deleteThings } from '../../../core/model/edits/deleteThings.ts';
import type { Photo } from '../../../core/model/recordThings.ts';
import { placeText } from '../../../core/sheets/placeText.ts';
import { timeText } from '../../../core/words/dates.ts';
import { useOpenFile } from '../../state/appState.ts';
import { change } from '../../state/change.ts';
import { commit } from '../../state/session.ts';
import { useFigures } from '../../state/useFigures.ts';
import { TextField } from '../parts/fields.tsx';
import { addPhotos } from './addPhotos.ts';
import { usePhotoUrls } from './usePhotoUrls.ts';

/** So many photos are shown before more are asked for. */
const atOnce = 24;

/** Photos of one thing, or (`of` null) of the property as a whole. */
export function Photos({ of, what }: { readonly of: Photo['of']; readonly what: string }) {
  const { project } = useOpenFile();
  const words = useFigures().words.window.record.photos;
  const own = [...project.photo.values()].filter((photo) => (photo.of?.id ?? null) === (of?.id ?? null));
  return (
    <section className="block" aria-label={words.of({ what })}>
      <AddPhotos of={of} what={what} />
      {own.length === 0 ? <p className="field-hint">{words.noneOf({ what })}</p> : <PhotoList photos={own} />}
    </section>
  );
}

export function PhotoList({ photos }: { readonly photos: readonly Photo[] }) {
  const [most, setMost] = useState(atOnce);
  const words = useFigures().words.window.record.photos;
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
          {words.more({ left: photos.length - most })}
        </button>
      ) : null}
    </>
  );
}

function PhotoItem({ photo, url }: { readonly photo: Photo; readonly url: string | undefined }) {
  const [large, setLarge] = useState(false);
  const words = useFigures().words.window.record.photos;
  const urls = usePhotoUrls(large ? [photo.blobId] : []);
  const name = photo.caption || photo.fileName;
  const taken =
    photo.takenAt === null ? words.noDate : words.taken({ day: photo.takenAt, time: timeText(photo.takenAt) });
  const remove = () => void commit(words.delete, deleteThings([{ kind: 'photo', id: photo.id }]));
  return (
    <li className="photo">
      <button type="button" className="photo-frame" aria-expanded={large} onClick={() => setLarge(!large)}>
        {url ? <img src={(large && urls.get(photo.blobId)) || url} alt={name} /> : <span>{name}</span>}
      </button>
      <TextField
        label={words.caption}
        value={photo.caption}
        onCommit={(caption) => change(words.writeCaption, 'photo', photo.id, { caption })}
      />
      <p className="field-hint">{photo.gps ? words.takenAt({ taken, place: placeText(photo.gps) }) : taken}</p>
      <button type="button" onClick={remove}>
        {words.deleteIt}
      </button>
    </li>
  );
}

function AddPhotos({ of, what }: { readonly of: Photo['of']; readonly what: string }) {
  const input = useRef<HTMLInputElement>(null);
  const words = useFigures().words.window.record.photos;
  const [busy, setBusy] = useState(false);
  const add = async (files: readonly File[]) => {
    setBusy(true);
    await addPhotos(files, of, what);
    setBusy(false);
  };
  return (
    <>
      <button type="button" disabled={busy} onClick={() => input.current?.click()}>
        {busy ? words.resizing : words.add}
      </button>
      <input
        ref={input}
        type="file"
        hidden
        multiple
        accept="image/jpeg,image/png,image/webp"
        aria-label={words.of({ what })}
        onChange={(event) => {
          const files = Array.from(event.target.files ?? []);
          event.target.value = '';
          void add(files);
        }}
      />
      <p className="field-hint">{words.hint}</p>
    </>
  );
}
