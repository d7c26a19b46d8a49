import type { MadeFile } from '../../core/api/projectApi.ts';
import { geoPackageLayers } from '../../core/exchange/geopackage/layers.ts';
import { whyNotOnEarth } from '../../core/exchange/outgoing/whyNotOnEarth.ts';
import { projectOf, propertyOf } from '../../core/model/project.ts';
import type { Thing } from '../../core/model/things.ts';
import { surveyOf } from '../../core/survey/survey.ts';
import { figures, plainWords } from '../../core/words/figures.ts';
import { ProblemError } from '../store/problems.ts';
import { writeGeoPackage } from '../store/writeGeoPackage.ts';

/** Every register of a property as a GeoPackage, called as the property's file is. */
export function makeGeoPackage(things: readonly Thing[], fileName: string, now: Date): MadeFile {
  const project = projectOf(things);
  const refusal = whyNotOnEarth(project, 'GeoPackage');
  if (refusal)
    throw new ProblemError(
      'not-valid',
      figures(propertyOf(project).units).say(refusal.message),
      plainWords().host.calls.csvInstead,
    );
  const bytes = writeGeoPackage(geoPackageLayers(project, surveyOf(project)), now.toISOString());
  return { fileName: `${fileName}.gpkg`, mediaType: 'application/geopackage+sqlite3', bytes };
}
