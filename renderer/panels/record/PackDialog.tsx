import { useMemo, useState } from 'react';
import { type PackOptions, type PackPart, packParts } from '../../../core/api/packOptions.ts';
import type { PrintJob } from '../../../core/api/printJob.ts';
import { propertyOf } from '../../../core/model/project.ts';
import { handoversOf } from '../../../core/record/edits/handOver.ts';
import { suggestedScales } from '../../../core/sheets/scales.ts';
import { today } from '../../../core/words/dates.ts';
import { useOpenFile } from '../../state/appState.ts';
import { useWords } from '../../state/useFigures.ts';
import { PaperField, PdfDialog, scaleChoices } from '../dialogs/PdfDialog.tsx';
import { CheckField, SelectField, TextField } from '../parts/fields.tsx';

/** What goes into the handover pack; the PDF is made from the file as it stands. */
export function PackDialog() {
  const texts = useWords();
  const words = texts.window.record.handover;
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
    <PdfDialog title={words.pack} job={job}>
      <fieldset>
        <legend>{words.whatGoesIn}</legend>
        {packParts.map((part) => (
          <CheckField
            key={part}
            label={words.parts[part]}
            value={parts.includes(part)}
            {...(part === 'geoJson' && !placed ? { hint: words.notPlaced } : {})}
            onCommit={(wanted) => setParts(packParts.filter((each) => (each === part ? wanted : parts.includes(each))))}
          />
        ))}
      </fieldset>
      <div className="field-pair">
        <PaperField label={words.paper} value={paper} onCommit={setPaper} />
        <SelectField
          label={words.scale}
          value={scale === null ? 'suits' : String(scale)}
          choices={[{ value: 'suits', label: words.suitingScale }, ...scaleChoices(scales, texts)]}
          onCommit={(value) => setScale(value === 'suits' ? null : Number(value))}
        />
      </div>
      <div className="field-pair">
        <TextField label={words.handedOverBy} value={preparedBy} onCommit={setBy} />
        <TextField label={words.takenOverBy} value={preparedFor} onCommit={setFor} />
      </div>
      <TextField label={words.coverNote} long value={note} onCommit={setNote} />
      {latest ? null : <p className="field-hint">{words.notLocked}</p>}
    </PdfDialog>
  );
}
