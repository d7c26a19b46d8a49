import { useState } from 'react';
import type { Finding } from '../../../core/checks/finding.ts';
import { drawSentence } from '../../../core/survey/sentences.ts';
import { useApp, useOpenFile } from '../../state/appState.ts';
import { useFigures } from '../../state/useFigures.ts';
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
  { name: 'fences', view: FenceRegister },
  { name: 'gateways', view: GatewayRegister },
  { name: 'crossings', view: CrossingRegister },
  { name: 'paddocks', view: PaddockRegister },
  { name: 'supply', view: SupplyRegister },
  { name: 'posts', view: PostRegister },
  { name: 'services', view: ServiceRegister },
  { name: 'maps', view: UnderlayRegister },
  { name: 'types', view: FenceTypes },
] as const;

const none: readonly Finding[] = [];

/** Draw: what is there, how much of it, and whether it hangs together. */
export function DrawPage() {
  const { survey, project } = useOpenFile();
  const f = useFigures();
  const words = f.words.window.draw;
  const findings = useApp((state) => state.analysis?.findings ?? none);
  const [open, setOpen] = useState<(typeof registers)[number]['name']>('fences');
  const { totals } = survey;
  const View = registers.find(({ name }) => name === open)!.view;
  const crossings = [...survey.crossings.values()];
  return (
    <>
      <Answer>{f.say(drawSentence(survey))}</Answer>
      {project.fenceLine.size === 0 ? <FirstSteps /> : null}
      <div className="figures">
        <Figure label={words.figures.fence} value={f.length(totals.fenceM)} pieces={[...project.fenceLine.keys()]} />
        <Figure
          label={words.figures.fed}
          value={f.length(totals.fedFenceM)}
          pieces={survey.sections.filter((section) => section.fed).flatMap((section) => section.lineIds)}
        />
        <Figure
          label={words.figures.paddocks({ count: totals.paddocks })}
          value={f.area(totals.paddockAreaM2)}
          pieces={survey.paddocks.flatMap((paddock) => (paddock.named ? [paddock.named.id] : []))}
        />
        <Figure
          label={words.figures.pipe}
          value={f.length(totals.pipeM)}
          pieces={crossings.map(({ gateway }) => gateway.id)}
        />
      </div>
      <Findings findings={findings} nothing={words.nothingWrong} />
      <nav className="register-choice" aria-label={words.lists.title}>
        {registers.map(({ name }) => (
          <button key={name} type="button" aria-pressed={name === open} onClick={() => setOpen(name)}>
            {words.lists.names[name]}
          </button>
        ))}
      </nav>
      <View />
    </>
  );
}
