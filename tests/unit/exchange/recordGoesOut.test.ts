import { gpx, kml } from '@tmcw/togeojson';
import { DOMParser } from '@xmldom/xmldom';
import DxfParser from 'dxf-parser';
import { unzipSync } from 'fflate';
import papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { writeRegisters } from '../../../core/exchange/csv/registersCsv.ts';
import { writeDxf } from '../../../core/exchange/dxf/writeDxf.ts';
import { writeGeoJson } from '../../../core/exchange/geojson/writeGeoJson.ts';
import { geoPackageLayers } from '../../../core/exchange/geopackage/layers.ts';
import { writeGpx } from '../../../core/exchange/gpx/writeGpx.ts';
import { importFeatures, usualChoices } from '../../../core/exchange/intake/importFeatures.ts';
import { writeKml } from '../../../core/exchange/kml/writeKml.ts';
import { featuresOf } from '../../../core/exchange/outgoing/featuresOf.ts';
import { difference } from '../../../core/model/difference.ts';
import { allThings, type Project, projectOf, propertyOf, put } from '../../../core/model/project.ts';
import { newBuriedPoint, newCrossingRecord } from '../../../core/model/recordDefaults.ts';
import type { BuriedPoint } from '../../../core/model/recordThings.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import { at, bridgedGateway, drawing, energiser, leadOut, line } from '../../support/drawings.ts';
import { allInEnglish } from '../../support/english.ts';
import { countingIds } from '../../support/ids.ts';
import { drawingWithLeft } from '../../support/recordedDrawing.ts';
import { bytesOf, previewOfBytes } from './mapFiles.ts';

/** G1 with a bend whose side nobody said and measured depths; G2 and the lead-out only planned; G3 with tapes that do not meet. */
const plain = drawing(
  line('F1', [
    [0, 0],
    [300, 0],
  ]),
  ...['G1', 'G3'].map((id, i) => bridgedGateway(id, 'F1', 50 + 150 * i, { status: 'built' })),
  bridgedGateway('G2', 'F1', 100),
  energiser('E1', [0, -20]),
  leadOut('L1', 'E1', [
    [0, -20],
    [0, 0],
  ]),
);
const depths = [
  { alongM: 0.5, depthM: 0.42 },
  { alongM: 2, depthM: 0.1 },
];
const project = put(
  { ...plain, property: new Map([['property', { ...propertyOf(plain), placed: true }]]) },
  bend('G1', 2.5),
  bend('G3', 1),
  { ...newCrossingRecord('X-G1'), depths },
);
const survey = surveyOf(project);

function bend(gatewayId: string, distanceM: number): BuriedPoint {
  const { startPost, endPost } = surveyOf(plain).gateways.get(gatewayId)!;
  const ties = (['start', 'end'] as const).map((post) => ({
    from: { on: 'gatePost', gatewayId, post } as const,
    postName: '',
    postAt: at(post === 'start' ? startPost : endPost),
    distanceM,
    seM: 0.02,
  }));
  return { ...newBuriedPoint(`bend-${gatewayId}`, `X-${gatewayId}`, 'bend'), ties };
}

const asXml = (text: string) => new DOMParser().parseFromString(text, 'text/xml') as never;
const featureOf = (id: string) => [...featuresOf(project, survey)].find((feature) => feature.id === id)!;

