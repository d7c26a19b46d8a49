import { stateInWords, withinInShort } from '../../../core/locate/certaintyWords.ts';
import type { CrossingRow } from '../../../core/record/crossingRegister.ts';
import type { Figures } from '../../../core/words/types.ts';
import { useFigures } from '../../state/useFigures.ts';
import { CertaintyTag } from '../parts/CertaintyTag.tsx';
import { Register } from '../parts/Register.tsx';
import { useRecord } from './useRecord.ts';

/** Every crossing, in the ground or planned, what is recorded of it and what is not. Choose one to record it. */
export function CrossingRegister() {
  const { crossings } = useRecord();
  const f = useFigures();
  return (
    <>
      <p className="field-hint">Choose a crossing, here or by its gateway on the map, to record it.</p>
      <Register<CrossingRow>
        caption="Crossings in the ground and planned"
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
            cell: ({ built }) => stateOf(built, f),
            sortBy: ({ built }) => stateOf(built, f),
          },
          {
            title: 'How sure',
            cell: ({ built }) => (
              <>
                <CertaintyTag crossing={built} />
                {built.inGround ? ` within ${f.say(withinInShort(built.certainty))}` : ''}
              </>
            ),
            sortBy: ({ built }) => (built.inGround ? built.certainty.withinM : 1e9),
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

function stateOf({ inGround, figures: { crossing } }: CrossingRow['built'], f: Figures): string {
  return f.say(stateInWords(crossing.status, inGround));
}

function joints(count: number | null): string {
  if (count === null) return 'not noted';
  return count === 0 ? 'none' : `! ${count}`;
}
