import { cableRatingCaution } from '../../../core/electrical/conductors/fenceCable.ts';
import type { UserConductor } from '../../../core/model/things.ts';
import { Caution } from '../parts/Caution.tsx';
import { KindField, KindFields } from '../parts/KindField.tsx';

export function ConductorDetails({ conductor }: { readonly conductor: UserConductor }) {
  const { name } = conductor;
  return (
    <>
      <KindField thing={conductor} field="name" step={`Rename ${name}`} />
      <KindField thing={conductor} field="ohmPerKm" step={`Change the resistance of ${name}`} />
      <Caution>If it is a cable: {cableRatingCaution}</Caution>
      <KindFields thing={conductor} except={['name', 'ohmPerKm']} />
    </>
  );
}
