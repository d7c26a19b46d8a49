import { formatTape } from '../../../core/model/formatUnits.ts';
import type { CrossingRow } from '../../../core/registers/record/crossingRegister.ts';
import { useUnits } from '../../state/useUnits.ts';
import { Register } from '../parts/Register.tsx';
import { useRecord } from './useRecord.ts';

/** Every buried crossing, what is recorded of it and what is not. Choose one to record it. */
export function CrossingRegister() {
  const { crossings } = useRecord();
  const units = useUnits();
  return (
    <>
      <p className="field-hint">Choose a crossing, here or by its gateway on the map, to record it.</p>
      <Register<CrossingRow>
        caption="Buried crossings"
        rows={crossings}
        idOf={({ built }) => built.figures.gateway.id}
        empty="No buried crossing is drawn."
        columns={[
          {
            title: 'At',
            cell: ({ built }) => built.figures.gateway.name,
            sortBy: ({ built }) => built.figures.gateway.name,
          },
          {
            title: 'State',
            cell: ({ built }) => built.figures.crossing.status,
            sortBy: ({ built }) => built.figures.crossing.status,
          },
          {
            title: 'Known to',
            cell: ({ built }) => (built.seM === null ? 'not taped' : formatTape(built.seM, units)),
            sortBy: ({ built }) => built.seM ?? 1e9,
            figures: true,
          },
          {
            title: 'Joints',
            cell: ({ built }) => joints(built.record?.jointsUnderground ?? null),
            sortBy: ({ built }) => built.record?.jointsUnderground ?? -1,
          },
          {
            title: 'Missing',
            cell: ({ lacks }) => (lacks.length === 0 ? 'nothing' : lacks.join(', ')),
            sortBy: ({ lacks }) => lacks.length,
          },
        ]}
      />
    </>
  );
}

function joints(count: number | null): string {
  if (count === null) return 'not noted';
  return count === 0 ? 'none' : `! ${count}`;
}
