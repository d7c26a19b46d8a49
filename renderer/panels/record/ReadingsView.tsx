import { useMemo, useState } from 'react';
import { boundsOf } from '../../../core/kinds/form.ts';
import { reading as described } from '../../../core/kinds/reading.ts';
import { addThing } from '../../../core/model/edits/addThing.ts';
import type { Reading } from '../../../core/model/things.ts';
import { powerOf } from '../../../core/survey/power/powerOf.ts';
import { type ReadingRow, readingRows } from '../../../core/survey/power/readingRows.ts';
import { dateText, today } from '../../../core/words/dates.ts';
import type { Figures } from '../../../core/words/types.ts';
import { useApp, useOpenFile } from '../../state/appState.ts';
import { say } from '../../state/choose.ts';
import { newId } from '../../state/newId.ts';
import { commit } from '../../state/session.ts';
import { useFigures } from '../../state/useFigures.ts';
import { Caution } from '../parts/Caution.tsx';
import { NumberField, TextField } from '../parts/fields.tsx';
import { Register } from '../parts/Register.tsx';
import { OpenSwitches } from '../power/OpenSwitches.tsx';
import { readingPlaces } from '../power/readingPlaces.ts';
import { DateField } from './DateField.tsx';

/** What was read on the fence: where, when, with what, in which weather, with which switches open. */
export function ReadingsView() {
  const f = useFigures();
  const { readings: words, fields } = f.words.window.record;
  const { project, survey } = useOpenFile();
  const rows = useMemo(() => readingRows(powerOf(project, survey)), [project, survey]);
  const placeOf = ({ reading, spot }: ReadingRow) =>
    reading.place || (spot ? f.words.survey.atSpot({ spot }) : f.words.survey.awayFromFence);
  const switches = ({ openSwitchIds }: Reading) =>
    openSwitchIds.map((id) => project.switch.get(id)?.name ?? words.switchGone).join(', ') || words.noSwitch;
  return (
    <>
      <NewReading />
      <Register<ReadingRow>
        caption={words.title}
        rows={rows}
        idOf={({ reading }) => reading.id}
        empty={words.none}
        columns={[
          {
            title: fields.day,
            cell: ({ reading }) => dateText(reading.date),
            sortBy: ({ reading }) => reading.date,
          },
          { title: words.place, cell: placeOf, sortBy: placeOf },
          {
            title: words.read,
            figures: true,
            cell: ({ reading }) => readInWords(reading, f),
            sortBy: ({ reading }) => reading.voltageV ?? -1,
          },
          { title: words.off, cell: ({ reading }) => switches(reading) },
        ]}
      />
    </>
  );
}

function readInWords({ voltageV, currentA }: Reading, f: Figures): string {
  const parts = [voltageV === null ? '' : f.volts(voltageV), currentA === null ? '' : `${currentA} A`];
  return parts.filter((part) => part !== '').join(', ') || f.words.window.record.readings.nothing;
}

const noWords = { meter: '', weather: '', by: '' };

function NewReading() {
  const f = useFigures();
  const { readings: words, fields } = f.words.window.record;
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
  const [typed, setTyped] = useState(noWords);
  const [note, setNote] = useState('');
  const place =
    places.find(({ id }) => id === (picked ?? chosen.findLast((each) => places.some((at) => at.id === each)))) ??
    places[0];
  if (!place) {
    return <p className="register-empty">{words.noPlace}</p>;
  }
  const write = () => {
    if (kilovolts === null && currentA === null) return say(words.nothingTyped, 'refused');
    const reading: Omit<Reading, 'id'> = {
      kind: 'reading',
      at: place.at,
      date: date ?? today(),
      voltageV: kilovolts === null ? null : kilovolts * 1000,
      currentA,
      openSwitchIds: open ?? usual,
      place: place.name,
      ...typed,
      note,
    };
    void commit(words.write({ place: place.name }), addThing(reading, newId)).then((done) => {
      if (!done) return;
      setKilovolts(null);
      setCurrentA(null);
      setNote('');
    });
  };
  const text = (label: string, key: keyof typeof noWords) => (
    <TextField label={label} value={typed[key]} onCommit={(value) => setTyped({ ...typed, [key]: value })} />
  );
  return (
    <section className="block" aria-label={words.newReading}>
      <Caution>{words.caution}</Caution>
      <div className="field">
        <label htmlFor="record-reading-place">{words.place}</label>
        <select id="record-reading-place" value={place.id} onChange={(event) => setPicked(event.target.value)}>
          {groups.map(({ of, places: inGroup }) => (
            <optgroup key={of} label={f.words.window.power.readings.places[of]}>
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
          label={words.voltage}
          unit="kV"
          {...boundsOf(described.fields.voltageV, 1000)}
          optional
          value={kilovolts}
          onCommit={setKilovolts}
        />
        <NumberField
          label={words.current}
          unit="A"
          {...boundsOf(described.fields.currentA)}
          optional
          value={currentA}
          onCommit={setCurrentA}
        />
      </div>
      <OpenSwitches open={open ?? usual} onChange={setOpen} />
      <div className="field-pair">
        <DateField label={fields.day} value={date} onCommit={setDate} />
        {text(words.readBy, 'by')}
      </div>
      <div className="field-pair">
        {text(fields.meter, 'meter')}
        {text(fields.weather, 'weather')}
      </div>
      <TextField label={fields.note} value={note} onCommit={setNote} />
      <p className="buttons">
        <button type="button" className="main" onClick={write}>
          {words.writeDown}
        </button>
      </p>
    </section>
  );
}
