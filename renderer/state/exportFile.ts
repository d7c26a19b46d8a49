import { writeRegisters } from '../../core/exchange/csv/registersCsv.ts';
import { writeDxf } from '../../core/exchange/dxf/writeDxf.ts';
import { writeGeoJson } from '../../core/exchange/geojson/writeGeoJson.ts';
import { writeGpx } from '../../core/exchange/gpx/writeGpx.ts';
import { writeKml, writeKmz } from '../../core/exchange/kml/writeKml.ts';
import { EditRefused } from '../../core/model/edits/support/edit.ts';
import { propertyOf } from '../../core/model/project.ts';
import { localDate } from '../../core/words/dates.ts';
import { pictureOfProperty } from '../map/pictureOfProperty.ts';
import { type OpenFile, useApp } from './appState.ts';
import { say } from './choose.ts';
import { download } from './download.ts';
import { report } from './report.ts';
import { host } from './session.ts';

/** A way for the work to leave the app. */
export type ExportFormat = 'geoJson' | 'kml' | 'kmz' | 'gpx' | 'geoPackage' | 'registers' | 'dxf' | 'png';

interface Made {
  readonly ending: string;
  readonly mediaType: string;
  readonly bytes: Uint8Array;
}

const pictureMostPx = 4000;

const makers: Readonly<Record<Exclude<ExportFormat, 'geoPackage'>, (file: OpenFile) => Made | Promise<Made>>> = {
  geoJson: ({ project, survey }) => text('.geojson', 'application/geo+json', writeGeoJson(project, survey)),
  kml: ({ project, survey }) => text('.kml', 'application/vnd.google-earth.kml+xml', writeKml(project, survey)),
  kmz: ({ project, survey }) => {
    return { ending: '.kmz', mediaType: 'application/vnd.google-earth.kmz', bytes: writeKmz(project, survey) };
  },
  gpx: ({ project, survey }) => text('.gpx', 'application/gpx+xml', writeGpx(project, survey)),
  registers: ({ project, survey }) => {
    return { ending: ' registers.zip', mediaType: 'application/zip', bytes: writeRegisters(project, survey) };
  },
  dxf: ({ project, survey }) => text('.dxf', 'image/vnd.dxf', writeDxf(project, survey)),
  png: picture,
};

/** Makes a file of the whole property and hands it to the user, or says why it can't be made. */
export async function exportFile(format: ExportFormat): Promise<void> {
  const { file } = useApp.getState();
  if (!file) return;
  if (format === 'geoPackage') return exportGeoPackage();
  try {
    const { ending, mediaType, bytes } = await makers[format](file);
    const fileName = `${file.fileName}${ending}`;
    download({ fileName, mediaType, bytes });
    say(`${fileName} is made.`, 'done');
  } catch (error) {
    if (!(error instanceof EditRefused)) throw error;
    say(error.message, 'refused');
  }
}

async function exportGeoPackage(): Promise<void> {
  const made = await host().project.makeGeoPackage();
  if (!made.ok) return report(made.problem);
  download(made.value);
  say(`${made.value.fileName} is made.`, 'done');
}

function text(ending: string, mediaType: string, content: string): Made {
  return { ending, mediaType, bytes: new TextEncoder().encode(content) };
}

async function picture({ project, survey }: OpenFile): Promise<Made> {
  const input = {
    project,
    survey,
    findings: [],
    workspace: 'draw',
    chosen: [],
    pointed: null,
    lit: [],
    plan: null,
    voltage: null,
    units: propertyOf(project).units,
    theme: 'light',
  } as const;
  const blob = await pictureOfProperty(input, localDate(new Date()), pictureMostPx);
  if (!blob) throw new EditRefused({ code: 'nothingDrawn', message: 'Nothing is drawn yet, so there is no picture.' });
  return { ending: '.png', mediaType: 'image/png', bytes: new Uint8Array(await blob.arrayBuffer()) };
}
