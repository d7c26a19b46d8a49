import { useMemo, useState } from 'react';
import { readGeoJson } from '../../../core/exchange/geojson/readGeoJson.ts';
import { importFeatures, usualChoices, whyNotImport } from '../../../core/exchange/intake/importFeatures.ts';
import type { FeatureProblem, ImportAs, Preview, PreviewFeature } from '../../../core/exchange/preview/types.ts';
import { propertyOf } from '../../../core/model/project.ts';
import type { Status } from '../../../core/model/things.ts';
import { useOpenFile } from '../../state/appState.ts';
import { mapView } from '../../state/mapView.ts';
import { newId } from '../../state/newId.ts';
import { commit } from '../../state/session.ts';
import { useNextFenceType } from '../../state/useNextFenceType.ts';
import { SelectField } from '../parts/fields.tsx';
import { closeDialog, DialogFrame } from './DialogFrame.tsx';
import { PreviewSketch } from './PreviewSketch.tsx';

const asWords: Record<ImportAs, string> = {
  fenceLine: 'fence line, live',
  boundary: 'boundary fence, not live',
  heights: 'heights of the ground only',
  gateway: 'gateway',
  post: 'post',
  energiser: 'energiser',
  powerLine: 'power line',
  waterPipe: 'water pipe',
  gasPipe: 'gas pipe',
  dataCable: 'data cable',
  drain: 'drain',
  road: 'road',
  path: 'path',
  creek: 'creek',
  floodZone: 'ground that floods',
  earthElectrode: 'earth electrode',
  leaveOut: 'leave out',
};
const rowsAtOnce = 100;

/** What a GeoJSON file holds, what each piece will become, and what can't be used; nothing changes until it is taken. */
export function ImportDialog({ fileName, text }: { readonly fileName: string; readonly text: string }) {
  const { project } = useOpenFile();
  const property = propertyOf(project);
  const [swap, setSwap] = useState(false);
  const result = useMemo(
    () => readGeoJson(text, { swap, nearTo: property.placed ? property.origin : null }),
    [text, swap, property.placed, property.origin],
  );
  return (
    <DialogFrame title={`Import ${fileName}`} wide>
      {result.ok ? (
        <>
          {result.preview.looksSwapped || swap ? (
            <p className="caution">
              {swap
                ? 'Latitude and longitude are taken the other way round than the file has them.'
                : result.preview.looksSwapped}{' '}
              <button type="button" onClick={() => setSwap(!swap)}>
                {swap ? 'Take them as they stand' : 'Swap latitude and longitude'}
              </button>
            </p>
          ) : null}
          <PreviewChoices key={String(swap)} preview={result.preview} fileName={fileName} />
        </>
      ) : (
        <p className="field-problem" role="alert">
          {result.message} {result.remedy}
        </p>
      )}
    </DialogFrame>
  );
}

function PreviewChoices({ preview, fileName }: { readonly preview: Preview; readonly fileName: string }) {
  const { project } = useOpenFile();
  const nextType = useNextFenceType();
  const [as, setAs] = useState<ReadonlyMap<string, ImportAs>>(new Map());
  const [typeId, setTypeId] = useState(nextType ?? '');
  const [status, setStatus] = useState<Status>('built');
  const [leftOut, setLeftOut] = useState<readonly FeatureProblem[] | null>(null);
  const refusal = useMemo(() => whyNotImport(preview, project), [preview, project]);
  const become = (feature: PreviewFeature): ImportAs => as.get(feature.key) ?? feature.suggestion;
  const count = preview.features.filter((feature) => feature.ours || become(feature) !== 'leaveOut').length;

  const take = async () => {
    let problems: readonly FeatureProblem[] = [];
    const done = await commit(`Import ${fileName}`, (before) => {
      const imported = importFeatures(preview, { ...usualChoices, as, typeId, status }, before, newId);
      problems = imported.problems;
      return imported.project;
    });
    if (done) mapView.fit();
    if (problems.length > 0 || !done) setLeftOut(problems);
    else closeDialog();
  };

  if (leftOut !== null) return <AfterImport problems={leftOut} />;
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
        <button type="button" className="main" disabled={refusal !== null || count === 0} onClick={() => void take()}>
          Take in {count} {count === 1 ? 'piece' : 'pieces'}
        </button>
        <button type="button" onClick={closeDialog}>
          Leave it
        </button>
        <span className="field-hint">One step of undo takes it all back.</span>
      </p>
    </>
  );
}

function FeatureTable({
  features,
  become,
  onChoose,
}: {
  readonly features: readonly PreviewFeature[];
  readonly become: (feature: PreviewFeature) => ImportAs;
  readonly onChoose: (features: readonly PreviewFeature[], choice: ImportAs) => void;
}) {
  const [shown, setShown] = useState(rowsAtOnce);
  return (
    <div className="register">
      <table>
        <caption>What each piece becomes</caption>
        <thead>
          <tr>
            <th scope="col">Piece</th>
            <th scope="col">Shape</th>
            <th scope="col">Becomes</th>
          </tr>
        </thead>
        <tbody>
          {features.slice(0, shown).map((feature) => (
            <tr key={feature.key}>
              <td>{feature.name}</td>
              <td>{feature.shape === 'none' ? 'no place' : `${feature.shape}, ${feature.path.length} points`}</td>
              <td>
                {feature.ours ? (
                  'what it was in Undergate'
                ) : (
                  <select
                    aria-label={`${feature.name} becomes`}
                    value={become(feature)}
                    onChange={(event) => onChoose([feature], event.target.value as ImportAs)}
                  >
                    {feature.possible.map((choice) => (
                      <option key={choice} value={choice}>
                        {asWords[choice]}
                      </option>
                    ))}
                  </select>
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {shown < features.length ? (
        <button type="button" onClick={() => setShown(shown + 5 * rowsAtOnce)}>
          Show more ({features.length - shown} left)
        </button>
      ) : null}
    </div>
  );
}

function Problems({ problems }: { readonly problems: readonly FeatureProblem[] }) {
  if (problems.length === 0) return null;
  return (
    <details open={problems.length <= 5}>
      <summary>What can’t be used ({problems.length})</summary>
      <ul className="import-problems">
        {problems.map(({ index, name, why, whatToDo }) => (
          <li key={`${index} ${why}`}>
            <strong>{name}</strong> (number {index + 1} in the file): {why} {whatToDo}
          </li>
        ))}
      </ul>
    </details>
  );
}

function AfterImport({ problems }: { readonly problems: readonly FeatureProblem[] }) {
  return (
    <>
      <p role="status">
        {problems.length > 0
          ? 'Taken in, but for these:'
          : 'Nothing was changed: all of it is in the property already, or was left out.'}
      </p>
      <Problems problems={problems} />
      <p className="buttons">
        <button type="button" className="main" onClick={closeDialog}>
          Done
        </button>
      </p>
    </>
  );
}
