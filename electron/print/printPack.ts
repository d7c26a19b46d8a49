import type { PackOptions } from '../../core/api/packOptions.ts';
import type { MadeFile } from '../../core/api/projectApi.ts';
import { whyNotWriteGeoJson, writeGeoJson } from '../../core/exchange/geojson/writeGeoJson.ts';
import { type Project, projectOf, propertyOf } from '../../core/model/project.ts';
import type { Thing } from '../../core/model/things.ts';
import { orderSettingsOf, takeOff } from '../../core/quantities/takeOff.ts';
import type { TakeOff } from '../../core/quantities/types.ts';
import { builtOnly } from '../../core/record/builtOnly.ts';
import { crossingRegister } from '../../core/record/crossingRegister.ts';
import { packFileName } from '../../core/sheets/fileName.ts';
import { layoutPack } from '../../core/sheets/pack/layoutPack.ts';
import { surveyOf } from '../../core/survey/survey.ts';
import { testSheets } from '../../core/survey/testSheets.ts';
import type { Survey } from '../../core/survey/types.ts';
import { madeAt } from './madeAt.ts';
import { qrModules } from './qrModules.ts';
import { type Attachment, renderPdf } from './renderPdf.ts';
import { typefaces } from './typefaces.ts';

/**
 * The handover pack of a property as one PDF for keeping. `photoBytes` gives a photo of the file by its id.
 * @throws SheetProblem (message and remedy for people) where it cannot be made as asked.
 */
export async function printPack(
  things: readonly Thing[],
  photoBytes: (blobId: string) => Uint8Array | null,
  options: PackOptions,
): Promise<MadeFile> {
  const project = projectOf(things);
  const property = propertyOf(project);
  const survey = surveyOf(project);
  const pages = layoutPack({
    project,
    survey,
    property,
    options,
    date: options.date,
    measure: typefaces().measure,
    testSheets: testSheets(project, survey),
    crossings: crossingRegister(project, survey),
    takeOff: options.parts.includes('materials') ? builtTakeOff(project) : null,
    makeQr: qrModules,
    photoBytes,
  });
  const attachment = options.parts.includes('geoJson') ? geoJsonOf(project, survey) : null;
  const bytes = await renderPdf(pages, {
    title: `${property.name}: handover pack`,
    subject: property.invented ? 'Handover pack of an invented example' : 'Handover pack of a fence network',
    language: 'en',
    madeAt: madeAt(options.date),
    ...(attachment ? { attachment } : {}),
  });
  return { fileName: packFileName(property.name, options.date), mediaType: 'application/pdf', bytes };
}

function builtTakeOff(project: Project): TakeOff {
  const built = builtOnly(project);
  return takeOff({ project: built, survey: surveyOf(built), settings: { ...orderSettingsOf(project), count: 'all' } });
}

/** Null where the property can't be written as GeoJSON: it has no place on earth. */
function geoJsonOf(project: Project, survey: Survey): Attachment | null {
  if (whyNotWriteGeoJson(project)) return null;
  return {
    fileName: 'property.geojson',
    mediaType: 'application/geo+json',
    description: 'The whole property as GeoJSON (RFC 7946)',
    bytes: new TextEncoder().encode(writeGeoJson(project, survey)),
  };
}
