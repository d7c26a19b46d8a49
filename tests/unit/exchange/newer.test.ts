import { describe, expect, test } from 'vitest';
import { readGeoJson } from '../../../core/exchange/geojson/readGeoJson.ts';
import { writeGeoJson } from '../../../core/exchange/geojson/writeGeoJson.ts';
import { readGpx } from '../../../core/exchange/gpx/readGpx.ts';
import { writeGpx } from '../../../core/exchange/gpx/writeGpx.ts';
import { type Imported, importFeatures, usualChoices } from '../../../core/exchange/intake/importFeatures.ts';
import { readKml } from '../../../core/exchange/kml/readKml.ts';
import { writeKml } from '../../../core/exchange/kml/writeKml.ts';
import { exchangedKinds } from '../../../core/exchange/preview/ours.ts';
import type { ReadResult } from '../../../core/exchange/preview/types.ts';
import { newProperty, startingFenceTypes } from '../../../core/model/defaults.ts';
import { difference } from '../../../core/model/difference.ts';
import { allThings, type Project, projectOf, put } from '../../../core/model/project.ts';
import type { Thing } from '../../../core/model/things.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import { allInEnglish, inEnglish } from '../../support/english.ts';
import { fullProperty } from '../../support/fullProperty.ts';
import { countingIds } from '../../support/ids.ts';
import { withUnknown } from '../../support/withUnknown.ts';

/** Without the one reading that lies far from all else. */
const things = fullProperty().filter(({ id }) => id !== 'reading-with-switches');
const newer = projectOf(things.map(withUnknown));
const fresh = () => projectOf([newProperty('Another'), ...startingFenceTypes()]);

function takenIn(read: ReadResult, into: Project): Imported {
  if (!read.ok) throw new Error(inEnglish(read.message));
  expect(read.preview.problems).toEqual([]);
  return importFeatures(read.preview, { ...usualChoices, typeId: 'ft-2' }, into, countingIds(900));
}

const ways = [
  ['GeoJSON', () => readGeoJson(writeGeoJson(newer, surveyOf(newer))), exchangedKinds],
  ['KML', () => readKml(writeKml(newer, surveyOf(newer))), exchangedKinds],
  ['GPX', () => readGpx(writeGpx(newer, surveyOf(newer))), exchangedKinds.filter((kind) => kind !== 'ground')],
] as const;

describe('fields that this version does not know', () => {
  test.each(ways)('go out and come back: %s', (_, read, kinds) => {
    const back = takenIn(read(), fresh());
    expect(back.problems).toEqual([]);
    for (const kind of kinds)
      expect(Object.fromEntries(back.project[kind]), kind).toEqual(Object.fromEntries(newer[kind]));
    const again = takenIn(read(), newer);
    expect(difference(newer, again.project)).toEqual([]);
  });

  test('stay with a thing that a file without them changes, and a figure of the same name takes nothing from them', () => {
    const line = { ...[...newer.fenceLine.values()][0]!, lengthM: 'its own' } as Thing;
    const project = put(newer, line);
    const collection = JSON.parse(writeGeoJson(project, surveyOf(project))) as {
      features: { id: string; properties: Record<string, unknown> }[];
    };
    const feature = collection.features.find(({ id }) => id === `fenceLine:${line.id}`)!;
    expect(feature.properties.lengthM).toBe('its own');
    const { name: _, newer: __, lengthM: ___, ...rest } = feature.properties;
    feature.properties = { ...rest, name: 'Renamed', 'undergate:fields': ['name'] };
    const changed = takenIn(readGeoJson(JSON.stringify({ ...collection, features: [feature] })), project);
    expect(changed.project.fenceLine.get(line.id)).toEqual({ ...line, name: 'Renamed' });
  });

  test('are not what another program, or an older file, has beside the fields', () => {
    const plain = projectOf(things);
    const collection = JSON.parse(writeGeoJson(plain, surveyOf(plain))) as {
      features: { properties: Record<string, unknown> }[];
    };
    for (const feature of collection.features) feature.properties.fid = 7;
    expect(difference(plain, takenIn(readGeoJson(JSON.stringify(collection)), plain).project)).toEqual([]);
    for (const feature of collection.features) {
      delete feature.properties['undergate:version'];
      delete feature.properties['undergate:fields'];
    }
    expect(difference(plain, takenIn(readGeoJson(JSON.stringify(collection)), plain).project)).toEqual([]);
  });

  test('carry no megabytes', () => {
    const post = [...newer.post.values()][0]!;
    const project = projectOf([...allThings(fresh()), { ...post, newer: 'x'.repeat(1_000_000) } as Thing]);
    const placed = put(project, { ...[...project.property.values()][0]!, placed: true, origin: post.at });
    const back = takenIn(readGeoJson(writeGeoJson(placed, surveyOf(placed))), fresh());
    expect(back.project.post.size).toBe(0);
    expect(back.problems.map(({ why }) => inEnglish(why))).toEqual([
      'what this version does not know of it takes 977 kB, and one thing can have 256 kB of it at most',
    ]);
  });
});

test('a thing of a kind that this version does not know is told of, and becomes nothing else', () => {
  const properties = { 'undergate:kind': 'beacon', 'undergate:id': 'b', 'undergate:version': 2000, name: 'Light' };
  const geometry = { type: 'Point', coordinates: [175.5, -37.9] };
  const read = readGeoJson(JSON.stringify({ type: 'Feature', properties, geometry }));
  expect(allInEnglish(read)).toMatchObject({
    ok: true,
    preview: {
      features: [],
      problems: [
        {
          name: 'Light',
          why: 'a newer Undergate wrote the file, and it is of a kind that this one does not know ("beacon")',
          whatToDo: 'Bring this Undergate up to date and import the file again, or go on without it.',
        },
      ],
    },
  });
});
