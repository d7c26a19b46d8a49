import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { jsonFault } from '../../../../core/exchange/geojson/jsonFault.ts';
import { readGeoJson } from '../../../../core/exchange/geojson/readGeoJson.ts';
import { importFeatures, usualChoices, whyNotImport } from '../../../../core/exchange/intake/importFeatures.ts';
import type { ImportAs, Preview, ReadOptions } from '../../../../core/exchange/preview/types.ts';
import { distanceM } from '../../../../core/geometry/geodesic.ts';
import { newProperty, startingFenceTypes } from '../../../../core/model/defaults.ts';
import { addFenceLine } from '../../../../core/model/edits/addFenceLine.ts';
import { EditRefused } from '../../../../core/model/edits/support/edit.ts';
import { type Project, projectOf, propertyOf } from '../../../../core/model/project.ts';
import { inEnglish } from '../../../support/english.ts';
import { countingIds } from '../../../support/ids.ts';
import { at, emptyProject, testOrigin } from '../../../support/randomProjects.ts';

interface Raw {
  readonly geometry?: unknown;
  readonly properties?: unknown;
  readonly id?: unknown;
}

function file(...features: readonly Raw[]): string {
  return JSON.stringify({
    type: 'FeatureCollection',
    features: features.map((feature) => ({ type: 'Feature', properties: {}, ...feature })),
  });
}

const line = (...coordinates: unknown[]) => ({ type: 'LineString', coordinates });
const point = (coordinates: unknown) => ({ type: 'Point', coordinates });

function preview(text: string, options?: ReadOptions): Preview {
  const read = readGeoJson(text, options);
  if (!read.ok) throw new Error(inEnglish(read.message));
  return read.preview;
}

function refusalOf(text: string): string {
  const read = readGeoJson(text);
  expect(read.ok).toBe(false);
  return read.ok ? '' : `${inEnglish(read.message)} ${inEnglish(read.remedy)}`;
}

function taken(text: string, as: Readonly<Record<string, ImportAs>> = {}, into: Project = emptyProject()) {
  const choices = { ...usualChoices, typeId: 'ft-2', as: new Map(Object.entries(as)) };
  return importFeatures(preview(text), choices, into, countingIds());
}

describe('a text that is no GeoJSON', () => {
  it.each([
    ['', 'The file is empty.'],
    ['  \n ', 'The file is empty.'],
    ['<kml/>', 'XML'],
    ['PK\u0003\u0004', 'zip'],
    ['[1, 2]', 'a list'],
    ['"text"', '"text"'],
    ['null', '"null"'],
    ['{}', 'nothing'],
    ['{"type": "Topology"}', 'Topology'],
    ['{"type": "FeatureCollection"}', 'without a list of features'],
    ['{"type": "FeatureCollection", "features": {}}', 'without a list of features'],
  ])('%j is refused with the reason', (text, reason) => {
    expect(refusalOf(text)).toContain(reason);
  });

  it('that breaks off says where', () => {
    const whole = file({ geometry: line(at(0, 0), at(50, 0)) }).replace('"features"', '\n"features"');
    const message = refusalOf(whole.slice(0, -10));
    expect(message).toContain('breaks off at line 2');
  });

  it('that has a slip in it says where, and shows it', () => {
    const message = refusalOf('{"type": "FeatureCollection",\n "features": [}]}');
    expect(message).toContain('line 2, column 15');
    expect(message).toContain('}]}');
  });

  it('in another coordinate system is refused, in WGS 84 by the old member it is not', () => {
    const withSystem = (name: string) => {
      const collection = JSON.parse(file({ geometry: line(at(0, 0), at(50, 0)) })) as object;
      return JSON.stringify({ ...collection, crs: { type: 'name', properties: { name } } });
    };
    expect(refusalOf(withSystem('urn:ogc:def:crs:EPSG::2193'))).toContain('EPSG::2193');
    for (const name of ['urn:ogc:def:crs:OGC:1.3:CRS84', 'EPSG:4326', 'urn:ogc:def:crs:EPSG::4326']) {
      expect(
        preview(withSystem(name))
          .notes.map((note) => inEnglish(note))
          .join(),
      ).toContain('WGS 84');
    }
  });

  it('is read with a byte order mark in front', () => {
    expect(preview(`\ufeff${file({ geometry: point(at(0, 0)) })}`).features).toHaveLength(1);
  });
});

