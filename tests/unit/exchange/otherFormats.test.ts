import { gpx, kml } from '@tmcw/togeojson';
import { DOMParser } from '@xmldom/xmldom';
import { unzipSync } from 'fflate';
import shp from 'shpjs';
import { describe, expect, it } from 'vitest';
import { knownSystems } from '../../../core/coordinates/systems.ts';
import { distanceM } from '../../../core/geometry/geodesic.ts';
import type { LonLat } from '../../../core/model/things.ts';
import { allInEnglish, inEnglish } from '../../support/english.ts';
import { bytesOf, mapFile, previewOfBytes, previewOfFile, refusalOf } from './mapFiles.ts';

/** All positions of a GeoJSON value, whatever its geometries. */
function positionsIn(value: unknown): LonLat[] {
  if (Array.isArray(value)) {
    if (typeof value[0] === 'number') return [[value[0], value[1] as number]];
    return value.flatMap(positionsIn);
  }
  if (typeof value !== 'object' || value === null) return [];
  const { features, geometry, geometries, coordinates } = value as Record<string, unknown>;
  return [features, geometry, geometries, coordinates].flatMap(positionsIn);
}

const sorted = (positions: readonly LonLat[]) => [...positions].sort((a, b) => a[0] - b[0] || a[1] - b[1]);

/** Ours are where the other reader has them, to a millimetre. */
function expectSamePlaces(ours: readonly LonLat[], theirs: readonly LonLat[]): void {
  expect(ours).toHaveLength(theirs.length);
  const [a, b] = [sorted(ours), sorted(theirs)];
  for (const [i, place] of a.entries()) expect(distanceM(place, b[i]!)).toBeLessThan(0.001);
}

const placesOf = (name: string) => previewOfFile(name).features.flatMap(({ path }) => path);
const asXml = (bytes: Uint8Array) => new DOMParser().parseFromString(new TextDecoder().decode(bytes), 'text/xml');

/** A system as the property's own coordinates are handed to a reader. */
function gridSystem(id: string): { name: string; definition: string } {
  const system = knownSystems.find((each) => each.id === id);
  if (system?.kind !== 'projected') throw new Error(`No map grid ${id}.`);
  return { name: inEnglish(system.name), definition: system.definition };
}

describe('another reader finds the same places', () => {
  it('in KML', () => {
    expectSamePlaces(placesOf('lines.kml'), positionsIn(kml(asXml(mapFile('lines.kml')) as never)));
  });

  it('in KMZ', () => {
    const doc = unzipSync(mapFile('map.kmz'))['doc.kml']!;
    expectSamePlaces(placesOf('map.kmz'), positionsIn(kml(asXml(doc) as never)));
  });

  it('in GPX', () => {
    expectSamePlaces(placesOf('tracks.gpx'), positionsIn(gpx(asXml(mapFile('tracks.gpx')) as never)));
  });

  it('in zipped Shapefiles of three coordinate systems', async () => {
    expectSamePlaces(placesOf('layers.zip'), positionsIn(await shp(Buffer.from(mapFile('layers.zip')))));
  });
});

describe('KML', () => {
  it('gives lines, outlines and points with their names, the folder helping to tell what they are', () => {
    const { features, notes } = previewOfFile('map.kmz');
    expect(features.map(({ name, shape, suggestion }) => [name, shape, suggestion])).toEqual([
      ['<b>Shed</b>', 'point', 'gateway'],
      ['Ridge', 'line', 'fenceLine'],
      ['Block (1)', 'outline', 'fenceLine'],
      ['Block (2)', 'outline', 'fenceLine'],
      ['Quad bike', 'line', 'fenceLine'],
    ]);
    expect(notes.map((note) => inEnglish(note)).join()).toContain('pictures');
  });

  it('takes heights where they are above the sea, and not where they are to be passed over', () => {
    const ridge = previewOfFile('map.kmz').features[1]!;
    expect(ridge.heightsM).toEqual([110.5, 118.2, 121]);
    // Clamped to the ground, so the figures do not count (OGC KML 2.2, 16.4).
    expect(previewOfFile('lines.kml').features[0]!.heightsM).toBeNull();
  });

  it('tells of a model, which is no line', () => {
    const [problem] = previewOfFile('map.kmz').problems;
    expect(allInEnglish(problem)).toMatchObject({
      name: 'Shed in three dimensions',
      why: expect.stringContaining('model'),
    });
  });

  it('puts up with spaces beside the commas, and says which position is no number', () => {
    const text = (coordinates: string) =>
      `<kml><Placemark><name>A</name><LineString><coordinates>${coordinates}</coordinates></LineString></Placemark></kml>`;
    const spaced = previewOfBytes('a.kml', bytesOf(text(' 168.1 , -42.1,3\n168.2, -42.2 ')));
    expect(spaced.features[0]!.path).toEqual([
      [168.1, -42.1],
      [168.2, -42.2],
    ]);
    const { problems } = previewOfBytes('a.kml', bytesOf(text('168.1,-42.1 168.2,south')));
    expect(inEnglish(problems[0]!.why)).toContain('position 2');
  });
});

