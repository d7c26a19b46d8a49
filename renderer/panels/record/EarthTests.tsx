import { useState } from 'react';
import { earthTestSteps, earthTestVerdict } from '../../../core/electrical/earth/earthTest.ts';
import { boundsOf } from '../../../core/kinds/form.ts';
import { earthTest } from '../../../core/kinds/tests.ts';
import { addThing } from '../../../core/model/edits/addThing.ts';
import { deleteThings } from '../../../core/model/edits/deleteThings.ts';
import type { EarthTest } from '../../../core/model/recordThings.ts';
import { dateText, today } from '../../../core/words/dates.ts';
import { formatVoltage } from '../../../core/words/numbers/write.ts';
import { useOpenFile } from '../../state/appState.ts';
import { say } from '../../state/choose.ts';
import { newId } from '../../state/newId.ts';
import { commit } from '../../state/session.ts';
import { useUnits } from '../../state/useUnits.ts';
import { Caution } from '../parts/Caution.tsx';
import { NumberField, SelectField, TextField } from '../parts/fields.tsx';
import { DateField } from './DateField.tsx';

const verdicts = {
  good: 'Good.',
  borderline: 'Borderline: test again when the ground is at its driest.',
  'more rods': 'Add rods and test again.',
} as const;

/** Tests of the earth stakes: how, what was read, and what that says. */
export function EarthTests() {
  const { project } = useOpenFile();
  const tests = [...project.earthTest.values()].sort((a, b) => b.date.localeCompare(a.date));
  return (
    <>
      {tests.length === 0 ? (
        <p className="register-empty">No earth test is recorded yet.</p>
      ) : (
        <ul className="earth-tests">
          {tests.map((test) => (
            <TestItem key={test.id} test={test} />
          ))}
        </ul>
      )}
      <NewTest />
    </>
  );
}

function TestItem({ test }: { readonly test: EarthTest }) {
  const { project } = useOpenFile();
  const field = project.earthField.get(test.earthFieldId);
  const energiser = field && project.energiser.get(field.energiserId);
  const more = [
    test.fenceV === null ? '' : `fence loaded to ${formatVoltage(test.fenceV)}`,
    test.load,
    test.meter,
    test.weather,
    test.by && `by ${test.by}`,
    test.note,
  ];
  return (
    <li>
      <p>
        <strong>
          {dateText(test.date)}, {energiser?.name ?? 'stakes that are gone'}: {formatVoltage(test.earthV)}.{' '}
          {verdicts[earthTestVerdict(test.earthV)]}
        </strong>
      </p>
      <p className="field-hint">{more.filter((part) => part !== '').join('; ')}</p>
      <button
        type="button"
        onClick={() => void commit('Delete an earth test', deleteThings([{ kind: 'earthTest', id: test.id }]))}
      >
        Delete
      </button>
    </li>
  );
}

function NewTest() {
  const units = useUnits();
  const { project } = useOpenFile();
  const fields = [...project.earthField.values()];
  const [fieldId, setFieldId] = useState<string | null>(null);
  const [date, setDate] = useState<string | null>(today);
  const [earthV, setEarthV] = useState<number | null>(null);
  const [fenceV, setFenceV] = useState<number | null>(null);
  const [words, setWords] = useState({ by: '', meter: '', weather: '', load: '', note: '' });
  const field = (fieldId !== null && project.earthField.get(fieldId)) || fields[0];
  if (!field) return <p className="register-empty">No earth stakes are drawn. Add them in Power.</p>;
  const text = (label: string, key: keyof typeof words) => (
    <TextField label={label} value={words[key]} onCommit={(value) => setWords({ ...words, [key]: value })} />
  );
  const write = () => {
    if (earthV === null) return say('Type what was read at the last rod, in V.', 'refused');
    const test = {
      kind: 'earthTest' as const,
      earthFieldId: field.id,
      date: date ?? today(),
      earthV,
      fenceV,
      ...words,
    };
    void commit('Write down an earth test', addThing(test, newId)).then((done) => {
      if (!done) return;
      setEarthV(null);
      setFenceV(null);
    });
  };
  return (
    <section className="block" aria-label="A new earth test">
      <h2>Test the earth</h2>
      <Caution>
        The fence is live while you read. Keep people and stock away. Put shorts on, and take them off, only with the
        energiser off and the fence proven dead. Locate buried services before you drive rods or pins.
      </Caution>
      <ol className="test-steps">
        {earthTestSteps(units).map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
      {fields.length > 1 ? (
        <SelectField
          label="Earth stakes of"
          value={field.id}
          choices={fields.map(({ id, energiserId }) => ({
            value: id,
            label: project.energiser.get(energiserId)?.name ?? id,
          }))}
          onCommit={setFieldId}
        />
      ) : null}
      <div className="field-pair">
        <DateField label="Day" value={date} onCommit={setDate} />
        <NumberField
          label="At the last rod"
          unit="V"
          decimals={0}
          {...boundsOf(earthTest.fields.earthV)}
          optional
          value={earthV}
          onCommit={setEarthV}
        />
      </div>
      <div className="field-pair">
        <NumberField
          label="Fence by the short"
          unit="V"
          decimals={0}
          {...boundsOf(earthTest.fields.fenceV)}
          optional
          value={fenceV}
          onCommit={setFenceV}
        />
        {text('Loaded by', 'load')}
      </div>
      <div className="field-pair">
        {text('Tested by', 'by')}
        {text('Meter', 'meter')}
      </div>
      {text('Weather, how dry the ground was', 'weather')}
      {earthV === null ? null : (
        <p role="status">
          <strong>{verdicts[earthTestVerdict(earthV)]}</strong>
        </p>
      )}
      <p className="buttons">
        <button type="button" className="main" onClick={write}>
          Write it down
        </button>
      </p>
      <p className="field-hint">200 V and under is good, over 300 V asks for more rods: common practice, no source.</p>
    </section>
  );
}
