import '../../styles/record.css';
import { useState } from 'react';
import { recordSentence } from '../../../core/record/crossingRegister.ts';
import { Answer } from '../parts/Answer.tsx';
import { Figure } from '../parts/Figure.tsx';
import { BuiltRegister } from './BuiltRegister.tsx';
import { CrossingRegister } from './CrossingRegister.tsx';
import { EarthTests } from './EarthTests.tsx';
import { HandoverView } from './HandoverView.tsx';
import { PhotosView } from './PhotosView.tsx';
import { ReadingsView } from './ReadingsView.tsx';
import { TestRunView } from './TestRunView.tsx';
import { useRecord } from './useRecord.ts';

const registers = [
  { name: 'crossings', label: 'Crossings', view: CrossingRegister },
  { name: 'built', label: 'Planned and built', view: BuiltRegister },
  { name: 'tests', label: 'Test run', view: TestRunView },
  { name: 'readings', label: 'Readings', view: ReadingsView },
  { name: 'earth', label: 'Earth test', view: EarthTests },
  { name: 'photos', label: 'Photos', view: PhotosView },
  { name: 'handover', label: 'Hand over', view: HandoverView },
] as const;

/** Record: what is really in the ground, tested and handed over. */
export function RecordPage() {
  const { crossings, differences } = useRecord();
  const [open, setOpen] = useState<(typeof registers)[number]['name']>('crossings');
  const View = registers.find(({ name }) => name === open)!.view;
  const untied = crossings.filter(({ tied, built }) => tied < 2 && built.inGround);
  const sideOpen = crossings.filter(({ built }) => built.points.some(({ basis }) => basis === 'ambiguous'));
  const joined = crossings.filter(({ built }) => (built.record?.jointsUnderground ?? 0) > 0);
  const gateways = (rows: typeof crossings) => rows.map(({ built }) => built.figures.gateway.id);
  return (
    <>
      <Answer>{recordSentence(crossings, differences.length)}</Answer>
      {crossings.length > 0 ? (
        <div className="figures">
          <Figure label="not taped yet" value={String(untied.length)} pieces={gateways(untied)} />
          {sideOpen.length > 0 ? (
            <Figure label="side not said" value={String(sideOpen.length)} pieces={gateways(sideOpen)} />
          ) : null}
          <Figure label="with joints underground" value={String(joined.length)} pieces={gateways(joined)} />
        </div>
      ) : null}
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