describe('geometries', () => {
  it('are taken bare, in a feature, in a collection and in collections of geometries', () => {
    const a = at(0, 0);
    const b = at(50, 0);
    const all = {
      type: 'GeometryCollection',
      geometries: [
        line(a, b),
        point(a),
        { type: 'MultiPoint', coordinates: [a, b] },
        {
          type: 'MultiLineString',
          coordinates: [
            [a, b],
            [b, a],
          ],
        },
        { type: 'Polygon', coordinates: [[a, b, at(50, 50), a]] },
        { type: 'MultiPolygon', coordinates: [[[a, b, at(50, 50), a]]] },
        { type: 'GeometryCollection', geometries: [point(b)] },
      ],
    };
    const shapes = ['line', 'point', 'point', 'point', 'line', 'line', 'outline', 'outline', 'point'];
    for (const text of [
      JSON.stringify(all),
      JSON.stringify({ type: 'Feature', geometry: all }),
      file({ geometry: all }),
    ]) {
      const { features, problems } = preview(text);
      expect(features.map(({ shape }) => shape)).toEqual(shapes);
      expect(new Set(features.map(({ key }) => key)).size).toBe(shapes.length);
      expect(problems).toEqual([]);
    }
  });

  it('keep their heights, and close an outline that is open', () => {
    const [a, b, c] = [at(0, 0), at(50, 0), at(50, 50)];
    const { features, notes } = preview(file({ geometry: { type: 'Polygon', coordinates: [[[...a, 12], b, c]] } }));
    expect(features[0]!.path).toEqual([a, b, c, a]);
    expect(notes).toEqual([]);
    expect(features[0]!.heightsM).toEqual([12, null, null, 12]);
  });

  it('across the 180 meridian become one line again, cut or written on past it', () => {
    const cut = {
      type: 'MultiLineString',
      coordinates: [
        [
          [179.9, -20],
          [180, -20],
        ],
        [
          [-180, -20],
          [-179.9, -20],
        ],
      ],
    };
    const past = line([179.9, -20], [180.1, -20]);
    for (const geometry of [cut, past]) {
      const { features, bounds } = preview(file({ geometry }));
      expect(features).toHaveLength(1);
      const [start, end] = features[0]!.path as [[number, number], [number, number]];
      expect(distanceM(start, end)).toBeCloseTo(distanceM([179.9, -20], [-179.9, -20]), 3);
      expect(bounds![0]).toBeCloseTo(179.9, 9);
      expect(bounds![2]).toBeCloseTo(-179.9, 9);
    }
  });

  it.each([
    ['null geometry', { geometry: null }, 'has no geometry'],
    ['no geometry', { geometry: undefined }, 'has no geometry'],
    ['a number', { geometry: 3 }, 'not an object'],
    ['an unknown type', { geometry: { type: 'Circle' } }, 'Circle'],
    ['one position', { geometry: line(at(0, 0)) }, 'no length'],
    ['the same position twice', { geometry: line(at(0, 0), at(0, 0)) }, 'no length'],
    ['text for numbers', { geometry: line(['1', '2'], [1, 2]) }, 'not made of numbers'],
    ['null for a number', { geometry: point([null, 2]) }, 'not made of numbers'],
    ['a position of one number', { geometry: point([1]) }, 'not a longitude and a latitude'],
    ['1e308', { geometry: line([1e308, 0], [0, 0]) }, 'no place on earth'],
    ['a latitude of 91', { geometry: point([0, 91]) }, 'no place on earth'],
    [
      'an outline of two corners',
      { geometry: { type: 'Polygon', coordinates: [[at(0, 0), at(1, 0), at(0, 0)]] } },
      'three different',
    ],
    ['coordinates that are no list', { geometry: { type: 'LineString', coordinates: 'x' } }, 'not a list'],
  ])('with %s are told of', (_, raw, why) => {
    const { features, problems } = preview(
      file({ ...raw, properties: { name: 'Bad' } }, { geometry: point(at(0, 0)) }),
    );
    expect(features).toHaveLength(1);
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatchObject({ index: 0, name: 'Bad' });
    expect(inEnglish(problems[0]!.why)).toContain(why);
    expect(inEnglish(problems[0]!.whatToDo)).toMatch(/\.$/);
  });

  it('that read as infinite numbers are told of', () => {
    const text = file({ geometry: point([1, 2]) }).replace('[1,2]', '[1e999,2]');
    expect(inEnglish(preview(text).problems[0]!.why)).toContain('no place on earth');
  });

  it('nested without end are told of', () => {
    const deep = '{"type":"GeometryCollection","geometries":['.repeat(5000);
    const text = `{"type":"Feature","properties":{},"geometry":${deep}${']}'.repeat(5000)}}`;
    expect(inEnglish(preview(text).problems[0]!.why)).toContain('too deeply');
  });

  it('among things that are no features are told of', () => {
    const text = '{"type": "FeatureCollection", "features": [7, null, {"type": "Point", "coordinates": [0, 0]}]}';
    expect(preview(text).problems.map(({ name }) => name)).toEqual(['Feature 1', 'Feature 2', 'Feature 3']);
  });
});

