import { type KeyboardEvent, useState } from 'react';
import { type FieldRule, readField } from '../../../core/words/numbers/field.ts';
import { plainMoney } from '../../../core/words/numbers/write.ts';
import { useWords } from '../../state/useFigures.ts';
import { settled } from '../parts/settled.ts';

/** An amount of money in a row of its own list; empty means that there is none yet. */
export function PriceInput({
  label,
  value,
  onCommit,
}: {
  readonly label: string;
  readonly value: number | null;
  readonly onCommit: (value: number | null) => void;
}) {
  const { prices: words } = useWords().window.order;
  const rule: FieldRule = { label, unit: '', decimals: 2, min: 0, max: 1e9, optional: true };
  const shown = value === null ? '' : plainMoney(value);
  const [typed, setTyped] = useState<{ readonly over: string; readonly text: string } | null>(null);
  // A new value from outside replaces what was being typed.
  const draft = typed?.over === shown ? typed.text : null;
  const result = draft === null ? null : settled(draft, shown, (text) => readField(text, rule));
  const problem = result && 'problem' in result ? result.problem : null;
  const settle = () => {
    if (draft === null || problem !== null) return;
    setTyped(null);
    if (result && 'value' in result) onCommit(result.value);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === 'Enter') settle();
    if (event.key === 'Escape' && draft !== null) {
      event.stopPropagation();
      setTyped(null);
    }
  };
  return (
    <input
      type="text"
      inputMode="decimal"
      className="price-input"
      aria-label={label}
      aria-invalid={problem !== null}
      title={problem ?? undefined}
      placeholder={words.noPrice}
      value={draft ?? shown}
      onChange={(event) => setTyped({ over: shown, text: event.target.value })}
      onBlur={settle}
      onKeyDown={onKeyDown}
    />
  );
}
