import { useEffect, useRef } from 'react';
import {
  ended,
  setAside,
  withoutLast,
  withReading,
  withRepeat,
  withRingsOpened,
} from '../../../core/locate/hunt/huntEdits.ts';
import type { HuntState, HuntStep, HuntWalk } from '../../../core/locate/hunt/huntWalk.ts';
import {
  leftInWords,
  readingInWords,
  staysOpenInWords,
  stepInWords,
  switchName,
  switchNames,
} from '../../../core/locate/hunt/huntWords.ts';
import type { FaultHunt } from '../../../core/model/huntThings.ts';
import { localMinute } from '../../../core/words/dates.ts';
import { useOpenFile } from '../../state/appState.ts';
import { mapView } from '../../state/mapView.ts';
import { HuntFound } from './HuntFound.tsx';
import { HuntReadingEntry } from './HuntReadingEntry.tsx';
import type { HuntNow } from './huntNow.ts';
import { keepHunt } from './keepHunt.ts';
import { SwitchCaution } from './SwitchCaution.tsx';

/** A search under way: the next thing to do, what was read so far, and ways back. */
export function HuntWalkView({ now: { hunt, walk } }: { readonly now: HuntNow }) {
  const top = useRef<HTMLElement>(null);
  const taken = hunt.readings.length;
  // biome-ignore lint/correctness/useExhaustiveDependencies: each reading brings another thing to do
  useEffect(() => {
    top.current?.scrollIntoView({ block: 'start' });
  }, [taken]);
  return (
    <section ref={top} className="block hunt" aria-label="Search for a fault">
      <h2>{hunt.name}</h2>
      {walk ? (
        <NextThing hunt={hunt} walk={walk} />
      ) : (
        <p className="field-problem">Its energiser feeds no fence any more. Fix the drawing, or give the search up.</p>
      )}
      <Readings hunt={hunt} />
      <p className="buttons">
        {hunt.readings.length > 0 ? (
          <button type="button" onClick={() => keepHunt('Take the last reading back', withoutLast(hunt))}>
            Take the last reading back
          </button>
        ) : null}
        <button type="button" onClick={() => giveUp(hunt)}>
          Give the search up
        </button>
      </p>
    </section>
  );
}

function giveUp(hunt: FaultHunt): void {
  const end = {
    at: localMinute(new Date()),
    outcome: 'givenUp',
    section: null,
    place: '',
    confirmed: false,
    cause: '',
  } as const;
  keepHunt('Give the search up', ended(hunt, end));
}

function NextThing({ hunt, walk }: { readonly hunt: FaultHunt; readonly walk: HuntWalk }) {
  const { state } = walk;
  switch (state.kind) {
    case 'openFirst':
      return <OpenFirst hunt={hunt} switchIds={state.switchIds} />;
    case 'read':
      return <Read hunt={hunt} step={state.step} left={`${leftInWords(state.left)}`} />;
    case 'noFault':
      return <NoFault hunt={hunt} />;
    case 'contradiction':
      return <Contradiction hunt={hunt} state={state} />;
    case 'found':
      return <HuntFound hunt={hunt} walk={walk} state={state} />;
  }
}

function NoFault({ hunt }: { readonly hunt: FaultHunt }) {
  const start = hunt.readings.findLast(({ check, setAside: aside }) => check === 'start' && !aside);
  const knowsUsual = start?.yardstick?.usualV != null;
  return (
    <div className="hunt-step">
      <p className="hunt-do">The fence reads good at the energiser: there is no fault to find now.</p>
      {start ? <p>{readingInWords(start)}.</p> : null}
      {knowsUsual ? null : (
        <p>
          What the fence usually reads there is not known. A fault that leaves more than what holds the stock does not
          show.
        </p>
      )}
      <p>If it comes and goes, give the search up and begin again while it is low.</p>
    </div>
  );
}

function OpenFirst({ hunt, switchIds }: { readonly hunt: FaultHunt; readonly switchIds: readonly string[] }) {
  const { project } = useOpenFile();
  return (
    <div className="hunt-step">
      <p className="hunt-do">Open {switchNames(project, switchIds)} first.</p>
      <p>They close rings. With them open each section is fed one way, and no section goes dead.</p>
      <SwitchCaution />
      <p className="buttons">
        <button
          type="button"
          className="fix"
          onClick={() => keepHunt('Open the rings', withRingsOpened(hunt, switchIds))}
        >
          They are open
        </button>
        <ShowButton id={switchIds[0]!} />
      </p>
    </div>
  );
}

function Read({ hunt, step, left }: { readonly hunt: FaultHunt; readonly step: HuntStep; readonly left: string }) {
  const { project, survey } = useOpenFile();
  const name = step.switchId ? switchName(project, step.switchId) : 'the energiser';
  return (
    <div className="hunt-step">
      <p className="hunt-do" role="status">
        {stepInWords(step, project, survey)}
      </p>
      <p>
        {staysOpenInWords(step, project)} {left}
      </p>
      <SwitchCaution />
      <HuntReadingEntry
        key={`${hunt.readings.length} ${step.switchId}`}
        hunt={hunt}
        step={step}
        onAnswer={(answer) =>
          keepHunt(
            `Read at ${name}`,
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
  const name = repeat?.switchId ? switchName(project, repeat.switchId) : 'the energiser';
  const again = () =>
    keepHunt(
      'Set the readings aside',
      hunt.readings.reduce((at, _, i) => setAside(at, i), hunt),
    );
  return (
    <div className="hunt-step contradiction">
      <p className="hunt-do" role="status">
        The readings do not fit together: they leave no place for a fault.
      </p>
      {suspects.length > 0 ? (
        <>
          <p>If one alone is wrong, it is one of these, the likeliest first:</p>
          <ul>
            {suspects.map(({ index, reading }) => (
              <li key={index}>{readingInWords(reading)}</li>
            ))}
          </ul>
        </>
      ) : (
        <p>No single wrong reading explains it: two are wrong, or the fault comes and goes.</p>
      )}
      {repeat ? (
        <>
          <p className="hunt-do">Repeat this one: {stepInWords(repeat, project, survey)}</p>
          <p>{staysOpenInWords(repeat, project)}</p>
          <SwitchCaution />
          <HuntReadingEntry
            key={hunt.readings.length}
            hunt={hunt}
            step={repeat}
            onAnswer={(answer) =>
              keepHunt(
                `Read again at ${name}`,
                withRepeat(hunt, state, repeat.switchId ? name : '', answer, localMinute(new Date())),
              )
            }
          />
        </>
      ) : null}
      <p className="buttons">
        <button type="button" onClick={again}>
          Set all readings aside and start again
        </button>
      </p>
    </div>
  );
}

function ShowButton({ id }: { readonly id: string }) {
  return (
    <button type="button" onClick={() => mapView.zoomTo(id)}>
      Show where
    </button>
  );
}

function Readings({ hunt }: { readonly hunt: FaultHunt }) {
  if (hunt.readings.length === 0) return null;
  return (
    <>
      <h3>Read so far</h3>
      <ol className="hunt-readings">
        {hunt.readings.map((reading, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: readings have no other name, and only the last goes
          <li key={index} className={reading.setAside ? 'set-aside' : undefined}>
            {readingInWords(reading)}
            {reading.setAside ? ' (set aside)' : ''}
          </li>
        ))}
      </ol>
    </>
  );
}
