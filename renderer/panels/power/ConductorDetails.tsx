import type { UserConductor } from '../../../core/model/things.ts';
import { useWords } from '../../state/useFigures.ts';
import { Caution } from '../parts/Caution.tsx';
import { KindField, KindFields } from '../parts/KindField.tsx';

export function ConductorDetails({ conductor }: { readonly conductor: UserConductor }) {
  const all = useWords();
  const words = all.window.power.basics.conductors;
  const { name } = conductor;
  return (
    <>
      <KindField thing={conductor} field="name" step={words.rename({ name })} />
      <KindField thing={conductor} field="ohmPerKm" step={words.changeOhm({ name })} />
      <Caution>{words.ifCable({ caution: all.power.conductors.ratingCaution })}</Caution>
      <KindFields thing={conductor} except={['name', 'ohmPerKm']} />
    </>
  );
}
