import { useState } from 'react';
import { ended, withReading } from '../../../core/locate/hunt/huntEdits.ts';
import { suspectsIn } from '../../../core/locate/hunt/huntSuspects.ts';
import type { HuntState, HuntWalk } from '../../../core/locate/hunt/huntWalk.ts';
import {
  pieceInWords,
  sectionPlace,
  staysOpenInWords,
  stepInWords,
  switchName,
} from '../../../core/locate/hunt/huntWords.ts';
import type { FaultHunt } from '../../../core/model/huntThings.ts';
import { localMinute } from '../../../core/words/dates.ts';
import { formatLength } from '../../../core/words/numbers/write.ts';
import { useOpenFile } from '../../state/appState.ts';
import { choose, light } from '../../state/choose.ts';
import { mapView } from '../../state/mapView.ts';
import { useUnits } from '../../state/useUnits.ts';
import { TextField } from '../parts/fields.tsx';
import { HuntReadingEntry } from './HuntReadingEntry.tsx';
import { groundOf } from './huntNow.ts';
import { keepHunt } from './keepHunt.ts';
import { SwitchCaution } from './SwitchCaution.tsx';

/** The section that is left, readings to make sure of it, and where to look in it first. */
export function HuntFound({
  hunt,
  walk,
  state,
}: {
  readonly hunt: FaultHunt;
  readonly walk: HuntWalk;
  readonly state: Extract<HuntState, { kind: 'found' }>;
}) {
  const { project, survey } = useOpenFile();
  const units = useUnits();
  const [cause, setCause] = useState('');
  const ground = groundOf(survey, hunt.energiserId)!;
  const index = ground.pieces[state.piece]!.section;
  const section = index === null ? null : survey.sections[index]!;
  const words = pieceInWords(ground, state.piece, survey);
  const atSource = state.piece === ground.source;
  const { step } = state;
  const name = step?.switchId ? switchName(project, step.switchId) : 'the energiser';
  const finish = () => {
    const end = {
      at: localMinute(new Date()),
      outcome: 'found',
      section: section?.letter ?? null,
      place: section ? sectionPlace(project, section) : words,
      confirmed: state.confirmed,
      cause,
    } as const;
    keepHunt(`End the search in ${words}`, ended(hunt, end));
  };
  return (
    <>
      <div className="hunt-step found">
        <p className="hunt-do" role="status">
          The fault is in {words}.
        </p>
        {section ? (
          <p>
            {sectionPlace(project, section)}; {formatLength(section.lengthM, units)} of fence.
          </p>
        ) : null}
        {state.confirmed ? (
          <p>
            {walk.tested === 1 ? 'One test led here' : `${walk.tested} tests led here`}, and the readings made sure of
            it.
          </p>
        ) : (
          <p>Not made sure of yet: if an answer before was wrong, nothing has shown it so far.</p>
        )}
        {atSource ? (
          <p>
            {section ? 'It may as well be the energiser, its earth or the lead-out. ' : ''}
            With the energiser off, take the lead-out off its terminal; turn it on and read at the terminal. Good there:
            the lead-out or the fence. Low there: the energiser or its earth.
          </p>
        ) : null}
        {step ? (
          <>
            <p className="hunt-do">To make sure: {stepInWords(step, project, survey)}</p>
            <p>
              {staysOpenInWords(step, project)} It should read {step.check === 'with' ? 'low' : 'good'}.
            </p>
            <SwitchCaution />
            <HuntReadingEntry
              key={hunt.readings.length}
              hunt={hunt}
              step={step}
              onAnswer={(answer) =>
                keepHunt(
                  `Make sure at ${name}`,
                  withReading(hunt, step, step.switchId ? name : '', answer, localMinute(new Date())),
                )
              }
            />
          </>
        ) : null}
      </div>
      {section ? <Suspects sectionIndex={section.index} /> : null}
      <TextField label="What it was" long value={cause} onCommit={setCause} />
      <p className="buttons">
        <button type="button" className="fix" onClick={finish}>
          {state.confirmed ? 'End the search' : 'End the search without making sure'}
        </button>
      </p>
      <p className="field-hint">
        Afterwards, energiser off: put every switch back as it was, the ring switches too, and read once more. If it is
        low again with one of them closed, there is a second fault behind it.
      </p>
    </>
  );
}

function Suspects({ sectionIndex }: { readonly sectionIndex: number }) {
  const { project, survey } = useOpenFile();
  const units = useUnits();
  const [all, setAll] = useState(false);
  const suspects = suspectsIn(project, survey, survey.sections[sectionIndex]!, units);
  const shown = all ? suspects : suspects.slice(0, 6);
  return (
    <>
      <h3>Look here first</h3>
      <ol className="hunt-suspects">
        {shown.map(({ key, thingId, name, why }) => (
          <li key={key} onPointerEnter={() => light([thingId])} onPointerLeave={() => light([])}>
            <button
              type="button"
              className="plain"
              onClick={() => {
                choose([thingId]);
                mapView.zoomTo(thingId);
              }}
            >
              {name}
            </button>
            <p>{why}</p>
          </li>
        ))}
      </ol>
      {suspects.length > 6 ? (
        <button type="button" className="plain" onClick={() => setAll(!all)}>
          {all ? 'Show the first six only' : `Show all ${suspects.length}`}
        </button>
      ) : null}
    </>
  );
}
