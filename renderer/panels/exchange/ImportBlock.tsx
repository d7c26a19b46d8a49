import { useRef } from 'react';
import { largestFileBytes } from '../../../core/exchange/readAny.ts';
import { useApp } from '../../state/appState.ts';
import { report } from '../../state/report.ts';

const endings = '.geojson,.json,.kml,.kmz,.gpx,.zip,.csv,.txt';

/** Where a map of the user's comes in. */
export function ImportBlock() {
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <p className="buttons">
        <button type="button" onClick={() => input.current?.click()}>
          Import a map
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
      <p className="field-hint">
        GeoJSON, KML, KMZ, GPX, a zipped Shapefile, or a table of points (CSV). You see what each piece becomes before
        anything is changed.
      </p>
    </>
  );
}

async function open(file: File): Promise<void> {
  if (file.size > largestFileBytes) {
    const message = `${file.name} is larger than ${largestFileBytes / 1024 / 1024} MB.`;
    report({ code: 'not-valid', message, remedy: 'Split it, or simplify its lines first.' });
    return;
  }
  const bytes = new Uint8Array(await file.arrayBuffer());
  useApp.setState({ dialog: { kind: 'importMap', fileName: file.name, bytes } });
}
