import { type KeyboardEvent, useState } from 'react';
import { readNumber } from '../../../core/model/readNumber.ts';

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
  const shown = value === null ? '' : value.toFixed(2);
  const [typed, setTyped] = useState<{ readonly over: string; readonly text: string } | null>(null);
  // A new value from outside replaces what was being typed.
  const draft = typed?.over === shown ? typed.text : null;
  const figure = draft === null ? value : readNumber(draft);
  const empty = draft !== null && draft.trim() === '';
  const wrong = !empty && draft !== null && !(figure !== null && figure >= 0 && figure <= 1e9);
  const settle = () => {
    if (draft === null || wrong) return;
    setTyped(null);
    if (figure !== value) onCommit(figure);
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
      aria-invalid={wrong}
      title={wrong ? 'Type figures only, such as 12.50.' : undefined}
      placeholder="no price"
      value={draft ?? shown}
      onChange={(event) => setTyped({ over: shown, text: event.target.value })}
      onBlur={settle}
      onKeyDown={onKeyDown}
    />
  );
}
