import { EditRefused } from '../../core/model/edits/support/edit.ts';
import { propertyOf } from '../../core/model/project.ts';
import { localDate } from '../../core/words/dates.ts';
import { plainWords } from '../../core/words/figures.ts';
import { message } from '../../core/words/message.ts';
import { type OpenFile, useApp } from './appState.ts';
import { say } from './choose.ts';
import { download } from './download.ts';
import { report } from './report.ts';
import { host } from './session.ts';
import { figuresOf } from './useFigures.ts';

/** A way for the work to leave the app. */
export type ExportFormat = 'geoJson' | 'kml' | 'kmz' | 'gpx' | 'geoPackage' | 'registers' | 'dxf' | 'png';

interface Made {
  readonly ending: string;
  readonly mediaType: string;
  readonly bytes: Uint8Array;
}

const pictureMostPx = 4000;

/** Each writer is fetched when it is first wanted. */
const makers: Readonly<Record<Exclude<ExportFormat, 'geoPackage'>, (file: OpenFile) => Promise<Made>>> = {
  async geoJson({ project, survey }) {
    const { writeGeoJson } = await import('../../core/exchange/geojson/writeGeoJson.ts');
    return text('.geojson', 'application/geo+json', writeGeoJson(project, survey));
  },
  async kml({ project, survey }) {
    const { writeKml } = await import('../../core/exchange/kml/writeKml.ts');
    return text('.kml', 'application/vnd.google-earth.kml+xml', writeKml(project, survey));
  },
  async kmz({ project, survey }) {
    const { writeKmz } = await import('../../core/exchange/kml/writeKml.ts');
    return { ending: '.kmz', mediaType: 'application/vnd.google-earth.kmz', bytes: writeKmz(project, survey) };
  },
  async gpx({ project, survey }) {
    const { writeGpx } = await import('../../core/exchange/gpx/writeGpx.ts');
    return text('.gpx', 'application/gpx+xml', writeGpx(project, survey));
  },
  async registers({ project, survey }) {
    const { writeRegisters } = await import('../../core/exchange/csv/registersCsv.ts');
    return { ending: ' registers.zip', mediaType: 'application/zip', bytes: writeRegisters(project, survey) };
  },
  async dxf({ project, survey }) {
    const { writeDxf } = await import('../../core/exchange/dxf/writeDxf.ts');
    return text('.dxf', 'image/vnd.dxf', writeDxf(project, survey));
  },
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
    say(plainWords().window.frame.done.made({ file: fileName }), 'done');
  } catch (error) {
    if (!(error instanceof EditRefused)) throw error;
    say(figuresOf(file.project).say(error.refusal.message), 'refused');
  }
}

async function exportGeoPackage(): Promise<void> {
  const made = await host().project.makeGeoPackage();
  if (!made.ok) return report(made.problem);
  download(made.value);
  say(plainWords().window.frame.done.made({ file: made.value.fileName }), 'done');
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
  const { pictureOfProperty } = await import('../map/pictureOfProperty.ts');
  const blob = await pictureOfProperty(input, localDate(new Date()), pictureMostPx);
  if (!blob) throw new EditRefused({ code: 'nothingDrawn', message: message('exchange.make.nothingDrawn') });
  return { ending: '.png', mediaType: 'image/png', bytes: new Uint8Array(await blob.arrayBuffer()) };
}
