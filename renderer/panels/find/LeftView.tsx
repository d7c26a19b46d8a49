import { type LeftInGround, leftInGround } from '../../../core/locate/inGround/leftInGround.ts';
import { leftWithinM } from '../../../core/locate/inGround/leftWithin.ts';
import { fateInShort, fateInWords, leftHeading } from '../../../core/locate/inGround/leftWords.ts';
import { deleteThings } from '../../../core/model/edits/deleteThings.ts';
import type { Fate, InGround } from '../../../core/model/inGroundThings.ts';
import { useOpenFile } from '../../state/appState.ts';
import { change } from '../../state/change.ts';
import { choose } from '../../state/choose.ts';
import { mapView } from '../../state/mapView.ts';
import { commit } from '../../state/session.ts';
import { useFigures, useWords } from '../../state/useFigures.ts';
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
  const f = useFigures();
  const texts = f.words.window.find.left;
  const rows = leftInGround(project, survey).filter(({ thing }) => isLeftCalled(thing, words));
  if (rows.length === 0) return null;
  return (
    <Register<LeftInGround>
      caption={texts.noLongerDrawn}
      rows={rows}
      idOf={({ thing }) => thing.id}
      empty=""
      columns={[
        {
          title: texts.noLongerDrawn,
          cell: ({ thing }) => leftHeading(thing),
          sortBy: ({ thing }) => thing.name,
        },
        { title: texts.state, cell: ({ thing }) => f.say(fateInShort(thing)), sortBy: ({ thing }) => thing.fate },
        {
          title: f.words.window.find.crossings.within,
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
  const words = useFigures().say(fateInWords(thing));
  return thing.fate === 'inUse' ? <Caution>{words}</Caution> : <p>{words}</p>;
}

/** What can be said of it later: that it was cut off or taken out, its name, a note. */
export function LeftFields({ thing }: { readonly thing: InGround }) {
  const words = useWords().window.find.left;
  const { name } = thing;
  const set = (label: string, to: Partial<Pick<InGround, 'name' | 'fate' | 'note'>>) =>
    change(label, 'inGround', thing.id, to, { recording: true });
  return (
    <>
      <SelectField<Fate>
        label={words.fate}
        value={thing.fate}
        choices={[
          { value: 'inUse', label: words.fates.inUse },
          { value: 'dead', label: words.fates.dead },
          { value: 'takenOut', label: words.fates.takenOut },
        ]}
        onCommit={(fate) => set(words.steps.fate({ name }), { fate })}
      />
      <TextField
        label={words.called}
        required
        value={name}
        onCommit={(called) => set(words.steps.rename({ name }), { name: called })}
      />
      <TextField
        label={words.note}
        long
        value={thing.note}
        onCommit={(note) => set(words.steps.note({ name }), { note })}
      />
      <p className="buttons">
        <button
          type="button"
          onClick={() => void commit(words.steps.delete({ name }), deleteThings([thing]), { choose: [] })}
        >
          {words.deleteRecord}
        </button>
      </p>
    </>
  );
}

/** A lead-out or earth stakes that were left: where they lie, and how sure that is. */
export function LeftView({ left }: { readonly left: LeftInGround }) {
  const { survey } = useOpenFile();
  const words = useWords().window.find;
  const { thing, path } = left;
  const withinM = leftWithinM(left);
  const middle = path[path.length >> 1];
  return (
    <section className="block stake-out" aria-label={leftHeading(thing)}>
      <h2>{leftHeading(thing)}</h2>
      <LeftWords thing={thing} />
      <p>{words.left.place({ withinM })}</p>
      <Caution>{words.left.caution}</Caution>
      <LeftFields thing={thing} />
      <p className="buttons">
        <button type="button" onClick={() => mapView.zoomTo(thing.id)}>
          {words.showOnMap}
        </button>
        {middle ? (
          <button
            type="button"
            onClick={() => setDig({ shape: 'point', path: [survey.plane.toLonLat(middle)] }, withinM)}
          >
            {words.whatElse}
          </button>
        ) : null}
        <button type="button" onClick={() => choose([])}>
          {words.close}
        </button>
      </p>
    </section>
  );
}
