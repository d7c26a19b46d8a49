import { useState } from 'react';
import type { Finding } from '../../../core/checks/finding.ts';
import { drawSentence } from '../../../core/survey/sentences.ts';
import { formatArea, formatLength } from '../../../core/words/numbers/write.ts';
import { useApp, useOpenFile } from '../../state/appState.ts';
import { useUnits } from '../../state/useUnits.ts';
import { Answer } from '../parts/Answer.tsx';
import { Figure } from '../parts/Figure.tsx';
import { Findings } from '../parts/Findings.tsx';
import { ServiceRegister } from '../services/ServiceRegister.tsx';
import { UnderlayRegister } from '../underlay/UnderlayRegister.tsx';
import { FenceTypes } from './FenceTypes.tsx';
import { FirstSteps } from './FirstSteps.tsx';
import {
  CrossingRegister,
  FenceRegister,
  GatewayRegister,
  PaddockRegister,
  PostRegister,
  SupplyRegister,
} from './registers.tsx';

const registers = [
  { name: 'fences', label: 'Fences', view: FenceRegister },
  { name: 'gateways', label: 'Gateways', view: GatewayRegister },
  { name: 'crossings', label: 'Crossings', view: CrossingRegister },
  { name: 'paddocks', label: 'Paddocks', view: PaddockRegister },
  { name: 'supply', label: 'Energiser', view: SupplyRegister },
  { name: 'posts', label: 'Posts', view: PostRegister },
  { name: 'services', label: 'Services', view: ServiceRegister },
  { name: 'maps', label: 'Background maps', view: UnderlayRegister },
  { name: 'types', label: 'Fence types', view: FenceTypes },
] as const;

const none: readonly Finding[] = [];

/** Draw: what is there, how much of it, and whether it hangs together. */
export function DrawPage() {
  const { survey, project } = useOpenFile();
  const units = useUnits();
  const findings = useApp((state) => state.analysis?.findings ?? none);
  const [open, setOpen] = useState<(typeof registers)[number]['name']>('fences');
  const { totals } = survey;
  const View = registers.find(({ name }) => name === open)!.view;
  const crossings = [...survey.crossings.values()];
  return (
    <>
      <Answer>{drawSentence(survey, units)}</Answer>
      {project.fenceLine.size === 0 ? <FirstSteps /> : null}
      <div className="figures">
        <Figure label="fence" value={formatLength(totals.fenceM, units)} pieces={[...project.fenceLine.keys()]} />
        <Figure
          label="live, fed"
          value={formatLength(totals.fedFenceM, units)}
          pieces={survey.sections.filter((section) => section.fed).flatMap((section) => section.lineIds)}
        />
        <Figure
          label={totals.paddocks === 1 ? 'paddock' : `${totals.paddocks} paddocks`}
          value={formatArea(totals.paddockAreaM2, units)}
          pieces={survey.paddocks.flatMap((paddock) => (paddock.named ? [paddock.named.id] : []))}
        />
        <Figure
          label="pipe under gates"
          value={formatLength(totals.pipeM, units)}
          pieces={crossings.map(({ gateway }) => gateway.id)}
        />
      </div>
      <Findings findings={findings} nothing="The checks find nothing wrong with the drawing." />
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
