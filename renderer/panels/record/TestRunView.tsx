import { useMemo, useState } from 'react';
import { boundsOf } from '../../../core/kinds/form.ts';
import { reading as described } from '../../../core/kinds/reading.ts';
import { addThing } from '../../../core/model/edits/addThing.ts';
import { deleteThings } from '../../../core/model/edits/deleteThings.ts';
import { propertyOf } from '../../../core/model/project.ts';
import type { TestResult, TestRun } from '../../../core/model/recordThings.ts';
import type { Reading } from '../../../core/model/things.ts';
import type { Yardstick } from '../../../core/model/yardstick.ts';
import { latestRun, outcomeOf, type TestStop, testWalk, withResult } from '../../../core/record/testWalk.ts';
import { limitsExplained, switchesOff, yardstickSentence } from '../../../core/sheets/yardstickInWords.ts';
import { powerOf } from '../../../core/survey/power/powerOf.ts';
import { openForSheet, sheetYardsticks } from '../../../core/survey/power/sheetYardsticks.ts';
import { testSheets } from '../../../core/survey/testSheets.ts';
import { today } from '../../../core/words/dates.ts';
import type { Figures } from '../../../core/words/types.ts';
import { sectionMapId } from '../../map/mapTypes.ts';
import { useOpenFile } from '../../state/appState.ts';
import { change } from '../../state/change.ts';
import { choose } from '../../state/choose.ts';
import { newId } from '../../state/newId.ts';
import { commit } from '../../state/session.ts';
import { useFigures } from '../../state/useFigures.ts';
import { Caution } from '../parts/Caution.tsx';
import { NumberField, TextField } from '../parts/fields.tsx';
import { DateField } from './DateField.tsx';

/** The walk through the test sheets, section by section; what was found is kept. */
export function TestRunView() {
  const words = useFigures().words.window.record.testRun;
  const { project } = useOpenFile();
  const runs = [...project.testRun.values()].sort((a, b) => b.date.localeCompare(a.date));
  const [runId, setRunId] = useState<string | null>(null);
  const run = (runId !== null && project.testRun.get(runId)) || latestRun(project);
  return (
    <>
      {run ? <Walk run={run} key={run.id} /> : <p>{words.none}</p>}
      {runs.length > 1 ? (
        <div className="field">
          <label htmlFor="test-run">{words.show}</label>
          <select id="test-run" value={run?.id} onChange={(event) => setRunId(event.target.value)}>
            {runs.map(({ id, name, date }) => (
              <option key={id} value={id}>
                {words.ofDay({ run: name, day: date })}
              </option>
            ))}
          </select>
        </div>
      ) : null}
      {!run || run.finished ? <NewRun onBegun={setRunId} /> : null}
    </>
  );
}

function NewRun({ onBegun }: { readonly onBegun: (id: string) => void }) {
  const { testRun: words, fields } = useFigures().words.window.record;
  const [name, setName] = useState(words.usualName);
  const [date, setDate] = useState<string | null>(today);
  const [by, setBy] = useState('');
  const [meter, setMeter] = useState('');
  const [weather, setWeather] = useState('');
  const begin = () => {
    const id = newId('testRun');
    const run = {
      kind: 'testRun' as const,
      name,
      date: date ?? today(),
      by,
      meter,
      weather,
      results: [],
      finished: false,
      note: '',
    };
    void commit(
      words.begin({ run: name }),
      addThing(run, () => id),
    ).then((done) => {
      if (done) onBegun(id);
    });
  };
  return (
    <section className="block" aria-label={words.newRun}>
      <h2>{words.beginOne}</h2>
      <div className="field-pair">
        <TextField label={words.name} required value={name} onCommit={setName} />
        <DateField label={fields.day} value={date} onCommit={setDate} />
      </div>
      <div className="field-pair">
        <TextField label={fields.testedBy} value={by} onCommit={setBy} />
        <TextField label={fields.meter} value={meter} onCommit={setMeter} />
      </div>
      <TextField label={fields.weather} value={weather} onCommit={setWeather} />
      <p className="buttons">
        <button type="button" className="main" onClick={begin}>
          {words.beginIt}
        </button>
      </p>
    </section>
  );
}

