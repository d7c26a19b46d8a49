import { useId } from 'react';

/** A day, ISO 8601; null where it is not known (only with `optional`). */
export function DateField({
  label,
  value,
  optional = false,
  onCommit,
}: {
  readonly label: string;
  readonly value: string | null;
  readonly optional?: boolean;
  readonly onCommit: (date: string | null) => void;
}) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        type="date"
        required={!optional}
        value={value?.slice(0, 10) ?? ''}
        onChange={(event) => {
          const date = event.target.value;
          if (date !== '' || optional) onCommit(date === '' ? null : date);
        }}
      />
    </div>
  );
}
