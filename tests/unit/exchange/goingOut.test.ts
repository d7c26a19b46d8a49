import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gpx, kml } from '@tmcw/togeojson';
import { DOMParser } from '@xmldom/xmldom';
import Database from 'better-sqlite3';
import fc from 'fast-check';
import { unzipSync } from 'fflate';
import papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import wkx from 'wkx';
import { demoThings } from '../../../assets/demo/makeDemo.ts';
import { writeRegisters } from '../../../core/exchange/csv/registersCsv.ts';
import { geoPackageLayers } from '../../../core/exchange/geopackage/layers.ts';
import { writeGpx } from '../../../core/exchange/gpx/writeGpx.ts';
import { importFeatures, usualChoices } from '../../../core/exchange/intake/importFeatures.ts';
import { writeKml, writeKmz } from '../../../core/exchange/kml/writeKml.ts';
import { exchangedKinds } from '../../../core/exchange/preview/ours.ts';
import { newFenceType, newProperty, startingFenceTypes } from '../../../core/model/defaults.ts';
import { difference } from '../../../core/model/difference.ts';
import { type Project, projectOf, put } from '../../../core/model/project.ts';
import type { Thing } from '../../../core/model/things.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import { writeGeoPackage } from '../../../electron/store/writeGeoPackage.ts';
import { describeWith } from '../../support/describeWith.ts';
import { countingIds } from '../../support/ids.ts';
import { emptyProject, randomProject } from '../../support/randomProjects.ts';
import { bytesOf, previewOfBytes } from './mapFiles.ts';

const demo = projectOf(demoThings());
const demoSurvey = surveyOf(demo);
const fresh = (): Project => projectOf([newProperty('Another name'), ...startingFenceTypes()]);

const formats: readonly (readonly [name: string, write: (project: Project) => Uint8Array])[] = [
  ['map.kml', (project) => bytesOf(writeKml(project, surveyOf(project)))],
  ['map.kmz', (project) => writeKmz(project, surveyOf(project))],
  ['map.gpx', (project) => bytesOf(writeGpx(project, surveyOf(project)))],
];

function imported(name: string, bytes: Uint8Array, into: Project) {
  const preview = previewOfBytes(name, bytes);
  expect(preview.problems).toEqual([]);
  return importFeatures(preview, { ...usualChoices, typeId: 'ft-2' }, into, countingIds(900));
}

/** By kind and id: GPX has waypoints before tracks, whatever stood where before. */
function exchanged(project: Project): Thing[] {
  const byId = (a: Thing, b: Thing) => a.id.localeCompare(b.id);
  return exchangedKinds.flatMap((kind) => ([...project[kind].values()] as Thing[]).sort(byId));
}

/** Records of the demo's first crossing, as Record would make them. */
function recorded(): Thing[] {
  const [crossing] = demo.crossing.values();
  const [post] = demo.post.values();
  const [earthField] = demo.earthField.values();
  const crossingId = crossing!.id;
  const tie = {
    from: { on: 'post', postId: post!.id },
    postName: post!.name,
    postAt: post!.at,
    distanceM: 3.2,
    seM: 0.02,
  } as const;
  const gps = { lonLat: post!.at, seM: 3 };
  const risers = { start: 'hinge post', end: '' };
  return [
    {
      kind: 'crossingRecord',
      id: `record:${crossingId}`,
      crossingId,
      route: 'arc',
      depths: [{ alongM: 1, depthM: 0.4 }],
      jointsUnderground: 0,
      jointsNote: '',
      risers,
      alsoInTrench: '',
      soil: 'clay',
      recordedBy: 'A. Fencer',
      recordedOn: '2026-03-01',
      note: '',
    },
    {
      kind: 'buriedPoint',
      id: 'bp-1',
      crossingId,
      role: 'bend',
      name: '',
      rank: 0,
      ties: [tie],
      side: 'left',
      offset: null,
      gps,
      note: '',
    },
    {
      kind: 'testRun',
      id: 'run-1',
      name: 'First',
      date: '2026-03-02',
      by: '',
      meter: '',
      weather: 'dry',
      results: [{ section: 'A', outcome: 'passed', note: '' }],
      finished: true,
      note: '',
    },
    {
      kind: 'earthTest',
      id: 'et-1',
      earthFieldId: earthField!.id,
      date: '2026-03-02',
      earthV: 200,
      fenceV: null,
      by: '',
      meter: '',
      weather: '',
      load: '',
      note: '',
    },
    {
      kind: 'builtMark',
      id: `built:crossing:${crossingId}`,
      thingKind: 'crossing',
      thingId: crossingId,
      date: null,
      by: '',
      note: '',
      planned: { thing: crossing!, places: [post!.at] },
    },
    {
      kind: 'ground',
      id: 'ground-1',
      name: 'Heights',
      fileName: 'a.gpx',
      heights: { as: 'along', byReceiver: true, ways: [{ path: [post!.at, [-31.5, -42.25]], heightsM: [10, 12.5] }] },
      note: '',
    },
  ];
}

