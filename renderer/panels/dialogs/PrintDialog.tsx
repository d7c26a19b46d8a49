import { useMemo, useState } from 'react';
import type { PrintJob } from '../../../core/api/printJob.ts';
import type { SheetOptions } from '../../../core/api/sheetOptions.ts';
import { suggestedScales } from '../../../core/sheets/scales.ts';
import { localDate } from '../../../core/words/dates.ts';
import { useOpenFile } from '../../state/appState.ts';
import { useWords } from '../../state/useFigures.ts';
import { CheckField, NumberField, SelectField } from '../parts/fields.tsx';
import { PaperField, PdfDialog, scaleChoices } from './PdfDialog.tsx';

type Paper = SheetOptions['paper'];
type Orientation = SheetOptions['orientation'];

/** What goes on the sheets, at which true scale; the PDF is made from the file as it stands. */
export function PrintDialog() {
  const { project, survey } = useOpenFile();
  const texts = useWords();
  const { print: words } = texts.window.frame.dialogs;
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
    <PdfDialog title={words.title} job={job}>
      <div className="field-pair">
        <PaperField label={words.paper} value={paper} onCommit={setPaper} />
        <SelectField<Orientation>
          label={words.orientation}
          value={orientation}
          choices={[
            { value: 'landscape', label: words.landscape },
            { value: 'portrait', label: words.portrait },
          ]}
          onCommit={setOrientation}
        />
      </div>
      <SelectField
        label={words.scale}
        value={isSuggested ? String(scaleDenominator) : 'own'}
        choices={[...scaleChoices(scales, texts), { value: 'own', label: words.otherScale }]}
        hint={words.scaleHint}
        onCommit={(value) => {
          setOwnScale(value === 'own');
          if (value !== 'own') setScale(Number(value));
        }}
      />
      {isSuggested ? null : (
        <NumberField
          label={words.scaleOneTo}
          unit=""
          decimals={0}
          min={50}
          max={1_000_000}
          value={scaleDenominator}
          onCommit={setScale}
        />
      )}
      <fieldset>
        <legend>{words.after}</legend>
        <CheckField label={words.switches} value={withSwitchRegister} onCommit={setSwitches} />
        <CheckField label={words.crossings} value={withCrossingSchedule} onCommit={setCrossings} />
        <CheckField label={words.tests} value={withTestSheets} onCommit={setTests} />
      </fieldset>
    </PdfDialog>
  );
}
