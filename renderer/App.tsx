import { useEffect } from 'react';
import { onWindowKey } from './commands/keys.ts';
import { Book } from './panels/Book.tsx';
import { Dialogs } from './panels/dialogs/Dialogs.tsx';
import { GroundDialog } from './panels/dialogs/GroundDialog.tsx';
import { NotLetIn } from './panels/NotLetIn.tsx';
import { ProblemBar } from './panels/ProblemBar.tsx';
import { PropertyMap } from './panels/PropertyMap.tsx';
import { Welcome } from './panels/Welcome.tsx';
import { useApp } from './state/appState.ts';

/** The window: the map fills it, the book lies beside it. */
export function App() {
  const phase = useApp((state) => state.phase);
  const open = useApp((state) => state.file !== null);
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
        <div className="desk">
          <main className="desk-map">
            <PropertyMap />
          </main>
          <Book />
        </div>
      ) : phase === 'ready' ? (
        <Welcome />
      ) : null}
      <Dialogs />
      <GroundDialog />
    </>
  );
}
