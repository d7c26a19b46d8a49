import { useState } from 'react';
import type { Finding } from '../../../core/checks/finding.ts';
import { divideSentence } from '../../../core/registers/sentences.ts';
import { useApp, useOpenFile } from '../../state/appState.ts';
import { useUnits } from '../../state/useUnits.ts';
import { backroom } from '../../work/backroom.ts';
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

const aboutSections = /section|switch|reach|dead|supply|crossing/i;
const none: readonly Finding[] = [];

/** Divide: which sections there are, where switches should go, how each section is tested. */
export function DividePage() {
  const { survey } = useOpenFile();
  const units = useUnits();
  const plan = useApp((state) => state.backroom?.plan ?? null);
  const findings = useApp((state) => state.backroom?.findings ?? none);
  const working = useApp((state) => state.working);
  const [open, setOpen] = useState<(typeof registers)[number]['name']>('sections');
  const View = registers.find(({ name }) => name === open)!.view;
  return (
    <>
      <Answer>{divideSentence(survey, plan, units)}</Answer>
      {working && working.fraction > 0 ? (
        <p className="working">
          <progress value={working.fraction} aria-label="Working out the plan" />
          <button type="button" onClick={() => backroom.stop()}>
            Stop
          </button>
        </p>
      ) : null}
      <Plan />
      <Rings />
      <Findings
        findings={findings.filter(({ rule }) => aboutSections.test(rule))}
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
