import { propertyOf } from '../../../core/model/project.ts';
import type { LineVoltages } from '../../../core/survey/power/lineVoltages.ts';
import { useOpenFile } from '../../state/appState.ts';
import { useFigures } from '../../state/useFigures.ts';
import { Register } from '../parts/Register.tsx';
import { usePower } from './usePower.ts';
import { voltsInWords } from './volts.ts';

/** What each live fence reads at its two ends and at its lowest. */
export function VoltageRegister() {
  const { project } = useOpenFile();
  const { lines, stood } = usePower();
  const f = useFigures();
  const words = f.words.window.power.voltages;
  const leastV = propertyOf(project).power.stockMinimumV;
  return (
    <Register<LineVoltages>
      caption={words.caption({ stood })}
      rows={lines}
      idOf={({ lineId }) => lineId}
      empty={words.empty}
      columns={[
        { title: words.fence, cell: ({ name }) => name, sortBy: ({ name }) => name },
        {
          title: words.start,
          figures: true,
          cell: ({ startV }) => voltsInWords(startV, f),
          sortBy: ({ startV }) => known(startV),
        },
        {
          title: words.end,
          figures: true,
          cell: ({ endV }) => voltsInWords(endV, f),
          sortBy: ({ endV }) => known(endV),
        },
        {
          title: words.lowest,
          figures: true,
          cell: ({ lowestV, belowM }) => (
            <>
              {voltsInWords(lowestV, f)}
              {lowestV < leastV ? <strong className="over">{words.tooLow({ belowM })}</strong> : null}
            </>
          ),
          sortBy: ({ lowestV }) => known(lowestV),
        },
      ]}
    />
  );
}

/** What is not known sorts before everything. */
function known(volts: number): number {
  return Number.isNaN(volts) ? -1 : volts;
}
