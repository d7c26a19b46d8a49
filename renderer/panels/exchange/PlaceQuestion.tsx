import { formatPlace } from '../../../core/coordinates/formatPlace.ts';
import { systemOf } from '../../../core/coordinates/systems.ts';
import type { PossiblePlace } from '../../../core/exchange/intake/whereabouts.ts';
import { earthAt } from '../../../core/geometry/earth.ts';
import { useOpenFile } from '../../state/appState.ts';
import { useFigures } from '../../state/useFigures.ts';
import { SelectField } from '../parts/fields.tsx';

/** Which of several places in a file is the property, where they are about as likely. */
export function PlaceQuestion({
  places,
  place,
  onChoose,
}: {
  readonly places: readonly PossiblePlace[];
  readonly place: number | null;
  readonly onChoose: (place: number | null) => void;
}) {
  const { project } = useOpenFile();
  const f = useFigures();
  const words = f.words.window.exchange.importing;
  const [first] = places;
  if (!first || places.length < 2) return null;
  const system = systemOf(project.coordinateSettings.get('coordinates'));
  const described = ({ middle, pieces, lines }: PossiblePlace) => {
    const awayM = middle === first.middle ? null : earthAt(first.middle).distanceM(first.middle, middle);
    return words.place({ place: formatPlace(middle, system, f), pieces, lines, awayM });
  };
  return (
    <SelectField
      label={words.propertyIs}
      value={place === null ? '' : String(place)}
      choices={[
        { value: '', label: words.selectPlace },
        ...places.map((one) => ({ value: String(one.group), label: described(one) })),
      ]}
      hint={words.places({ places: places.length })}
      onCommit={(chosen) => onChoose(chosen === '' ? null : Number(chosen))}
    />
  );
}