describe('exchanged latitude and longitude', () => {
  it('are suspected where latitudes are above 90, and put right by reading again', () => {
    const text = file({ geometry: line([-43.5, 172.5], [-43.6, 172.6]) });
    expect(inEnglish(preview(text).looksSwapped)).toContain('exchanged');
    const swapped = preview(text, { swap: true });
    expect(swapped.features[0]!.path[0]).toEqual([172.5, -43.5]);
    expect(swapped.looksSwapped).toBeNull();
  });

  it('are suspected where the file would lie on the property with them exchanged', () => {
    const [lon, lat] = testOrigin;
    const text = file({ geometry: line([lat, lon], [lat + 0.01, lon]) });
    expect(preview(text).looksSwapped).toBeNull();
    expect(inEnglish(preview(text, { nearTo: testOrigin }).looksSwapped)).toContain('far from this property');
    expect(preview(file({ geometry: line(at(0, 0), at(9, 9)) }), { nearTo: testOrigin }).looksSwapped).toBeNull();
  });
});

describe('what a feature is taken for', () => {
  it.each([
    [line(at(0, 0), at(9, 0)), {}, 'fenceLine'],
    [line(at(0, 0), at(9, 0)), { power: 'line', voltage: '11000' }, 'powerLine'],
    [line(at(0, 0), at(9, 0)), { waterway: 'stream' }, 'creek'],
    [line(at(0, 0), at(9, 0)), { highway: 'track' }, 'road'],
    [line(at(0, 0), at(9, 0)), { type: 'Boundary' }, 'boundary'],
    [point(at(0, 0)), {}, 'post'],
    [point(at(0, 0)), { barrier: 'gate' }, 'gateway'],
    [point(at(0, 0)), { what: 'Energiser' }, 'energiser'],
    [point(at(0, 0)), { what: 'investigated' }, 'post'],
  ])('%o with %o: %s', (geometry, properties, suggestion) => {
    expect(preview(file({ geometry, properties })).features[0]!.suggestion).toBe(suggestion);
  });

  it('is named from its properties or its id, without what does not print', () => {
    const named = (raw: Raw) => preview(file({ geometry: point(at(0, 0)), ...raw })).features[0]!.name;
    expect(named({ properties: { NAME: ' Top\u0000 gate\n' } })).toBe('Top gate');
    expect(named({ id: 12 })).toBe('12');
    expect(named({ properties: { name: {} } })).toBe('Feature 1');
    expect(named({ properties: { name: 'x'.repeat(5000) } })).toHaveLength(120);
  });
});

