import type { ImportAs, PreviewFeature } from '../../../core/exchange/preview/types.ts';
import { asWords } from './asWords.ts';

/** What one piece of a file becomes, to be chosen. */
export function BecomesSelect({
  feature,
  value,
  onChoose,
}: {
  readonly feature: PreviewFeature;
  readonly value: ImportAs;
  readonly onChoose: (features: readonly PreviewFeature[], choice: ImportAs) => void;
}) {
  return (
    <select
      aria-label={`${feature.name} becomes`}
      value={value}
      onChange={(event) => onChoose([feature], event.target.value as ImportAs)}
    >
      <BecomesOptions possible={feature.possible} />
    </select>
  );
}

export function BecomesOptions({ possible }: { readonly possible: readonly ImportAs[] }) {
  return possible.map((choice) => (
    <option key={choice} value={choice}>
      {asWords[choice]}
    </option>
  ));
}
