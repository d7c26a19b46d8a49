import type { PackOptions } from '../../core/api/packOptions.ts';
import { whyNotWriteGeoJson, writeGeoJson } from '../../core/exchange/geojson/writeGeoJson.ts';
import type { Project } from '../../core/model/project.ts';
import { orderSettingsOf, takeOff } from '../../core/quantities/takeOff.ts';
import type { TakeOff } from '../../core/quantities/types.ts';
import { builtOnly } from '../../core/record/builtOnly.ts';
import { crossingRegister } from '../../core/record/crossingRegister.ts';
import { packFileName } from '../../core/sheets/fileName.ts';
import { layoutPack } from '../../core/sheets/pack/layoutPack.ts';
import { surveyOf } from '../../core/survey/survey.ts';
import { testSheets } from '../../core/survey/testSheets.ts';
import type { Survey } from '../../core/survey/types.ts';
import { figures } from '../../core/words/figures.ts';
import type { Book, Printed } from './printJob.ts';
import { qrModules } from './qrModules.ts';
import type { Attachment } from './renderPdf.ts';
import { typefaces } from './typefaces.ts';

/**
 * The handover pack of a property, for keeping.
 * @throws SheetProblem (message and remedy for people) where it cannot be made as asked.
 */
export function packBook({ project, property, survey, photos }: Printed, options: PackOptions): Book {
  const f = figures(property.units);
  const said = f.words.sheets.book;
  const pages = layoutPack({
    project,
    survey,
    property,
    options,
    date: options.date,
    measure: typefaces().measure,
    f,
    testSheets: testSheets(project, survey),
    crossings: crossingRegister(project, survey),
    takeOff: options.parts.includes('materials') ? builtTakeOff(project) : null,
    makeQr: qrModules,
    photoBytes: (blobId) => photos.get(blobId) ?? null,
  });
  return {
    pages,
    title: said.pack,
    subjects: [said.packSubject, said.packInvented],
    fileName: packFileName(property.name, options.date),
    date: options.date,
    attachment: options.parts.includes('geoJson') ? geoJsonOf(project, survey, said.geoJson) : null,
  };
}

function builtTakeOff(project: Project): TakeOff {
  const built = builtOnly(project);
  return takeOff({ project: built, survey: surveyOf(built), settings: { ...orderSettingsOf(project), count: 'all' } });
}

/** Null where the property can't be written as GeoJSON: it has no place on earth. */
function geoJsonOf(project: Project, survey: Survey, description: string): Attachment | null {
  if (whyNotWriteGeoJson(project)) return null;
  return {
    fileName: 'property.geojson',
    mediaType: 'application/geo+json',
    description,
    bytes: new TextEncoder().encode(writeGeoJson(project, survey)),
  };
}
