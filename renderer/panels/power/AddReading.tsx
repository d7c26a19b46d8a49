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
  if (!place)
    return <p className="register-empty">A reading needs a place: an energiser, a switch, a gateway or a post.</p>;
  const write = () => {
    if (kilovolts === null) return say('Type what the tester read, in kV.', 'refused');
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
    void commit(`Write down a reading at ${place.name}`, addThing(reading, newId)).then((done) => {
      if (!done) return;
      setKilovolts(null);
      setNote('');
    });
  };
  return (
    <section className="block" aria-label="A new reading">
      <Caution>
        A live fence is read with a tester made for it, by its earth lead. Nothing is taken apart while it is on.
      </Caution>
      <div className="field">
        <label htmlFor="reading-place">Place</label>
        <select id="reading-place" value={place.id} onChange={(event) => setPicked(event.target.value)}>
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
        <p className="field-hint">Choose it here, or on the map before you come here.</p>
      </div>
      <div className="field-pair">
        <div className="field">
          <label htmlFor="reading-date">Day</label>
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
          label="Reading"
          unit="kV"
          {...boundsOf(described.fields.voltageV, 1000)}
          optional
          value={kilovolts}
          onCommit={setKilovolts}
        />
      </div>
      <OpenSwitches open={openSwitchIds} onChange={setOpen} />
      <TextField label="Note" value={note} onCommit={setNote} />
      <p className="buttons">
        <button type="button" className="main" onClick={write}>
          Write the reading down
        </button>
      </p>
    </section>
  );
}