describe('taking over', () => {
  it('draws lines, boundaries, posts and services as chosen, and leaves out what is left out', () => {
    const a = line(at(0, 0), at(90, 0));
    const features = [a, a, point(at(0, 0)), point(at(5, 0)), a, a].map((geometry) => ({ geometry }));
    const as = { 1: 'boundary', 3: 'energiser', 4: 'powerLine', 5: 'leaveOut' } as const;
    const { project, added, problems } = taken(file(...features), as);
    expect(problems).toEqual([]);
    expect(added).toBe(5);
    expect([...project.fenceLine.values()].map(({ live, typeId }) => [live, typeId])).toEqual([
      [true, 'ft-2'],
      [false, 'ft-2'],
    ]);
    expect([project.post.size, project.energiser.size, project.service.size]).toEqual([1, 1, 1]);
  });

  it('puts gateways on the nearest line with the width that is given, and says of those that find none', () => {
    const gate = (x: number, y: number, properties: object) => ({
      geometry: point(at(x, y)),
      properties: { kind: 'gate', ...properties },
    });
    const text = file(gate(40, 2, { width: '7.2 m', name: 'Wide' }), gate(40, 20, { name: 'Far' }), {
      geometry: line(at(0, 0), at(90, 0)),
    });
    const { project, problems } = taken(text);
    const [gateway] = [...project.gateway.values()];
    expect(gateway).toMatchObject({ name: 'Wide', widthM: 7.2, leaves: 2, atM: expect.closeTo(40, 3) });
    expect(project.crossing.size).toBe(1);
    expect(problems.map(({ name, why }) => [name, inEnglish(why)])).toEqual([
      ['Far', 'no fence line is within 5.00 m of it'],
    ]);
  });

  it('says why two gateways cannot stand at one place, and takes over the rest', () => {
    const gate = (name: string) => ({ geometry: point(at(40, 0)), properties: { name, kind: 'gate' } });
    const { project, problems } = taken(file({ geometry: line(at(0, 0), at(90, 0)) }, gate('One'), gate('Two')));
    expect(project.gateway.size).toBe(1);
    expect(inEnglish(problems[0]!.why)).toContain('overlap');
  });

  it('lays a new property down where the file is', () => {
    const fresh = projectOf([newProperty('New'), ...startingFenceTypes()]);
    const { project } = taken(file({ geometry: line(at(0, 0), at(100, 0)) }), {}, fresh);
    expect(propertyOf(project).placed).toBe(true);
    expect(distanceM(propertyOf(project).origin, at(50, 0))).toBeLessThan(0.1);
  });

  it('refuses a drawing without a place on earth, a file far away, and one with nothing usable', () => {
    const text = file({ geometry: line(at(0, 0), at(100, 0)) });
    const unplaced = projectOf([newProperty('Grid'), ...startingFenceTypes()]);
    const drawn = addFenceLine(
      {
        path: [
          [0, 0],
          [0.001, 0],
        ],
        typeId: 'ft-2',
      },
      countingIds(),
    )(unplaced);
    expect(whyNotImport(preview(text), drawn)?.code).toBe('notPlaced');
    expect(() => taken(text, {}, drawn)).toThrow(EditRefused);
    const elsewhere = addFenceLine({ path: [at(0, 0), at(9, 0)], typeId: 'ft-2' }, countingIds())(emptyProject());
    expect(whyNotImport(preview(file({ geometry: line([10, 50], [10.1, 50]) })), elsewhere)?.code).toBe('tooFar');
    expect(whyNotImport(preview(file({ geometry: null })), elsewhere)?.code).toBe('nothingUsable');
  });

  it('does not let a file pass itself off as ours with values out of bounds, or with what nothing stands on', () => {
    const ours = (kind: string, id: string, fields: object, geometry: unknown = null) => {
      return { geometry, properties: { 'undergate:kind': kind, 'undergate:id': id, ...fields } };
    };
    const gate = {
      name: 'G',
      lineId: 'gone',
      atM: 1,
      widthM: 4,
      leaves: 1,
      hungFrom: 'start',
      opens: 'left',
      vehicles: false,
      status: 'built',
      note: '',
    };
    const type = { name: 'T', liveWires: -1, earthWires: 0, barbedWires: 0, wireId: 'w', postSpacingM: 4, note: '' };
    const text = file(
      ours('gateway', 'g', gate, point(at(0, 0))),
      ours('fenceType', 't', type),
      ours('switch', 's', {
        name: 'S',
        place: { on: 'moon' },
        normally: 'closed',
        pinned: true,
        status: 'built',
        note: '',
      }),
      ours('crossing', 'c', {}),
      ours('__proto__', 'p', {}),
      ours('keptPlan', 'k', { name: 'k', date: '2025-01-01', note: '', things: [{ kind: 'evil' }] }),
    );
    const { project, added, problems } = taken(text);
    expect(added).toBe(0);
    expect(problems).toHaveLength(4);
    expect(project.keptPlan.size).toBe(0);
    expect(preview(text).problems).toHaveLength(2);
  });
});

describe('jsonFault', () => {
  it('agrees with the parser on what is JSON', () => {
    fc.assert(
      fc.property(fc.json(), fc.nat(200), fc.string({ maxLength: 2 }), fc.nat(2), (sound, place, put, drop) => {
        const at = place % (sound.length + 1);
        const text = sound.slice(0, at) + put + sound.slice(at + drop);
        const fault = jsonFault(text);
        expect(fault === null).toBe(isJson(text));
        if (fault === null) return;
        expect(fault).toBeLessThanOrEqual(text.length);
        expect(jsonFault(sound)).toBeNull();
      }),
      { seed: 61, numRuns: 3000 },
    );
  });

  it.each([
    ['{"a": 1,}', 8],
    ['[1 2]', 3],
    ['{"a" 1}', 5],
    ['[tru]', 1],
    ['["a\\x"]', 3],
    ['[1] 2', 4],
    ['[1', 2],
    ['["abc', 5],
    ['{"a": nul', 9],
    ['01', 1],
  ])('of %s is at %d', (text, at) => {
    expect(jsonFault(text)).toBe(at);
  });
});

function isJson(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}
