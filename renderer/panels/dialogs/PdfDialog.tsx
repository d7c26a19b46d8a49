import { type ReactNode, useState } from 'react';
import type { PrintJob } from '../../../core/api/printJob.ts';
import type { SheetOptions } from '../../../core/api/sheetOptions.ts';
import { type ScaleChoice, scaleText } from '../../../core/sheets/scales.ts';
import type { Texts } from '../../../core/words/message.ts';
import { makePdf } from '../../state/makePdf.ts';
import { useWords } from '../../state/useFigures.ts';
import { SelectField } from '../parts/fields.tsx';
import { closeDialog, DialogFrame } from './DialogFrame.tsx';

/** A dialog that asks how a PDF is to be made, and makes it; where it can't be made it says why and stays. */
export function PdfDialog({
  title,
  job,
  children,
}: {
  readonly title: string;
  readonly job: () => PrintJob;
  readonly children: ReactNode;
}) {
  const { frame } = useWords().window;
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  const make = async () => {
    setBusy(true);
    setProblem(null);
    const made = await makePdf(job());
    setBusy(false);
    if (made.ok) closeDialog();
    else setProblem(`${made.problem.message} ${made.problem.remedy}`);
  };
  return (
    <DialogFrame title={title}>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          void make();
        }}
      >
        {children}
        {problem ? (
          <p className="field-problem" role="alert">
            {problem}
          </p>
        ) : null}
        <p className="buttons">
          <button type="submit" className="main" disabled={busy}>
            {busy ? frame.done.makingPdf : frame.dialogs.pdf.make}
          </button>
          <span className="field-hint">{frame.dialogs.pdf.trueScale}</span>
        </p>
      </form>
    </DialogFrame>
  );
}

type Paper = SheetOptions['paper'];

export function PaperField({
  label,
  value,
  onCommit,
}: {
  readonly label: string;
  readonly value: Paper;
  readonly onCommit: (paper: Paper) => void;
}) {
  const choices = (['A3', 'A4'] as const).map((paper) => ({ value: paper, label: paper }));
  return <SelectField<Paper> label={label} value={value} choices={choices} onCommit={onCommit} />;
}

/** Scales to choose from, the largest first, each with the sheets that it takes. */
export function scaleChoices(scales: readonly ScaleChoice[], words: Texts) {
  return scales.toReversed().map(({ scaleDenominator, sheets }) => ({
    value: String(scaleDenominator),
    label: words.window.frame.dialogs.pdf.scale({ scale: scaleText(scaleDenominator), sheets }),
  }));
}
