import { useState } from 'react';
import type { FindOptions } from '../../../core/api/findOptions.ts';
import { localDate } from '../../../core/words/dates.ts';
import { activeLocale } from '../../../core/words/numbers/locale.ts';
import { say } from '../../state/choose.ts';
import { download } from '../../state/download.ts';
import { report } from '../../state/report.ts';
import { host } from '../../state/session.ts';

type Undated<Options> = Options extends unknown ? Omit<Options, 'date' | 'locale'> : never;

/** Makes the PDF of a sheet and hands it over. */
export function PrintSheetButton({
  label,
  options,
}: {
  readonly label: string;
  readonly options: Undated<FindOptions>;
}) {
  const [making, setMaking] = useState(false);
  const print = async () => {
    setMaking(true);
    const result = await host().project.printFind({
      ...options,
      locale: activeLocale(),
      date: localDate(new Date()),
    } as FindOptions);
    setMaking(false);
    if (!result.ok) return report(result.problem);
    download(result.value);
    say(`${result.value.fileName} is made.`, 'done');
  };
  return (
    <button type="button" disabled={making} onClick={() => void print()}>
      {making ? 'Making the PDF…' : label}
    </button>
  );
}
