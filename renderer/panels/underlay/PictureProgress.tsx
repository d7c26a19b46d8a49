import './underlay.css';
import { usePictureImport } from '../../pictures/importState.ts';
import { useWords } from '../../state/useFigures.ts';
import { lazyPart } from '../lazyPart.tsx';

const SystemQuestion = lazyPart(async () => (await import('./SystemQuestion.tsx')).SystemQuestion);

/** The picture that is coming in: how far it is, what it asks, how to stop it; or why it could not come in. */
export function PictureProgress() {
  const { current, problem } = usePictureImport();
  const { window: words } = useWords();
  const { pictures: said } = words.background;
  const { common } = words.frame;
  if (!current && !problem) return null;
  return (
    <section className="block picture-progress" aria-label={said.comingIn}>
      {problem ? (
        <p className="field-problem" role="alert">
          {problem}{' '}
          <button type="button" onClick={() => usePictureImport.setState({ problem: null })}>
            {common.close}
          </button>
        </p>
      ) : null}
      {current?.question ? (
        <SystemQuestion
          of="picture"
          why={current.question.why}
          otherwise={said.byEyeThen}
          answer={current.question.answer}
        />
      ) : null}
      {current ? (
        <p className="working" role="status">
          <span>
            {current.phase === 'cutting'
              ? said.tiles({ fileName: current.fileName, done: current.tilesDone, all: current.tilesInAll })
              : said.reading(current)}
          </span>
          <progress max={Math.max(1, current.tilesInAll)} value={current.tilesDone} aria-label={said.howFar} />
          <button type="button" onClick={current.stop}>
            {common.stop}
          </button>
        </p>
      ) : null}
    </section>
  );
}