describe('GPX', () => {
  it('gives each piece of a track as a line of its own with its heights, and routes and waypoints', () => {
    const { features } = previewOfFile('tracks.gpx');
    expect(features.map(({ name, shape, track, path }) => [name, shape, track, path.length])).toEqual([
      ['Creek & drain', 'line', false, 2],
      ['Track 12 (1)', 'line', true, 60],
      ['Track 12 (2)', 'line', true, 5],
      ['Gate by the yards', 'point', false, 1],
    ]);
    expect(features[1]!.heightsM!.slice(0, 3)).toEqual([20, 20.4, 20.8]);
    expect(features[0]!.heightsM).toEqual([null, 3]);
  });

  it('does not take what a receiver calls a track for a road', () => {
    expect(previewOfFile('tracks.gpx').features[1]!.suggestion).toBe('fenceLine');
  });
});

describe('a zipped Shapefile', () => {
  it('gives names in any letters, and the figures beside them', () => {
    const { features } = previewOfFile('layers.zip');
    expect(features.map(({ name }) => name)).toContain('Māra creek (1)');
    expect(features.find(({ name }) => name === 'Gate at the yards')).toMatchObject({
      suggestion: 'gateway',
      widthM: 4.2,
    });
  });

  it('comes to WGS 84 where GDAL had it before it was projected', () => {
    const top = previewOfFile('layers.zip').features.find(({ name }) => name === 'Top fence')!;
    const written: LonLat[] = [
      [168.001, -42.001],
      [168.002, -42.0015],
      [168.004, -42.001],
    ];
    for (const [i, place] of top.path.entries()) expect(distanceM(place, written[i]!)).toBeLessThan(0.001);
    expect(top.heightsM).toEqual([12, 15, 31]);
  });
});

describe('a table of points', () => {
  it('is read by the names of its columns, in degrees however they are written', () => {
    const { features, problems } = previewOfFile('points.csv');
    expect(features.map(({ name, suggestion }) => [name, suggestion])).toEqual([
      ['River gate', 'gateway'],
      ['Corner, old', 'post'],
      ['Typed', 'post'],
    ]);
    expect(distanceM(features[2]!.path[0]!, [168.003, -42.001])).toBeLessThan(0.01);
    expect(allInEnglish(problems)).toEqual([
      { index: 2, name: 'Nowhere', why: 'its latitude is empty', whatToDo: 'Fix row 4 of the table.' },
    ]);
  });

  it('with eastings and northings is read in the system of the property, or asks for it', () => {
    const text = 'name;easting;northing\nTrig;1186331,50;5346166,20\n';
    expect(refusalOf('a.csv', text)).toContain('coordinate system');
    const nztm = gridSystem('EPSG:2193');
    const { features, notes } = previewOfBytes('a.csv', bytesOf(text), { grid: nztm });
    // The same place by GDAL 3.6.2: gdaltransform -s_srs EPSG:2193 -t_srs EPSG:4326.
    expect(distanceM(features[0]!.path[0]!, [168.011366565365, -41.928019176516])).toBeLessThan(0.01);
    expect(notes.map((note) => inEnglish(note)).join()).toContain('NZTM2000');
  });

  it('never takes degrees for metres, nor their decimal commas for thousands', () => {
    const nztm = gridSystem('EPSG:2193');
    for (const text of [
      'name,easting,northing\nTrig,168.0114,-41.928\n',
      'name;easting;northing\nTrig;168,0114;-41,928\n',
      'name,lon,lat\nTrig,"168,0114","-41,9280"\n',
      'name,lon,lat\nTrig,"168,011","-41,928"\n',
    ]) {
      const { features, notes } = previewOfBytes('a.csv', bytesOf(text), { grid: nztm });
      expect(distanceM(features[0]!.path[0]!, [168.0114, -41.928]), text).toBeLessThan(50);
      if (text.includes('easting'))
        expect(notes.map((note) => inEnglish(note)).join()).toContain(
          '“easting” and “northing” are as small as degrees',
        );
    }
  });

  it('without columns of places says which columns it has', () => {
    expect(refusalOf('a.csv', 'name,price\nWire,12\n')).toContain('name, price');
  });
});
