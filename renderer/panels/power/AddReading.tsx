import { useState } from 'react';
import { boundsOf } from '../../../core/kinds/form.ts';
import { reading as described } from '../../../core/kinds/reading.ts';
import { addThing } from '../../../core/model/edits/addThing.ts';
import type { Reading } from '../../../core/model/things.ts';
import { today } from '../../../core/words/dates.ts';
import { useApp, useOpenFile } from '../../state/appState.ts';
import { say } from '../../state/choose.ts';
import { newId } from '../../state/newId.ts';
import { commit } from '../../state/session.ts';
import { useWords } from '../../state/useFigures.ts';
import { Caution } from '../parts/Caution.tsx';
import { NumberField, TextField } from '../parts/fields.tsx';
import { OpenSwitches } from './OpenSwitches.tsx';
import { readingPlaces } from './readingPlaces.ts';
import { usePower } from './usePower.ts';

/** Writes one reading down: where, when, what, and which switches stood open. */
export function AddReading() {
  const { project, survey } = useOpenFile();
  const { power } = usePower();
  const chosen = useApp((state) => state.chosen);
  const words = useWords().window.power.readings;
  const groups = readingPlaces(project, survey);
  const places = groups.flatMap((group) => group.places);
  const [picked, setPicked] = useState<string | null>(null);
  const [date, setDate] = useState(today);
  const [kilovolts, setKilovolts] = useState<number | null>(null);
  const [open, setOpen] = useState<readonly string[] | null>(null);
  const [note, setNote] = useState('');
  // What is chosen on the map comes first, until a place is picked here.
  const place =
    places.find(({ id }) => id === (picked ?? chosen.findLast((each) => places.some((at) => at.id === each)))) ??
    places[0];
  const openSwitchIds = open ?? [...power.normallyOpen];
  if (!place) return <p className="register-empty">{words.needsPlace}</p>;
  const write = () => {
    if (kilovolts === null) return say(words.needsFigure, 'refused');
    const reading: Omit<Reading, 'id'> = {
      kind: 'reading',
      at: place.at,
      date,
      voltageV: kilovolts * 1000,
      currentA: null,
      openSwitchIds,
      place: place.name,
      note,
    };
    void commit(words.writeStep({ place: place.name }), addThing(reading, newId)).then((done) => {
      if (!done) return;
      setKilovolts(null);
      setNote('');
    });
  };
  return (
    <section className="block" aria-label={words.new}>
      <Caution>{words.caution}</Caution>
      <div className="field">
        <label htmlFor="reading-place">{words.place}</label>
        <select id="reading-place" value={place.id} onChange={(event) => setPicked(event.target.value)}>
          {groups.map(({ of, places: inGroup }) => (
            <optgroup key={of} label={words.places[of]}>
              {inGroup.map(({ id, name }) => (
                <option key={id} value={id}>
                  {name}
                </option>
              ))}
            </optgroup>
          ))}
        </select>
        <p className="field-hint">{words.placeHint}</p>
      </div>
      <div className="field-pair">
        <div className="field">
          <label htmlFor="reading-date">{words.day}</label>
          <input
            id="reading-date"
            type="date"
            required
            value={date}
            onChange={(event) => {
              if (event.target.value !== '') setDate(event.target.value);
            }}
          />
        </div>
        <NumberField
          label={words.reading}
          unit="kV"
          {...boundsOf(described.fields.voltageV, 1000)}
          optional
          value={kilovolts}
          onCommit={setKilovolts}
        />
      </div>
      <OpenSwitches open={openSwitchIds} onChange={setOpen} />
      <TextField label={words.note} value={note} onCommit={setNote} />
      <p className="buttons">
        <button type="button" className="main" onClick={write}>
          {words.write}
        </button>
      </p>
    </section>
  );
}