describe.each(formats)('%s that goes out and comes back', (name, write) => {
  it('is the same to the last digit in a new property, and changes nothing where it came from', () => {
    fc.assert(
      fc.property(randomProject, (project) => {
        const bytes = write(project);
        const back = imported(name, bytes, fresh());
        expect(back.problems).toEqual([]);
        expect(exchanged(back.project)).toEqual(exchanged(project));
        const again = imported(name, bytes, project);
        expect(difference(project, again.project)).toEqual([]);
        expect(again).toMatchObject({ added: 0, updated: 0, problems: [] });
      }),
      { seed: 81, numRuns: 40 },
    );
  });

  it('holds for the demo property', () => {
    expect(exchanged(imported(name, write(demo), fresh()).project)).toEqual(exchanged(demo));
  });

  it('brings records of work and heights of the ground along', () => {
    const project = put(demo, ...recorded());
    const back = imported(name, write(project), fresh());
    const carried = exchanged(project).filter(({ kind }) => name !== 'map.gpx' || kind !== 'ground');
    expect(exchanged(back.project)).toEqual(carried);
    expect(back.project.buriedPoint.has('bp-1')).toBe(true);
    expect(difference(project, imported(name, write(project), project).project)).toEqual([]);
  });

  it('brings the plain wires of fence types along, and does not invent them', () => {
    const { plainWires: _, ...older } = newFenceType('ft-old', 'Seven wires');
    const project = put(
      emptyProject(),
      newFenceType('ft-new', 'Six plain', { liveWires: 0, plainWires: 6, plainWireId: 'steel-4' }),
      older,
    );
    const { fenceType } = imported(name, write(project), fresh()).project;
    expect(fenceType.get('ft-new')).toMatchObject({ plainWires: 6, plainWireId: 'steel-4' });
    expect(fenceType.get('ft-old')).toEqual(older);
  });

  it('keeps names of any letters, and text that looks like markup', () => {
    const name2 = 'Ngā <b>&amp; "gate" ]]> \u{1F33F} \uFFFE';
    const project = put(emptyProject(), {
      kind: 'post',
      id: 'p1',
      name: name2,
      at: [-31.5, -42.25],
      role: 'other',
      note: 'a\r\nb\u0001',
    });
    expect(imported(name, write(project), fresh()).project.post.get('p1')).toEqual(project.post.get('p1'));
  });

  it('is refused for a property without a place on earth', () => {
    expect(() => write(put(emptyProject(), newProperty('On the grid')))).toThrow(/blank grid/);
  });
});

const asXml = (text: string) => new DOMParser().parseFromString(text, 'text/xml') as never;

