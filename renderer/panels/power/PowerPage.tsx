import { largestOf } from '../../../core/model/extremes.ts';
import '../../styles/power.css';
import { useState } from 'react';
import type { Finding } from '../../../core/checks/finding.ts';
import { powerSentence } from '../../../core/survey/power/powerSentence.ts';
import { useApp } from '../../state/appState.ts';
import { useFigures } from '../../state/useFigures.ts';
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

/** What there is to look at; called by `register` in the catalogue. */
const registers = [
  { name: 'profile', view: ProfileView },
  { name: 'voltages', view: VoltageRegister },
  { name: 'improvements', view: ImprovementsView },
  { name: 'switches', view: SwitchThrows },
  { name: 'supply', view: Supply },
  { name: 'earth', view: Earth },
  { name: 'basics', view: Basics },
  { name: 'readings', view: Readings },
] as const;

const none: readonly Finding[] = [];

/** Power: what voltage the fence will have, where it is weakest, and what would lift it. */
export function PowerPage() {
  const { power, estimate, lines, stood } = usePower();
  const f = useFigures();
  const words = f.words.window.power;
  const findings = useApp((state) => state.analysis?.findings ?? none);
  const [open, setOpen] = useState<(typeof registers)[number]['name']>('profile');
  const View = registers.find(({ name }) => name === open)!.view;
  const { weakest } = estimate;
  const sourceV = largestOf(estimate.supplies.map(({ voltages }) => voltages.sourceVoltageV));
  const low = lines.filter(({ belowM }) => belowM > 0);
  const lowM = low.reduce((sum, { belowM }) => sum + belowM, 0);
  return (
    <>
      <Answer>{f.say(powerSentence(power, estimate, lines, stood))}</Answer>
      {power.supplies.length > 0 ? <ShowChoice /> : null}
      {weakest ? (
        <div className="figures">
          <Figure
            label={words.figures.weakest}
            value={f.volts(weakest.volts)}
            pieces={weakest.thingId === null ? [] : [weakest.thingId]}
          />
          <Figure
            label={words.figures.energiser}
            value={f.volts(sourceV)}
            pieces={power.supplies.map(({ energiser }) => energiser.id)}
          />
          <Figure
            label={words.figures.tooLow}
            value={lowM > 0 ? f.length(lowM) : words.none}
            pieces={low.map(({ lineId }) => lineId)}
          />
        </div>
      ) : null}
      <p className="field-hint">{words.caution}</p>
      <Findings findings={powerFindings(power, findings)} nothing={words.nothingMissing} />
      <nav className="register-choice" aria-label={words.registers}>
        {registers.map(({ name }) => (
          <button key={name} type="button" aria-pressed={name === open} onClick={() => setOpen(name)}>
            {words.register[name]}
          </button>
        ))}
      </nav>
      <View />
    </>
  );
}
