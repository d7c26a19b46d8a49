import { useState } from 'react';
import type { Finding } from '../../../core/checks/finding.ts';
import { divideSentence } from '../../../core/survey/sentences.ts';
import { useApp, useOpenFile } from '../../state/appState.ts';
import { useStanding } from '../../state/useStanding.ts';
import { useUnits } from '../../state/useUnits.ts';
import { Answer } from '../parts/Answer.tsx';
import { Findings } from '../parts/Findings.tsx';
import { CandidateRegister } from './CandidateRegister.tsx';
import { Limits } from './Limits.tsx';
import { Plan } from './Plan.tsx';
import { Rings } from './Rings.tsx';
import { SectionRegister } from './SectionRegister.tsx';
import { SwitchRegister } from './SwitchRegister.tsx';
import { TestSheets } from './TestSheets.tsx';

const registers = [
  { name: 'sections', label: 'Sections', view: SectionRegister },
  { name: 'switches', label: 'Switches', view: SwitchRegister },
  { name: 'places', label: 'Places for a switch', view: CandidateRegister },
  { name: 'tests', label: 'Test sheets', view: TestSheets },
  { name: 'limits', label: 'Limits', view: Limits },
] as const;

const none: readonly Finding[] = [];

/** Divide: which sections there are, where switches should go, how each section is tested. */
export function DividePage() {
  const { survey } = useOpenFile();
  const units = useUnits();
  const plan = useApp((state) => state.analysis?.plan ?? null);
  const findings = useApp((state) => state.analysis?.findings ?? none);
  const isCurrent = useStanding('plan') === 'current';
  const [open, setOpen] = useState<(typeof registers)[number]['name']>('sections');
  const View = registers.find(({ name }) => name === open)!.view;
  return (
    <>
      <Answer>{divideSentence(survey, isCurrent ? plan : null, units)}</Answer>
      <Plan />
      <Rings />
      <Findings
        findings={findings.filter(({ workspaces }) => workspaces.includes('divide'))}
        nothing="The checks find nothing wrong with the sections."
      />
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
