import { useEffect, useRef } from 'react';
import {
  ended,
  setAside,
  withoutLast,
  withReading,
  withRepeat,
  withRingsOpened,
} from '../../../core/locate/hunt/huntEdits.ts';
import type { TestsLeft } from '../../../core/locate/hunt/huntPlan.ts';
import type { HuntState, HuntStep, HuntWalk } from '../../../core/locate/hunt/huntWalk.ts';
import {
  leftInWords,
  readingInWords,
  staysOpenInWords,
  stepInWords,
  switchesInWords,
} from '../../../core/locate/hunt/huntWords.ts';
import type { FaultHunt } from '../../../core/model/huntThings.ts';
import { localMinute } from '../../../core/words/dates.ts';
import { useOpenFile } from '../../state/appState.ts';
import { mapView } from '../../state/mapView.ts';
import { useFigures, useWords } from '../../state/useFigures.ts';
import { HuntFound } from './HuntFound.tsx';
import { HuntReadingEntry } from './HuntReadingEntry.tsx';
import type { HuntNow } from './huntNow.ts';
import { keepHunt } from './keepHunt.ts';
import { SwitchCaution } from './SwitchCaution.tsx';

/** A search under way: the next thing to do, what was read so far, and ways back. */
export function HuntWalkView({ now: { hunt, walk } }: { readonly now: HuntNow }) {
  const { walk: words, steps } = useWords().window.find.search;
  const top = useRef<HTMLElement>(null);
  const taken = hunt.readings.length;
  // biome-ignore lint/correctness/useExhaustiveDependencies: each reading brings another thing to do
  useEffect(() => {
    top.current?.scrollIntoView({ block: 'start' });
  }, [taken]);
  return (
    <section ref={top} className="block hunt" aria-label={words.heading}>
      <h2>{hunt.name}</h2>
      {walk ? <NextThing hunt={hunt} walk={walk} /> : <p className="field-problem">{words.feedsNothing}</p>}
      <Readings hunt={hunt} />
      <p className="buttons">
        {hunt.readings.length > 0 ? (
          <button type="button" onClick={() => keepHunt(steps.takeBack, withoutLast(hunt))}>
            {words.takeBack}
          </button>
        ) : null}
        <button type="button" onClick={() => giveUp(hunt, steps.giveUp)}>
          {words.giveUp}
        </button>
      </p>
    </section>
  );
}

function giveUp(hunt: FaultHunt, step: string): void {
  const end = {
    at: localMinute(new Date()),
    outcome: 'givenUp',
    section: null,
    place: '',
    confirmed: false,
    cause: '',
  } as const;
  keepHunt(step, ended(hunt, end));
}

function NextThing({ hunt, walk }: { readonly hunt: FaultHunt; readonly walk: HuntWalk }) {
  const { state } = walk;
  switch (state.kind) {
    case 'openFirst':
      return <OpenFirst hunt={hunt} switchIds={state.switchIds} />;
    case 'read':
      return <Read hunt={hunt} step={state.step} left={state.left} />;
    case 'noFault':
      return <NoFault hunt={hunt} />;
    case 'contradiction':
      return <Contradiction hunt={hunt} state={state} />;
    case 'found':
      return <HuntFound hunt={hunt} walk={walk} state={state} />;
  }
}

function NoFault({ hunt }: { readonly hunt: FaultHunt }) {
  const words = useWords().window.find.search.walk;
  const start = hunt.readings.findLast(({ check, setAside: aside }) => check === 'start' && !aside);
  const knowsUsual = start?.yardstick?.usualV != null;
  return (
    <div className="hunt-step">
      <p className="hunt-do">{words.noFault}</p>
      {start ? <p>{words.asRead({ reading: readingInWords(start) })}</p> : null}
      {knowsUsual ? null : <p>{words.usualNotKnown}</p>}
      <p>{words.comesAndGoes}</p>
    </div>
  );
}

