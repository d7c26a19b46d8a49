import { useMemo, useState } from 'react';
import type { PrintJob } from '../../../core/api/printJob.ts';
import type { SheetOptions } from '../../../core/api/sheetOptions.ts';
import { suggestedScales } from '../../../core/sheets/scales.ts';
import { localDate } from '../../../core/words/dates.ts';
import { useOpenFile } from '../../state/appState.ts';
import { CheckField, NumberField, SelectField } from '../parts/fields.tsx';
import { PaperField, PdfDialog, scaleChoices } from './PdfDialog.tsx';

type Paper = SheetOptions['paper'];
type Orientation = SheetOptions['orientation'];

/** What goes on the sheets, at which true scale; the PDF is made from the file as it stands. */
export function PrintDialog() {
  const { project, survey } = useOpenFile();
  const [paper, setPaper] = useState<Paper>('A3');
  const [orientation, setOrientation] = useState<Orientation>('landscape');
  const [scale, setScale] = useState<number | null>(null);
  const [ownScale, setOwnScale] = useState(false);
  const [withSwitchRegister, setSwitches] = useState(true);
  const [withCrossingSchedule, setCrossings] = useState(true);
  const [withTestSheets, setTests] = useState(true);
  const scales = useMemo(
    () => suggestedScales(survey, project, { paper, orientation }),
    [survey, project, paper, orientation],
  );
  const fitting = scales.at(-1)?.scaleDenominator ?? 5000;
  const scaleDenominator = scale ?? fitting;
  const isSuggested = !ownScale && scales.some((choice) => choice.scaleDenominator === scaleDenominator);

  const job = (): PrintJob => ({
    what: 'sheets',
    options: {
      paper,
      orientation,
      scaleDenominator,
      centre: null,
      gridM: null,
      withSwitchRegister,
      withCrossingSchedule,
      withTestSheets,
      date: localDate(new Date()),
    },
  });
  return (
    <PdfDialog title="Print map sheets" job={job}>
      <div className="field-pair">
        <PaperField label="Paper" value={paper} onCommit={setPaper} />
        <SelectField<Orientation>
          label="Held"
          value={orientation}
          choices={[
            { value: 'landscape', label: 'Wide' },
            { value: 'portrait', label: 'Upright' },
          ]}
          onCommit={setOrientation}
        />
      </div>
      <SelectField
        label="True scale"
        value={isSuggested ? String(scaleDenominator) : 'own'}
        choices={[...scaleChoices(scales), { value: 'own', label: 'Another scale' }]}
        hint="Over several sheets, a sketch shows how they lie."
        onCommit={(value) => {
          setOwnScale(value === 'own');
          if (value !== 'own') setScale(Number(value));
        }}
      />
      {isSuggested ? null : (
        <NumberField
          label="Scale, 1 to"
          unit=""
          decimals={0}
          min={50}
          max={1_000_000}
          value={scaleDenominator}
          onCommit={setScale}
        />
      )}
      <fieldset>
        <legend>On the pages after the map</legend>
        <CheckField label="Switch register" value={withSwitchRegister} onCommit={setSwitches} />
        <CheckField label="Crossing schedule" value={withCrossingSchedule} onCommit={setCrossings} />
        <CheckField label="A test sheet for each section" value={withTestSheets} onCommit={setTests} />
      </fieldset>
    </PdfDialog>
  );
}
