import { useState } from 'react';
import { propertyOf } from '../../../core/model/project.ts';
import { useOpenFile } from '../../state/appState.ts';
import { type ExportFormat, exportFile } from '../../state/exportFile.ts';

interface Way {
  readonly format: ExportFormat;
  readonly label: string;
  /** It holds longitudes and latitudes only. */
  readonly needsPlace: boolean;
}

interface Purpose {
  readonly what: string;
  readonly said: string;
  readonly ways: readonly Way[];
}

const purposes: readonly Purpose[] = [
  {
    what: 'A map for other programs',
    said: 'All that is drawn and recorded, without photos and prices. Imported again, each thing comes back as what it was.',
    ways: [
      { format: 'geoJson', label: 'Export GeoJSON', needsPlace: true },
      { format: 'kml', label: 'Export KML', needsPlace: true },
      { format: 'kmz', label: 'Export KMZ', needsPlace: true },
    ],
  },
  {
    what: 'For a handheld',
    said: 'Gateways, switches and posts as waypoints, fences and crossings as tracks. They come back as what they were.',
    ways: [{ format: 'gpx', label: 'Export GPX', needsPlace: true }],
  },
  {
    what: 'For a surveyor',
    said: 'Every register as a layer, or the drawing in metres. To read only: these do not come back.',
    ways: [
      { format: 'geoPackage', label: 'Export GeoPackage', needsPlace: true },
      { format: 'dxf', label: 'Export DXF', needsPlace: false },
    ],
  },
  {
    what: 'Tables and a picture',
    said: 'Every register as a table (CSV), packed into one file; the drawing without the maps underneath.',
    ways: [
      { format: 'registers', label: 'Export the registers', needsPlace: false },
      { format: 'png', label: 'Export a picture (PNG)', needsPlace: false },
    ],
  },
];

/** The ways in which the work leaves the app. */
export function ExportBlock() {
  const { project } = useOpenFile();
  const { placed } = propertyOf(project);
  const [busy, setBusy] = useState<ExportFormat | null>(null);
  const make = async (format: ExportFormat) => {
    setBusy(format);
    await exportFile(format);
    setBusy(null);
  };
  return (
    <>
      {placed ? null : (
        <p className="field-hint">
          This property is drawn on the blank grid. Formats of longitude and latitude wait until it is put on the earth.
        </p>
      )}
      <ul className="export-list">
        {purposes.map(({ what, said, ways }) => (
          <li key={what}>
            <h3>{what}</h3>
            <p className="field-hint">{said}</p>
            <p className="buttons">
              {ways.map(({ format, label, needsPlace }) => (
                <button
                  key={format}
                  type="button"
                  disabled={busy !== null || (needsPlace && !placed)}
                  onClick={() => void make(format)}
                >
                  {busy === format ? 'Making it …' : label}
                </button>
              ))}
            </p>
          </li>
        ))}
      </ul>
    </>
  );
}
