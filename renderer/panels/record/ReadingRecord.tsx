import { boundsOf } from '../../../core/kinds/form.ts';
import { reading as described } from '../../../core/kinds/reading.ts';
import type { Reading } from '../../../core/model/things.ts';
import { change } from '../../state/change.ts';
import { NumberField, TextField } from '../parts/fields.tsx';

/** How a reading was taken, beyond what was read. */
export function ReadingRecord({ reading }: { readonly reading: Reading }) {
  const set = (label: string, patch: Partial<Reading>) => change(`${label} of a reading`, 'reading', reading.id, patch);
  const text = (label: string, key: 'place' | 'by' | 'meter' | 'weather') => (
    <TextField
      label={label}
      value={reading[key] ?? ''}
      onCommit={(value) => set(`Change ${label.toLowerCase()}`, { [key]: value })}
    />
  );
  return (
    <section className="block" aria-label="How it was read">
      <div className="field-pair">
        {text('Place', 'place')}
        <NumberField
          label="Current"
          unit="A"
          {...boundsOf(described.fields.currentA)}
          optional
          value={reading.currentA}
          onCommit={(currentA) => set('Change the current', { currentA })}
        />
      </div>
      <div className="field-pair">
        {text('Read by', 'by')}
        {text('Meter', 'meter')}
      </div>
      {text('Weather', 'weather')}
    </section>
  );
}
