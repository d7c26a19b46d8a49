import { useEffect, useRef } from 'react';
import {
  ended,
  setAside,
  withoutLast,
  withReading,
  withRepeat,
  withRingsOpened,
} from '../../../core/locate/faultSearch/faultSearchEdits.ts';
import type {
  FaultSearchState,
  FaultSearchStep,
  FaultSearchWalk,
} from '../../../core/locate/faultSearch/faultSearchWalk.ts';
import {
  leftInWords,
  readingInWords,
  staysOpenInWords,
  stepInWords,
  switchesInWords,
} from '../../../core/locate/faultSearch/faultSearchWords.ts';
import type { TestsLeft } from '../../../core/locate/faultSearch/testPlan.ts';
import type { FaultSearch } from '../../../core/model/faultSearchThings.ts';
import { localMinute } from '../../../core/words/dates.ts';
import { useOpenFile } from '../../state/appState.ts';
import { mapView } from '../../state/mapView.ts';
import { useFigures, useWords } from '../../state/useFigures.ts';
import { FaultSearchFound } from './FaultSearchFound.tsx';
import { FaultSearchReadingEntry } from './FaultSearchReadingEntry.tsx';
import type { FaultSearchNow } from './faultSearchNow.ts';
import { keepFaultSearch } from './keepFaultSearch.ts';
import { SwitchCaution } from './SwitchCaution.tsx';

/** A search under way: the next thing to do, what was read so far, and ways back. */
export function FaultSearchWalkView({ now: { search, walk } }: { readonly now: FaultSearchNow }) {
  const { walk: words, steps } = useWords().window.find.search;
  const top = useRef<HTMLElement>(null);
  const taken = search.readings.length;
  // biome-ignore lint/correctness/useExhaustiveDependencies: each reading brings another thing to do
  useEffect(() => {
    top.current?.scrollIntoView({ block: 'start' });
  }, [taken]);
  return (
    <section ref={top} className="block fault-search" aria-label={words.heading}>
      <h2>{search.name}</h2>
      {walk ? <NextThing search={search} walk={walk} /> : <p className="field-problem">{words.feedsNothing}</p>}
      <Readings search={search} />
      <p className="buttons">
        {search.readings.length > 0 ? (
          <button type="button" onClick={() => keepFaultSearch(steps.takeBack, withoutLast(search))}>
            {words.takeBack}
          </button>
        ) : null}
        <button type="button" onClick={() => giveUp(search, steps.giveUp)}>
          {words.giveUp}
        </button>
      </p>
    </section>
  );
}

function giveUp(search: FaultSearch, step: string): void {
  const end = {
    at: localMinute(new Date()),
    outcome: 'givenUp',
    section: null,
    place: '',
    confirmed: false,
    cause: '',
  } as const;
  keepFaultSearch(step, ended(search, end));
}

function NextThing({ search, walk }: { readonly search: FaultSearch; readonly walk: FaultSearchWalk }) {
  const { state } = walk;
  switch (state.kind) {
    case 'openFirst':
      return <OpenFirst search={search} switchIds={state.switchIds} />;
    case 'read':
      return <Read search={search} step={state.step} left={state.left} />;
    case 'noFault':
      return <NoFault search={search} />;
    case 'contradiction':
      return <Contradiction search={search} state={state} />;
    case 'found':
      return <FaultSearchFound search={search} walk={walk} state={state} />;
  }
}

function NoFault({ search }: { readonly search: FaultSearch }) {
  const words = useWords().window.find.search.walk;
  const start = search.readings.findLast(({ check, setAside: aside }) => check === 'start' && !aside);
  const knowsUsual = start?.yardstick?.usualV != null;
  return (
    <div className="fault-search-step">
      <p className="fault-search-do">{words.noFault}</p>
      {start ? <p>{words.asRead({ reading: readingInWords(start) })}</p> : null}
      {knowsUsual ? null : <p>{words.usualNotKnown}</p>}
      <p>{words.comesAndGoes}</p>
    </div>
  );
}

function OpenFirst({ search, switchIds }: { readonly search: FaultSearch; readonly switchIds: readonly string[] }) {
  const { project } = useOpenFile();
  const { walk: words, steps } = useWords().window.find.search;
  return (
    <div className="fault-search-step">
      <p className="fault-search-do">{words.openFirst({ switches: switchesInWords(project, switchIds) })}</p>
      <p>{words.whyOpen}</p>
      <SwitchCaution />
      <p className="buttons">
        <button
          type="button"
          className="fix"
          onClick={() => keepFaultSearch(steps.openRings, withRingsOpened(search, switchIds))}
        >
          {words.areOpen}
        </button>
        <ShowButton id={switchIds[0]!} />
      </p>
    </div>
  );
}

