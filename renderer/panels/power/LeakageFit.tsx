import { setGrowth } from '../../../core/model/edits/setGrowth.ts';
import {
  type FitAnswer,
  type FitRow,
  type ReadingRound,
  type ReadingsFit,
  readingRounds,
} from '../../../core/survey/power/fitReadings.ts';
import type { Texts } from '../../../core/words/message.ts';
import { sectionMapId } from '../../map/mapTypes.ts';
import { useApp } from '../../state/appState.ts';
import { commit } from '../../state/session.ts';
import { useFigures, useWords } from '../../state/useFigures.ts';
import { analysis } from '../../work/analysis.ts';
import { SelectField } from '../parts/fields.tsx';
import { Register } from '../parts/Register.tsx';
import { WorkedOut } from '../parts/WorkedOut.tsx';
import { usePower } from './usePower.ts';

const all = 'all';

type FitTexts = Texts['window']['power']['readings']['fit'];

/** The growth that the readings tell: how much each section leaks beside what was assumed. */
export function LeakageFit() {
  const { power } = usePower();
  const answer = useApp((state) => state.analysis?.fit);
  const rounds = readingRounds(power);
  const words = useWords().window.power.readings.fit;
  if (rounds.length === 0) return null;
  return (
    <section className="block" aria-label={words.label}>
      <h2>{words.title}</h2>
      <WorkedOut part="fit" what={words.what}>
        {answer ? <Answered answer={answer} rounds={rounds} /> : null}
      </WorkedOut>
    </section>
  );
}

function Answered({ answer, rounds }: { readonly answer: FitAnswer; readonly rounds: readonly ReadingRound[] }) {
  const f = useFigures();
  const words = f.words.window.power.readings.fit;
  return (
    <>
      <SelectField
        label={words.round}
        value={answer.round?.lastDay ?? all}
        choices={[
          ...rounds.map((round) => ({ value: round.lastDay, label: roundInWords(round, words) })),
          ...(rounds.length > 1 ? [{ value: all, label: words.all }] : []),
        ]}
        hint={words.hint}
        onCommit={(lastDay) => analysis.fitRound(lastDay === all ? null : lastDay)}
      />
      {answer.messages.map((message) => (
        <p key={f.say(message)}>{f.say(message)}</p>
      ))}
      {answer.fits.map((fit) => (
        <OneFit key={fit.sections[0]?.letter} fit={fit} used={answer.used} />
      ))}
    </>
  );
}

function OneFit({ fit, used }: { readonly fit: ReadingsFit; readonly used: number }) {
  const words = useWords().window.power.readings.fit;
  const most = fit.sections.find(({ letter }) => letter === fit.mostLeaking);
  const lines = fit.ohmKmPerWireOfLine;
  const isTold = most?.verdict === 'told';
  return (
    <>
      {most ? (
        <p className="fit-answer">
          {(isTold ? words.most : words.mostAsFar)({ section: most.letter, current: most.leakA })}
        </p>
      ) : null}
      <Register<FitRow>
        caption={words.caption({ used })}
        rows={fit.sections}
        idOf={({ letter }) => sectionMapId(letter)}
        empty={words.empty}
        columns={[
          { title: words.section, cell: ({ letter }) => letter, sortBy: ({ letter }) => letter },
          { title: words.times, cell: (row) => timesInWords(row, words), sortBy: ({ timesAssumed }) => timesAssumed },
          {
            title: words.current,
            figures: true,
            cell: ({ leakA }) => words.amperes({ current: leakA }),
            sortBy: ({ leakA }) => leakA,
          },
        ]}
      />
      {fit.notToldApart.map((group) => (
        <p key={group.join()}>
          {group.length === 1 ? words.tooLittle({ section: group[0]! }) : words.notApart({ sections: group })}
        </p>
      ))}
      {fit.misfit > 2 ? <p>{words.misfit({ times: fit.misfit })}</p> : null}
      {fit.converged ? null : <p>{words.unsettled}</p>}
      {lines.size > 0 ? (
        <button
          type="button"
          onClick={() =>
            void commit(
              words.takeStep,
              setGrowth(new Map([...lines].map(([id, leakageOhmKm]) => [id, { leakageOhmKm }]))),
            )
          }
        >
          {words.take({ fences: lines.size })}
        </button>
      ) : null}
    </>
  );
}

function timesInWords({ timesAssumed: times, errorFactor, verdict }: FitRow, words: FitTexts): string {
  if (verdict === 'atLimit') return times < 1 ? words.noLeak : words.tooMuch;
  if (verdict === 'leaning') return words.leaning({ times });
  return words.told({ times, from: times / errorFactor, to: times * errorFactor });
}

function roundInWords({ firstDay, lastDay, count }: ReadingRound, words: FitTexts): string {
  return firstDay === lastDay ? words.ofDay({ day: lastDay, count }) : words.ofDays({ firstDay, lastDay, count });
}
