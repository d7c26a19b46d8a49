import { useState } from 'react';
import { earthTestSteps, earthTestVerdict } from '../../../core/electrical/earth/earthTest.ts';
import { boundsOf } from '../../../core/kinds/form.ts';
import { earthTest } from '../../../core/kinds/tests.ts';
import { addThing } from '../../../core/model/edits/addThing.ts';
import { deleteThings } from '../../../core/model/edits/deleteThings.ts';
import type { EarthTest } from '../../../core/model/recordThings.ts';
import { today } from '../../../core/words/dates.ts';
import { useOpenFile } from '../../state/appState.ts';
import { say } from '../../state/choose.ts';
import { newId } from '../../state/newId.ts';
import { commit } from '../../state/session.ts';
import { useFigures } from '../../state/useFigures.ts';
import { Caution } from '../parts/Caution.tsx';
import { NumberField, SelectField, TextField } from '../parts/fields.tsx';
import { DateField } from './DateField.tsx';

/** Tests of the earth stakes: how, what was read, and what that says. */
export function EarthTests() {
  const words = useFigures().words.window.record.earthTests;
  const { project } = useOpenFile();
  const tests = [...project.earthTest.values()].sort((a, b) => b.date.localeCompare(a.date));
  return (
    <>
      {tests.length === 0 ? (
        <p className="register-empty">{words.none}</p>
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
  const words = useFigures().words.window.record.earthTests;
  const { project } = useOpenFile();
  const field = project.earthField.get(test.earthFieldId);
  const energiser = field && project.energiser.get(field.energiserId);
  return (
    <li>
      <p>
        <strong>
          {words.result({ day: test.date, of: energiser?.name ?? words.stakesGone, earthV: test.earthV })}{' '}
          {words.verdicts[earthTestVerdict(test.earthV)]}
        </strong>
      </p>
      <p className="field-hint">{words.particulars(test)}</p>
      <button
        type="button"
        onClick={() => void commit(words.delete, deleteThings([{ kind: 'earthTest', id: test.id }]))}
      >
        {words.deleteIt}
      </button>
    </li>
  );
}

function NewTest() {
  const f = useFigures();
  const { earthTests: words, fields: labels } = f.words.window.record;
  const { project } = useOpenFile();
  const fields = [...project.earthField.values()];
  const [fieldId, setFieldId] = useState<string | null>(null);
  const [date, setDate] = useState<string | null>(today);
  const [earthV, setEarthV] = useState<number | null>(null);
  const [fenceV, setFenceV] = useState<number | null>(null);
  const [typed, setTyped] = useState({ by: '', meter: '', weather: '', load: '', note: '' });
  const field = (fieldId !== null && project.earthField.get(fieldId)) || fields[0];
  if (!field) return <p className="register-empty">{words.noStakes}</p>;
  const text = (label: string, key: keyof typeof typed) => (
    <TextField label={label} value={typed[key]} onCommit={(value) => setTyped({ ...typed, [key]: value })} />
  );
  const write = () => {
    if (earthV === null) return say(words.nothingTyped, 'refused');
    const test = {
      kind: 'earthTest' as const,
      earthFieldId: field.id,
      date: date ?? today(),
      earthV,
      fenceV,
      ...typed,
    };
    void commit(words.write, addThing(test, newId)).then((done) => {
      if (!done) return;
      setEarthV(null);
      setFenceV(null);
    });
  };
  return (
    <section className="block" aria-label={words.newTest}>
      <h2>{words.title}</h2>
      <Caution>{words.caution}</Caution>
      <ol className="test-steps">
        {earthTestSteps().map((step) => (
          <li key={step.code}>{f.say(step)}</li>
        ))}
      </ol>
      {fields.length > 1 ? (
        <SelectField
          label={words.stakesOf}
          value={field.id}
          choices={fields.map(({ id, energiserId }) => ({
            value: id,
            label: project.energiser.get(energiserId)?.name ?? id,
          }))}
          onCommit={setFieldId}
        />
      ) : null}
      <div className="field-pair">
        <DateField label={labels.day} value={date} onCommit={setDate} />
        <NumberField
          label={words.lastRod}
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
          label={words.byTheShort}
          unit="V"
          decimals={0}
          {...boundsOf(earthTest.fields.fenceV)}
          optional
          value={fenceV}
          onCommit={setFenceV}
        />
        {text(words.loadedBy, 'load')}
      </div>
      <div className="field-pair">
        {text(labels.testedBy, 'by')}
        {text(labels.meter, 'meter')}
      </div>
      {text(words.howDry, 'weather')}
      {earthV === null ? null : (
        <p role="status">
          <strong>{words.verdicts[earthTestVerdict(earthV)]}</strong>
        </p>
      )}
      <p className="buttons">
        <button type="button" className="main" onClick={write}>
          {words.writeDown}
        </button>
      </p>
      <p className="field-hint">{words.limits}</p>
    </section>
  );
}