function Walk({ run }: { readonly run: TestRun }) {
  const { testRun: words, fields } = useFigures().words.window.record;
  const { project, survey } = useOpenFile();
  const sheets = useMemo(() => testSheets(project, survey), [project, survey]);
  const walk = testWalk(run, project, sheets);
  const [shown, setShown] = useState<string | null>(null);
  const stop = walk.stops.find(({ sheet }) => sheet.section === (shown ?? walk.next)) ?? null;
  const done = walk.stops.filter(({ result }) => result !== null).length;
  const go = (section: string) => {
    setShown(section);
    choose([sectionMapId(section)]);
  };
  const named = { run: run.name };
  const set = (label: string, patch: Partial<TestRun>) => change(label, 'testRun', run.id, patch);
  return (
    <section className="block" aria-label={words.run(named)}>
      <h2>{words.howFar({ ...named, day: run.date, done, all: walk.stops.length, finished: run.finished })}</h2>
      <nav className="register-choice" aria-label={words.sections}>
        {walk.stops.map(({ sheet, result }) => (
          <button
            key={sheet.section}
            type="button"
            aria-pressed={sheet.section === stop?.sheet.section}
            onClick={() => go(sheet.section)}
          >
            {words.sectionState({ section: sheet.section, outcome: result?.outcome ?? null })}
          </button>
        ))}
      </nav>
      {stop ? (
        <Stop
          key={stop.sheet.section}
          run={run}
          stop={stop}
          onDone={(result) => {
            set(words.edits.tested({ ...named, section: result.section, outcome: result.outcome }), {
              results: withResult(run.results, result),
            });
            setShown(null);
          }}
        />
      ) : (
        <p className="findings-none">{words.everyDone}</p>
      )}
      {walk.former.length > 0 ? <p className="field-hint">{words.former({ results: walk.former })}</p> : null}
      <div className="field-pair">
        <TextField label={fields.testedBy} value={run.by} onCommit={(by) => set(words.edits.by(named), { by })} />
        <TextField
          label={fields.meter}
          value={run.meter}
          onCommit={(meter) => set(words.edits.meter(named), { meter })}
        />
      </div>
      <TextField
        label={fields.weather}
        value={run.weather}
        onCommit={(weather) => set(words.edits.weather(named), { weather })}
      />
      <TextField label={words.note} long value={run.note} onCommit={(note) => set(words.edits.note(named), { note })} />
      <p className="buttons">
        <button
          type="button"
          className={walk.next === null && !run.finished ? 'main' : undefined}
          onClick={() =>
            set(run.finished ? words.edits.goOn(named) : words.edits.finish(named), { finished: !run.finished })
          }
        >
          {run.finished ? words.goOn : words.finish}
        </button>
        <button
          type="button"
          onClick={() => void commit(words.edits.delete(named), deleteThings([{ kind: 'testRun', id: run.id }]))}
        >
          {words.delete}
        </button>
      </p>
    </section>
  );
}

