import { useOpenFile } from '../../state/appState.ts';
import { PhotoList, Photos } from './Photos.tsx';

/** All photos: those of the property itself, then those of its crossings. */
export function PhotosView() {
  const { project } = useOpenFile();
  const ofThings = [...project.photo.values()].filter(({ of }) => of !== null);
  return (
    <>
      <Photos of={null} what="the property" />
      <section className="block" aria-label="Photos of things">
        <h2>Photos of crossings and other things ({ofThings.length})</h2>
        {ofThings.length === 0 ? (
          <p className="register-empty">None yet: choose a crossing and add them there.</p>
        ) : (
          <PhotoList photos={ofThings} />
        )}
      </section>
    </>
  );
}
