import { boundsOf } from '../../../core/kinds/form.ts';
import { reading as described } from '../../../core/kinds/reading.ts';
import type { Reading } from '../../../core/model/things.ts';
import { change } from '../../state/change.ts';
import { useWords } from '../../state/useFigures.ts';
import { NumberField, TextField } from '../parts/fields.tsx';
import { OpenSwitches } from './OpenSwitches.tsx';

export function ReadingDetails({ reading }: { readonly reading: Reading }) {
  const words = useWords().window.power.readings;
  const set = (label: string, patch: Partial<Omit<Reading, 'kind' | 'id'>>) =>
    change(label, 'reading', reading.id, patch);
  return (
    <>
      <div className="field-pair">
        <div className="field">
          <label htmlFor={`day-${reading.id}`}>{words.day}</label>
          <input
            id={`day-${reading.id}`}
            type="date"
            value={reading.date.slice(0, 10)}
            onChange={(event) => {
              if (event.target.value !== '') set(words.step.day, { date: event.target.value });
            }}
          />
        </div>
        <NumberField
          label={words.reading}
          unit="kV"
          {...boundsOf(described.fields.voltageV, 1000)}
          optional
          value={reading.voltageV === null ? null : reading.voltageV / 1000}
          onCommit={(kilovolts) => set(words.step.volts, { voltageV: kilovolts === null ? null : kilovolts * 1000 })}
        />
      </div>
      <OpenSwitches
        open={reading.openSwitchIds}
        onChange={(openSwitchIds) => set(words.step.switches, { openSwitchIds })}
      />
      <TextField label={words.note} long value={reading.note} onCommit={(note) => set(words.step.note, { note })} />
    </>
  );
}
