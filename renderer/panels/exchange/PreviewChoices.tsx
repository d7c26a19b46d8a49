import { useMemo, useState } from 'react';
import { becomes, usualChoices, whyNotImport } from '../../../core/exchange/intake/importFeatures.ts';
import { type Stray, whereaboutsOf } from '../../../core/exchange/intake/whereabouts.ts';
import type { FeatureProblem, ImportAs, Preview, PreviewFeature } from '../../../core/exchange/preview/types.ts';
import { applyChanges } from '../../../core/model/difference.ts';
import { EditRefused } from '../../../core/model/edits/support/edit.ts';
import type { Status } from '../../../core/model/things.ts';
import { plainWords } from '../../../core/words/figures.ts';
import { type Message, message, type Texts } from '../../../core/words/message.ts';
import { useApp, useOpenFile } from '../../state/appState.ts';
import { mapView } from '../../state/mapView.ts';
import { faultText } from '../../state/report.ts';
import { commit } from '../../state/session.ts';
import { figuresOf, useFigures } from '../../state/useFigures.ts';
import { useNextFenceType } from '../../state/useNextFenceType.ts';
import type { ReadingRoom } from '../../work/reading.ts';
import { closeDialog } from '../dialogs/DialogFrame.tsx';
import { SelectField } from '../parts/fields.tsx';
import { FeatureTable } from './FeatureTable.tsx';
import { LineTreatment } from './LineTreatment.tsx';
import { PlaceQuestion } from './PlaceQuestion.tsx';
import { PreviewSketch } from './PreviewSketch.tsx';
import { Problems } from './Problems.tsx';
import { Strays } from './Strays.tsx';
import { type Treatment, treatmentFor } from './treatment.ts';

interface Outcome {
  readonly changed: boolean;
  /** Why it could not come in at all; null: it could. */
  readonly failure: string | null;
  readonly problems: readonly FeatureProblem[];
  readonly notes: readonly Message[];
}

const noStrays: ReadonlyMap<string, Stray> = new Map();

/** What a file holds and what becomes of it, and the button that takes it in. */
export function PreviewChoices({
  preview,
  fileName,
  room,
  stop,
}: {
  readonly preview: Preview;
  readonly fileName: string;
  readonly room: ReadingRoom;
  /** Stops the work on it; the dialog says so. */
  readonly stop: () => void;
}) {
  const { project } = useOpenFile();
  const f = figuresOf(project);
  const words = f.words.window.exchange.importing;
  const nextType = useNextFenceType();
  const [as, setAs] = useState<ReadonlyMap<string, ImportAs>>(new Map());
  const [typeId, setTypeId] = useState(nextType ?? '');
  const [status, setStatus] = useState<Status>('built');
  const [place, setPlace] = useState<number | null>(null);
  const [treatment, setTreatment] = useState<Treatment>(() => treatmentFor(preview));
  const [busy, setBusy] = useState<'working' | 'saving' | null>(null);
  const [outcome, setOutcome] = useState<Outcome | null>(null);
  const refusal = useMemo(() => whyNotImport(preview, project, place), [preview, project, place]);
  // Before a place is chosen; the choice stays open to be changed.
  const places = useMemo(() => whereaboutsOf(preview, project, null)?.places ?? [], [preview, project]);
  const isUndecided = refusal?.code === 'whichPlace';
  const strays = useMemo(
    () => (isUndecided ? null : whereaboutsOf(preview, project, place))?.strays ?? noStrays,
    [preview, project, place, isUndecided],
  );
  const together = useMemo(() => preview.features.filter(({ key }) => !strays.has(key)), [preview, strays]);
  const become = becomes(as, strays);
  const choose = (features: readonly PreviewFeature[], choice: ImportAs) =>
    setAs(new Map([...as, ...features.map(({ key }) => [key, choice] as const)]));
  const count = preview.features.filter((feature) => feature.ours || become(feature) !== 'leaveOut').length;

  const take = async () => {
    setBusy('working');
    const done = await takeIn(
      fileName,
      room,
      { ...usualChoices, ...treatment, as, typeId, status, fileName, place },
      () => setBusy('saving'),
    );
    setBusy(null);
    if (done.changed) mapView.fit();
    if (done.changed && done.problems.length === 0 && done.notes.length === 0) closeDialog();
    else setOutcome(done);
  };

  if (outcome) return <AfterImport outcome={outcome} />;
  return (
    <>
      <p>{words.usable({ count: preview.features.length, problems: preview.problems.length })}</p>
      {preview.notes.map(f.say).map((note) => (
        <p key={note} className="field-hint">
          {note}
        </p>
      ))}
      <PlaceQuestion places={places} place={place} onChoose={setPlace} />
      <PreviewSketch features={together} />
      <Strays strays={[...strays.values()]} become={become} onChoose={choose} />
      <div className="field-pair">
        <SelectField
          label={words.fenceType}
          value={typeId}
          choices={[...project.fenceType.values()].map(({ id, name }) => ({ value: id, label: name }))}
          onCommit={setTypeId}
        />
        <SelectField<Status>
          label={words.status}
          value={status}
          choices={[
            { value: 'built', label: words.built },
            { value: 'planned', label: words.planned },
          ]}
          onCommit={setStatus}
        />
      </div>
      <LineTreatment preview={preview} room={room} treatment={treatment} onChange={setTreatment} />
      {isUndecided ? null : <FeatureTable features={together} become={become} onChoose={choose} />}
      <Problems problems={preview.problems} />
      {refusal ? (
        <p className="field-problem" role="alert">
          {f.say(refusal.message)}
        </p>
      ) : null}
      <p className="buttons">
        <button
          type="button"
          className="main"
          disabled={refusal !== null || count === 0 || busy !== null}
          onClick={() => void take()}
        >
          {busy ? words.importing : words.importPieces({ count })}
        </button>
        {busy === 'working' ? (
          <button type="button" onClick={stop}>
            {words.stop}
          </button>
        ) : (
          <button type="button" disabled={busy !== null} onClick={closeDialog}>
            {words.leaveOut}
          </button>
        )}
        <span className="field-hint">{words.oneStep}</span>
      </p>
    </>
  );
}

