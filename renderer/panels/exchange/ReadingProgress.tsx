import { useWords } from '../../state/useFigures.ts';
import { closeDialog } from '../dialogs/DialogFrame.tsx';
import type { Reading } from './useReading.ts';

/** How far the reading is, and a way to stop it. */
export function ReadingProgress({ reading }: { readonly reading: Reading }) {
  const words = useWords().window.exchange.importing;
  if (reading.stopped) return <p role="status">{words.stopped}</p>;
  return (
    <>
      <p role="status">{words.reading}</p>
      <p>
        <progress className="reading-progress" aria-label={words.readSoFar} value={reading.fraction} max={1} />
      </p>
      <p className="buttons">
        <button
          type="button"
          onClick={() => {
            reading.stop();
            closeDialog();
          }}
        >
          {words.stop}
        </button>
      </p>
    </>
  );
}
