import { useRef } from 'react';
import { largestFileBytes } from '../../../core/exchange/readAny.ts';
import { plainWords } from '../../../core/words/figures.ts';
import { useApp } from '../../state/appState.ts';
import { report } from '../../state/report.ts';
import { useWords } from '../../state/useFigures.ts';

const endings = '.geojson,.json,.kml,.kmz,.gpx,.zip,.csv,.txt';

/** Where a map of the user's comes in. */
export function ImportBlock() {
  const input = useRef<HTMLInputElement>(null);
  const words = useWords().window.exchange.importing;
  return (
    <>
      <p className="buttons">
        <button type="button" onClick={() => input.current?.click()}>
          {words.aMap}
        </button>
        <input
          ref={input}
          type="file"
          hidden
          accept={endings}
          onChange={(event) => {
            const file = event.target.files?.[0];
            event.target.value = '';
            if (file) void open(file);
          }}
        />
      </p>
      <p className="field-hint">{words.formats}</p>
    </>
  );
}

async function open(file: File): Promise<void> {
  if (file.size > largestFileBytes) {
    const words = plainWords();
    const megabytes = largestFileBytes / 1024 / 1024;
    const message = words.window.exchange.importing.tooLarge({ file: file.name, megabytes });
    report({ code: 'not-valid', message, remedy: words.exchange.remedy.splitOrSimplify });
    return;
  }
  const bytes = new Uint8Array(await file.arrayBuffer());
  useApp.setState({ dialog: { kind: 'importMap', fileName: file.name, bytes } });
}
