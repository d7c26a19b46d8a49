import { boundsOf } from '../../../core/kinds/form.ts';
import { reading as described } from '../../../core/kinds/reading.ts';
import type { Reading } from '../../../core/model/things.ts';
import { change } from '../../state/change.ts';
import { useWords } from '../../state/useFigures.ts';
import { NumberField, TextField } from '../parts/fields.tsx';

/** How a reading was taken, beyond what was read. */
export function ReadingRecord({ reading }: { readonly reading: Reading }) {
  const { readings: words, fields } = useWords().window.record;
  const set = (label: string, patch: Partial<Reading>) => change(label, 'reading', reading.id, patch);
  const text = (label: string, key: 'place' | 'by' | 'meter' | 'weather') => (
    <TextField label={label} value={reading[key] ?? ''} onCommit={(value) => set(words.edits[key], { [key]: value })} />
  );
  return (
    <section className="block" aria-label={words.how}>
      <div className="field-pair">
        {text(words.place, 'place')}
        <NumberField
          label={words.current}
          unit="A"
          {...boundsOf(described.fields.currentA)}
          optional
          value={reading.currentA}
          onCommit={(currentA) => set(words.edits.current, { currentA })}
        />
      </div>
      <div className="field-pair">
        {text(words.readBy, 'by')}
        {text(fields.meter, 'meter')}
      </div>
      {text(fields.weather, 'weather')}
    </section>
  );
}