function Read({
  search,
  step,
  left,
}: {
  readonly search: FaultSearch;
  readonly step: FaultSearchStep;
  readonly left: TestsLeft;
}) {
  const { project, survey } = useOpenFile();
  const f = useFigures();
  const { steps, theEnergiser } = f.words.window.find.search;
  const name = step.switchId ? f.say(switchesInWords(project, [step.switchId])) : theEnergiser;
  const staysOpen = staysOpenInWords(step, project);
  return (
    <div className="fault-search-step">
      <p className="fault-search-do" role="status">
        {f.say(stepInWords(step, project, survey))}
      </p>
      <p>
        {staysOpen ? `${f.say(staysOpen)} ` : ''}
        {f.say(leftInWords(left))}
      </p>
      <SwitchCaution />
      <FaultSearchReadingEntry
        key={`${search.readings.length} ${step.switchId}`}
        search={search}
        step={step}
        onAnswer={(answer) =>
          keepFaultSearch(
            steps.read({ at: name }),
            withReading(search, step, step.switchId ? name : '', answer, localMinute(new Date())),
          )
        }
      />
      <p className="buttons">
        <ShowButton id={step.switchId ?? search.energiserId} />
      </p>
    </div>
  );
}

/** Readings that can't all be right. */
function Contradiction({
  search,
  state,
}: {
  readonly search: FaultSearch;
  readonly state: Extract<FaultSearchState, { kind: 'contradiction' }>;
}) {
  const { project, survey } = useOpenFile();
  const { repeat, suspects } = state;
  const f = useFigures();
  const { walk: words, steps, theEnergiser } = f.words.window.find.search;
  const name = repeat?.switchId ? f.say(switchesInWords(project, [repeat.switchId])) : theEnergiser;
  const staysOpen = repeat && staysOpenInWords(repeat, project);
  const again = () =>
    keepFaultSearch(
      steps.setAside,
      search.readings.reduce((at, _, i) => setAside(at, i), search),
    );
  return (
    <div className="fault-search-step contradiction">
      <p className="fault-search-do" role="status">
        {words.noPlaceLeft}
      </p>
      {suspects.length > 0 ? (
        <>
          <p>{words.oneOfThese}</p>
          <ul>
            {suspects.map(({ index, reading }) => (
              <li key={index}>{f.say(readingInWords(reading))}</li>
            ))}
          </ul>
        </>
      ) : (
        <p>{words.noSingleOne}</p>
      )}
      {repeat ? (
        <>
          <p className="fault-search-do">{words.repeat({ step: stepInWords(repeat, project, survey) })}</p>
          {staysOpen ? <p>{f.say(staysOpen)}</p> : null}
          <SwitchCaution />
          <FaultSearchReadingEntry
            key={search.readings.length}
            search={search}
            step={repeat}
            onAnswer={(answer) =>
              keepFaultSearch(
                steps.readAgain({ at: name }),
                withRepeat(search, state, repeat.switchId ? name : '', answer, localMinute(new Date())),
              )
            }
          />
        </>
      ) : null}
      <p className="buttons">
        <button type="button" onClick={again}>
          {words.startAgain}
        </button>
      </p>
    </div>
  );
}

function ShowButton({ id }: { readonly id: string }) {
  return (
    <button type="button" onClick={() => mapView.zoomTo(id)}>
      {useWords().window.find.search.showWhere}
    </button>
  );
}

function Readings({ search }: { readonly search: FaultSearch }) {
  const f = useFigures();
  const { walk: words } = f.words.window.find.search;
  if (search.readings.length === 0) return null;
  return (
    <>
      <h3>{words.readSoFar}</h3>
      <ol className="fault-search-readings">
        {search.readings.map((reading, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: readings have no other name, and only the last goes
          <li key={index} className={reading.setAside ? 'set-aside' : undefined}>
            {reading.setAside ? words.setAside({ reading: readingInWords(reading) }) : f.say(readingInWords(reading))}
          </li>
        ))}
      </ol>
    </>
  );
}
