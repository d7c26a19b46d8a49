import { type KeyboardEvent, type ReactNode, useId, useState } from 'react';
import { type FieldRule, fieldText, readField, takenAs } from '../../../core/words/numbers/field.ts';
import { useWords } from '../../state/useFigures.ts';
import { type ReadDraft, settled } from './settled.ts';

interface FieldProps {
  readonly label: string;
  /** One line below the field: where a figure comes from, what it is for. */
  readonly hint?: ReactNode;
}

function FieldFrame({
  id,
  label,
  hint,
  problem,
  children,
}: FieldProps & { readonly id: string; readonly problem?: string | null; readonly children: ReactNode }) {
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      {children}
      {problem ? (
        <p className="field-problem" role="alert">
          {problem}
        </p>
      ) : null}
      {hint ? <p className="field-hint">{hint}</p> : null}
    </div>
  );
}

interface DraftFieldProps<T> {
  readonly shown: string;
  /** The value that the text means, or what is wrong with it. */
  readonly read: ReadDraft<T>;
  readonly onCommit: (value: T) => void;
}

interface Draft {
  readonly text: string;
  readonly problem: string | null;
  /** The value that was shown when typing began; a new one from outside ends the draft. */
  readonly over: string;
}

/** Text that counts when Enter is pressed or the field is left; Escape takes it back. */
function useDraft<T>({ shown, read, onCommit }: DraftFieldProps<T>) {
  const [kept, setKept] = useState<Draft | null>(null);
  const draft = kept?.over === shown ? kept : null;
  const settle = () => {
    if (!draft) return;
    const result = settled(draft.text, shown, read);
    if (result === null) return setKept(null);
    if ('problem' in result) return setKept({ ...draft, problem: result.problem });
    setKept(null);
    onCommit(result.value);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === 'Enter' && !(event.target instanceof HTMLTextAreaElement)) settle();
    if (event.key === 'Escape' && draft) {
      event.stopPropagation();
      setKept(null);
    }
  };
  return {
    text: draft?.text ?? shown,
    problem: draft?.problem ?? null,
    setDraft: (text: string) => setKept({ text, problem: draft?.problem ?? null, over: shown }),
    settle,
    onKeyDown,
  };
}

export function TextField({
  label,
  hint,
  value,
  onCommit,
  long = false,
  required = false,
}: FieldProps & {
  readonly value: string;
  readonly onCommit: (value: string) => void;
  readonly long?: boolean;
  readonly required?: boolean;
}) {
  const id = useId();
  const { fields: words } = useWords().window.frame;
  const draft = useDraft<string>({
    shown: value,
    read: (text) => (required && text.trim() === '' ? { problem: words.empty({ label }) } : { value: text.trim() }),
    onCommit,
  });
  const shared = {
    id,
    value: draft.text,
    onBlur: draft.settle,
    onKeyDown: draft.onKeyDown,
    'aria-invalid': draft.problem !== null,
  };
  return (
    <FieldFrame id={id} label={label} hint={hint} problem={draft.problem}>
      {long ? (
        <textarea {...shared} rows={3} maxLength={4000} onChange={(event) => draft.setDraft(event.target.value)} />
      ) : (
        <input {...shared} type="text" maxLength={200} onChange={(event) => draft.setDraft(event.target.value)} />
      )}
    </FieldFrame>
  );
}

export interface NumberFieldProps
  extends FieldProps,
    Pick<FieldRule, 'unit' | 'kept'>,
    Partial<Pick<FieldRule, 'decimals' | 'min' | 'max' | 'optional'>> {
  /** null: empty. */
  readonly value: number | null;
  /** What holds where nothing is typed. */
  readonly placeholder?: number | string;
  readonly onCommit: (value: number | null) => void;
}

export function NumberField({ label, hint, value, placeholder, onCommit, ...rest }: NumberFieldProps) {
  const rule: FieldRule = { label, decimals: 2, min: 0, max: 1e7, optional: false, ...rest };
  const { unit } = rule;
  const id = useId();
  const draft = useDraft<number | null>({
    shown: fieldText(value, rule),
    read: (text) => readField(text, rule),
    onCommit,
  });
  const taken = takenAs(draft.text, rule);
  return (
    <FieldFrame id={id} label={label} hint={hint} problem={draft.problem}>
      <span className="with-unit">
        <input
          id={id}
          type="text"
          inputMode="decimal"
          autoComplete="off"
          value={draft.text}
          placeholder={typeof placeholder === 'number' ? fieldText(placeholder, rule) : placeholder}
          aria-invalid={draft.problem !== null}
          aria-describedby={`${id}-unit`}
          onChange={(event) => draft.setDraft(event.target.value)}
          onBlur={draft.settle}
          onKeyDown={draft.onKeyDown}
        />
        <span id={`${id}-unit`} className="unit">
          {unit}
        </span>
        {taken === null ? null : <output className="unit taken-as">{taken}</output>}
      </span>
    </FieldFrame>
  );
}

export interface Choice<T extends string> {
  readonly value: T;
  readonly label: string;
}

export function SelectField<T extends string>({
  label,
  hint,
  value,
  choices,
  onCommit,
}: FieldProps & {
  readonly value: T;
  readonly choices: readonly Choice<T>[];
  readonly onCommit: (value: T) => void;
}) {
  const id = useId();
  return (
    <FieldFrame id={id} label={label} hint={hint}>
      <select id={id} value={value} onChange={(event) => onCommit(event.target.value as T)}>
        {choices.map((choice) => (
          <option key={choice.value} value={choice.value}>
            {choice.label}
          </option>
        ))}
      </select>
    </FieldFrame>
  );
}

export function CheckField({
  label,
  hint,
  value,
  onCommit,
}: FieldProps & { readonly value: boolean; readonly onCommit: (value: boolean) => void }) {
  const id = useId();
  return (
    <div className="field check">
      <input id={id} type="checkbox" checked={value} onChange={(event) => onCommit(event.target.checked)} />
      <label htmlFor={id}>{label}</label>
      {hint ? <p className="field-hint">{hint}</p> : null}
    </div>
  );
}
