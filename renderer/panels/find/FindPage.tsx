import { useFigures } from '../../state/useFigures.ts';
import './find.css';
import type { Finding } from '../../../core/checks/finding.ts';
import { findSentence } from '../../../core/locate/findSentence.ts';
import { useApp, useOpenFile } from '../../state/appState.ts';
import { Answer } from '../parts/Answer.tsx';
import { Findings } from '../parts/Findings.tsx';
import { CrossingsView } from './CrossingsView.tsx';
import { DigView } from './DigView.tsx';
import { FaultView } from './FaultView.tsx';
import { useFind } from './findState.ts';
import { TakeAlongView } from './TakeAlongView.tsx';
import { useCrossingRows } from './useCrossingRows.ts';

const views = [
  { name: 'crossings', view: CrossingsView },
  { name: 'dig', view: DigView },
  { name: 'fault', view: FaultView },
  { name: 'along', view: TakeAlongView },
] as const;

const none: readonly Finding[] = [];

/** Find: where a crossing lies, what a dig would meet, where a fault is. */
export function FindPage() {
  const { project } = useOpenFile();
  const f = useFigures();
  const words = f.words.window.find;
  const rows = useCrossingRows();
  const open = useFind((state) => state.view);
  const findings = useApp((state) => state.analysis?.findings ?? none);
  const View = views.find(({ name }) => name === open)!.view;
  const own = findings.filter(({ workspaces }) => workspaces.includes('find'));
  return (
    <>
      <Answer>{f.say(findSentence(rows, project.faultHunt.values(), project.inGround.values()))}</Answer>
      {own.length > 0 && open === 'crossings' ? <Findings findings={own} nothing="" /> : null}
      <nav className="register-choice" aria-label={words.what}>
        {views.map(({ name }) => (
          <button
            key={name}
            type="button"
            aria-pressed={name === open}
            onClick={() => useFind.setState({ view: name })}
          >
            {words.views[name]}
          </button>
        ))}
      </nav>
      <View />
    </>
  );
}