describe('another reader', () => {
  it('finds every thing with a place in the KML, with its name, colour and words', () => {
    const { features } = kml(asXml(writeKml(demo, demoSurvey)));
    for (const gateway of demo.gateway.values()) {
      const found = features.find(({ properties }) => properties?.name === gateway.name)!;
      expect(found.geometry?.type).toBe('Point');
      expect(found.properties?.['icon-color']).toBe('#0072b2');
      expect(found.properties?.description).toContain(`width m: ${gateway.widthM}`);
    }
    const lines = features.filter(({ geometry }) => geometry?.type === 'LineString');
    expect(lines.length).toBeGreaterThanOrEqual(demo.fenceLine.size + demo.crossing.size);
    expect(new Set(features.map(({ properties }) => properties?.styleUrl)).size).toBeGreaterThan(6);
  });

  it('unpacks the KMZ to the KML', () => {
    const files = unzipSync(writeKmz(demo, demoSurvey));
    expect(Object.keys(files)).toEqual(['doc.kml']);
    expect(new TextDecoder().decode(files['doc.kml'])).toBe(writeKml(demo, demoSurvey));
  });

  it('finds waypoints and tracks in the GPX', () => {
    const { features } = gpx(asXml(writeGpx(demo, demoSurvey)));
    const points = features.filter(({ geometry }) => geometry?.type === 'Point');
    expect(points.map(({ properties }) => properties?.name)).toEqual(
      expect.arrayContaining([...demo.gateway.values()].map(({ name }) => name)),
    );
    const tracks = features
      .filter(({ geometry }) => geometry?.type === 'LineString')
      .map(({ properties }) => properties?.name);
    expect(tracks).toEqual(expect.arrayContaining([...demo.fenceLine.values()].map(({ name }) => name)));
  });

  it('reads every register from the packed tables', () => {
    const files = unzipSync(writeRegisters(demo, demoSurvey));
    const rows = (name: string) => papa.parse(new TextDecoder().decode(files[name]).trimEnd(), {}).data as string[][];
    const [head, ...gateways] = rows('gateways.csv');
    expect(gateways).toHaveLength(demo.gateway.size);
    const first = Object.fromEntries(head!.map((column, i) => [column, gateways[0]![i]]));
    const gateway = demo.gateway.get(first.id!)!;
    expect(first).toMatchObject({ name: gateway.name, width_m: String(gateway.widthM) });
    const shape = demoSurvey.gateways.get(gateway.id)!;
    const [lon, lat] = demoSurvey.plane.toLonLat(shape.centre);
    expect(Number(first.lon)).toBeCloseTo(lon, 8);
    expect(Number(first.lat)).toBeCloseTo(lat, 8);
    expect(rows('sections.csv')).toHaveLength(demoSurvey.sections.length + 1);
    expect(Object.keys(files)).toEqual(expect.arrayContaining(['switches.csv', 'crossings.csv', 'fence_lines.csv']));
  });

  it('is not told a formula by a name', () => {
    const post = {
      kind: 'post',
      id: 'p',
      name: '=HYPERLINK("http://x")',
      at: [-31.5, -42.25],
      role: 'other',
      note: '',
    } as const;
    const project = put(emptyProject(), post);
    const text = new TextDecoder().decode(unzipSync(writeRegisters(project, surveyOf(project)))['posts.csv']);
    expect(text).toContain(`'=HYPERLINK`);
  });
});

const geoPackage = () => writeGeoPackage(geoPackageLayers(demo, demoSurvey), '2026-03-01T00:00:00.000Z');

describe('a GeoPackage', () => {
  it('names itself, its layers and their bounds as the standard asks', () => {
    const database = new Database(Buffer.from(geoPackage()));
    expect(database.pragma('application_id', { simple: true })).toBe(0x47504b47);
    expect(database.pragma('user_version', { simple: true })).toBe(10300);
    expect(database.pragma('integrity_check', { simple: true })).toBe('ok');
    expect(database.pragma('foreign_key_check')).toEqual([]);
    const ids = database.prepare('SELECT srs_id FROM gpkg_spatial_ref_sys').pluck().all();
    expect(ids).toEqual(expect.arrayContaining([-1, 0, 4326]));
    const layers = database.prepare('SELECT * FROM gpkg_contents').all() as Record<string, unknown>[];
    expect(layers.map(({ table_name }) => table_name)).toEqual(
      expect.arrayContaining(['gateways', 'crossings', 'switches', 'fence_lines', 'sections', 'paddocks']),
    );
    for (const { table_name } of layers) {
      expect(database.prepare('SELECT count(*) FROM sqlite_master WHERE name = ?').pluck().get(table_name)).toBe(1);
    }
    database.close();
  });

  it('holds every gateway where it is, and every paddock as its area, by another reader of its binary', () => {
    const database = new Database(Buffer.from(geoPackage()));
    const shapeOf = (blob: Buffer) => {
      const envelopeDoubles = [0, 4, 6, 6, 8][(blob[3]! >> 1) & 7]!;
      return wkx.Geometry.parse(blob.subarray(8 + 8 * envelopeDoubles)).toGeoJSON() as {
        type: string;
        coordinates: never;
      };
    };
    const gateways = database.prepare('SELECT id, geom, width_m FROM gateways').all() as {
      id: string;
      geom: Buffer;
      width_m: number;
    }[];
    expect(gateways).toHaveLength(demo.gateway.size);
    for (const { id, geom, width_m } of gateways) {
      const [lon, lat] = demoSurvey.plane.toLonLat(demoSurvey.gateways.get(id)!.centre);
      const { type, coordinates } = shapeOf(geom);
      expect(type).toBe('Point');
      expect(coordinates[0]).toBeCloseTo(lon, 8);
      expect(coordinates[1]).toBeCloseTo(lat, 8);
      expect(width_m).toBe(demo.gateway.get(id)!.widthM);
    }
    const paddocks = database.prepare('SELECT geom FROM paddocks').pluck().all() as Buffer[];
    expect(paddocks.map((geom) => shapeOf(geom).type)).toEqual(demoSurvey.paddocks.map(() => 'MultiPolygon'));
    database.close();
  });

  it('parts the services into points, lines and areas', () => {
    const names = geoPackageLayers(demo, demoSurvey).map(({ name }) => name);
    expect(new Set(names).size).toBe(names.length);
    for (const { rows, geometryType } of geoPackageLayers(demo, demoSurvey)) {
      expect(geometryType === null).toBe(rows.every(({ geometry }) => geometry === null));
    }
  });
});

