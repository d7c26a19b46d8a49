import { useMemo, useState } from 'react';
import { boundsOf } from '../../../core/kinds/form.ts';
import { reading as described } from '../../../core/kinds/reading.ts';
import { addThing } from '../../../core/model/edits/addThing.ts';
import type { Reading } from '../../../core/model/things.ts';
import { powerOf } from '../../../core/survey/power/powerOf.ts';
import { type ReadingRow, readingRows } from '../../../core/survey/power/readingRows.ts';
import { dateText, today } from '../../../core/words/dates.ts';
import { formatVoltage } from '../../../core/words/numbers/write.ts';
import { useApp, useOpenFile } from '../../state/appState.ts';
import { say } from '../../state/choose.ts';
import { newId } from '../../state/newId.ts';
import { commit } from '../../state/session.ts';
import { Caution } from '../parts/Caution.tsx';
import { NumberField, TextField } from '../parts/fields.tsx';
import { Register } from '../parts/Register.tsx';
import { OpenSwitches } from '../power/OpenSwitches.tsx';
import { readingPlaces } from '../power/readingPlaces.ts';
import { DateField } from './DateField.tsx';

/** What was read on the fence: where, when, with what, in which weather, with which switches open. */
export function ReadingsView() {
  const { project, survey } = useOpenFile();
  const rows = useMemo(() => readingRows(powerOf(project, survey)), [project, survey]);
  const switches = ({ openSwitchIds }: Reading) =>
    openSwitchIds.map((id) => project.switch.get(id)?.name ?? 'one that is gone').join(', ') || 'none';
  return (
    <>
      <NewReading />
      <Register<ReadingRow>
        caption="Readings, the newest first"
        rows={rows}
        idOf={({ reading }) => reading.id}
        empty="No readings yet."
        columns={[
          {
            title: 'Day',
            cell: ({ reading }) => dateText(reading.date),
            sortBy: ({ reading }) => reading.date,
          },
          { title: 'Place', cell: ({ reading, where }) => reading.place || where, sortBy: ({ where }) => where },
          {
            title: 'Read',
            figures: true,
            cell: ({ reading }) => readInWords(reading),
            sortBy: ({ reading }) => reading.voltageV ?? -1,
          },
          { title: 'Open', cell: ({ reading }) => switches(reading) },
        ]}
      />
    </>
  );
}

function readInWords({ voltageV, currentA }: Reading): string {
  const parts = [voltageV === null ? '' : formatVoltage(voltageV), currentA === null ? '' : `${currentA} A`];
  return parts.filter((part) => part !== '').join(', ') || 'nothing';
}

const noWords = { meter: '', weather: '', by: '' };

function NewReading() {
  const { project, survey } = useOpenFile();
  const chosen = useApp((state) => state.chosen);
  const groups = readingPlaces(project, survey);
  const places = groups.flatMap((group) => group.places);
  const usual = [...project.switch.values()].flatMap(({ id, normally }) => (normally === 'open' ? [id] : []));
  const [picked, setPicked] = useState<string | null>(null);
  const [date, setDate] = useState<string | null>(today);
  const [kilovolts, setKilovolts] = useState<number | null>(null);
  const [currentA, setCurrentA] = useState<number | null>(null);
  const [open, setOpen] = useState<readonly string[] | null>(null);
  const [words, setWords] = useState(noWords);
  const [note, setNote] = useState('');
  const place =
    places.find(({ id }) => id === (picked ?? chosen.findLast((each) => places.some((at) => at.id === each)))) ??
    places[0];
  if (!place) {
    return <p className="register-empty">A reading needs a place: an energiser, a switch, a gateway or a post.</p>;
  }
  const write = () => {
    if (kilovolts === null && currentA === null) return say('Type what the tester read.', 'refused');
    const reading: Omit<Reading, 'id'> = {
      kind: 'reading',
      at: place.at,
      date: date ?? today(),
      voltageV: kilovolts === null ? null : kilovolts * 1000,
      currentA,
      openSwitchIds: open ?? usual,
      place: place.name,
      ...words,
      note,
    };
    void commit(`Write down a reading at ${place.name}`, addThing(reading, newId)).then((done) => {
      if (!done) return;
      setKilovolts(null);
      setCurrentA(null);
      setNote('');
    });
  };
  const text = (label: string, key: keyof typeof noWords) => (
    <TextField label={label} value={words[key]} onCommit={(value) => setWords({ ...words, [key]: value })} />
  );
  return (
    <section className="block" aria-label="A new reading">
      <Caution>
        A live fence is read with a tester made for it. Nothing is taken apart, and no switch is touched, while it is
        on.
      </Caution>
      <div className="field">
        <label htmlFor="record-reading-place">Place</label>
        <select id="record-reading-place" value={place.id} onChange={(event) => setPicked(event.target.value)}>
          {groups.map(({ title, places: inGroup }) => (
            <optgroup key={title} label={title}>
              {inGroup.map(({ id, name }) => (
                <option key={id} value={id}>
                  {name}
                </option>
              ))}
            </optgroup>
          ))}
        </select>
      </div>
      <div className="field-pair">
        <NumberField
          label="Voltage"
          unit="kV"
          {...boundsOf(described.fields.voltageV, 1000)}
          optional
          value={kilovolts}
          onCommit={setKilovolts}
        />
        <NumberField
          label="Current"
          unit="A"
          {...boundsOf(described.fields.currentA)}
          optional
          value={currentA}
          onCommit={setCurrentA}
        />
      </div>
      <OpenSwitches open={open ?? usual} onChange={setOpen} />
      <div className="field-pair">
        <DateField label="Day" value={date} onCommit={setDate} />
        {text('Read by', 'by')}
      </div>
      <div className="field-pair">
        {text('Meter', 'meter')}
        {text('Weather', 'weather')}
      </div>
      <TextField label="Note" value={note} onCommit={setNote} />
      <p className="buttons">
        <button type="button" className="main" onClick={write}>
          Write the reading down
        </button>
      </p>
    </section>
  );
}
