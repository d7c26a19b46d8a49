import { setGrowth } from '../../../core/model/edits/setGrowth.ts';
import {
  type FitAnswer,
  type FitRow,
  type ReadingRound,
  type ReadingsFit,
  readingRounds,
} from '../../../core/survey/power/fitReadings.ts';
import { dateText } from '../../../core/words/dates.ts';
import { fixed } from '../../../core/words/numbers/write.ts';
import { counted } from '../../../core/words/text.ts';
import { sectionMapId } from '../../map/mapTypes.ts';
import { useApp } from '../../state/appState.ts';
import { commit } from '../../state/session.ts';
import { useFigures } from '../../state/useFigures.ts';
import { analysis } from '../../work/analysis.ts';
import { SelectField } from '../parts/fields.tsx';
import { Register } from '../parts/Register.tsx';
import { WorkedOut } from '../parts/WorkedOut.tsx';
import { usePower } from './usePower.ts';

const all = 'all';

/** The growth that the readings tell: how much each section leaks beside what was assumed. */
export function LeakageFit() {
  const { power } = usePower();
  const answer = useApp((state) => state.analysis?.fit);
  const rounds = readingRounds(power);
  if (rounds.length === 0) return null;
  return (
    <section className="block" aria-label="Leakage by the readings">
      <h2>What the readings say about the growth</h2>
      <WorkedOut part="fit" what="what the readings say">
        {answer ? <Answered answer={answer} rounds={rounds} /> : null}
      </WorkedOut>
    </section>
  );
}

function Answered({ answer, rounds }: { readonly answer: FitAnswer; readonly rounds: readonly ReadingRound[] }) {
  const f = useFigures();
  return (
    <>
      <SelectField
        label="Readings of"
        value={answer.round?.lastDay ?? all}
        choices={[
          ...rounds.map((round) => ({ value: round.lastDay, label: roundInWords(round) })),
          ...(rounds.length > 1 ? [{ value: all, label: 'All of them together' }] : []),
        ]}
        hint="Growth changes with the season: readings of one round belong together."
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
  const most = fit.sections.find(({ letter }) => letter === fit.mostLeaking);
  const lines = fit.ohmKmPerWireOfLine;
  const isTold = most?.verdict === 'told';
  return (
    <>
      {most ? (
        <p className="fit-answer">
          Section {most.letter} leaks most, about {fixed(most.leakA, 1)} A
          {isTold ? '' : ', as far as these readings tell'}.
        </p>
      ) : null}
      <Register<FitRow>
        caption={`Fitted to ${counted(used, 'reading')} by least squares; ranges are one standard error`}
        rows={fit.sections}
        idOf={({ letter }) => sectionMapId(letter)}
        empty="No section leaks."
        columns={[
          { title: 'Section', cell: ({ letter }) => letter, sortBy: ({ letter }) => letter },
          { title: 'Leaks, beside its growth class', cell: timesInWords, sortBy: ({ timesAssumed }) => timesAssumed },
          {
            title: 'Current',
            figures: true,
            cell: ({ leakA }) => `${fixed(leakA, 2)} A`,
            sortBy: ({ leakA }) => leakA,
          },
        ]}
      />
      {fit.notToldApart.map((group) => (
        <p key={group.join()}>
          {group.length === 1
            ? `These readings say too little about section ${group[0]}: its growth class decides.`
            : `These readings can't tell sections ${group.join(', ')} apart: a reading at the far end of each would.`}
        </p>
      ))}
      {fit.misfit > 2 ? (
        <p>
          The estimate can't be made to agree with these readings (off by {fixed(fit.misfit, 1)} times what a tester is
          good to). Look for a bad joint, a fault to earth, a switch that stood otherwise, or a slip of the pen.
        </p>
      ) : null}
      {fit.converged ? null : <p>The search stopped before it settled: take these figures with care.</p>}
      {lines.size > 0 ? (
        <button
          type="button"
          onClick={() =>
            void commit(
              'Take the growth from the readings',
              setGrowth(new Map([...lines].map(([id, leakageOhmKm]) => [id, { leakageOhmKm }]))),
            )
          }
        >
          Take this growth for {counted(lines.size, 'fence')}
        </button>
      ) : null}
    </>
  );
}

function timesInWords({ timesAssumed, errorFactor, verdict }: FitRow): string {
  if (verdict === 'at limit') {
    return timesAssumed < 1 ? 'no leak to speak of' : 'more than growth can explain: look for a fault';
  }
  const times = `${figure(timesAssumed)} times`;
  if (verdict === 'leaning') return `${times}; too few readings, so mostly its class`;
  return `${times} (${figure(timesAssumed / errorFactor)} to ${figure(timesAssumed * errorFactor)})`;
}

function figure(times: number): string {
  return fixed(times, times < 10 ? 1 : 0);
}

function roundInWords({ firstDay, lastDay, count }: ReadingRound): string {
  const days = firstDay === lastDay ? dateText(lastDay) : `${dateText(firstDay)} to ${dateText(lastDay)}`;
  return `${days}: ${counted(count, 'reading')}`;
}
