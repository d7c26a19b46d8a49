import { useMemo } from 'react';
import { useOpenFile } from '../../state/appState.ts';
import { useWords } from '../../state/useFigures.ts';
import { usePhotoUrls } from '../record/usePhotoUrls.ts';

/** Photos of a crossing, small; for somebody who stands there. */
export function CrossingPhotos({ crossingId, name }: { readonly crossingId: string; readonly name: string }) {
  const { photoAt } = useWords().window.find.stakeOut;
  const { project } = useOpenFile();
  const photos = useMemo(
    () => [...project.photo.values()].filter(({ of }) => of?.id === crossingId),
    [project.photo, crossingId],
  );
  const urls = usePhotoUrls(photos.map(({ thumbId }) => thumbId));
  if (photos.length === 0) return null;
  return (
    <ul className="find-photos">
      {photos.map(({ id, thumbId, caption, widthPx, heightPx }) => (
        <li key={id}>
          {urls.has(thumbId) ? (
            <img src={urls.get(thumbId)} alt={caption || photoAt({ name })} width={widthPx} height={heightPx} />
          ) : null}
          {caption ? <p>{caption}</p> : null}
        </li>
      ))}
    </ul>
  );
}
