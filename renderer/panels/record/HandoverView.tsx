import { useMemo, useState } from 'react';
import type { Project } from '../../../core/model/project.ts';
import type { Handover } from '../../../core/model/recordThings.ts';
import type { Kind } from '../../../core/model/things.ts';
import { type ChangeSince, changeSinceInWords, changesSince } from '../../../core/record/changesSince.ts';
import { handOver, handoversOf, nextHandoverNumber } from '../../../core/record/edits/handOver.ts';
import { dateText, today } from '../../../core/words/dates.ts';
import { CommandButton } from '../../commands/CommandButton.tsx';
import { useOpenFile } from '../../state/appState.ts';
import { choose } from '../../state/choose.ts';
import { mapView } from '../../state/mapView.ts';
import { newId } from '../../state/newId.ts';
import { commit } from '../../state/session.ts';
import { useUnits } from '../../state/useUnits.ts';
import { SelectField, TextField } from '../parts/fields.tsx';
import { DateField } from './DateField.tsx';

/** The pack, the handovers that were frozen, and what has changed since. */
export function HandoverView() {
  const { project } = useOpenFile();
  const handovers = handoversOf(project);
  const [id, setId] = useState<string | null>(null);
  const shown = handovers.find((each) => each.id === id) ?? handovers[0] ?? null;
  return (
    <>
      <section className="block" aria-label="Handover pack">
        <p>
          One PDF for the folder: maps, registers, a card for each crossing, tests, gate tags. Made to be kept for
          decades.
        </p>
        <p className="buttons">
          <CommandButton id="pack" className="main" />
        </p>
      </section>
      <NewHandover number={nextHandoverNumber(project)} />
      {shown ? (
        <section className="block" aria-label="Since a handover">
          <h2>Since a handover</h2>
          {handovers.length > 1 ? (
            <SelectField
              label="Handover"
              value={shown.id}
              choices={handovers.map((each) => ({ value: each.id, label: `${each.number}, ${dateText(each.date)}` }))}
              onCommit={setId}
            />
          ) : null}
          <Since handover={shown} />
        </section>
      ) : (
        <p className="register-empty">Nothing was handed over yet.</p>
      )}
    </>
  );
}

function Since({ handover }: { readonly handover: Handover }) {
  const { project, survey } = useOpenFile();
  const units = useUnits();
  const changes = useMemo(() => changesSince(handover, project, survey), [handover, project, survey]);
  const words = [handover.by && `by ${handover.by}`, handover.to && `to ${handover.to}`, handover.note];
  return (
    <>
      <p>
        <strong>
          Handover {handover.number} of {dateText(handover.date)}
        </strong>
        {words.some((part) => part !== '') ? `: ${words.filter((part) => part !== '').join(', ')}` : ''}
      </p>
      {changes.length === 0 ? (
        <p className="findings-none">Nothing has changed since.</p>
      ) : (
        <ul className="changes">
          {changes.map((change) => (
            <li key={`${change.kind} ${change.id}`}>
              <ChangeLine change={change} words={changeSinceInWords(change, units)} />
            </li>
          ))}
        </ul>
      )}
    </>
  );
}

/** Where the changed thing is still there to be shown, the words lead to it. */
function ChangeLine({ change, words }: { readonly change: ChangeSince; readonly words: string }) {
  const { project } = useOpenFile();
  const id = change.what === 'gone' ? null : shownBy(change, project);
  if (id === null) return <span>{words}</span>;
  const show = () => {
    choose([id]);
    mapView.zoomTo(id);
  };
  return (
    <button type="button" className="plain" onClick={show}>
      {words}
    </button>
  );
}

/** The thing on the map that shows a changed one; null for what has no place there. */
function shownBy({ kind, id }: ChangeSince, project: Project): string | null {
  const crossingId =
    kind === 'crossing'
      ? id
      : kind === 'crossingRecord' || kind === 'buriedPoint'
        ? project[kind].get(id)?.crossingId
        : undefined;
  if (crossingId !== undefined) return project.crossing.get(crossingId)?.gatewayId ?? null;
  return notOnMap.has(kind) ? null : id;
}

const notOnMap: ReadonlySet<Kind> = new Set(['photo', 'testRun', 'earthTest', 'fenceType', 'conductor', 'property']);

function NewHandover({ number }: { readonly number: number }) {
  const [date, setDate] = useState<string | null>(today);
  const [by, setBy] = useState('');
  const [to, setTo] = useState('');
  const [note, setNote] = useState('');
  const freeze = () =>
    void commit(`Freeze handover ${number}`, handOver({ date: date ?? today(), by, to, note }, newId)).then((done) => {
      if (done) setNote('');
    });
  return (
    <section className="block" aria-label={`Handover ${number}`}>
      <h2>Freeze handover {number}</h2>
      <div className="field-pair">
        <DateField label="Day" value={date} onCommit={setDate} />
        <TextField label="Handed over by" value={by} onCommit={setBy} />
      </div>
      <TextField label="Taken over by" value={to} onCommit={setTo} />
      <TextField label="Note" long value={note} onCommit={setNote} />
      <p className="buttons">
        <button type="button" onClick={freeze}>
          Freeze it as it stands
        </button>
      </p>
      <p className="field-hint">The property is kept in the file as it is now; later changes are listed against it.</p>
    </section>
  );
}
