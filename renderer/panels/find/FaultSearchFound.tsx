import { useState } from 'react';
import { ended, withReading } from '../../../core/locate/faultSearch/faultSearchEdits.ts';
import { suspectsIn } from '../../../core/locate/faultSearch/faultSearchSuspects.ts';
import type { FaultSearchState, FaultSearchWalk } from '../../../core/locate/faultSearch/faultSearchWalk.ts';
import {
  pieceInWords,
  sectionPlace,
  staysOpenInWords,
  stepInWords,
  switchesInWords,
} from '../../../core/locate/faultSearch/faultSearchWords.ts';
import type { FaultSearch } from '../../../core/model/faultSearchThings.ts';
import { localMinute } from '../../../core/words/dates.ts';
import { useOpenFile } from '../../state/appState.ts';
import { choose, light } from '../../state/choose.ts';
import { mapView } from '../../state/mapView.ts';
import { useFigures } from '../../state/useFigures.ts';
import { TextField } from '../parts/fields.tsx';
import { FaultSearchReadingEntry } from './FaultSearchReadingEntry.tsx';
import { groundOf } from './faultSearchNow.ts';
import { keepFaultSearch } from './keepFaultSearch.ts';
import { SwitchCaution } from './SwitchCaution.tsx';

/** The section that is left, readings to make sure of it, and where to look in it first. */
export function FaultSearchFound({
  search,
  walk,
  state,
}: {
  readonly search: FaultSearch;
  readonly walk: FaultSearchWalk;
  readonly state: Extract<FaultSearchState, { kind: 'found' }>;
}) {
  const { project, survey } = useOpenFile();
  const f = useFigures();
  const { found: words, steps, theEnergiser } = f.words.window.find.search;
  const [cause, setCause] = useState('');
  const ground = groundOf(survey, search.energiserId)!;
  const index = ground.pieces[state.piece]!.section;
  const section = index === null ? null : survey.sections[index]!;
  const piece = pieceInWords(ground, state.piece, survey);
  const atSource = state.piece === ground.source;
  const { step } = state;
  const name = step?.switchId ? f.say(switchesInWords(project, [step.switchId])) : theEnergiser;
  const staysOpen = step && staysOpenInWords(step, project);
  const finish = () => {
    const end = {
      at: localMinute(new Date()),
      outcome: 'found',
      section: section?.letter ?? null,
      place: f.say(section ? sectionPlace(project, section) : piece),
      confirmed: state.confirmed,
      cause,
    } as const;
    keepFaultSearch(steps.end({ piece }), ended(search, end));
  };
  return (
    <>
      <div className="fault-search-step found">
        <p className="fault-search-do" role="status">
          {words.faultIn({ piece })}
        </p>
        {section ? <p>{words.section({ place: sectionPlace(project, section), lengthM: section.lengthM })}</p> : null}
        {state.confirmed ? <p>{words.confirmed({ tested: walk.tested })}</p> : <p>{words.notConfirmed}</p>}
        {atSource ? (
          <p>
            {section ? `${words.mayBeSource} ` : ''}
            {words.atSource}
          </p>
        ) : null}
        {step ? (
          <>
            <p className="fault-search-do">{words.makeSure({ step: stepInWords(step, project, survey) })}</p>
            <p>
              {staysOpen ? `${f.say(staysOpen)} ` : ''}
              {words.shouldRead[step.check === 'with' ? 'low' : 'good']}
            </p>
            <SwitchCaution />
            <FaultSearchReadingEntry
              key={search.readings.length}
              search={search}
              step={step}
              onAnswer={(answer) =>
                keepFaultSearch(
                  steps.makeSure({ at: name }),
                  withReading(search, step, step.switchId ? name : '', answer, localMinute(new Date())),
                )
              }
            />
          </>
        ) : null}
      </div>
      {section ? <Suspects sectionIndex={section.index} /> : null}
      <TextField label={words.cause} long value={cause} onCommit={setCause} />
      <p className="buttons">
        <button type="button" className="fix" onClick={finish}>
          {state.confirmed ? words.end : words.endNotSure}
        </button>
      </p>
      <p className="field-hint">{words.afterwards}</p>
    </>
  );
}

/** So many suspects are shown at first. */
const firstFew = 6;

function Suspects({ sectionIndex }: { readonly sectionIndex: number }) {
  const { project, survey } = useOpenFile();
  const f = useFigures();
  const words = f.words.window.find.search.found;
  const [all, setAll] = useState(false);
  const suspects = suspectsIn(project, survey, survey.sections[sectionIndex]!);
  const shown = all ? suspects : suspects.slice(0, firstFew);
  return (
    <>
      <h3>{words.lookFirst}</h3>
      <ol className="fault-search-suspects">
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
              {f.say(name)}
            </button>
            <p>{f.say(why)}</p>
          </li>
        ))}
      </ol>
      {suspects.length > firstFew ? (
        <button type="button" className="plain" onClick={() => setAll(!all)}>
          {all ? words.firstOnly : words.showAll({ count: suspects.length })}
        </button>
      ) : null}
    </>
  );
}
