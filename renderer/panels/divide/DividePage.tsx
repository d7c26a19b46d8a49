import { useState } from 'react';
import type { Finding } from '../../../core/checks/finding.ts';
import { divideSentence } from '../../../core/survey/sentences.ts';
import { useApp, useOpenFile } from '../../state/appState.ts';
import { useFigures } from '../../state/useFigures.ts';
import { useStanding } from '../../state/useStanding.ts';
import { Answer } from '../parts/Answer.tsx';
import { Findings } from '../parts/Findings.tsx';
import { CandidateRegister } from './CandidateRegister.tsx';
import { Limits } from './Limits.tsx';
import { Plan } from './Plan.tsx';
import { Rings } from './Rings.tsx';
import { SectionRegister } from './SectionRegister.tsx';
import { SwitchRegister } from './SwitchRegister.tsx';
import { TestSheets } from './TestSheets.tsx';

/** What there is to look at; called by `register` in the catalogue. */
const registers = [
  { name: 'sections', view: SectionRegister },
  { name: 'switches', view: SwitchRegister },
  { name: 'places', view: CandidateRegister },
  { name: 'tests', view: TestSheets },
  { name: 'limits', view: Limits },
] as const;

const none: readonly Finding[] = [];

/** Divide: which sections there are, where switches should go, how each section is tested. */
export function DividePage() {
  const { survey } = useOpenFile();
  const f = useFigures();
  const words = f.words.window.divide;
  const plan = useApp((state) => state.analysis?.plan ?? null);
  const findings = useApp((state) => state.analysis?.findings ?? none);
  const isCurrent = useStanding('plan') === 'current';
  const [open, setOpen] = useState<(typeof registers)[number]['name']>('sections');
  const View = registers.find(({ name }) => name === open)!.view;
  return (
    <>
      <Answer>{f.say(divideSentence(survey, isCurrent ? plan : null))}</Answer>
      <Plan />
      <Rings />
      <Findings
        findings={findings.filter(({ workspaces }) => workspaces.includes('divide'))}
        nothing={words.nothingWrong}
      />
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
