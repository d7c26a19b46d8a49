import { useMemo, useState } from 'react';
import { type PackOptions, type PackPart, packParts } from '../../../core/api/packOptions.ts';
import type { PrintJob } from '../../../core/api/printJob.ts';
import { propertyOf } from '../../../core/model/project.ts';
import { handoversOf } from '../../../core/record/edits/handOver.ts';
import { suggestedScales } from '../../../core/sheets/scales.ts';
import { today } from '../../../core/words/dates.ts';
import { useOpenFile } from '../../state/appState.ts';
import { PaperField, PdfDialog, scaleChoices } from '../dialogs/PdfDialog.tsx';
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
  const orientation = 'landscape';
  const scales = useMemo(() => suggestedScales(survey, project, { paper, orientation }), [survey, project, paper]);
  const job = (): PrintJob => ({
    what: 'pack',
    options: {
      parts,
      paper,
      orientation,
      scaleDenominator: scale,
      handoverNumber: latest?.number ?? null,
      preparedBy,
      preparedFor,
      note,
      date: today(),
    },
  });
  return (
    <PdfDialog title="Handover pack" job={job}>
      <fieldset>
        <legend>What goes in, after the cover with its cautions</legend>
        {packParts.map((part) => (
          <CheckField
            key={part}
            label={partWords[part]}
            value={parts.includes(part)}
            {...(part === 'geoJson' && !placed ? { hint: 'The property has no place on earth yet.' } : {})}
            onCommit={(wanted) => setParts(packParts.filter((each) => (each === part ? wanted : parts.includes(each))))}
          />
        ))}
      </fieldset>
      <div className="field-pair">
        <PaperField label="Paper of the maps" value={paper} onCommit={setPaper} />
        <SelectField
          label="True scale"
          value={scale === null ? 'suits' : String(scale)}
          choices={[{ value: 'suits', label: 'What suits six sheets' }, ...scaleChoices(scales)]}
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
    </PdfDialog>
  );
}
