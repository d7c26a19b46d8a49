import { cableRatingCaution } from '../../../core/electrical/conductors/fenceCable.ts';
import type { UserConductor } from '../../../core/model/things.ts';
import { change } from '../../state/change.ts';
import { Caution } from '../parts/Caution.tsx';
import { NumberField, TextField } from '../parts/fields.tsx';

export function ConductorDetails({ conductor }: { readonly conductor: UserConductor }) {
  const set = (label: string, patch: Partial<Omit<UserConductor, 'kind' | 'id'>>) =>
    change(`${label} ${conductor.name}`, 'conductor', conductor.id, patch);
  return (
    <>
      <TextField label="Name" required value={conductor.name} onCommit={(name) => set('Rename', { name })} />
      <NumberField
        label="Resistance"
        unit="ohm/km"
        min={0.01}
        max={1e6}
        value={conductor.ohmPerKm}
        hint="As on the reel, or measured over a known length."
        onCommit={(ohmPerKm) => {
          if (ohmPerKm !== null) set('Change the resistance of', { ohmPerKm });
        }}
      />
      <Caution>If it is a cable: {cableRatingCaution}</Caution>
      <TextField
        label="Note"
        long
        value={conductor.note}
        hint="Where the figure is from."
        onCommit={(note) => set('Change the note of', { note })}
      />
    </>
  );
}
