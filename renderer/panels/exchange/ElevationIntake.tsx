import { useRef, useState } from 'react';
import { type HeightUnit, heightUnits } from '../../../core/exchange/elevation/heightUnit.ts';
import { whyAskForSystem } from '../../../core/exchange/image/geoTiffTags.ts';
import { boundsOf } from '../../../core/exchange/preview/bounds.ts';
import { addThing } from '../../../core/model/edits/addThing.ts';
import { formatWholeLength } from '../../../core/words/numbers/write.ts';
import { useOpenFile } from '../../state/appState.ts';
import { newId } from '../../state/newId.ts';
import { commit } from '../../state/session.ts';
import { useFigures } from '../../state/useFigures.ts';
import { elevation } from '../../work/elevation/elevation.ts';
import type { ElevationRead, ElevationRequest } from '../../work/elevation/messages.ts';
import { SelectField } from '../parts/fields.tsx';
import { SystemQuestion } from '../underlay/SystemQuestion.tsx';

type Found = Extract<ElevationRead, { ok: true }>;
type Chosen = Pick<ElevationRequest, 'unit' | 'system'>;

/** Where the intake of an elevation model stands. */
type Stage =
  | { readonly at: 'start'; readonly said: readonly string[] }
  | { readonly at: 'reading'; readonly stop: () => void }
  | { readonly at: 'asking'; readonly file: File; readonly why: string }
  | { readonly at: 'found'; readonly file: File; readonly system: Chosen['system']; readonly found: Found };

const nothingChosen: Chosen = { unit: null, system: null };

/** Reads an elevation model, shows what it found, and keeps the heights once the user has seen that they can be right. */
export function ElevationIntake() {
  const { project } = useOpenFile();
  const f = useFigures();
  const words = f.words.window.exchange.heights;
  const input = useRef<HTMLInputElement>(null);
  const [stage, setStage] = useState<Stage>({ at: 'start', said: [] });
  const say = (...said: readonly string[]) => setStage({ at: 'start', said });

  /** Null: stopped, or told of. */
  const read = async (file: File, chosen: Chosen): Promise<Found | null> => {
    const abort = new AbortController();
    const stop = () => {
      abort.abort();
      say(words.stopped);
    };
    setStage({ at: 'reading', stop });
    const result = await elevation({ file, area: boundsOf(project.fenceLine.values()), ...chosen }, abort.signal);
    if (!result || result.ok) return result;
    if (result.askSystem === null) say(words.nothingChanged({ why: result.message }));
    else setStage({ at: 'asking', file, why: f.say(whyAskForSystem(result.askSystem, file.name)) });
    return null;
  };
  const look = async (file: File, chosen: Chosen) => {
    const found = await read(file, chosen);
    if (found) setStage({ at: 'found', file, system: chosen.system, found });
  };
  const keep = async (file: File, { grid, notes }: Found) => {
    const name = f.words.exchange.heights.named({ file: file.name }).slice(0, 200);
    const thing = { kind: 'ground', name, fileName: file.name.slice(0, 200), heights: grid, note: '' } as const;
    await commit(words.bringInFile({ file: file.name }), addThing(thing, newId));
    say(...notes.map(f.say));
  };
  const use = async (file: File, system: Chosen['system'], found: Found, unit: HeightUnit) => {
    const wanted = unit === found.unit.unit ? found : await read(file, { unit, system });
    if (wanted) await keep(file, wanted);
  };

  return (
    <>
      <p className="buttons">
        <button type="button" disabled={stage.at !== 'start'} onClick={() => input.current?.click()}>
          {stage.at === 'reading' ? words.reading : words.bringIn}
        </button>
        {stage.at === 'reading' ? (
          <button type="button" onClick={stage.stop}>
            {f.words.window.exchange.importing.stop}
          </button>
        ) : null}
        <input
          ref={input}
          type="file"
          hidden
          aria-label={words.model}
          accept=".tif,.tiff,image/tiff"
          onChange={(event) => {
            const file = event.target.files?.[0];
            event.target.value = '';
            if (file) void look(file, nothingChosen);
          }}
        />
      </p>
      {stage.at === 'asking' ? (
        <SystemQuestion
          of="elevation model"
          why={stage.why}
          otherwise={words.leaveModelOut}
          answer={(choice) => {
            if (choice === 'eye') say(words.leftOut);
            else void look(stage.file, { unit: null, system: choice });
          }}
        />
      ) : null}
      {stage.at === 'found' ? (
        <HeightsFound
          fileName={stage.file.name}
          found={stage.found}
          onUse={(unit) => void use(stage.file, stage.system, stage.found, unit)}
          onLeave={() => say(words.leftOut)}
        />
      ) : null}
      <div role="status">
        {stage.at === 'start'
          ? stage.said.map((text) => (
              <p key={text} className="field-hint">
                {text}
              </p>
            ))
          : null}
      </div>
    </>
  );
}

/** The lowest and the highest of the heights, in which unit they were read, and whether they shall be used. */
function HeightsFound({
  fileName,
  found: { lowestM, highestM, unit: read },
  onUse,
  onLeave,
}: {
  readonly fileName: string;
  readonly found: Found;
  readonly onUse: (unit: HeightUnit) => void;
  readonly onLeave: () => void;
}) {
  const f = useFigures();
  const { units } = f;
  const words = f.words.window.exchange.heights;
  const unitWords = f.words.exchange.heights;
  const [unit, setUnit] = useState(read.unit);
  const rangeIn = (other: HeightUnit) => {
    const factor = heightUnits[other].inM / heightUnits[read.unit].inM;
    const [lowest, highest] = [lowestM, highestM].map((heightM) => formatWholeLength(heightM * factor, units));
    return words.range({ lowest: lowest!, highest: highest! });
  };
  return (
    <section className="block" aria-label={words.found}>
      <p>
        {words.wouldLie({ file: fileName })} <strong>{rangeIn(unit)}</strong> {words.aboveSea}
      </p>
      {read.doubt ? <p className="caution">{f.say(read.doubt)}</p> : null}
      <SelectField<HeightUnit>
        label={words.areIn}
        value={unit}
        choices={(Object.keys(heightUnits) as HeightUnit[]).map((value) => ({
          value,
          label: words.unit({ unit: unitWords.units[value], range: rangeIn(value) }),
        }))}
        hint={read.toldBy ? unitWords.unitKnown({ unit: read.unit, by: read.toldBy }) : undefined}
        onCommit={setUnit}
      />
      <p className="buttons">
        <button type="button" className="main" onClick={() => onUse(unit)}>
          {words.use}
        </button>
        <button type="button" onClick={onLeave}>
          {words.leaveOut}
        </button>
      </p>
    </section>
  );
}
