import { useState } from 'react';
import type { FindOptions } from '../../../core/api/findOptions.ts';
import { localDate } from '../../../core/words/dates.ts';
import { say } from '../../state/choose.ts';
import { makePdf } from '../../state/makePdf.ts';
import { report } from '../../state/report.ts';
import { useWords } from '../../state/useFigures.ts';

type Undated<Options> = Options extends unknown ? Omit<Options, 'date' | 'locale'> : never;

/** Makes the PDF of a sheet and hands it over. */
export function PrintSheetButton({
  label,
  options,
}: {
  readonly label: string;
  readonly options: Undated<FindOptions>;
}) {
  const words = useWords().window.find;
  const [making, setMaking] = useState(false);
  const print = async () => {
    setMaking(true);
    const dated = { ...options, date: localDate(new Date()) } as FindOptions;
    const result = await makePdf({ what: 'find', options: dated });
    setMaking(false);
    if (!result.ok) return report(result.problem);
    say(words.sheetMade({ fileName: result.value.fileName }), 'done');
  };
  return (
    <button type="button" disabled={making} onClick={() => void print()}>
      {making ? words.makingSheet : label}
    </button>
  );
}
