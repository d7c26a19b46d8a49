import { largestOf } from '../../../core/model/extremes.ts';
import '../../styles/power.css';
import { useState } from 'react';
import type { Finding } from '../../../core/checks/finding.ts';
import { powerSentence } from '../../../core/survey/power/powerSentence.ts';
import { formatLength, formatVoltage } from '../../../core/words/numbers/write.ts';
import { useApp } from '../../state/appState.ts';
import { useUnits } from '../../state/useUnits.ts';
import { Answer } from '../parts/Answer.tsx';
import { Figure } from '../parts/Figure.tsx';
import { Findings } from '../parts/Findings.tsx';
import { Basics } from './Basics.tsx';
import { Earth } from './Earth.tsx';
import { ImprovementsView } from './Improvements.tsx';
import { ProfileView } from './ProfileView.tsx';
import { powerFindings } from './powerFindings.ts';
import { Readings } from './Readings.tsx';
import { ShowChoice } from './ShowChoice.tsx';
import { Supply } from './Supply.tsx';
import { SwitchThrows } from './SwitchThrows.tsx';
import { usePower } from './usePower.ts';
import { VoltageRegister } from './VoltageRegister.tsx';

const registers = [
  { name: 'profile', label: 'Profile', view: ProfileView },
  { name: 'voltages', label: 'Fences', view: VoltageRegister },
  { name: 'improvements', label: 'What would raise the voltage', view: ImprovementsView },
  { name: 'switches', label: 'Switches', view: SwitchThrows },
  { name: 'supply', label: 'Energiser', view: Supply },
  { name: 'earth', label: 'Earth', view: Earth },
  { name: 'basics', label: 'Stock, growth, wire', view: Basics },
  { name: 'readings', label: 'Readings', view: Readings },
] as const;

const none: readonly Finding[] = [];

/** Power: what voltage the fence will have, where it is weakest, and what would lift it. */
export function PowerPage() {
  const { power, estimate, lines, switches } = usePower();
  const units = useUnits();
  const findings = useApp((state) => state.analysis?.findings ?? none);
  const [open, setOpen] = useState<(typeof registers)[number]['name']>('profile');
  const View = registers.find(({ name }) => name === open)!.view;
  const { weakest } = estimate;
  const sourceV = largestOf(estimate.supplies.map(({ voltages }) => voltages.sourceVoltageV));
  const low = lines.filter(({ belowM }) => belowM > 0);
  const lowM = low.reduce((sum, { belowM }) => sum + belowM, 0);
  return (
    <>
      <Answer>{powerSentence(power, estimate, lines, units, switches)}</Answer>
      {power.supplies.length > 0 ? <ShowChoice /> : null}
      {weakest ? (
        <div className="figures">
          <Figure
            label="at the weakest place"
            value={formatVoltage(weakest.volts)}
            pieces={weakest.thingId === null ? [] : [weakest.thingId]}
          />
          <Figure
            label="at the energiser"
            value={formatVoltage(sourceV)}
            pieces={power.supplies.map(({ energiser }) => energiser.id)}
          />
          <Figure
            label="too low, or dead"
            value={lowM > 0 ? formatLength(lowM, units) : 'none'}
            pieces={low.map(({ lineId }) => lineId)}
          />
        </div>
      ) : null}
      <p className="field-hint">
        Every voltage here is an estimate: the peak of a short pulse, taken as resistive, from the wire, the growth and
        the energiser's label. What a tester reads on the fence goes before it.
      </p>
      <Findings findings={powerFindings(power, findings)} nothing="Nothing that the estimate needs is missing." />
      <nav className="register-choice" aria-label="Registers">
        {registers.map(({ name, label }) => (
          <button key={name} type="button" aria-pressed={name === open} onClick={() => setOpen(name)}>
            {label}
          </button>
        ))}
      </nav>
      <View />
    </>
  );
}
