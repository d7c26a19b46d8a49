import './underlay.css';
import { usePictureImport } from '../../pictures/importState.ts';
import { lazyPart } from '../lazyPart.tsx';

const SystemQuestion = lazyPart(async () => (await import('./SystemQuestion.tsx')).SystemQuestion);

/** The picture that is coming in: how far it is, what it asks, how to stop it; or why it could not come in. */
export function PictureProgress() {
  const { current, problem } = usePictureImport();
  if (!current && !problem) return null;
  return (
    <section className="block picture-progress" aria-label="Picture coming in">
      {problem ? (
        <p className="field-problem" role="alert">
          {problem}{' '}
          <button type="button" onClick={() => usePictureImport.setState({ problem: null })}>
            Close
          </button>
        </p>
      ) : null}
      {current?.question ? (
        <SystemQuestion
          of="picture"
          why={`${current.fileName} ${current.question.why}`}
          otherwise="Not known: lay it by eye"
          answer={current.question.answer}
        />
      ) : null}
      {current ? (
        <p className="working" role="status">
          <span>
            {current.phase === 'cutting'
              ? `${current.fileName}: ${current.tilesDone} of ${current.tilesInAll} tiles`
              : `${current.fileName}: reading`}
          </span>
          <progress max={Math.max(1, current.tilesInAll)} value={current.tilesDone} aria-label="How far it is" />
          <button type="button" onClick={current.stop}>
            Stop
          </button>
        </p>
      ) : null}
    </section>
  );
}
