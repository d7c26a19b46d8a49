import { rangeOf } from '../../../core/exchange/elevation/heightsOn.ts';
import { deleteThings } from '../../../core/model/edits/deleteThings.ts';
import type { GroundHeights } from '../../../core/model/groundThings.ts';
import { propertyOf } from '../../../core/model/project.ts';
import type { Survey } from '../../../core/survey/types.ts';
import { fixed, formatLength, formatWholeLength } from '../../../core/words/numbers/write.ts';
import { useOpenFile } from '../../state/appState.ts';
import { commit } from '../../state/session.ts';
import { useUnits } from '../../state/useUnits.ts';
import { ElevationIntake } from './ElevationIntake.tsx';

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
      {placed ? <ElevationIntake /> : <p className="field-hint">The property must be put on the earth first.</p>}
    </>
  );
}

function GroundRow({ ground }: { readonly ground: GroundHeights }) {
  const units = useUnits();
  const { heights, name, id } = ground;
  const count =
    heights.as === 'grid' ? heights.heightsDm.length : heights.ways.reduce((sum, { path }) => sum + path.length, 0);
  const range = rangeOf(heights);
  return (
    <li>
      <span>
        {name}: {fixed(count, 0)} heights
        {range ? `, ${formatWholeLength(range.lowestM, units)} to ${formatWholeLength(range.highestM, units)}` : ''}
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