function Stop({
  run,
  stop: { sheet, result, readings },
  onDone,
}: {
  readonly run: TestRun;
  readonly stop: TestStop;
  readonly onDone: (result: TestResult) => void;
}) {
  const f = useFigures();
  const words = f.words.window.record.testRun;
  const { project, survey } = useOpenFile();
  const [note, setNote] = useState(result?.note ?? '');
  const least = propertyOf(project).power.stockMinimumV;
  const power = powerOf(project, survey);
  const yardsticks = useMemo(() => sheetYardsticks(power, sheet, run.id), [power, sheet, run.id]);
  // What was written down without its yardstick, in an older file, is laid beside what is usual now.
  const judged = readings.map((reading) => {
    const now = yardsticks[sheet.readAt.findIndex(({ text }) => f.say(text) === reading.place)];
    return reading.yardstick || !now ? reading : { ...reading, yardstick: now };
  });
  const places = sheet.readAt.map(({ text, at }) => ({ text: f.say(text), at }));
  const says = outcomeOf(judged, least);
  const names = (ids: readonly string[]) =>
    ids.map((id) => project.switch.get(id)?.name ?? id).join(', ') || words.noSwitch;
  const finish = (outcome: TestResult['outcome']) => onDone({ section: sheet.section, outcome, note });
  const button = (outcome: TestResult['outcome'], label: string) => (
    <button type="button" className={outcome === says ? 'main' : undefined} onClick={() => finish(outcome)}>
      {label}
    </button>
  );
  return (
    <div className="block test-stop">
      <h3>{words.section({ section: sheet.section })}</h3>
      <Caution>{words.caution}</Caution>
      <dl className="plan-figures">
        <div>
          <dt>{words.off}</dt>
          <dd>{names(sheet.open)}</dd>
        </div>
        <div>
          <dt>{words.on}</dt>
          <dd>{names(sheet.closed)}</dd>
        </div>
      </dl>
      <ol className="test-steps">
        {sheet.steps.map((step) => (
          <li key={f.say(step)}>{f.say(step)}</li>
        ))}
      </ol>
      {places.map((place, i) => (
        <ReadingField
          key={place.text}
          place={place}
          run={run}
          section={sheet.section}
          openIds={[...openForSheet(power, sheet)]}
          yardstick={yardsticks[i]!}
          reading={readings.find((reading) => reading.place === place.text) ?? null}
        />
      ))}
      <p role="status">{saysInWords(says, least, f)}</p>
      <p className="field-hint">{f.say(limitsExplained())}</p>
      <TextField label={words.sectionNote({ section: sheet.section })} value={note} onCommit={setNote} />
      <p className="buttons">
        {button('passed', words.passed)}
        {button('failed', words.failed)}
        {button('leftOut', words.leaveOut)}
      </p>
    </div>
  );
}

function saysInWords(says: ReturnType<typeof outcomeOf>, leastV: number, f: Figures): string {
  const words = f.words.window.record.testRun.says;
  switch (says) {
    case null:
      return words.none({ leastV });
    case 'passed':
      return words.passed({ leastV });
    case 'doubtful':
      return words.doubtful;
    case 'failed':
      return words.failed;
  }
}

/** What was read at one place of a sheet, in kV as testers show it, beside what it is judged by. */
function ReadingField({
  place,
  run,
  section,
  openIds,
  yardstick,
  reading,
}: {
  readonly place: { readonly text: string; readonly at: Reading['at'] };
  readonly run: TestRun;
  readonly section: string;
  readonly openIds: readonly string[];
  readonly yardstick: Yardstick;
  readonly reading: Reading | null;
}) {
  const f = useFigures();
  const { edits, read } = f.words.window.record.testRun;
  const { project } = useOpenFile();
  const counts = reading?.yardstick ?? yardstick;
  const write = (kilovolts: number | null) => {
    const label = edits.read({ place: place.text });
    if (kilovolts === null) {
      if (reading)
        void commit(edits.deleteReading({ place: place.text }), deleteThings([{ kind: 'reading', id: reading.id }]));
    } else if (reading) {
      change(label, 'reading', reading.id, { voltageV: kilovolts * 1000, yardstick });
    } else {
      const { by, meter, weather, id: runId } = run;
      const words = { place: place.text, section, by, meter, weather, runId, yardstick, note: '' };
      const made = {
        kind: 'reading' as const,
        at: place.at,
        date: today(),
        voltageV: kilovolts * 1000,
        currentA: null,
      };
      void commit(label, addThing({ ...made, openSwitchIds: openIds, ...words }, newId));
    }
  };
  return (
    <NumberField
      label={read({ place: place.text })}
      unit="kV"
      decimals={2}
      {...boundsOf(described.fields.voltageV, 1000)}
      optional
      value={reading?.voltageV == null ? null : reading.voltageV / 1000}
      hint={f.say(yardstickSentence(counts, switchesOff(project, openIds)))}
      onCommit={write}
    />
  );
}
