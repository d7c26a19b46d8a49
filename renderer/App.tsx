import { useEffect } from 'react';
import { onWindowKey } from './commands/keys.ts';
import { closeDialog } from './panels/dialogs/DialogFrame.tsx';
import { Dialogs } from './panels/dialogs/Dialogs.tsx';
import { GroundDialog } from './panels/dialogs/GroundDialog.tsx';
import { FaultBoundary } from './panels/FaultBoundary.tsx';
import { Inspector } from './panels/Inspector.tsx';
import { NotLetIn } from './panels/NotLetIn.tsx';
import { ProblemBar } from './panels/ProblemBar.tsx';
import { PropertyMap } from './panels/PropertyMap.tsx';
import { Welcome } from './panels/Welcome.tsx';
import { useApp } from './state/appState.ts';
import { reportFault } from './state/report.ts';

/** A dialog that fails is closed, so that the window is free again. */
function onDialogFault(error: unknown): void {
  closeDialog();
  reportFault(error);
}

/** A question that fails is answered with no, so that the edit that waits for it is left. */
function onQuestionFault(error: unknown): void {
  useApp.getState().groundQuestion?.answer(null);
  reportFault(error);
}

/** The window: the map fills it, the inspector lies beside it. */
export function App() {
  const phase = useApp((state) => state.phase);
  // Everything that shows a figure is shown anew when figures are written otherwise.
  const locale = useApp((state) => state.locale);
  const open = useApp((state) => state.file !== null);
  const dialog = useApp((state) => state.dialog?.kind ?? 'none');
  const asked = useApp((state) => (state.groundQuestion === null ? 'none' : 'asked'));
  const title = useApp((state) => (state.file ? `${state.file.fileName} - Undergate` : 'Undergate'));
  useEffect(() => {
    window.addEventListener('keydown', onWindowKey);
    return () => window.removeEventListener('keydown', onWindowKey);
  }, []);
  useEffect(() => {
    document.title = title;
  }, [title]);
  if (phase === 'notLetIn') return <NotLetIn />;
  return (
    <>
      <ProblemBar />
      {phase === 'starting' ? (
        <p className="starting" role="status">
          Opening…
        </p>
      ) : open ? (
        <div className="desk" key={locale}>
          <main className="desk-map">
            <PropertyMap />
          </main>
          <Inspector />
        </div>
      ) : phase === 'ready' ? (
        <Welcome />
      ) : null}
      <FaultBoundary key={dialog} what="This dialog" onFault={onDialogFault}>
        <Dialogs />
      </FaultBoundary>
      <FaultBoundary key={asked} what="This question" onFault={onQuestionFault}>
        <GroundDialog />
      </FaultBoundary>
    </>
  );
}
