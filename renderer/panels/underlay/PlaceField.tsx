import { useId, useState } from 'react';
import { type PlaceRead, readGridPlace, readPlace } from '../../../core/coordinates/readPlace.ts';
import { systemOf } from '../../../core/coordinates/systems.ts';
import { propertyOf } from '../../../core/model/project.ts';
import type { LonLat } from '../../../core/model/things.ts';
import { workingPlane } from '../../../core/shapes/workingPlane.ts';
import { useOpenFile } from '../../state/appState.ts';
import { useFigures, useWords } from '../../state/useFigures.ts';
import { useUnits } from '../../state/useUnits.ts';
import { SelectField } from '../parts/fields.tsx';

/**
 * A place that is typed, in the property's coordinate system (or on its grid, while it has no place on earth), or that an
 * existing post has.
 */
export function PlaceField({
  label,
  onPlace,
  onDegrees,
}: {
  readonly label: string;
  readonly onPlace: (at: LonLat) => void;
  /** What to offer where latitude and longitude are typed and the property has no place on earth yet. */
  readonly onDegrees: (earth: LonLat) => Offer;
}) {
  const { project } = useOpenFile();
  const units = useUnits();
  const said = useWords().window.background.placing;
  const property = propertyOf(project);
  const read = (text: string): PlaceOrOffer => {
    if (property.placed)
      return readPlace(text, systemOf(project.coordinateSettings.get('coordinates')), property.origin);
    const grid = readGridPlace(text, units);
    if ('problem' in grid) {
      const { problem, degrees } = grid;
      return { lonLat: null, problem, swapped: null, offer: degrees && onDegrees(degrees) };
    }
    return { lonLat: workingPlane(property).toLonLat(grid.xy), problem: null };
  };
  const posts = [...project.post.values()];
  return (
    <>
      <TypedPlace label={label} read={read} onPlace={onPlace} />
      {posts.length > 0 ? (
        <SelectField
          label={said.orAtPost}
          value=""
          choices={[
            { value: '', label: said.choosePost },
            ...posts.map(({ id, name }) => ({ value: id, label: name })),
          ]}
          onCommit={(id) => {
            const post = project.post.get(id);
            if (post) onPlace(post.at);
          }}
        />
      ) : null}
    </>
  );
}

interface Offer {
  readonly label: string;
  readonly take: () => void;
}

type PlaceOrOffer = PlaceRead & { readonly offer?: Offer | null };

/** Coordinates, with what is wrong with them and, where they look swapped, a button that swaps them. */
export function TypedPlace({
  label,
  hint,
  read,
  onPlace,
}: {
  readonly label: string;
  readonly hint?: string;
  readonly read: (text: string) => PlaceOrOffer;
  readonly onPlace: (at: LonLat) => void;
}) {
  const f = useFigures();
  const { words } = f;
  const id = useId();
  const [text, setText] = useState('');
  const [wrong, setWrong] = useState<Extract<PlaceOrOffer, { lonLat: null }> | null>(null);
  const settle = () => {
    const place = read(text);
    if (place.lonLat) {
      setText('');
      setWrong(null);
      onPlace(place.lonLat);
    } else setWrong(place);
  };
  return (
    <form
      className="field"
      onSubmit={(event) => {
        event.preventDefault();
        settle();
      }}
    >
      <label htmlFor={id}>{label}</label>
      <span className="with-unit">
        <input
          id={id}
          type="text"
          autoComplete="off"
          value={text}
          aria-invalid={wrong !== null}
          onChange={(event) => setText(event.target.value)}
        />
        <button type="submit">{words.window.frame.common.set}</button>
      </span>
      {hint ? <p className="field-hint">{hint}</p> : null}
      {wrong ? (
        <p className="field-problem" role="alert">
          {f.say(wrong.problem)}{' '}
          {wrong.swapped ? (
            <button
              type="button"
              onClick={() => {
                setText('');
                onPlace(wrong.swapped!);
                setWrong(null);
              }}
            >
              {words.window.background.placing.swap}
            </button>
          ) : null}
          {wrong.offer ? (
            <button
              type="button"
              onClick={() => {
                setText('');
                setWrong(null);
                wrong.offer!.take();
              }}
            >
              {wrong.offer.label}
            </button>
          ) : null}
        </p>
      ) : null}
    </form>
  );
}
