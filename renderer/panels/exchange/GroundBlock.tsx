import { rangeOf } from '../../../core/exchange/elevation/heightsOn.ts';
import { deleteThings } from '../../../core/model/edits/deleteThings.ts';
import type { GroundHeights } from '../../../core/model/groundThings.ts';
import { propertyOf } from '../../../core/model/project.ts';
import type { Survey } from '../../../core/survey/types.ts';
import { formatWholeLength } from '../../../core/words/numbers/write.ts';
import { useOpenFile } from '../../state/appState.ts';
import { commit } from '../../state/session.ts';
import { useFigures, useWords } from '../../state/useFigures.ts';
import { ElevationIntake } from './ElevationIntake.tsx';

/** Heights of the ground: where they come from, what they change, and taking them out again. */
export function GroundBlock() {
  const { project, survey } = useOpenFile();
  const words = useWords().window.exchange.heights;
  const { placed } = propertyOf(project);
  const grounds = [...project.ground.values()];
  const over = lengthsOf(survey);
  return (
    <>
      {grounds.length === 0 ? (
        <p className="field-hint">{words.why}</p>
      ) : (
        <p>
          {over.overM === null
            ? words.noneOnFences
            : words.overGround({ planM: over.planM, overM: over.overM, known: over.lines, lines: survey.lines.size })}
        </p>
      )}
      {grounds.length > 0 ? (
        <ul className="ground-list">
          {grounds.map((ground) => (
            <GroundRow key={ground.id} ground={ground} />
          ))}
        </ul>
      ) : null}
      {placed ? <ElevationIntake /> : <p className="field-hint">{words.georeferenceFirst}</p>}
    </>
  );
}

function GroundRow({ ground }: { readonly ground: GroundHeights }) {
  const f = useFigures();
  const words = f.words.window.exchange.heights;
  const { heights, name, id } = ground;
  const count =
    heights.as === 'grid' ? heights.heightsDm.length : heights.ways.reduce((sum, { path }) => sum + path.length, 0);
  const range = rangeOf(heights);
  const inWords = range
    ? words.range({
        lowest: formatWholeLength(range.lowestM, f.units),
        highest: formatWholeLength(range.highestM, f.units),
      })
    : '';
  return (
    <li>
      <span>{words.held({ name, count, range: inWords })}</span>
      <button
        type="button"
        aria-label={words.takeOutNamed({ name })}
        onClick={() => void commit(words.takeOutNamed({ name }), deleteThings([{ kind: 'ground', id }]))}
      >
        {words.takeOut}
      </button>
    </li>
  );
}

/** Plan length and length over the ground of all lines whose heights are known. */
function lengthsOf({ lines, heights }: Survey): { planM: number; overM: number | null; lines: number } {
  let [planM, overM, count] = [0, 0, 0];
  for (const [id, { lengthM }] of lines) {
    const slopeM = heights.slopeLengthM(id, 0, lengthM);
    if (slopeM === null) continue;
    planM += lengthM;
    overM += slopeM;
    count++;
  }
  return { planM, overM: count > 0 ? overM : null, lines: count };
}
