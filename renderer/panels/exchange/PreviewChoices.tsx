import { useMemo, useState } from 'react';
import { importFeatures, usualChoices, whyNotImport } from '../../../core/exchange/intake/importFeatures.ts';
import type { FeatureProblem, ImportAs, Preview, PreviewFeature } from '../../../core/exchange/preview/types.ts';
import type { Status } from '../../../core/model/things.ts';
import { useOpenFile } from '../../state/appState.ts';
import { mapView } from '../../state/mapView.ts';
import { newId } from '../../state/newId.ts';
import { commit } from '../../state/session.ts';
import { useNextFenceType } from '../../state/useNextFenceType.ts';
import { closeDialog } from '../dialogs/DialogFrame.tsx';
import { SelectField } from '../parts/fields.tsx';
import { FeatureTable } from './FeatureTable.tsx';
import { LineTreatment } from './LineTreatment.tsx';
import { PreviewSketch } from './PreviewSketch.tsx';
import { Problems } from './Problems.tsx';
import { type Treatment, treatmentFor } from './treatment.ts';

interface Outcome {
  readonly changed: boolean;
  readonly problems: readonly FeatureProblem[];
  readonly notes: readonly string[];
}

/** What a file holds and what becomes of it, and the button that takes it in. */
export function PreviewChoices({ preview, fileName }: { readonly preview: Preview; readonly fileName: string }) {
  const { project } = useOpenFile();
  const nextType = useNextFenceType();
  const [as, setAs] = useState<ReadonlyMap<string, ImportAs>>(new Map());
  const [typeId, setTypeId] = useState(nextType ?? '');
  const [status, setStatus] = useState<Status>('built');
  const [treatment, setTreatment] = useState<Treatment>(() => treatmentFor(preview));
  const [busy, setBusy] = useState(false);
  const [outcome, setOutcome] = useState<Outcome | null>(null);
  const refusal = useMemo(() => whyNotImport(preview, project), [preview, project]);
  const become = (feature: PreviewFeature): ImportAs => as.get(feature.key) ?? feature.suggestion;
  const count = preview.features.filter((feature) => feature.ours || become(feature) !== 'leaveOut').length;

  const take = async () => {
    setBusy(true);
    // So that the button shows that it was pressed before the work begins.
    await new Promise((resolve) => setTimeout(resolve, 0));
    let problems: readonly FeatureProblem[] = [];
    let notes: readonly string[] = [];
    const changed = await commit(`Import ${fileName}`, (before) => {
      const choices = { ...usualChoices, ...treatment, as, typeId, status, fileName };
      const imported = importFeatures(preview, choices, before, newId);
      ({ problems, notes } = imported);
      return imported.project;
    });
    setBusy(false);
    if (changed) mapView.fit();
    if (changed && problems.length === 0 && notes.length === 0) closeDialog();
    else setOutcome({ changed, problems, notes });
  };

  if (outcome) return <AfterImport outcome={outcome} />;
  return (
    <>
      <p>
        {preview.features.length} usable {preview.features.length === 1 ? 'piece' : 'pieces'}
        {preview.problems.length > 0 ? `, ${preview.problems.length} that can’t be used` : ''}.
      </p>
      {preview.notes.map((note) => (
        <p key={note} className="field-hint">
          {note}
        </p>
      ))}
      <PreviewSketch preview={preview} />
      <div className="field-pair">
        <SelectField
          label="Fences are of type"
          value={typeId}
          choices={[...project.fenceType.values()].map(({ id, name }) => ({ value: id, label: name }))}
          onCommit={setTypeId}
        />
        <SelectField<Status>
          label="They are"
          value={status}
          choices={[
            { value: 'built', label: 'Built: really there' },
            { value: 'planned', label: 'Planned' },
          ]}
          onCommit={setStatus}
        />
      </div>
      <LineTreatment preview={preview} treatment={treatment} onChange={setTreatment} />
      <FeatureTable
        features={preview.features}
        become={become}
        onChoose={(features, choice) => setAs(new Map([...as, ...features.map(({ key }) => [key, choice] as const)]))}
      />
      <Problems problems={preview.problems} />
      {refusal ? (
        <p className="field-problem" role="alert">
          {refusal.message}
        </p>
      ) : null}
      <p className="buttons">
        <button
          type="button"
          className="main"
          disabled={refusal !== null || count === 0 || busy}
          onClick={() => void take()}
        >
          {busy ? 'Taking in …' : `Take in ${count} ${count === 1 ? 'piece' : 'pieces'}`}
        </button>
        <button type="button" disabled={busy} onClick={closeDialog}>
          Leave it
        </button>
        <span className="field-hint">One step of undo takes it all back.</span>
      </p>
    </>
  );
}

function AfterImport({ outcome: { changed, problems, notes } }: { readonly outcome: Outcome }) {
  return (
    <>
      <p role="status">{said(changed, problems.length)}</p>
      {notes.map((note) => (
        <p key={note} className="field-hint">
          {note}
        </p>
      ))}
      <Problems problems={problems} />
      <p className="buttons">
        <button type="button" className="main" onClick={closeDialog}>
          Done
        </button>
      </p>
    </>
  );
}

function said(changed: boolean, problems: number): string {
  if (!changed && problems === 0) {
    return 'Nothing was changed: all of it is in the property already, or was left out.';
  }
  if (!changed) return 'Nothing was taken in. See why of each:';
  return problems > 0 ? 'Taken in, but for these:' : 'Taken in.';
}