/** Takes a file into the open property: works it out beside the window, then writes it. */
async function takeIn(
  fileName: string,
  room: ReadingRoom,
  choices: Parameters<ReadingRoom['takeIn']>[1],
  onSaving: () => void,
): Promise<Outcome> {
  const failed = (failure: string): Outcome => ({ changed: false, failure, problems: [], notes: [] });
  try {
    const before = useApp.getState().file?.project;
    if (!before) return failed(plainWords().window.exchange.importing.closed);
    const taken = await room.takeIn(before, choices);
    const f = figuresOf(before);
    if (!taken.ok) return failed(f.say(taken.message));
    onSaving();
    // So that the button shows that it is being saved before that work begins.
    await new Promise((resolve) => setTimeout(resolve, 0));
    const changed = await commit(f.words.window.exchange.importing.title({ file: fileName }), (now) => {
      if (now !== before) throw new EditRefused({ code: 'changed', message: message('exchange.import.changed') });
      return applyChanges(before, taken.changes);
    });
    const { problems, notes, changes } = taken;
    const failure = changed || changes.length === 0 ? null : whyNotSaved();
    return { changed, failure, problems, notes };
  } catch (error) {
    return failed(plainWords().window.exchange.importing.failed({ fault: faultText(error) }));
  }
}

/** What the window says of the last edit that did not come to pass. */
function whyNotSaved(): string {
  const { problem, lastLine } = useApp.getState();
  if (problem) return `${problem.message} ${problem.remedy}`;
  return lastLine?.kind === 'refused' ? lastLine.text : plainWords().window.exchange.importing.notSaved;
}

function AfterImport({ outcome }: { readonly outcome: Outcome }) {
  const { failure, problems, notes } = outcome;
  const f = useFigures();
  const words = f.words.window.exchange.importing;
  return (
    <>
      <p role="status">{said(outcome, words)}</p>
      {failure ? (
        <p className="field-problem" role="alert">
          {failure}
        </p>
      ) : null}
      {notes.map(f.say).map((note) => (
        <p key={note} className="field-hint">
          {note}
        </p>
      ))}
      <Problems problems={problems} />
      <p className="buttons">
        <button type="button" className="main" onClick={closeDialog}>
          {words.done}
        </button>
      </p>
    </>
  );
}

function said({ changed, failure, problems }: Outcome, words: Texts['window']['exchange']['importing']): string {
  if (failure) return words.nothingImported;
  if (!changed && problems.length === 0) return words.nothingChanged;
  if (!changed) return words.noneImported;
  return problems.length > 0 ? words.butForThese : words.imported;
}
