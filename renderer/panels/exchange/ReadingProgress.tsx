import { closeDialog } from '../dialogs/DialogFrame.tsx';
import type { Reading } from './useReading.ts';

/** How far the reading is, and a way to stop it. */
export function ReadingProgress({ reading }: { readonly reading: Reading }) {
  if (reading.stopped) return <p role="status">Stopped. Nothing was changed.</p>;
  return (
    <>
      <p role="status">Reading the file …</p>
      <p>
        <progress className="reading-progress" aria-label="Read so far" value={reading.fraction} max={1} />
      </p>
      <p className="buttons">
        <button
          type="button"
          onClick={() => {
            reading.stop();
            closeDialog();
          }}
        >
          Stop
        </button>
      </p>
    </>
  );
}
