import { useMemo } from 'react';
import { type ReadingRow, readingRows } from '../../../core/survey/power/readingRows.ts';
import { dateText } from '../../../core/words/dates.ts';
import { formatVoltage } from '../../../core/words/numbers/write.ts';
import { Register } from '../parts/Register.tsx';
import { AddReading } from './AddReading.tsx';
import { LeakageFit } from './LeakageFit.tsx';
import { usePower } from './usePower.ts';
import { gainInWords, voltsInWords } from './volts.ts';

/** What was measured, beside what is estimated there, and what the two together say about the growth. */
export function Readings() {
  const { power } = usePower();
  const rows = useMemo(() => readingRows(power), [power]);
  return (
    <>
      <AddReading />
      <Register<ReadingRow>
        caption="Readings, the newest first, beside the estimate with the switches as they then stood"
        rows={rows}
        idOf={({ reading }) => reading.id}
        empty="No readings yet. Two or three on each section tell where the growth is."
        columns={[
          {
            title: 'Place, day',
            cell: ({ where, reading }) => (
              <>
                {reading.place || where.replace(/^at /, '')}
                <span className="reading-day">{dateText(reading.date)}</span>
              </>
            ),
            sortBy: ({ reading }) => reading.date,
          },
          {
            title: 'Read',
            figures: true,
            cell: ({ reading }) => readInWords(reading),
            sortBy: ({ reading }) => reading.voltageV ?? -1,
          },
          {
            title: 'Estimate',
            figures: true,
            cell: ({ estimateV }) => voltsInWords(estimateV),
            sortBy: ({ estimateV }) => estimateV ?? -1,
          },
          {
            title: 'Read less estimate',
            figures: true,
            cell: ({ differenceV }) => (differenceV === null ? '' : gainInWords(differenceV)),
            sortBy: ({ differenceV }) => differenceV ?? 0,
          },
        ]}
      />
      {rows.length > 0 ? <LeakageFit /> : null}
    </>
  );
}

function readInWords({ voltageV, currentA }: ReadingRow['reading']): string {
  if (voltageV !== null) return formatVoltage(voltageV);
  return currentA === null ? 'nothing' : `${currentA} A`;
}
