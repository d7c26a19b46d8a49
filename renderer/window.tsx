import '@fontsource/atkinson-hyperlegible/400.css';
import '@fontsource/atkinson-hyperlegible/700.css';
import './styles/tokens.css';
import './styles/base.css';
import './styles/inspector.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { plainWords } from '../core/words/figures.ts';
import { App } from './App.tsx';
import { NotLetIn } from './client/enter.ts';
import type { FirstCalls } from './client/firstCalls.ts';
import { FaultBoundary } from './panels/FaultBoundary.tsx';
import { fetchParts } from './panels/lazyPart.tsx';
import { useApp } from './state/appState.ts';
import { oncePainted } from './state/oncePainted.ts';
import { reportWhatNobodyCaught } from './state/report.ts';
import { startSession } from './state/session.ts';
import { showAsSystem, showSettings } from './state/settings.ts';
import { applyColours } from './styles/colours.ts';

/** Shows the window, with what the host answered to the first calls. */
export function showWindow(first: FirstCalls): void {
  reportWhatNobodyCaught();
  applyColours();
  showAsSystem();
  createRoot(document.getElementById('window')!).render(
    <StrictMode>
      <FaultBoundary what={plainWords().window.frame.parts.window}>
        <App />
      </FaultBoundary>
    </StrictMode>,
  );
  startSession(first, showSettings)
    .then(() => oncePainted(() => void fetchParts()))
    .catch((error: unknown) => {
      const why = error instanceof Error ? error.message : String(error);
      const { fault } = plainWords().window.frame;
      const problem = { code: 'failed', remedy: fault.startAgain } as const;
      if (error instanceof NotLetIn) useApp.setState({ phase: 'notLetIn', problem: { ...problem, message: why } });
      else {
        const message = fault.hostLost({ why });
        useApp.setState({ phase: 'lost', problem: { ...problem, message } });
      }
    });
}
