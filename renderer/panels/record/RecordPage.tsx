import '../../styles/record.css';
import { useState } from 'react';
import { recordSentence } from '../../../core/record/crossingRegister.ts';
import { useFigures } from '../../state/useFigures.ts';
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
  { name: 'crossings', view: CrossingRegister },
  { name: 'built', view: BuiltRegister },
  { name: 'tests', view: TestRunView },
  { name: 'readings', view: ReadingsView },
  { name: 'earth', view: EarthTests },
  { name: 'photos', view: PhotosView },
  { name: 'handover', view: HandoverView },
] as const;

/** Record: what is really in the ground, tested and handed over. */
export function RecordPage() {
  const { crossings, differences } = useRecord();
  const f = useFigures();
  const { registers: labels, figures } = f.words.window.record;
  const [open, setOpen] = useState<(typeof registers)[number]['name']>('crossings');
  const View = registers.find(({ name }) => name === open)!.view;
  const untied = crossings.filter(({ tied, built }) => tied < 2 && built.inGround);
  const sideOpen = crossings.filter(({ built }) => built.points.some(({ basis }) => basis === 'ambiguous'));
  const joined = crossings.filter(({ built }) => (built.record?.jointsUnderground ?? 0) > 0);
  const gateways = (rows: typeof crossings) => rows.map(({ built }) => built.figures.gateway.id);
  return (
    <>
      <Answer>{f.say(recordSentence(crossings, differences.length))}</Answer>
      {crossings.length > 0 ? (
        <div className="figures">
          <Figure label={figures.notTaped} value={String(untied.length)} pieces={gateways(untied)} />
          {sideOpen.length > 0 ? (
            <Figure label={figures.sideNotSaid} value={String(sideOpen.length)} pieces={gateways(sideOpen)} />
          ) : null}
          <Figure label={figures.joints} value={String(joined.length)} pieces={gateways(joined)} />
        </div>
      ) : null}
      <nav className="register-choice" aria-label={labels.title}>
        {registers.map(({ name }) => (
          <button key={name} type="button" aria-pressed={name === open} onClick={() => setOpen(name)}>
            {labels[name]}
          </button>
        ))}
      </nav>
      <View />
    </>
  );
}
