import { useId, useMemo, useState } from 'react';
import { type Dig, type DigFinding, digCheck, numbered } from '../../../core/locate/digCheck.ts';
import {
  awayInWords,
  depthOfThing,
  digSentence,
  errorInWords,
  verdictInWords,
} from '../../../core/sheets/find/digWords.ts';
import type { Texts } from '../../../core/words/message.ts';
import { formatRound } from '../../../core/words/numbers/write.ts';
import { useOpenFile } from '../../state/appState.ts';
import { choose, light } from '../../state/choose.ts';
import { mapView } from '../../state/mapView.ts';
import { useFigures, useWords } from '../../state/useFigures.ts';
import { Caution } from '../parts/Caution.tsx';
import { LengthField } from '../parts/LengthField.tsx';
import { digErrorM, setDig, useFind } from './findState.ts';
import { PrintSheetButton } from './PrintSheetButton.tsx';
import { typedPlace } from './typedPlace.ts';

const tools = [
  { tool: 'digPoint', label: (words: Texts) => words.window.find.dig.hole },
  { tool: 'digLine', label: (words: Texts) => words.window.find.dig.trench },
  { tool: 'digArea', label: (words: Texts) => words.window.find.dig.area },
] as const;

/** "I will dig here": what is buried near, how sure that is, and what may be hit. */
export function DigView() {
  const texts = useWords();
  const { dig: words, views } = texts.window.find;
  const dig = useFind((state) => state.dig);
  const f = useFigures();
  return (
    <section className="block" aria-label={views.dig}>
      <Caution>
        {f.words.sheets.dig.onlyWhatIsKnown} {words.offAndDead}
      </Caution>
      <p>{words.draw}</p>
      <p className="buttons">
        {tools.map(({ tool, label }) => (
          <button key={tool} type="button" onClick={() => mapView.setTool(tool)}>
            {label(texts)}
          </button>
        ))}
      </p>
      <TypePlace />
      {dig ? <Answered dig={dig} /> : null}
    </section>
  );
}

function TypePlace() {
  const words = useWords().window.find.dig;
  const { project, survey } = useOpenFile();
  const [text, setText] = useState('');
  const [problem, setProblem] = useState<string | null>(null);
  const id = useId();
  const look = () => {
    const read = typedPlace(text, project, survey);
    if ('problem' in read) return setProblem(read.problem);
    setProblem(null);
    setDig({ shape: 'point', path: [read.lonLat] }, digErrorM.typed);
    mapView.goTo(read.lonLat);
  };
  return (
    <form
      className="field"
      onSubmit={(event) => {
        event.preventDefault();
        look();
      }}
    >
      <label htmlFor={id}>{words.coordinates}</label>
      <span className="with-unit">
        <input id={id} type="text" autoComplete="off" value={text} onChange={(event) => setText(event.target.value)} />
        <button type="submit">{words.lookHere}</button>
      </span>
      {problem ? (
        <p className="field-problem" role="alert">
          {problem}
        </p>
      ) : null}
    </form>
  );
}

function Answered({ dig }: { readonly dig: Dig }) {
  const { project, survey } = useOpenFile();
  const f = useFigures();
  const words = f.words.window.find.dig;
  const answer = useMemo(() => digCheck(project, survey, dig), [project, survey, dig]);
  const hit = answer.findings.some(({ overlap }) => overlap);
  const set = (patch: Partial<Dig>) => useFind.setState({ dig: { ...dig, ...patch } });
  return (
    <>
      <p className={`dig-answer ${hit ? 'hit' : 'clear'}`} role="status">
        <span aria-hidden="true">{hit ? '✕ ' : answer.findings.length > 0 ? '! ' : '? '}</span>
        {digSentence(answer, dig, f)}
      </p>
      {answer.findings.length === 0 ? <p>{f.words.sheets.dig.onlyWhatIsKnown}</p> : null}
      <ol className="dig-findings">
        {numbered(answer).map(({ finding, number, overhead }) => (
          <FindingRow
            key={`${finding.thing.kind} ${finding.thing.id}`}
            finding={finding}
            number={number}
            overhead={overhead}
          />
        ))}
      </ol>
      <div className="field-pair">
        <LengthField
          label={words.lookWithin}
          valueM={dig.withinM}
          maxM={1000}
          onCommitM={(withinM) => withinM !== null && set({ withinM })}
        />
        <LengthField
          label={words.placeWithin}
          valueM={dig.errorM}
          maxM={1000}
          onCommitM={(errorM) => errorM !== null && set({ errorM })}
        />
      </div>
      <p className="field-hint">
        {words.howGood({
          byEye: formatRound(digErrorM.drawn, f.units),
          byPhone: formatRound(digErrorM.typed, f.units),
        })}
      </p>
      <p className="buttons">
        <PrintSheetButton label={words.print} options={{ sheet: 'dig', dig }} />
        <button type="button" onClick={() => useFind.setState({ dig: null })}>
          {words.clear}
        </button>
      </p>
    </>
  );
}

function FindingRow({
  finding,
  number,
  overhead,
}: {
  readonly finding: DigFinding;
  readonly number: string;
  readonly overhead: boolean;
}) {
  const f = useFigures();
  const words = f.words.window.find.dig;
  const { thing, overlap } = finding;
  const isHit = overlap && !overhead;
  return (
    <li
      className={isHit ? 'hit' : thing.inGround ? undefined : 'planned'}
      onPointerEnter={() => light([thing.id])}
      onPointerLeave={() => light([])}
    >
      <p>
        <strong>{words.thing({ number, thing: thing.name })}</strong>, {awayInWords(finding, f)}
      </p>
      <p className="dig-verdict">
        {isHit ? <span aria-hidden="true">✕ </span> : null}
        {overhead ? `${words.overhead} ` : ''}
        {words.said({
          all: [...(overhead ? [] : [verdictInWords(finding, f), depthOfThing(finding, f)]), errorInWords(finding, f)],
        })}
      </p>
      {thing.beside ? <p>{f.say(thing.beside)}</p> : null}
      <button
        type="button"
        onClick={() => {
          choose([thing.id]);
          mapView.zoomTo(thing.id);
        }}
      >
        {words.show}
      </button>
    </li>
  );
}
