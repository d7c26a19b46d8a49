import { formatLength } from '../../../core/model/formatUnits.ts';
import type { SwitchRow } from '../../../core/registers/types.ts';
import { useOpenFile } from '../../state/appState.ts';
import { useUnits } from '../../state/useUnits.ts';
import { Register } from '../parts/Register.tsx';

export function SwitchRegister() {
  const { survey } = useOpenFile();
  const units = useUnits();
  return (
    <Register<SwitchRow>
      caption="Cut-out switches"
      rows={survey.switches}
      idOf={(row) => row.switch.id}
      empty="No switches yet. Take the plan above, or press S on the map."
      columns={[
        { title: 'Switch', cell: (row) => row.switch.name, sortBy: (row) => row.switch.name },
        { title: 'Place', cell: (row) => row.placeText, sortBy: (row) => row.placeText },
        {
          title: 'From, to',
          cell: (row) => `${row.supplySection ?? 'not fed'} → ${row.farSection ?? 'nothing'}`,
        },
        {
          title: 'Cuts off',
          figures: true,
          cell: (row) => (row.inRing ? 'nothing alone (ring)' : formatLength(row.cutsOff.lengthM, units)),
          sortBy: (row) => row.cutsOff.lengthM,
        },
      ]}
    />
  );
}
