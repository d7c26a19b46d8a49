import { useMemo, useState } from 'react';
import type { Project } from '../../../core/model/project.ts';
import type { Handover } from '../../../core/model/recordThings.ts';
import type { Kind } from '../../../core/model/things.ts';
import { type ChangeSince, changeSinceInWords, changesSince } from '../../../core/record/changesSince.ts';
import { handOver, handoversOf, nextHandoverNumber } from '../../../core/record/edits/handOver.ts';
import { today } from '../../../core/words/dates.ts';
import { CommandButton } from '../../commands/CommandButton.tsx';
import { useOpenFile } from '../../state/appState.ts';
import { choose } from '../../state/choose.ts';
import { mapView } from '../../state/mapView.ts';
import { newId } from '../../state/newId.ts';
import { commit } from '../../state/session.ts';
import { useFigures } from '../../state/useFigures.ts';
import { SelectField, TextField } from '../parts/fields.tsx';
import { DateField } from './DateField.tsx';

/** The pack, the handovers that were frozen, and what has changed since. */
export function HandoverView() {
  const words = useFigures().words.window.record.handover;
  const { project } = useOpenFile();
  const handovers = handoversOf(project);
  const [id, setId] = useState<string | null>(null);
  const shown = handovers.find((each) => each.id === id) ?? handovers[0] ?? null;
  return (
    <>
      <section className="block" aria-label={words.pack}>
        <p>{words.packHint}</p>
        <p className="buttons">
          <CommandButton id="pack" className="main" />
        </p>
      </section>
      <NewHandover number={nextHandoverNumber(project)} />
      {shown ? (
        <section className="block" aria-label={words.sinceTitle}>
          <h2>{words.sinceTitle}</h2>
          {handovers.length > 1 ? (
            <SelectField
              label={words.handover}
              value={shown.id}
              choices={handovers.map(({ id: value, number, date }) => ({
                value,
                label: words.ofDay({ number, day: date }),
              }))}
              onCommit={setId}
            />
          ) : null}
          <Since handover={shown} />
        </section>
      ) : (
        <p className="register-empty">{words.none}</p>
      )}
    </>
  );
}

function Since({ handover }: { readonly handover: Handover }) {
  const { project, survey } = useOpenFile();
  const f = useFigures();
  const words = f.words.window.record.handover;
  const changes = useMemo(() => changesSince(handover, project, survey), [handover, project, survey]);
  const particulars = words.particulars(handover);
  return (
    <>
      <p>
        <strong>{words.which({ number: handover.number, day: handover.date })}</strong>
        {particulars === '' ? '' : `: ${particulars}`}
      </p>
      {changes.length === 0 ? (
        <p className="findings-none">{words.nothingChanged}</p>
      ) : (
        <ul className="changes">
          {changes.map((change) => (
            <li key={`${change.kind} ${change.id}`}>
              <ChangeLine change={change} words={f.say(changeSinceInWords(change))} />
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
  const { handover: words, fields } = useFigures().words.window.record;
  const [date, setDate] = useState<string | null>(today);
  const [by, setBy] = useState('');
  const [to, setTo] = useState('');
  const [note, setNote] = useState('');
  const lock = () =>
    void commit(words.lock({ number }), handOver({ date: date ?? today(), by, to, note }, newId)).then((done) => {
      if (done) setNote('');
    });
  return (
    <section className="block" aria-label={words.numbered({ number })}>
      <h2>{words.lock({ number })}</h2>
      <div className="field-pair">
        <DateField label={fields.day} value={date} onCommit={setDate} />
        <TextField label={words.handedOverBy} value={by} onCommit={setBy} />
      </div>
      <TextField label={words.takenOverBy} value={to} onCommit={setTo} />
      <TextField label={fields.note} long value={note} onCommit={setNote} />
      <p className="buttons">
        <button type="button" onClick={lock}>
          {words.lockThis}
        </button>
      </p>
      <p className="field-hint">{words.lockHint}</p>
    </section>
  );
}
