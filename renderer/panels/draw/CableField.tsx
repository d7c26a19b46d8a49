import { isBuildingWire } from '../../../core/electrical/conductors/fenceCable.ts';
import { useWords } from '../../state/useFigures.ts';
import { Caution } from '../parts/Caution.tsx';
import { SelectField } from '../parts/fields.tsx';
import { useConductorChoices } from './useConductorChoices.ts';

/** The choice of a live cable, with what it must be. `inGround`: the rule of one conduit is said too. */
export function CableField({
  label,
  cableId,
  inGround,
  onCommit,
}: {
  readonly label: string;
  readonly cableId: string;
  readonly inGround: boolean;
  readonly onCommit: (cableId: string) => void;
}) {
  const choices = useConductorChoices('cable', cableId);
  const building = isBuildingWire(cableId);
  const words = useWords().power.conductors;
  return (
    <>
      <SelectField label={label} value={cableId} choices={choices} onCommit={onCommit} />
      {building ? (
        <p className="field-problem" role="alert">
          {words.buildingWireCaution}
        </p>
      ) : null}
      {building && !inGround ? null : (
        <Caution>
          {building ? null : words.ratingCaution} {inGround ? words.oneConduit : null}
        </Caution>
      )}
    </>
  );
}
