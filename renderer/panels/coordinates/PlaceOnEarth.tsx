import { useState } from 'react';
import { formatGrid, formatPlace } from '../../../core/coordinates/formatPlace.ts';
import { readGridPlace, readPlace } from '../../../core/coordinates/readPlace.ts';
import { systemOf } from '../../../core/coordinates/systems.ts';
import type { Xy } from '../../../core/geometry/types.ts';
import { type KnownPoint, placeOnEarth, whyNotPlaceOnEarth } from '../../../core/model/edits/placeOnEarth.ts';
import { type Project, propertyOf } from '../../../core/model/project.ts';
import type { LonLat } from '../../../core/model/things.ts';
import { workingPlane } from '../../../core/shapes/workingPlane.ts';
import type { Units } from '../../../core/words/numbers/write.ts';
import { useOpenFile } from '../../state/appState.ts';
import { commit } from '../../state/session.ts';
import { figuresOf } from '../../state/useFigures.ts';
import { useUnits } from '../../state/useUnits.ts';
import { NumberField, SelectField } from '../parts/fields.tsx';
import { TypedPlace } from '../underlay/PlaceField.tsx';

type Way = 'bearing' | 'points';
type Half = Partial<KnownPoint>;

/** Gives a property that was drawn on the blank grid its place on earth. */
export function PlaceOnEarth() {
  const { project } = useOpenFile();
  const f = figuresOf(project);
  const [way, setWay] = useState<Way>('points');
  const [first, setFirst] = useState<Half>({});
  const [second, setSecond] = useState<Half>({});
  const [gridNorthDeg, setNorth] = useState(0);
  const wanted =
    isWhole(first) && (way === 'bearing' || isWhole(second))
      ? { point: first, ...(way === 'bearing' ? { gridNorthDeg } : { second: second as KnownPoint }) }
      : null;
  const refusal = wanted && whyNotPlaceOnEarth(wanted)(project);
  return (
    <section className="block" aria-label="Place on earth">
      <p>
        The property is drawn on the blank grid and has no place on earth yet. Give it one and maps, coordinates and
        handhelds fit it. Lengths stay as they are.
      </p>
      <SelectField<Way>
        label="I know"
        value={way}
        choices={[
          { value: 'points', label: 'Where two places of the drawing are' },
          { value: 'bearing', label: 'Where one place is, and which way is north' },
        ]}
        onCommit={setWay}
      />
      <HalfFields name="First place" half={first} onChange={setFirst} />
      {way === 'points' ? (
        <HalfFields name="Second place" half={second} onChange={setSecond} />
      ) : (
        <NumberField
          label="True bearing of the grid’s north"
          unit="°"
          min={-360}
          max={360}
          decimals={3}
          value={gridNorthDeg}
          hint="0 where the drawing’s up is true north."
          onCommit={(value) => setNorth(value ?? 0)}
        />
      )}
      {refusal ? (
        <p className="field-problem" role="alert">
          {f.say(refusal.message)}
        </p>
      ) : null}
      <p className="buttons">
        <button
          type="button"
          className="main"
          disabled={!wanted || refusal !== null}
          onClick={() => {
            if (wanted) void commit('Place the property on the earth', placeOnEarth(wanted));
          }}
        >
          Put it there
        </button>
      </p>
    </section>
  );
}

function isWhole(half: Half): half is KnownPoint {
  return half.grid !== undefined && half.earth !== undefined;
}

/** A place of the drawing, and where it really is. */
function HalfFields({
  name,
  half,
  onChange,
}: {
  readonly name: string;
  readonly half: Half;
  readonly onChange: (half: Half) => void;
}) {
  const { project } = useOpenFile();
  const units = useUnits();
  const system = systemOf(project.coordinateSettings.get('coordinates'));
  const marks = landmarks(project);
  return (
    <fieldset>
      <legend>{name}</legend>
      <SelectField
        label="On the drawing"
        value=""
        choices={[
          { value: '', label: half.grid ? formatGrid(half.grid, units) : 'Choose a post, gate or corner' },
          ...marks.map(({ words }, i) => ({ value: String(i), label: words })),
        ]}
        onCommit={(chosen) => {
          const mark = marks[Number(chosen)];
          if (chosen !== '' && mark) onChange({ ...half, grid: mark.grid });
        }}
      />
      <TypedPlace
        label="Or on the grid"
        hint={`Such as "${formatGrid([120.4, -33.2], units)}".`}
        read={(text) => {
          const read = readGridPlace(text, units);
          if ('problem' in read) {
            return { lonLat: null, problem: read.degrees ? degreesElsewhere(units) : read.problem, swapped: null };
          }
          return { lonLat: workingPlane(propertyOf(project)).toLonLat(read.xy), problem: null };
        }}
        onPlace={(at) => onChange({ ...half, grid: workingPlane(propertyOf(project)).toXy(at) })}
      />
      <TypedPlace
        label="On the earth"
        hint={half.earth ? `Set: ${formatPlace(half.earth, system)}` : system.name}
        read={(text) => readPlace(text, system, null)}
        onPlace={(earth) => onChange({ ...half, earth })}
      />
    </fieldset>
  );
}

const degreesElsewhere = (units: Units) =>
  `This looks like latitude and longitude: they belong in “On the earth”. Lengths of the drawing are typed with their unit, such as “${formatGrid([120.4, -33.2], units)}”.`;

const mostMarks = 400;

/** Places of the drawing that someone can have measured. */
function landmarks(project: Project): readonly { readonly words: string; readonly grid: Xy }[] {
  const plane = workingPlane(propertyOf(project));
  const mark = (words: string, at: LonLat) => ({ words, grid: plane.toXy(at) });
  return [
    { words: 'The grid’s own middle', grid: [0, 0] as Xy },
    ...[...project.post.values()].map(({ name, at }) => mark(`Post ${name}`, at)),
    ...[...project.energiser.values()].map(({ name, at }) => mark(`Energiser ${name}`, at)),
    ...[...project.fenceLine.values()].flatMap(({ name, path }) => [
      mark(`Start of ${name}`, path[0]!),
      mark(`End of ${name}`, path.at(-1)!),
    ]),
  ].slice(0, mostMarks);
}
