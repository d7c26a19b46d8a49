import { useState } from 'react';
import type { ImportAs, PreviewFeature } from '../../../core/exchange/preview/types.ts';
import { fixed } from '../../../core/words/numbers/write.ts';
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
  return (
    <div className="register">
      <table>
        <caption>What each piece becomes</caption>
        <thead>
          <tr>
            <th scope="col">Piece</th>
            <th scope="col">Shape</th>
            <th scope="col">Becomes</th>
          </tr>
        </thead>
        <tbody>
          <AllOfAShape features={features} become={become} onChoose={onChoose} />
          {features.slice(0, shown).map((feature) => (
            <tr key={feature.key}>
              <td>{feature.name}</td>
              <td>{shapeOf(feature)}</td>
              <td>
                {feature.ours ? (
                  'what it was in Undergate'
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
          Show more ({features.length - shown} left)
        </button>
      ) : null}
    </div>
  );
}

const plurals = { line: 'lines', outline: 'outlines', point: 'points' } as const;

/** A row for each shape that comes more than once. */
function AllOfAShape({ features, become, onChoose }: Choosing) {
  return (Object.keys(plurals) as (keyof typeof plurals)[]).map((shape) => {
    const alike = features.filter((feature) => !feature.ours && feature.shape === shape);
    if (alike.length < 2) return null;
    const first = become(alike[0]!);
    const same = alike.every((feature) => become(feature) === first);
    return (
      <tr key={shape}>
        <td>
          <strong>
            All {fixed(alike.length, 0)} {plurals[shape]}
          </strong>
        </td>
        <td>{shape}</td>
        <td>
          <select
            aria-label={`All ${plurals[shape]} become`}
            value={same ? first : ''}
            onChange={(event) => onChoose(alike, event.target.value as ImportAs)}
          >
            {same ? null : <option value="">as each is below</option>}
            <BecomesOptions possible={alike[0]!.possible} />
          </select>
        </td>
      </tr>
    );
  });
}

function shapeOf({ shape, path }: PreviewFeature): string {
  if (shape === 'none') return 'no place';
  return shape === 'point' ? 'point' : `${shape}, ${fixed(path.length, 0)} points`;
}