function OpenFirst({ hunt, switchIds }: { readonly hunt: FaultHunt; readonly switchIds: readonly string[] }) {
  const { project } = useOpenFile();
  const { walk: words, steps } = useWords().window.find.search;
  return (
    <div className="hunt-step">
      <p className="hunt-do">{words.openFirst({ switches: switchesInWords(project, switchIds) })}</p>
      <p>{words.whyOpen}</p>
      <SwitchCaution />
      <p className="buttons">
        <button
          type="button"
          className="fix"
          onClick={() => keepHunt(steps.openRings, withRingsOpened(hunt, switchIds))}
        >
          {words.areOpen}
        </button>
        <ShowButton id={switchIds[0]!} />
      </p>
    </div>
  );
}

function Read({ hunt, step, left }: { readonly hunt: FaultHunt; readonly step: HuntStep; readonly left: TestsLeft }) {
  const { project, survey } = useOpenFile();
  const f = useFigures();
  const { steps, theEnergiser } = f.words.window.find.search;
  const name = step.switchId ? f.say(switchesInWords(project, [step.switchId])) : theEnergiser;
  const staysOpen = staysOpenInWords(step, project);
  return (
    <div className="hunt-step">
      <p className="hunt-do" role="status">
        {f.say(stepInWords(step, project, survey))}
      </p>
      <p>
        {staysOpen ? `${f.say(staysOpen)} ` : ''}
        {f.say(leftInWords(left))}
      </p>
      <SwitchCaution />
      <HuntReadingEntry
        key={`${hunt.readings.length} ${step.switchId}`}
        hunt={hunt}
        step={step}
        onAnswer={(answer) =>
          keepHunt(
            steps.read({ at: name }),
            withReading(hunt, step, step.switchId ? name : '', answer, localMinute(new Date())),
          )
        }
      />
      <p className="buttons">
        <ShowButton id={step.switchId ?? hunt.energiserId} />
      </p>
    </div>
  );
}

/** Readings that can't all be right. */
function Contradiction({
  hunt,
  state,
}: {
  readonly hunt: FaultHunt;
  readonly state: Extract<HuntState, { kind: 'contradiction' }>;
}) {
  const { project, survey } = useOpenFile();
  const { repeat, suspects } = state;
  const f = useFigures();
  const { walk: words, steps, theEnergiser } = f.words.window.find.search;
  const name = repeat?.switchId ? f.say(switchesInWords(project, [repeat.switchId])) : theEnergiser;
  const staysOpen = repeat && staysOpenInWords(repeat, project);
  const again = () =>
    keepHunt(
      steps.setAside,
      hunt.readings.reduce((at, _, i) => setAside(at, i), hunt),
    );
  return (
    <div className="hunt-step contradiction">
      <p className="hunt-do" role="status">
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
          <p className="hunt-do">{words.repeat({ step: stepInWords(repeat, project, survey) })}</p>
          {staysOpen ? <p>{f.say(staysOpen)}</p> : null}
          <SwitchCaution />
          <HuntReadingEntry
            key={hunt.readings.length}
            hunt={hunt}
            step={repeat}
            onAnswer={(answer) =>
              keepHunt(
                steps.readAgain({ at: name }),
                withRepeat(hunt, state, repeat.switchId ? name : '', answer, localMinute(new Date())),
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

function Readings({ hunt }: { readonly hunt: FaultHunt }) {
  const f = useFigures();
  const { walk: words } = f.words.window.find.search;
  if (hunt.readings.length === 0) return null;
  return (
    <>
      <h3>{words.readSoFar}</h3>
      <ol className="hunt-readings">
        {hunt.readings.map((reading, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: readings have no other name, and only the last goes
          <li key={index} className={reading.setAside ? 'set-aside' : undefined}>
            {reading.setAside ? words.setAside({ reading: readingInWords(reading) }) : f.say(readingInWords(reading))}
          </li>
        ))}
      </ol>
    </>
  );
}
