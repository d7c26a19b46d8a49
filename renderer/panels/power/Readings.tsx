import { useMemo } from 'react';
import { type ReadingRow, readingRows } from '../../../core/survey/power/readingRows.ts';
import type { Figures } from '../../../core/words/types.ts';
import { useFigures } from '../../state/useFigures.ts';
import { Register } from '../parts/Register.tsx';
import { AddReading } from './AddReading.tsx';
import { LeakageFit } from './LeakageFit.tsx';
import { usePower } from './usePower.ts';
import { voltsInWords } from './volts.ts';

/** What was measured, beside what is estimated there, and what the two together say about the growth. */
export function Readings() {
  const { power } = usePower();
  const f = useFigures();
  const { readings: words, gain } = f.words.window.power;
  const rows = useMemo(() => readingRows(power), [power]);
  return (
    <>
      <AddReading />
      <Register<ReadingRow>
        caption={words.caption}
        rows={rows}
        idOf={({ reading }) => reading.id}
        empty={words.empty}
        columns={[
          {
            title: words.placeAndDay,
            cell: ({ spot, reading }) => (
              <>
                {reading.place || (spot ? words.where({ spot }) : f.words.survey.awayFromFence)}
                <span className="reading-day">{f.date(reading.date)}</span>
              </>
            ),
            sortBy: ({ reading }) => reading.date,
          },
          {
            title: words.read,
            figures: true,
            cell: ({ reading }) => readInWords(reading, f),
            sortBy: ({ reading }) => reading.voltageV ?? -1,
          },
          {
            title: words.estimate,
            figures: true,
            cell: ({ estimateV }) => voltsInWords(estimateV, f),
            sortBy: ({ estimateV }) => estimateV ?? -1,
          },
          {
            title: words.difference,
            figures: true,
            cell: ({ differenceV }) => (differenceV === null ? '' : gain({ volts: differenceV })),
            sortBy: ({ differenceV }) => differenceV ?? 0,
          },
        ]}
      />
      {rows.length > 0 ? <LeakageFit /> : null}
    </>
  );
}

function readInWords({ voltageV, currentA }: ReadingRow['reading'], f: Figures): string {
  const { nothing, amperes } = f.words.window.power.readings;
  if (voltageV !== null) return f.volts(voltageV);
  return currentA === null ? nothing : amperes({ current: currentA });
}
