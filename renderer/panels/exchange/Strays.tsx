import { useState } from 'react';
import { type Stray, strayProblem } from '../../../core/exchange/intake/whereabouts.ts';
import type { ImportAs, PreviewFeature } from '../../../core/exchange/preview/types.ts';
import { useOpenFile } from '../../state/appState.ts';
import { useWords } from '../../state/useFigures.ts';
import { BecomesSelect } from './BecomesSelect.tsx';

const shownAtOnce = 20;

/** Pieces far from the rest: each with its distance, left out unless something else is chosen for it. */
export function Strays({
  strays,
  become,
  onChoose,
}: {
  readonly strays: readonly Stray[];
  readonly become: (feature: PreviewFeature) => ImportAs;
  readonly onChoose: (features: readonly PreviewFeature[], choice: ImportAs) => void;
}) {
  const { project } = useOpenFile();
  const words = useWords().window.exchange.importing;
  const [shown, setShown] = useState(shownAtOnce);
  if (strays.length === 0) return null;
  return (
    <section className="strays" aria-label={words.strays}>
      <p className="caution">{words.straysOut({ count: strays.length })}</p>
      <ul className="import-problems">
        {strays.slice(0, shown).map((stray) => (
          <li key={stray.feature.key}>
            <strong>{stray.feature.name}</strong>
            {words.stray({ why: strayProblem(stray, project).why })}{' '}
            <BecomesSelect feature={stray.feature} value={become(stray.feature)} onChoose={onChoose} />
          </li>
        ))}
      </ul>
      {shown < strays.length ? (
        <button type="button" onClick={() => setShown(shown + 5 * shownAtOnce)}>
          {words.showMore({ left: strays.length - shown })}
        </button>
      ) : null}
    </section>
  );
}
