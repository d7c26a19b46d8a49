import { boundsOf } from '../../../core/kinds/form.ts';
import { reading as described } from '../../../core/kinds/reading.ts';
import type { Reading } from '../../../core/model/things.ts';
import { change } from '../../state/change.ts';
import { NumberField, TextField } from '../parts/fields.tsx';
import { OpenSwitches } from './OpenSwitches.tsx';

export function ReadingDetails({ reading }: { readonly reading: Reading }) {
  const set = (label: string, patch: Partial<Omit<Reading, 'kind' | 'id'>>) =>
    change(label, 'reading', reading.id, patch);
  return (
    <>
      <div className="field-pair">
        <div className="field">
          <label htmlFor={`day-${reading.id}`}>Day</label>
          <input
            id={`day-${reading.id}`}
            type="date"
            value={reading.date.slice(0, 10)}
            onChange={(event) => {
              if (event.target.value !== '') set('Change the day of a reading', { date: event.target.value });
            }}
          />
        </div>
        <NumberField
          label="Reading"
          unit="kV"
          {...boundsOf(described.fields.voltageV, 1000)}
          optional
          value={reading.voltageV === null ? null : reading.voltageV / 1000}
          onCommit={(kilovolts) => set('Correct a reading', { voltageV: kilovolts === null ? null : kilovolts * 1000 })}
        />
      </div>
      <OpenSwitches
        open={reading.openSwitchIds}
        onChange={(openSwitchIds) => set('Change the switches of a reading', { openSwitchIds })}
      />
      <TextField
        label="Note"
        long
        value={reading.note}
        onCommit={(note) => set('Change the note of a reading', { note })}
      />
    </>
  );
}
