import { useState } from 'react';
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
  return (
    <DialogFrame title={`Import ${fileName}`} wide>
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
  const reading = useReading(fileName, bytes, swap);
  const { result, room } = reading;
  if (!result || !room || reading.stopped) return <ReadingProgress reading={reading} />;
  if (!result.ok) {
    return (
      <p className="field-problem" role="alert">
        {result.message} {result.remedy}
      </p>
    );
  }
  const { preview } = result;
  return (
    <>
      {preview.looksSwapped || swap ? (
        <p className="caution">
          {swap ? 'Latitude and longitude are taken the other way round than the file has them.' : preview.looksSwapped}{' '}
          <button type="button" onClick={() => onSwap(!swap)}>
            {swap ? 'Take them as they stand' : 'Swap latitude and longitude'}
          </button>
        </p>
      ) : null}
      <PreviewChoices preview={preview} fileName={fileName} room={room} stop={reading.stop} />
    </>
  );
}