describe('what goes out of a record', () => {
  it('is every way that a trench may run, and how surely it is known', () => {
    expect(featureOf('crossing:X-G1')).toMatchObject({
      geometry: { type: 'MultiLineString', coordinates: { length: 2 } },
      properties: {
        inTheGround: true,
        placeKnownBy: 'side not said',
        depthLeastM: 0.1,
        depthMostM: 0.42,
        depthIs: 'measured to the top of the pipe',
        depthM: 0.3,
      },
    });
    // 1.5 m to either side of the opening, so twice that over both.
    expect(featureOf('crossing:X-G1').properties!.placeWithinM).toBeGreaterThan(3);
    expect(featureOf('buriedPoint:bend-G1')).toMatchObject({
      geometry: { type: 'MultiPoint', coordinates: { length: 2 } },
      properties: { placeKnownBy: 'side not said' },
    });
    expect(featureOf('buriedPoint:bend-G3')).toMatchObject({
      geometry: null,
      properties: { placeKnownBy: 'tapes do not meet', placeWithinM: null },
    });
    expect(featureOf('crossing:X-G2')).toMatchObject({
      geometry: { type: 'LineString' },
      properties: {
        inTheGround: false,
        placeKnownBy: 'planned',
        depthLeastM: 0.3,
        depthIs: 'of the trench as planned, not measured',
      },
    });
    expect(featureOf('leadOut:L1').properties).toMatchObject({ inTheGround: false });
  });

  it('stands in the registers', () => {
    const files = unzipSync(writeRegisters(project, survey));
    const rows = (name: string) => {
      const [head, ...more] = papa.parse(new TextDecoder().decode(files[name]).trimEnd(), {}).data as string[][];
      return more.map((row): Record<string, string> => Object.fromEntries(head!.map((column, i) => [column, row[i]!])));
    };
    const byGateway = Object.fromEntries(rows('crossings.csv').map((row) => [row.gateway, row]));
    expect(byGateway.G1).toMatchObject({
      in_the_ground: 'yes',
      depth_least_m: '0.1',
      depth_most_m: '0.42',
      depth_is: 'measured to the top of the pipe',
      planned_trench_depth_m: '0.3',
      place_known_by: 'side not said',
      possible_courses: '2',
    });
    expect(Number(byGateway.G1!.place_within_m)).toBeGreaterThan(3);
    expect(byGateway.G2).toMatchObject({ in_the_ground: 'no', place_known_by: 'planned', depth_least_m: '0.3' });
    expect(byGateway.G3).toMatchObject({ place_known_by: 'tapes do not meet' });
    expect(rows('lead_outs.csv')[0]).toMatchObject({ in_the_ground: 'no' });
  });

  it('shows both places to a handheld and to other programs, and what is planned apart', () => {
    const handheld = gpx(asXml(writeGpx(project, survey))).features;
    const named = (name: string) => handheld.filter(({ properties }) => properties?.name === name);
    expect(named('Bend of crossing at G1 (side not said)')).toHaveLength(2);
    expect(named('Planned crossing at G2, not in the ground')).toHaveLength(1);
    expect(named('L1 (planned, not in the ground)')).toHaveLength(1);
    expect(named('Crossing at G1')[0]!.geometry).toMatchObject({ type: 'MultiLineString' });

    const text = writeKml(project, survey);
    const folders = [...text.matchAll(/<Folder><name>([^<]*)<\/name>(.*?)<\/Folder>/gs)];
    const inFolder = (name: string) => folders.find(([, found]) => found === name)![2]!;
    expect(inFolder('Crossings in the ground and overhead')).not.toContain('G2');
    expect(inFolder('Planned cables, not in the ground')).toContain('Planned crossing at G2, not in the ground');
    expect(inFolder('Planned cables, not in the ground')).toContain('L1 (planned');
    const mark = kml(asXml(text)).features.find(({ properties }) => properties?.name === 'Crossing at G1')!;
    expect(mark.properties?.description).toContain('place known by: side not said');

    const entities = new DxfParser().parseSync(writeDxf(project, survey))!.entities as unknown as {
      type: string;
      layer: string;
      text?: string;
    }[];
    const on = (layer: string, type: string) => entities.filter((each) => each.layer === layer && each.type === type);
    expect(on('CROSSINGS', 'LWPOLYLINE')).toHaveLength(4);
    expect(on('CROSSINGS-PLANNED', 'LWPOLYLINE')).toHaveLength(1);
    expect(on('SUPPLY-PLANNED', 'LWPOLYLINE')).toHaveLength(1);
    expect(on('CROSSINGS', 'TEXT').map(({ text: words }) => words)).toContain(
      'Crossing at G1: depth 0.10 to 0.42 m measured to the top of the pipe; place side not said',
    );
    const layers = geoPackageLayers(project, survey).filter(({ name }) => name.startsWith('crossings'));
    expect(layers.map(({ geometryType }) => geometryType)).toEqual(['MULTILINESTRING']);
  });

  it.each([
    ['map.geojson', (of: Project) => bytesOf(writeGeoJson(of, surveyOf(of)))],
    ['map.kml', (of: Project) => bytesOf(writeKml(of, surveyOf(of)))],
    ['map.gpx', (of: Project) => bytesOf(writeGpx(of, surveyOf(of)))],
  ])('comes back from %s as it was', (name, write) => {
    const preview = previewOfBytes(name, write(project));
    expect(preview.problems).toEqual([]);
    expect(preview.features.filter(({ ours }) => !ours)).toEqual([]);
    const back = importFeatures(preview, { ...usualChoices, typeId: 'ft-2' }, project, countingIds(900));
    expect(back.problems).toEqual([]);
    expect(difference(project, back.project)).toEqual([]);
  });
});

describe('what comes in beside what is recorded', () => {
  const collection = JSON.parse(writeGeoJson(project, survey)) as {
    features: { properties: Record<string, unknown> }[];
  };
  const bendOfG1 = collection.features.find(({ properties }) => properties['undergate:id'] === 'bend-G1')!;
  const withFeature = (properties: object) =>
    JSON.stringify({
      ...collection,
      features: [{ ...bendOfG1, id: 'x', properties: { ...bendOfG1.properties, ...properties } }],
    });
  const comesIn = (text: string, into: Project = project) =>
    importFeatures(
      previewOfBytes('back.geojson', bytesOf(text)),
      { ...usualChoices, typeId: 'ft-2', fileName: 'back.geojson' },
      into,
      countingIds(10),
    );

  it('a second bend of a crossing is refused', () => {
    const { problems, project: after } = comesIn(withFeature({ 'undergate:id': 'bend-2' }));
    expect(allInEnglish(problems)).toMatchObject([{ why: 'its crossing has another one of these already' }]);
    expect(after.buriedPoint).toBe(project.buriedPoint);
  });

  it('a property with nothing but what was left in the ground keeps its own place', () => {
    const left = drawingWithLeft();
    const bare = [...allThings(left)].filter(({ kind }) => kind === 'property' || kind === 'inGround');
    const grid = { ...propertyOf(left), placed: false };
    expect(() => comesIn(writeGeoJson(project, survey), put(projectOf(bare), grid))).toThrow(/blank grid/);
  });
});
