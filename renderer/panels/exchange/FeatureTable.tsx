import { useState } from 'react';
import type { ImportAs, PreviewFeature } from '../../../core/exchange/preview/types.ts';
import type { Texts } from '../../../core/words/message.ts';
import { useWords } from '../../state/useFigures.ts';
import { BecomesOptions, BecomesSelect } from './BecomesSelect.tsx';

const rowsAtOnce = 100;

interface Choosing {
  readonly features: readonly PreviewFeature[];
  readonly become: (feature: PreviewFeature) => ImportAs;
  readonly onChoose: (features: readonly PreviewFeature[], choice: ImportAs) => void;
}

/** What each piece becomes; many of one shape can be chosen for at once. */
export function FeatureTable({ features, become, onChoose }: Choosing) {
  const [shown, setShown] = useState(rowsAtOnce);
  const words = useWords().window.exchange.importing;
  return (
    <div className="register">
      <table>
        <caption>{words.table}</caption>
        <thead>
          <tr>
            <th scope="col">{words.piece}</th>
            <th scope="col">{words.shape}</th>
            <th scope="col">{words.becomes}</th>
          </tr>
        </thead>
        <tbody>
          <AllOfAShape features={features} become={become} onChoose={onChoose} />
          {features.slice(0, shown).map((feature) => (
            <tr key={feature.key}>
              <td>{feature.name}</td>
              <td>{shapeOf(feature, words)}</td>
              <td>
                {feature.ours ? (
                  words.asItWas
                ) : (
                  <BecomesSelect feature={feature} value={become(feature)} onChoose={onChoose} />
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {shown < features.length ? (
        <button type="button" onClick={() => setShown(shown + 5 * rowsAtOnce)}>
          {words.showMore({ left: features.length - shown })}
        </button>
      ) : null}
    </div>
  );
}

const shapes = ['line', 'outline', 'point'] as const;

/** A row for each shape that comes more than once. */
function AllOfAShape({ features, become, onChoose }: Choosing) {
  const words = useWords().window.exchange.importing;
  return shapes.map((shape) => {
    const alike = features.filter((feature) => !feature.ours && feature.shape === shape);
    if (alike.length < 2) return null;
    const first = become(alike[0]!);
    const same = alike.every((feature) => become(feature) === first);
    return (
      <tr key={shape}>
        <td>
          <strong>{words.all[shape]({ count: alike.length })}</strong>
        </td>
        <td>{words.shapes[shape]}</td>
        <td>
          <select
            aria-label={words.allBecome[shape]}
            value={same ? first : ''}
            onChange={(event) => onChoose(alike, event.target.value as ImportAs)}
          >
            {same ? null : <option value="">{words.eachBelow}</option>}
            <BecomesOptions possible={alike[0]!.possible} />
          </select>
        </td>
      </tr>
    );
  });
}

function shapeOf({ shape, path }: PreviewFeature, words: Texts['window']['exchange']['importing']): string {
  if (shape === 'none' || shape === 'point') return words.shapes[shape];
  return words[shape]({ points: path.length });
}
