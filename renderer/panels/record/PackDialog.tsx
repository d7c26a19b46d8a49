import { useMemo, useState } from 'react';
import { type PackOptions, type PackPart, packParts } from '../../../core/api/packOptions.ts';
import { propertyOf } from '../../../core/model/project.ts';
import { handoversOf } from '../../../core/record/edits/handOver.ts';
import { scaleText, suggestedScales } from '../../../core/sheets/scales.ts';
import { today } from '../../../core/words/dates.ts';
import { activeLocale } from '../../../core/words/numbers/locale.ts';
import { useOpenFile } from '../../state/appState.ts';
import { download } from '../../state/download.ts';
import { host } from '../../state/session.ts';
import { closeDialog, DialogFrame } from '../dialogs/DialogFrame.tsx';
import { CheckField, SelectField, TextField } from '../parts/fields.tsx';

const partWords: Record<PackPart, string> = {
  map: 'Map sheets at true scale',
  switches: 'Sections, paddocks and switch register',
  crossings: 'Crossing schedule, and a card for each crossing',
  tests: 'Test results, and a test sheet for each section',
  power: 'Energiser and earth',
  materials: 'Materials as built',
  changes: 'Changes from the plan and since the last handover',
  tags: 'Gate tags to cut out',
  geoJson: 'The whole property as GeoJSON, attached',
};

/** What goes into the handover pack; the PDF is made from the file as it stands. */
export function PackDialog() {
  const { project, survey } = useOpenFile();
  const { placed } = propertyOf(project);
  const [latest] = handoversOf(project);
  const [parts, setParts] = useState<readonly PackPart[]>(
    placed ? packParts : packParts.filter((part) => part !== 'geoJson'),
  );
  const [paper, setPaper] = useState<PackOptions['paper']>('A3');
  const [scale, setScale] = useState<number | null>(null);
  const [preparedBy, setBy] = useState(latest?.by ?? '');
  const [preparedFor, setFor] = useState(latest?.to ?? '');
  const [note, setNote] = useState('');
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  const orientation = 'landscape';
  const scales = useMemo(() => suggestedScales(survey, project, { paper, orientation }), [survey, project, paper]);
  const make = async () => {
    setBusy(true);
    setProblem(null);
    const result = await host().project.printPack({
      parts,
      paper,
      orientation,
      scaleDenominator: scale,
      handoverNumber: latest?.number ?? null,
      preparedBy,
      preparedFor,
      note,
      locale: activeLocale(),
      date: today(),
    });
    setBusy(false);
    if (!result.ok) return setProblem(`${result.problem.message} ${result.problem.remedy}`);
    download(result.value);
    closeDialog();
  };
  return (
    <DialogFrame title="Handover pack">
      <form
        onSubmit={(event) => {
          event.preventDefault();
          void make();
        }}
      >
        <fieldset>
          <legend>What goes in, after the cover with its cautions</legend>
          {packParts.map((part) => (
            <CheckField
              key={part}
              label={partWords[part]}
              value={parts.includes(part)}
              {...(part === 'geoJson' && !placed ? { hint: 'The property has no place on earth yet.' } : {})}
              onCommit={(wanted) =>
                setParts(packParts.filter((each) => (each === part ? wanted : parts.includes(each))))
              }
            />
          ))}
        </fieldset>
        <div className="field-pair">
          <SelectField<PackOptions['paper']>
            label="Paper of the maps"
            value={paper}
            choices={[
              { value: 'A3', label: 'A3' },
              { value: 'A4', label: 'A4' },
            ]}
            onCommit={setPaper}
          />
          <SelectField
            label="True scale"
            value={scale === null ? 'suits' : String(scale)}
            choices={[
              { value: 'suits', label: 'What suits six sheets' },
              ...scales.toReversed().map((choice) => ({
                value: String(choice.scaleDenominator),
                label: `${scaleText(choice.scaleDenominator)}, ${choice.sheets === 1 ? 'one sheet' : `up to ${choice.sheets} sheets`}`,
              })),
            ]}
            onCommit={(value) => setScale(value === 'suits' ? null : Number(value))}
          />
        </div>
        <div className="field-pair">
          <TextField label="Handed over by" value={preparedBy} onCommit={setBy} />
          <TextField label="Taken over by" value={preparedFor} onCommit={setFor} />
        </div>
        <TextField label="Note on the cover" long value={note} onCommit={setNote} />
        {latest ? null : (
          <p className="field-hint">No handover is frozen yet: the pack shows the property as it stands now.</p>
        )}
        {problem ? (
          <p className="field-problem" role="alert">
            {problem}
          </p>
        ) : null}
        <p className="buttons">
          <button type="submit" className="main" disabled={busy}>
            {busy ? 'Making the PDF…' : 'Make the PDF'}
          </button>
          <span className="field-hint">It keeps its scale when printed at 100 %, not “fit to page”.</span>
        </p>
      </form>
    </DialogFrame>
  );
}
