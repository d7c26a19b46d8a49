import { type LeftInGround, leftInGround } from '../../../core/locate/inGround/leftInGround.ts';
import { leftWithinM } from '../../../core/locate/inGround/leftWithin.ts';
import { fateInShort, fateInWords, leftHeading } from '../../../core/locate/inGround/leftWords.ts';
import { deleteThings } from '../../../core/model/edits/deleteThings.ts';
import type { Fate, InGround } from '../../../core/model/inGroundThings.ts';
import { dateText } from '../../../core/words/dates.ts';
import { formatTape } from '../../../core/words/numbers/write.ts';
import { useOpenFile } from '../../state/appState.ts';
import { change } from '../../state/change.ts';
import { choose } from '../../state/choose.ts';
import { mapView } from '../../state/mapView.ts';
import { commit } from '../../state/session.ts';
import { useUnits } from '../../state/useUnits.ts';
import { Caution } from '../parts/Caution.tsx';
import { SelectField, TextField } from '../parts/fields.tsx';
import { Register } from '../parts/Register.tsx';
import { Within } from '../parts/Within.tsx';
import { setDig } from './findState.ts';

/** Whether the words are part of its name or note. */
export function isLeftCalled({ name, note }: InGround, words: string): boolean {
  const wanted = words.trim().toLowerCase();
  return name.toLowerCase().includes(wanted) || note.toLowerCase().includes(wanted);
}

/** What is in the ground and drawn no longer; nothing where there is none. */
export function LeftRegister({ words }: { readonly words: string }) {
  const { project, survey } = useOpenFile();
  const rows = leftInGround(project, survey).filter(({ thing }) => isLeftCalled(thing, words));
  if (rows.length === 0) return null;
  return (
    <Register<LeftInGround>
      caption="No longer drawn"
      rows={rows}
      idOf={({ thing }) => thing.id}
      empty=""
      columns={[
        {
          title: 'No longer drawn',
          cell: ({ thing }) => leftHeading(thing),
          sortBy: ({ thing }) => thing.name,
        },
        { title: 'State', cell: ({ thing }) => fateInShort(thing), sortBy: ({ thing }) => thing.fate },
        {
          title: 'Within',
          figures: true,
          cell: (left) =>
            left.thing.fate === 'takenOut' ? (
              '–'
            ) : (
              <Within basis={left.crossing?.certainty.basis ?? 'drawn'} withinM={leftWithinM(left)} />
            ),
          sortBy: leftWithinM,
        },
      ]}
    />
  );
}

/** What has become of it, in words; what may be live warns. */
export function LeftWords({ thing }: { readonly thing: InGround }) {
  const words = fateInWords(thing, thing.since && dateText(thing.since));
  return thing.fate === 'inUse' ? <Caution>{words}</Caution> : <p>{words}</p>;
}

/** What can be said of it later: that it was cut off or taken out, its name, a note. */
export function LeftFields({ thing }: { readonly thing: InGround }) {
  const set = (label: string, to: Partial<Pick<InGround, 'name' | 'fate' | 'note'>>) =>
    change(`${label}: ${thing.name}`, 'inGround', thing.id, to, { recording: true });
  return (
    <>
      <SelectField<Fate>
        label="What has become of it"
        value={thing.fate}
        choices={[
          { value: 'inUse', label: 'In the ground, may be live' },
          { value: 'dead', label: 'Dead: cut off at both ends, left in the ground' },
          { value: 'takenOut', label: 'Taken out of the ground' },
        ]}
        onCommit={(fate) => set('Say what has become of it', { fate })}
      />
      <TextField label="Called" required value={thing.name} onCommit={(name) => set('Rename', { name })} />
      <TextField label="Note" long value={thing.note} onCommit={(note) => set('Write the note', { note })} />
      <p className="buttons">
        <button
          type="button"
          onClick={() => void commit(`Delete the record of the ${thing.name}`, deleteThings([thing]), { choose: [] })}
        >
          Delete this record
        </button>
      </p>
    </>
  );
}

/** A lead-out or earth stakes that were left: where they lie, and how sure that is. */
export function LeftView({ left }: { readonly left: LeftInGround }) {
  const { survey } = useOpenFile();
  const units = useUnits();
  const { thing, path } = left;
  const withinM = leftWithinM(left);
  const middle = path[path.length >> 1];
  return (
    <section className="block stake-out" aria-label={leftHeading(thing)}>
      <h2>{leftHeading(thing)}</h2>
      <LeftWords thing={thing} />
      <p>
        Not measured (from the plan). It is assumed to lie within {formatTape(withinM, units)} of where it was drawn.
      </p>
      <Caution>
        Energiser off and the fence proven dead before you dig. Have all other buried services located. Dig by hand near
        the cable.
      </Caution>
      <LeftFields thing={thing} />
      <p className="buttons">
        <button type="button" onClick={() => mapView.zoomTo(thing.id)}>
          Show on the map
        </button>
        {middle ? (
          <button
            type="button"
            onClick={() => setDig({ shape: 'point', path: [survey.plane.toLonLat(middle)] }, withinM)}
          >
            What else lies here
          </button>
        ) : null}
        <button type="button" onClick={() => choose([])}>
          Close
        </button>
      </p>
    </section>
  );
}
