import type { FeatureProblem } from '../../../core/exchange/preview/types.ts';
import { useFigures } from '../../state/useFigures.ts';

/** Each piece that can't be used, with the reason and what to do. What a file says is shown as text, never run. */
export function Problems({ problems }: { readonly problems: readonly FeatureProblem[] }) {
  const f = useFigures();
  const words = f.words.window.exchange.importing;
  if (problems.length === 0) return null;
  return (
    <details open={problems.length <= 5}>
      <summary>{words.problems({ count: problems.length })}</summary>
      <ul className="import-problems">
        {problems.map(({ index, name, why, whatToDo }) => (
          <li key={`${index} ${f.say(why)}`}>
            <strong>{name}</strong> {words.problem({ number: index + 1, why, whatToDo })}
          </li>
        ))}
      </ul>
    </details>
  );
}
