import { useState } from 'react';
import { formatGrid, formatPlace } from '../../../core/coordinates/formatPlace.ts';
import { readGridPlace, readPlace } from '../../../core/coordinates/readPlace.ts';
import { systemOf } from '../../../core/coordinates/systems.ts';
import type { Xy } from '../../../core/geometry/types.ts';
import { type KnownPoint, placeOnEarth, whyNotPlaceOnEarth } from '../../../core/model/edits/placeOnEarth.ts';
import { type Project, propertyOf } from '../../../core/model/project.ts';
import type { LonLat } from '../../../core/model/things.ts';
import { workingPlane } from '../../../core/shapes/workingPlane.ts';
import { message, type Texts } from '../../../core/words/message.ts';
import { useOpenFile } from '../../state/appState.ts';
import { commit } from '../../state/session.ts';
import { useFigures } from '../../state/useFigures.ts';
import { useUnits } from '../../state/useUnits.ts';
import { NumberField, SelectField } from '../parts/fields.tsx';
import { TypedPlace } from '../underlay/PlaceField.tsx';

type Way = 'bearing' | 'points';
type Half = Partial<KnownPoint>;

/** Gives a property that was drawn on the blank grid its place on earth. */
export function PlaceOnEarth() {
  const { project } = useOpenFile();
  const f = useFigures();
  const words = f.words.window.exchange.coordinates.onEarth;
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
    <section className="block" aria-label={words.title}>
      <p>{words.intro}</p>
      <SelectField<Way>
        label={words.known}
        value={way}
        choices={[
          { value: 'points', label: words.twoPlaces },
          { value: 'bearing', label: words.onePlace },
        ]}
        onCommit={setWay}
      />
      <HalfFields name={words.first} half={first} onChange={setFirst} />
      {way === 'points' ? (
        <HalfFields name={words.second} half={second} onChange={setSecond} />
      ) : (
        <NumberField
          label={words.north}
          unit="°"
          min={-360}
          max={360}
          decimals={3}
          value={gridNorthDeg}
          hint={words.northHint}
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
            if (wanted) void commit(words.place, placeOnEarth(wanted));
          }}
        >
          {words.put}
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
  const f = useFigures();
  const words = f.words.window.exchange.coordinates.onEarth;
  const system = systemOf(project.coordinateSettings.get('coordinates'));
  const marks = landmarks(project, f.words);
  return (
    <fieldset>
      <legend>{name}</legend>
      <SelectField
        label={words.onDrawing}
        value=""
        choices={[
          { value: '', label: half.grid ? formatGrid(half.grid, units) : words.selectMark },
          ...marks.map(({ label }, i) => ({ value: String(i), label })),
        ]}
        onCommit={(chosen) => {
          const mark = marks[Number(chosen)];
          if (chosen !== '' && mark) onChange({ ...half, grid: mark.grid });
        }}
      />
      <TypedPlace
        label={words.onGrid}
        hint={words.onGridHint({ example: formatGrid([120.4, -33.2], units) })}
        read={(text) => {
          const read = readGridPlace(text, units);
          if ('problem' in read) {
            return {
              lonLat: null,
              problem: read.degrees ? message('coordinates.typed.degreesElsewhere') : read.problem,
              swapped: null,
            };
          }
          return { lonLat: workingPlane(propertyOf(project)).toLonLat(read.xy), problem: null };
        }}
        onPlace={(at) => onChange({ ...half, grid: workingPlane(propertyOf(project)).toXy(at) })}
      />
      <TypedPlace
        label={words.onTheEarth}
        hint={half.earth ? words.set({ place: formatPlace(half.earth, system, f) }) : f.say(system.name)}
        read={(text) => readPlace(text, system, null)}
        onPlace={(earth) => onChange({ ...half, earth })}
      />
    </fieldset>
  );
}

const mostMarks = 400;

/** Places of the drawing that someone can have measured. */
function landmarks(project: Project, { window }: Texts): readonly { readonly label: string; readonly grid: Xy }[] {
  const { marks } = window.exchange.coordinates.onEarth;
  const plane = workingPlane(propertyOf(project));
  const mark = (label: string, at: LonLat) => ({ label, grid: plane.toXy(at) });
  return [
    { label: marks.middle, grid: [0, 0] as Xy },
    ...[...project.post.values()].map(({ name, at }) => mark(marks.post({ name }), at)),
    ...[...project.energiser.values()].map(({ name, at }) => mark(marks.energiser({ name }), at)),
    ...[...project.fenceLine.values()].flatMap(({ name, path }) => [
      mark(marks.start({ line: name }), path[0]!),
      mark(marks.end({ line: name }), path.at(-1)!),
    ]),
  ].slice(0, mostMarks);
}