/** What a program says of a file that lies in a folder of its own for so long. */
function told(
  name: string,
  bytes: Uint8Array,
  program: string,
  args: (file: string, folder: string) => string[],
): string {
  const folder = mkdtempSync(join(tmpdir(), 'going-out-'));
  try {
    const file = join(folder, name);
    writeFileSync(file, bytes);
    const { status, stdout, stderr } = spawnSync(program, args(file, folder), { encoding: 'utf8' });
    if (status !== 0) throw new Error(stderr);
    return stdout;
  } finally {
    rmSync(folder, { recursive: true });
  }
}

describeWith(['ogrinfo'], 'GDAL', () => {
  it('opens the KML and finds its folders', () => {
    const said = told('map.kml', bytesOf(writeKml(demo, demoSurvey)), 'ogrinfo', (file) => ['-al', '-so', file]);
    expect(said).toContain('Layer name: Gateways');
    expect(said).toContain(`Feature Count: ${demo.gateway.size}`);
  });

  it('opens the GPX and finds its waypoints and tracks', () => {
    const said = told('map.gpx', bytesOf(writeGpx(demo, demoSurvey)), 'ogrinfo', (file) => ['-al', '-so', file]);
    expect(said).toMatch(/Layer name: waypoints[\s\S]*Feature Count: [1-9]/);
    expect(said).toMatch(/Layer name: tracks[\s\S]*Feature Count: [1-9]/);
  });

  it('opens the GeoPackage without a warning and finds its layers', () => {
    const folder = mkdtempSync(join(tmpdir(), 'geopackage-'));
    const file = join(folder, 'map.gpkg');
    writeFileSync(file, geoPackage());
    const { stdout, stderr } = spawnSync('ogrinfo', ['-al', '-so', file], { encoding: 'utf8' });
    rmSync(folder, { recursive: true });
    expect(stderr).toBe('');
    const layer = (name: string) => stdout.split('Layer name: ').find((part) => part.startsWith(`${name}\n`));
    expect(layer('gateways')).toContain(`Geometry: Point\nFeature Count: ${demo.gateway.size}\n`);
    expect(layer('paddocks')).toContain('Geometry: Multi Polygon');
  });
});

describeWith(['gpsbabel'], 'GPSBabel', () => {
  it('reads every waypoint and track of the GPX', () => {
    const out = told('map.gpx', bytesOf(writeGpx(demo, demoSurvey)), 'gpsbabel', (file) => [
      '-i',
      'gpx',
      '-f',
      file,
      '-o',
      'gpx',
      '-F',
      '-',
    ]);
    const { features } = gpx(asXml(out));
    const ours = gpx(asXml(writeGpx(demo, demoSurvey))).features;
    expect(features).toHaveLength(ours.length);
  });

  it('reads the KML', () => {
    const out = told('map.kml', bytesOf(writeKml(demo, demoSurvey)), 'gpsbabel', (file) => [
      '-i',
      'kml',
      '-f',
      file,
      '-o',
      'gpx',
      '-F',
      '-',
    ]);
    for (const { name } of demo.gateway.values()) expect(out).toContain(`<name>${name}</name>`);
  });
});
