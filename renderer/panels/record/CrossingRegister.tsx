import { stateInWords, withinInShort } from '../../../core/locate/certaintyWords.ts';
import type { CrossingRow } from '../../../core/record/crossingRegister.ts';
import type { Figures } from '../../../core/words/types.ts';
import { useFigures } from '../../state/useFigures.ts';
import { CertaintyTag } from '../parts/CertaintyTag.tsx';
import { Register } from '../parts/Register.tsx';
import { useRecord } from './useRecord.ts';

/** Every crossing, in the ground or planned, what is recorded of it and what is not. Select one to record it. */
export function CrossingRegister() {
  const { crossings } = useRecord();
  const f = useFigures();
  const words = f.words.window.record.crossings;
  return (
    <>
      <p className="field-hint">{words.hint}</p>
      <Register<CrossingRow>
        caption={words.title}
        rows={crossings}
        idOf={({ built }) => built.figures.gateway.id}
        empty={words.none}
        columns={[
          {
            title: words.at,
            cell: ({ built }) => built.figures.gateway.name,
            sortBy: ({ built }) => built.figures.gateway.name,
          },
          {
            title: words.state,
            cell: ({ built }) => stateOf(built, f),
            sortBy: ({ built }) => stateOf(built, f),
          },
          {
            title: words.howSure,
            cell: ({ built }) => (
              <>
                <CertaintyTag crossing={built} />
                {built.inGround ? ` ${words.within({ within: f.say(withinInShort(built.certainty)) })}` : ''}
              </>
            ),
            sortBy: ({ built }) => (built.inGround ? built.certainty.withinM : 1e9),
          },
          {
            title: words.joints,
            cell: ({ built }) => joints(built.record?.jointsUnderground ?? null, f),
            sortBy: ({ built }) => built.record?.jointsUnderground ?? -1,
          },
          {
            title: words.missing,
            cell: ({ lacks }) => (lacks.length === 0 ? words.nothingMissing : lacks.map(f.say).join(', ')),
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

function joints(count: number | null, f: Figures): string {
  const words = f.words.window.record.crossings;
  if (count === null) return words.jointsNotNoted;
  return count === 0 ? words.noJoints : `! ${count}`;
}
