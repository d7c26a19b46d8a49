import { propertyOf } from '../../../core/model/project.ts';
import type { LineVoltages } from '../../../core/survey/power/lineVoltages.ts';
import { formatLength } from '../../../core/words/numbers/write.ts';
import { useOpenFile } from '../../state/appState.ts';
import { useUnits } from '../../state/useUnits.ts';
import { Register } from '../parts/Register.tsx';
import { usePower } from './usePower.ts';
import { voltsInWords } from './volts.ts';

/** What each live fence reads at its two ends and at its lowest. */
export function VoltageRegister() {
  const { project } = useOpenFile();
  const { lines, switches } = usePower();
  const units = useUnits();
  const leastV = propertyOf(project).power.stockMinimumV;
  return (
    <Register<LineVoltages>
      caption={`Estimated peak on each live fence${switches === '' ? '' : `, ${switches}`}`}
      rows={lines}
      idOf={({ lineId }) => lineId}
      empty="No live fence is drawn yet."
      columns={[
        { title: 'Fence', cell: ({ name }) => name, sortBy: ({ name }) => name },
        {
          title: 'Start',
          figures: true,
          cell: ({ startV }) => voltsInWords(startV),
          sortBy: ({ startV }) => known(startV),
        },
        { title: 'End', figures: true, cell: ({ endV }) => voltsInWords(endV), sortBy: ({ endV }) => known(endV) },
        {
          title: 'Lowest',
          figures: true,
          cell: ({ lowestV, belowM }) => (
            <>
              {voltsInWords(lowestV)}
              {lowestV < leastV ? <strong className="over">✕ {formatLength(belowM, units)} too low</strong> : null}
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
