import { readGeoJson } from '../../core/exchange/geojson/readGeoJson.ts';
import { writeGeoJson } from '../../core/exchange/geojson/writeGeoJson.ts';
import { importFeatures, usualChoices } from '../../core/exchange/intake/importFeatures.ts';
import { newProperty, startingFenceTypes } from '../../core/model/defaults.ts';
import type { NewId } from '../../core/model/edits/support/edit.ts';
import { type Project, projectOf } from '../../core/model/project.ts';
import { surveyOf } from '../../core/survey/survey.ts';
import { inEnglish } from '../support/english.ts';
import { largeProperty } from '../support/largeProperty.ts';
import { measure } from './measure.ts';
import type { BenchRow } from './row.ts';

const vertices = 100_000;

export async function bench(): Promise<BenchRow[]> {
  const foreign = tracks(vertices);
  const drawn = largeProperty(2000);
  const survey = surveyOf(drawn);
  const ours = writeGeoJson(drawn, survey);
  const row = (name: string, size: number, work: () => unknown, budget: number | null): BenchRow => {
    return { name, size, ...measure(work, 5), unit: 'ms', budget };
  };
  return [
    row(
      `GeoJSON of ${vertices.toLocaleString('en')} vertices read and taken over`,
      vertices,
      () => taken(foreign, fresh()),
      3000,
    ),
    row('GeoJSON of our own, 2,000 runs, written', 2000, () => writeGeoJson(drawn, survey), null),
    row('GeoJSON of our own, 2,000 runs, read back into a new property', 2000, () => taken(ours, fresh()), null),
    row('GeoJSON of our own, 2,000 runs, read back into the same', 2000, () => taken(ours, drawn), null),
  ];
}

function taken(text: string, project: Project): Project {
  const read = readGeoJson(text);
  if (!read.ok) throw new Error(inEnglish(read.message));
  let count = 0;
  const newId: NewId = (kind) => `${kind}-new-${++count}`;
  return importFeatures(read.preview, { ...usualChoices, typeId: 'ft-2' }, project, newId).project;
}

const fresh = (): Project => projectOf([newProperty('Fresh'), ...startingFenceTypes()]);

/** Lines of 200 vertices, as a receiver on a vehicle would write them. */
function tracks(count: number): string {
  const perLine = 200;
  const features = Array.from({ length: count / perLine }, (_, line) => {
    const coordinates = Array.from({ length: perLine }, (_, i) => [
      -31.6 + 0.0004 * line,
      -42.3 + 0.0005 * i + 1e-5 * (i % 7),
      12,
    ]);
    return { type: 'Feature', properties: { name: `Track ${line}` }, geometry: { type: 'LineString', coordinates } };
  });
  return JSON.stringify({ type: 'FeatureCollection', features });
}
