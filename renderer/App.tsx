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
import { useWords } from './state/useFigures.ts';

/** A question that is closed is answered with no, so that the edit that waits for it is left. */
function closeQuestion(): void {
  useApp.getState().groundQuestion?.answer(null);
}

/** The window: the map fills it, the inspector lies beside it. */
export function App() {
  const phase = useApp((state) => state.phase);
  // Everything is shown anew when figures are written otherwise, or texts in another language.
  const habits = useApp(({ locale, language }) => `${locale} ${language}`);
  const open = useApp((state) => state.file !== null);
  const dialog = useApp((state) => state.dialog?.kind ?? 'none');
  const asked = useApp((state) => (state.groundQuestion === null ? 'none' : 'asked'));
  const words = useWords().window.frame;
  const fileName = useApp((state) => state.file?.fileName ?? null);
  const title = fileName === null ? 'Undergate' : words.title({ file: fileName });
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
          {words.opening}
        </p>
      ) : open ? (
        <div className="desk" key={habits}>
          <main className="desk-map">
            <FaultBoundary what={words.parts.map}>
              <PropertyMap />
            </FaultBoundary>
          </main>
          <FaultBoundary what={words.parts.inspector}>
            <Inspector />
          </FaultBoundary>
        </div>
      ) : phase === 'ready' ? (
        <FaultBoundary what={words.parts.welcome}>
          <Welcome />
        </FaultBoundary>
      ) : null}
      <FaultBoundary key={dialog} what={words.dialogs.called[dialog]} onClose={closeDialog}>
        <Dialogs />
      </FaultBoundary>
      <FaultBoundary key={asked} what={words.parts.groundQuestion} onClose={closeQuestion}>
        <GroundDialog />
      </FaultBoundary>
    </>
  );
}
