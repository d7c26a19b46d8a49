import { useOpenFile } from '../../state/appState.ts';
import { useWords } from '../../state/useFigures.ts';
import { PhotoList, Photos } from './Photos.tsx';

/** All photos: those of the property itself, then those of its crossings. */
export function PhotosView() {
  const words = useWords().window.record.photos;
  const { project } = useOpenFile();
  const ofThings = [...project.photo.values()].filter(({ of }) => of !== null);
  return (
    <>
      <Photos of={null} what={words.ofProperty} />
      <section className="block" aria-label={words.ofThings}>
        <h2>{words.ofThingsCounted({ count: ofThings.length })}</h2>
        {ofThings.length === 0 ? <p className="register-empty">{words.noneYet}</p> : <PhotoList photos={ofThings} />}
      </section>
    </>
  );
}
