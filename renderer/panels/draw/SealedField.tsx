import { SelectField } from '../parts/fields.tsx';

/** Whether both riser ends are plugged; null: not noted. */
export function SealedField({
  sealed,
  onCommit,
}: {
  readonly sealed: boolean | null;
  readonly onCommit: (sealed: boolean | null) => void;
}) {
  return (
    <SelectField
      label="Riser ends sealed"
      value={sealed === null ? 'unknown' : sealed ? 'yes' : 'no'}
      choices={[
        { value: 'unknown', label: 'Not noted' },
        { value: 'yes', label: 'Yes, both' },
        { value: 'no', label: 'No' },
      ]}
      onCommit={(chosen) => onCommit(chosen === 'unknown' ? null : chosen === 'yes')}
    />
  );
}
