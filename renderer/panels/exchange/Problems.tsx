import type { FeatureProblem } from '../../../core/exchange/preview/types.ts';

/** Each piece that can't be used, with the reason and what to do. What a file says is shown as text, never run. */
export function Problems({ problems }: { readonly problems: readonly FeatureProblem[] }) {
  if (problems.length === 0) return null;
  return (
    <details open={problems.length <= 5}>
      <summary>What can’t be used ({problems.length})</summary>
      <ul className="import-problems">
        {problems.map(({ index, name, why, whatToDo }) => (
          <li key={`${index} ${why}`}>
            <strong>{name}</strong> (number {index + 1} in the file): {why}. {whatToDo}
          </li>
        ))}
      </ul>
    </details>
  );
}
