import { useState } from 'react';
import { propertyOf } from '../../../core/model/project.ts';
import type { Texts } from '../../../core/words/message.ts';
import { useOpenFile } from '../../state/appState.ts';
import { type ExportFormat, exportFile } from '../../state/exportFile.ts';
import { useWords } from '../../state/useFigures.ts';

type Words = Texts['window']['exchange']['exporting'];

interface Way {
  readonly format: ExportFormat;
  /** It holds longitudes and latitudes only. */
  readonly needsPlace: boolean;
}

interface Purpose {
  readonly what: (words: Words) => string;
  readonly said: (words: Words) => string;
  readonly ways: readonly Way[];
}

const purposes: readonly Purpose[] = [
  {
    what: (words) => words.maps,
    said: (words) => words.mapsHint,
    ways: [
      { format: 'geoJson', needsPlace: true },
      { format: 'kml', needsPlace: true },
      { format: 'kmz', needsPlace: true },
    ],
  },
  {
    what: (words) => words.handheld,
    said: (words) => words.handheldHint,
    ways: [{ format: 'gpx', needsPlace: true }],
  },
  {
    what: (words) => words.surveyor,
    said: (words) => words.surveyorHint,
    ways: [
      { format: 'geoPackage', needsPlace: true },
      { format: 'dxf', needsPlace: false },
    ],
  },
  {
    what: (words) => words.tables,
    said: (words) => words.tablesHint,
    ways: [
      { format: 'registers', needsPlace: false },
      { format: 'png', needsPlace: false },
    ],
  },
];

/** The ways in which the work leaves the app. */
export function ExportBlock() {
  const { project } = useOpenFile();
  const { placed } = propertyOf(project);
  const words = useWords().window.exchange.exporting;
  const [busy, setBusy] = useState<ExportFormat | null>(null);
  const make = async (format: ExportFormat) => {
    setBusy(format);
    await exportFile(format);
    setBusy(null);
  };
  return (
    <>
      {placed ? null : <p className="field-hint">{words.blankGrid}</p>}
      <ul className="export-list">
        {purposes.map(({ what, said, ways }) => (
          <li key={ways[0]!.format}>
            <h3>{what(words)}</h3>
            <p className="field-hint">{said(words)}</p>
            <p className="buttons">
              {ways.map(({ format, needsPlace }) => (
                <button
                  key={format}
                  type="button"
                  disabled={busy !== null || (needsPlace && !placed)}
                  onClick={() => void make(format)}
                >
                  {busy === format ? words.creating : words[format]}
                </button>
              ))}
            </p>
          </li>
        ))}
      </ul>
    </>
  );
}
