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
import { dateText, today } from '../../../core/words/dates.ts';
import { formatVoltage } from '../../../core/words/numbers/write.ts';
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

const outcomeWords: Record<TestResult['outcome'], string> = { passed: 'passed', failed: 'failed', leftOut: 'left out' };

/** The walk through the test sheets, section by section; what was found is kept. */
export function TestRunView() {
  const { project } = useOpenFile();
  const runs = [...project.testRun.values()].sort((a, b) => b.date.localeCompare(a.date));
  const [runId, setRunId] = useState<string | null>(null);
  const run = (runId !== null && project.testRun.get(runId)) || latestRun(project);
  return (
    <>
      {run ? <Walk run={run} key={run.id} /> : <p>No test run yet. Begin one and walk from section to section.</p>}
      {runs.length > 1 ? (
        <div className="field">
          <label htmlFor="test-run">Show the run</label>
          <select id="test-run" value={run?.id} onChange={(event) => setRunId(event.target.value)}>
            {runs.map(({ id, name, date }) => (
              <option key={id} value={id}>
                {name}, {dateText(date)}
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
  const [name, setName] = useState('Commissioning');
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
      `Begin the test run ${name}`,
      addThing(run, () => id),
    ).then((done) => {
      if (done) onBegun(id);
    });
  };
  return (
    <section className="block" aria-label="A new test run">
      <h2>Begin a test run</h2>
      <div className="field-pair">
        <TextField label="Name" required value={name} onCommit={setName} />
        <DateField label="Day" value={date} onCommit={setDate} />
      </div>
      <div className="field-pair">
        <TextField label="Tested by" value={by} onCommit={setBy} />
        <TextField label="Meter" value={meter} onCommit={setMeter} />
      </div>
      <TextField label="Weather" value={weather} onCommit={setWeather} />
      <p className="buttons">
        <button type="button" className="main" onClick={begin}>
          Begin
        </button>
      </p>
    </section>
  );
}

function Walk({ run }: { readonly run: TestRun }) {
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
  const set = (label: string, patch: Partial<TestRun>) => change(`${label}: ${run.name}`, 'testRun', run.id, patch);
  return (
    <section className="block" aria-label={`Test run ${run.name}`}>
      <h2>
        {run.name}, {dateText(run.date)}: {done} of {walk.stops.length} sections{run.finished ? ', finished' : ''}
      </h2>
      <nav className="register-choice" aria-label="Sections of the run">
        {walk.stops.map(({ sheet, result }) => (
          <button
            key={sheet.section}
            type="button"
            aria-pressed={sheet.section === stop?.sheet.section}
            onClick={() => go(sheet.section)}
          >
            {sheet.section}: {result ? outcomeWords[result.outcome] : 'to do'}
          </button>
        ))}
      </nav>
      {stop ? (
        <Stop
          key={stop.sheet.section}
          run={run}
          stop={stop}
          onDone={(result) => {
            set(`Section ${result.section} ${outcomeWords[result.outcome]}`, {
              results: withResult(run.results, result),
            });
            setShown(null);
          }}
        />
      ) : (
        <p className="findings-none">Every section is done.</p>
      )}
      {walk.former.length > 0 ? (
        <p className="field-hint">
          Tested when the sections were drawn otherwise:{' '}
          {walk.former.map(({ section, outcome }) => `${section} ${outcomeWords[outcome]}`).join(', ')}.
        </p>
      ) : null}
      <div className="field-pair">
        <TextField label="Tested by" value={run.by} onCommit={(by) => set('Name who tested', { by })} />
        <TextField label="Meter" value={run.meter} onCommit={(meter) => set('Name the meter', { meter })} />
      </div>
      <TextField label="Weather" value={run.weather} onCommit={(weather) => set('Note the weather', { weather })} />
      <TextField label="Note on the run" long value={run.note} onCommit={(note) => set('Note on the run', { note })} />
      <p className="buttons">
        <button
          type="button"
          className={walk.next === null && !run.finished ? 'main' : undefined}
          onClick={() => set(run.finished ? 'Go on with the run' : 'Finish the run', { finished: !run.finished })}
        >
          {run.finished ? 'Go on with this run' : 'Finish the run'}
        </button>
        <button
          type="button"
          onClick={() => void commit(`Delete the run ${run.name}`, deleteThings([{ kind: 'testRun', id: run.id }]))}
        >
          Delete the run
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
  const { project, survey } = useOpenFile();
  const [note, setNote] = useState(result?.note ?? '');
  const least = propertyOf(project).power.stockMinimumV;
  const power = powerOf(project, survey);
  const yardsticks = useMemo(() => sheetYardsticks(power, sheet, run.id), [power, sheet, run.id]);
  // What was written down without its yardstick, in an older file, is laid beside what is usual now.
  const judged = readings.map((reading) => {
    const now = yardsticks[sheet.readAt.findIndex(({ text }) => text === reading.place)];
    return reading.yardstick || !now ? reading : { ...reading, yardstick: now };
  });
  const says = outcomeOf(judged, least);
  const names = (ids: readonly string[]) => ids.map((id) => project.switch.get(id)?.name ?? id).join(', ') || 'none';
  const finish = (outcome: TestResult['outcome']) => onDone({ section: sheet.section, outcome, note });
  const button = (outcome: TestResult['outcome'], label: string) => (
    <button type="button" className={outcome === says ? 'main' : undefined} onClick={() => finish(outcome)}>
      {label}
    </button>
  );
  return (
    <div className="block test-stop">
      <h3>Section {sheet.section}</h3>
      <Caution>
        Turn the energiser off and prove the fence dead before you touch a wire or a switch. Keep people and stock away
        while testing.
      </Caution>
      <dl className="plan-figures">
        <div>
          <dt>Open</dt>
          <dd>{names(sheet.open)}</dd>
        </div>
        <div>
          <dt>Closed</dt>
          <dd>{names(sheet.closed)}</dd>
        </div>
      </dl>
      <ol className="test-steps">
        {sheet.steps.map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
      {sheet.readAt.map((place, i) => (
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
      <p role="status">{saysInWords(says, least)}</p>
      <p className="field-hint">{f.say(limitsExplained())}</p>
      <TextField label={`Note on section ${sheet.section}`} value={note} onCommit={setNote} />
      <p className="buttons">
        {button('passed', 'Passed, next section')}
        {button('failed', 'Failed, next section')}
        {button('leftOut', 'Leave out')}
      </p>
    </div>
  );
}

function saysInWords(says: ReturnType<typeof outcomeOf>, leastV: number): string {
  const least = formatVoltage(leastV);
  switch (says) {
    case null:
      return `No reading yet. Under ${least} stock is not held, whatever is usual.`;
    case 'passed':
      return `Every reading is as good as it should be there, and at least ${least}: it holds the stock.`;
    case 'doubtful':
      return 'A reading is less than it should be there, though stock is held: read again, and look for what takes it, before you call it passed.';
    case 'failed':
      return 'A reading is low for its place, or does not hold the stock: look for the fault before you hand it over.';
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
  const { project } = useOpenFile();
  const f = useFigures();
  const counts = reading?.yardstick ?? yardstick;
  const write = (kilovolts: number | null) => {
    const label = `Reading ${place.text}`;
    if (kilovolts === null) {
      if (reading) void commit(`Delete: ${label}`, deleteThings([{ kind: 'reading', id: reading.id }]));
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
      label={`Read ${place.text}`}
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
