import type { Status } from '../../../core/model/things.ts';
import { SelectField } from './fields.tsx';

/** Planned, or really there. */
export function StatusField({
  status,
  onCommit,
}: {
  readonly status: Status;
  readonly onCommit: (status: Status) => void;
}) {
  return (
    <SelectField<Status>
      label="State"
      value={status}
      choices={[
        { value: 'planned', label: 'Planned' },
        { value: 'built', label: 'Built: really there' },
      ]}
      onCommit={onCommit}
    />
  );
}
