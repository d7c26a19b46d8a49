import { formatPlace } from '../../../core/coordinates/formatPlace.ts';
import { systemOf } from '../../../core/coordinates/systems.ts';
import type { PossiblePlace } from '../../../core/exchange/intake/whereabouts.ts';
import { earthAt } from '../../../core/geometry/earth.ts';
import { figures } from '../../../core/words/figures.ts';
import { fixed, formatLength } from '../../../core/words/numbers/write.ts';
import { counted } from '../../../core/words/text.ts';
import { useOpenFile } from '../../state/appState.ts';
import { useUnits } from '../../state/useUnits.ts';
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
  const units = useUnits();
  const [first] = places;
  if (!first || places.length < 2) return null;
  const system = systemOf(project.coordinateSettings.get('coordinates'));
  const described = ({ middle, pieces, lines }: PossiblePlace) => {
    const what = `${counted(pieces, 'piece')}, ${fixed(lines, 0)} of them lines`;
    const apart =
      middle === first.middle
        ? ''
        : `, ${formatLength(earthAt(first.middle).distanceM(first.middle, middle), units)} away`;
    return `around ${formatPlace(middle, system, figures(units))}${apart}: ${what}`;
  };
  return (
    <SelectField
      label="The property is"
      value={place === null ? '' : String(place)}
      choices={[
        { value: '', label: 'Choose a place' },
        ...places.map((one) => ({ value: String(one.group), label: described(one) })),
      ]}
      hint={`The file holds ${places.length} places that lie far from one another. What lies at the others is left out, unless you choose otherwise for it.`}
      onCommit={(chosen) => onChoose(chosen === '' ? null : Number(chosen))}
    />
  );
}
