import { useRef, useState } from 'react';
import { boundsOf } from '../../../core/exchange/preview/bounds.ts';
import { addThing } from '../../../core/model/edits/addThing.ts';
import { deleteThings } from '../../../core/model/edits/deleteThings.ts';
import { formatLength } from '../../../core/model/formatUnits.ts';
import type { GroundHeights } from '../../../core/model/groundThings.ts';
import { propertyOf } from '../../../core/model/project.ts';
import type { Survey } from '../../../core/registers/types.ts';
import { useOpenFile } from '../../state/appState.ts';
import { newId } from '../../state/newId.ts';
import { commit } from '../../state/session.ts';
import { useUnits } from '../../state/useUnits.ts';
import { elevation } from '../../work/elevation/elevation.ts';

/** Heights of the ground: where they come from, what they change, and taking them out again. */
export function GroundBlock() {
  const { project, survey } = useOpenFile();
  const units = useUnits();
  const { placed } = propertyOf(project);
  const grounds = [...project.ground.values()];
  const over = lengthsOf(survey);
  return (
    <>
      {grounds.length === 0 ? (
        <p className="field-hint">
          With heights, wire is ordered by its length over the ground. They come with GPX tracks, or from an elevation
          model (GeoTIFF).
        </p>
      ) : (
        <p>
          {over.overM === null
            ? 'No fence line lies where heights are known.'
            : `${formatLength(over.planM, units)} of fence on the plan is ${formatLength(over.overM, units)} over the ground${over.lines < survey.lines.size ? `, for the ${over.lines} of ${survey.lines.size} lines whose heights are known` : ''}.`}
        </p>
      )}
      {grounds.length > 0 ? (
        <ul className="ground-list">
          {grounds.map((ground) => (
            <GroundRow key={ground.id} ground={ground} />
          ))}
        </ul>
      ) : null}
      {placed ? <ElevationButton /> : <p className="field-hint">The property must be put on the earth first.</p>}
    </>
  );
}

function GroundRow({ ground }: { readonly ground: GroundHeights }) {
  const { heights, name, id } = ground;
  const count =
    heights.as === 'grid' ? heights.heightsDm.length : heights.ways.reduce((sum, { path }) => sum + path.length, 0);
  return (
    <li>
      <span>
        {name}: {count.toLocaleString('en')} heights
      </span>
      <button
        type="button"
        aria-label={`Take out ${name}`}
        onClick={() => void commit(`Take out ${name}`, deleteThings([{ kind: 'ground', id }]))}
      >
        Take out
      </button>
    </li>
  );
}

function ElevationButton() {
  const { project } = useOpenFile();
  const input = useRef<HTMLInputElement>(null);
  const [reading, setReading] = useState<AbortController | null>(null);
  const [said, setSaid] = useState<readonly string[]>([]);
  const read = async (file: File) => {
    const abort = new AbortController();
    setReading(abort);
    setSaid([]);
    const area = boundsOf(project.fenceLine.values());
    const result = await elevation({ file, area }, abort.signal);
    setReading(null);
    if (!result.ok) return setSaid([`${result.message} Nothing was changed.`]);
    const name = `Heights of ${file.name}`.slice(0, 200);
    const thing = { kind: 'ground', name, fileName: file.name.slice(0, 200), heights: result.grid, note: '' } as const;
    await commit(`Bring in ${file.name}`, addThing(thing, newId));
    setSaid(result.notes);
  };
  const stop = () => {
    reading?.abort();
    setReading(null);
    setSaid(['Stopped. Nothing was changed.']);
  };
  return (
    <>
      <p className="buttons">
        <button type="button" disabled={reading !== null} onClick={() => input.current?.click()}>
          {reading ? 'Reading the heights …' : 'Bring in an elevation model'}
        </button>
        {reading ? (
          <button type="button" onClick={stop}>
            Stop
          </button>
        ) : null}
        <input
          ref={input}
          type="file"
          hidden
          aria-label="Elevation model"
          accept=".tif,.tiff,image/tiff"
          onChange={(event) => {
            const file = event.target.files?.[0];
            event.target.value = '';
            if (file) void read(file);
          }}
        />
      </p>
      <div role="status">
        {said.map((text) => (
          <p key={text} className="field-hint">
            {text}
          </p>
        ))}
      </div>
    </>
  );
}

/** Plan length and length over the ground of all lines whose heights are known. */
function lengthsOf({ lines, ground }: Survey): { planM: number; overM: number | null; lines: number } {
  let [planM, overM, count] = [0, 0, 0];
  for (const [id, { lengthM }] of lines) {
    const slopeM = ground.slopeLengthM(id, 0, lengthM);
    if (slopeM === null) continue;
    planM += lengthM;
    overM += slopeM;
    count++;
  }
  return { planM, overM: count > 0 ? overM : null, lines: count };
}
