import { useMemo, useState } from 'react';
import type { SheetOptions } from '../../../core/api/sheetOptions.ts';
import { scaleText, suggestedScales } from '../../../core/sheets/scales.ts';
import { localDate } from '../../../core/words/dates.ts';
import { activeLocale } from '../../../core/words/numbers/locale.ts';
import { useOpenFile } from '../../state/appState.ts';
import { download } from '../../state/download.ts';
import { host } from '../../state/session.ts';
import { CheckField, NumberField, SelectField } from '../parts/fields.tsx';
import { closeDialog, DialogFrame } from './DialogFrame.tsx';

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
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  const scales = useMemo(
    () => suggestedScales(survey, project, { paper, orientation }),
    [survey, project, paper, orientation],
  );
  const fitting = scales.at(-1)?.scaleDenominator ?? 5000;
  const scaleDenominator = scale ?? fitting;
  const isSuggested = !ownScale && scales.some((choice) => choice.scaleDenominator === scaleDenominator);

  const print = async () => {
    setBusy(true);
    setProblem(null);
    const result = await host().project.printSheets({
      paper,
      orientation,
      scaleDenominator,
      centre: null,
      gridM: null,
      withSwitchRegister,
      withCrossingSchedule,
      withTestSheets,
      locale: activeLocale(),
      date: localDate(new Date()),
    });
    setBusy(false);
    if (!result.ok) return setProblem(`${result.problem.message} ${result.problem.remedy}`);
    download(result.value);
    closeDialog();
  };
  return (
    <DialogFrame title="Print map sheets">
      <form
        onSubmit={(event) => {
          event.preventDefault();
          void print();
        }}
      >
        <div className="field-pair">
          <SelectField<Paper>
            label="Paper"
            value={paper}
            choices={[
              { value: 'A3', label: 'A3' },
              { value: 'A4', label: 'A4' },
            ]}
            onCommit={setPaper}
          />
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
          choices={[
            ...scales.toReversed().map((choice) => ({
              value: String(choice.scaleDenominator),
              label: `${scaleText(choice.scaleDenominator)}, ${choice.sheets === 1 ? 'one sheet' : `up to ${choice.sheets} sheets`}`,
            })),
            { value: 'own', label: 'Another scale' },
          ]}
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
