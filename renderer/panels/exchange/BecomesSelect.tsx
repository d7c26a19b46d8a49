import type { ImportAs, PreviewFeature } from '../../../core/exchange/preview/types.ts';
import { useWords } from '../../state/useFigures.ts';

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
  const words = useWords().window.exchange.importing;
  return (
    <select
      aria-label={words.pieceBecomes({ name: feature.name })}
      value={value}
      onChange={(event) => onChoose([feature], event.target.value as ImportAs)}
    >
      <BecomesOptions possible={feature.possible} />
    </select>
  );
}

export function BecomesOptions({ possible }: { readonly possible: readonly ImportAs[] }) {
  const words = useWords().window.exchange.importing.as;
  return possible.map((choice) => (
    <option key={choice} value={choice}>
      {words[choice]}
    </option>
  ));
}
