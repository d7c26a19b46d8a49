import { useState } from 'react';
import { useFigures, useWords } from '../../state/useFigures.ts';
import { DialogFrame } from '../dialogs/DialogFrame.tsx';
import { PreviewChoices } from './PreviewChoices.tsx';
import { ReadingProgress } from './ReadingProgress.tsx';
import { useReading } from './useReading.ts';

interface FileToRead {
  readonly fileName: string;
  readonly bytes: Uint8Array;
}

/** What a file holds, what each piece will become, and what can't be used; nothing changes until it is taken. */
export function ImportDialog({ fileName, bytes }: FileToRead) {
  const [swap, setSwap] = useState(false);
  const words = useWords().window.exchange.importing;
  return (
    <DialogFrame title={words.title({ file: fileName })} wide>
      <FileRead key={String(swap)} fileName={fileName} bytes={bytes} swap={swap} onSwap={setSwap} />
    </DialogFrame>
  );
}

function FileRead({
  fileName,
  bytes,
  swap,
  onSwap,
}: FileToRead & { readonly swap: boolean; readonly onSwap: (swap: boolean) => void }) {
  const f = useFigures();
  const words = f.words.window.exchange.importing;
  const reading = useReading(fileName, bytes, swap);
  const { result, room } = reading;
  if (!result || !room || reading.stopped) return <ReadingProgress reading={reading} />;
  if (!result.ok) {
    return (
      <p className="field-problem" role="alert">
        {f.say(result.message)} {f.say(result.remedy)}
      </p>
    );
  }
  const { preview } = result;
  return (
    <>
      {preview.looksSwapped || swap ? (
        <p className="caution">
          {swap ? words.isSwapped : preview.looksSwapped && f.say(preview.looksSwapped)}{' '}
          <button type="button" onClick={() => onSwap(!swap)}>
            {swap ? words.asTheyStand : words.swap}
          </button>
        </p>
      ) : null}
      <PreviewChoices preview={preview} fileName={fileName} room={room} stop={reading.stop} />
    </>
  );
}
