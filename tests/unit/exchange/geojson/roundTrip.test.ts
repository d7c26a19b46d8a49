import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { demoThings } from '../../../../assets/demo/makeDemo.ts';
import { readGeoJson } from '../../../../core/exchange/geojson/readGeoJson.ts';
import { whyNotWriteGeoJson, writeGeoJson } from '../../../../core/exchange/geojson/writeGeoJson.ts';
import { type Imported, importFeatures, usualChoices } from '../../../../core/exchange/intake/importFeatures.ts';
import { exchangedKinds } from '../../../../core/exchange/preview/ours.ts';
import { pathLengthM } from '../../../../core/geometry/geodesic.ts';
import { newFenceType, newProperty, startingFenceTypes } from '../../../../core/model/defaults.ts';
import { difference } from '../../../../core/model/difference.ts';
import { addFenceLine } from '../../../../core/model/edits/addFenceLine.ts';
import { addThing } from '../../../../core/model/edits/addThing.ts';
import { placeGateway } from '../../../../core/model/edits/placeGateway.ts';
import { type Project, projectOf, propertyOf, put } from '../../../../core/model/project.ts';
import type { LonLat, Thing } from '../../../../core/model/things.ts';
import { surveyOf } from '../../../../core/survey/survey.ts';
import { describeWith } from '../../../support/describeWith.ts';
import { allInEnglish, inEnglish } from '../../../support/english.ts';
import { countingIds } from '../../../support/ids.ts';
import { at, emptyProject, randomProject } from '../../../support/randomProjects.ts';
import { brokenRule } from '../../../support/rfc7946.ts';

const demo = projectOf(demoThings());

function exported(project: Project): string {
  return writeGeoJson(project, surveyOf(project));
}

function imported(text: string, into: Project): Imported {
  const read = readGeoJson(text);
  if (!read.ok) throw new Error(inEnglish(read.message));
  expect(read.preview.problems).toEqual([]);
  return importFeatures(read.preview, { ...usualChoices, typeId: 'ft-2' }, into, countingIds(900));
}

const fresh = (): Project => projectOf([newProperty('Another name'), ...startingFenceTypes()]);

function exchanged(project: Project): Thing[] {
  return exchangedKinds.flatMap((kind) => [...project[kind].values()] as Thing[]);
}

describe('a drawing that goes out and comes back', () => {
  it('is the same to the last digit in a new property, and changes nothing where it came from', () => {
    fc.assert(
      fc.property(randomProject, (project) => {
        const text = exported(project);
        expect(brokenRule(JSON.parse(text))).toBeNull();
        const back = imported(text, fresh());
        expect(back.problems).toEqual([]);
        expect(exchanged(back.project)).toEqual(exchanged(project));
        const again = imported(text, project);
        expect(difference(project, again.project)).toEqual([]);
        expect(again).toMatchObject({ added: 0, updated: 0, problems: [] });
      }),
      { seed: 41, numRuns: 120 },
    );
  });

  it('holds for the demo property, with all its readings, services and paddocks', () => {
    const text = exported(demo);
    expect(brokenRule(JSON.parse(text))).toBeNull();
    const back = imported(text, fresh());
    expect(exchanged(back.project)).toEqual(exchanged(demo));
    expect(propertyOf(back.project)).toEqual(propertyOf(demo));
    for (const [id, { path }] of demo.fenceLine) {
      const lengthM = pathLengthM(path);
      expect(Math.abs(pathLengthM(back.project.fenceLine.get(id)!.path) - lengthM)).toBeLessThanOrEqual(1e-4 * lengthM);
    }
  });

  it('holds for the plain wires of fence types, and where nobody has said how many', () => {
    const { plainWires: _, ...older } = newFenceType('ft-old', 'Seven wires');
    const project = put(
      emptyProject(),
      newFenceType('ft-new', 'Six plain', { liveWires: 0, plainWires: 6, plainWireId: 'steel-4' }),
      older,
    );
    const back = imported(exported(project), fresh()).project;
    expect([...back.fenceType.values()]).toEqual([...project.fenceType.values()]);
  });

  it('comes back across the 180 meridian, cut there in the file', () => {
    const property = { ...newProperty('Across', [180, -20]) };
    const newId = countingIds();
    const corners: LonLat[] = [
      [179.99, -20.01],
      [-179.99, -20.008],
      [-179.991, -19.99],
      [179.992, -19.991],
      [179.99, -20.01],
    ];
    const ring = addFenceLine({ path: corners, typeId: 'ft-2' }, newId);
    const drawn = placeGateway({ lineId: 'fenceLine-1', atM: 300 }, newId)(ring(put(emptyProject(), property)));
    const project = addThing({ kind: 'paddock', name: 'Both sides', at: [180, -20], note: '' }, newId)(drawn);
    const text = exported(project);
    expect(brokenRule(JSON.parse(text))).toBeNull();
    const [line] = JSON.parse(text).features.filter((f: { id: string }) => f.id === 'fenceLine:fenceLine-1');
    expect(line.geometry.type).toBe('MultiLineString');
    expect(exchanged(imported(text, fresh()).project)).toEqual(exchanged(project));
  });

  it('keeps what a reading was judged by', () => {
    const [first] = demo.reading.values();
    const yardstick = { usualV: 8100, by: 'reading', readOn: '2025-03-04', lowBelowV: 4900, goodFromV: 6100 } as const;
    const project = put(demo, { ...first!, yardstick });
    expect(imported(exported(project), fresh()).project.reading.get(first!.id)).toEqual({ ...first!, yardstick });
  });

  it('takes the word on a switch place only with what the place stands on', () => {
    const post: Thing = { kind: 'post', id: 'p', name: 'P', at: at(50, 0), role: 'strainer', note: '' };
    const word: Thing = { kind: 'switchRule', id: 'strainer:p:fenceLine-1', rule: 'forced' };
    const line = addFenceLine({ path: [at(0, 0), at(100, 0)], typeId: 'ft-2' }, countingIds())(emptyProject());
    const project = put(line, post, word);
    const whole = imported(exported(project), fresh());
    expect([...whole.project.switchRule.values()]).toEqual([word]);
    const file = JSON.parse(exported(project)) as { features: { properties: Record<string, unknown> }[] };
    const withoutPost = { ...file, features: file.features.filter((f) => f.properties['undergate:kind'] !== 'post') };
    const part = imported(JSON.stringify(withoutPost), fresh());
    expect(part.project.switchRule.size).toBe(0);
    expect(allInEnglish(part.problems)).toMatchObject([{ why: 'its post is not there' }]);
  });

  it('keeps the ring of a flood zone, whichever way round it was drawn', () => {
    const square = [at(0, 0), at(100, 0), at(100, 100), at(0, 100), at(0, 0)];
    for (const path of [square, square.toReversed()]) {
      const zone = {
        kind: 'service',
        name: 'Z',
        what: 'floodZone',
        path,
        voltageV: null,
        buried: false,
        open: null,
      } as const;
      const project = addThing({ ...zone, note: '' }, countingIds())(emptyProject());
      const text = exported(project);
      expect(brokenRule(JSON.parse(text))).toBeNull();
      expect([...imported(text, fresh()).project.service.values()][0]!.path).toEqual(path);
    }
  });

  it('holds what is computed: curves of crossings, areas of paddocks, letters of sections', () => {
    const { features } = JSON.parse(exported(demo)) as {
      features: { properties: Record<string, unknown>; geometry: { type: string; coordinates: unknown[] } }[];
    };
    const ofKind = (kind: string) => features.filter(({ properties }) => properties['undergate:kind'] === kind);
    expect(ofKind('crossing').every(({ geometry }) => geometry.coordinates.length > 5)).toBe(true);
    expect(
      ofKind('paddock').every(
        ({ geometry, properties }) => geometry.type === 'Polygon' && (properties.areaHa as number) > 0,
      ),
    ).toBe(true);
    const areaHa = ofKind('paddock').reduce((sum, { properties }) => sum + (properties.areaHa as number), 0);
    expect(Math.abs(areaHa - surveyOf(demo).totals.paddockAreaM2 / 10_000)).toBeLessThan(0.5);
    const letters = new Set(ofKind('run').map(({ properties }) => properties.section));
    expect(letters.size).toBe(surveyOf(demo).sections.length);
    const gate = ofKind('gateway')[0]!.properties;
    expect(gate.startPost).toHaveLength(2);
    expect(gate.endPost).toHaveLength(2);
  });

  it('takes changes that another program made to the places of lines and gateways', () => {
    const newId = countingIds();
    const line = addFenceLine({ path: [at(0, 0), at(200, 0)], typeId: 'ft-2' }, newId)(emptyProject());
    const project = placeGateway({ lineId: 'fenceLine-1', atM: 50 }, newId)(line);
    const file = JSON.parse(exported(project)) as { features: { id: string; geometry: { coordinates: unknown } }[] };
    const change = (id: string, coordinates: unknown) => {
      file.features.find((feature) => feature.id === id)!.geometry.coordinates = coordinates;
    };
    change('fenceLine:fenceLine-1', [at(0, 0), at(300, 0)]);
    change('gateway:gateway-1', at(120, 1));
    const back = imported(JSON.stringify(file), project);
    expect(back).toMatchObject({ added: 0, updated: 2 });
    expect(back.project.fenceLine.get('fenceLine-1')!.path[1]).toEqual(at(300, 0));
    expect(back.project.gateway.get('gateway-1')!.atM).toBeCloseTo(120, 2);
  });

  it('gives a name that is taken way to the next free one', () => {
    const other = placeGateway({ lineId: 'fenceLine-1', atM: 50 }, countingIds(50));
    const base = addFenceLine({ path: [at(0, 0), at(200, 0)], typeId: 'ft-2' }, countingIds())(emptyProject());
    const file = exported(placeGateway({ lineId: 'fenceLine-1', atM: 150 }, countingIds())(base));
    const back = imported(file, other(base));
    expect([...back.project.gateway.values()].map(({ name }) => name)).toEqual(['G1', 'G2']);
    expect(back.notes.map((note) => inEnglish(note)).join()).toContain('G1 of the file is called G2');
  });

  it('is refused for a property without a place on earth', () => {
    const unplaced = put(emptyProject(), newProperty('On the grid'));
    expect(whyNotWriteGeoJson(unplaced)?.code).toBe('notPlaced');
    expect(() => exported(unplaced)).toThrow(/blank grid/);
  });
});

describeWith(['ogrinfo'], 'GDAL', () => {
  it('reads the export, every feature of it', () => {
    const folder = mkdtempSync(join(tmpdir(), 'geojson-'));
    try {
      const file = join(folder, 'demo.geojson');
      writeFileSync(file, exported(demo));
      const said = execFileSync('ogrinfo', ['-al', '-so', file], { encoding: 'utf8' });
      const count = (JSON.parse(exported(demo)) as { features: unknown[] }).features.length;
      expect(said).toContain(`Feature Count: ${count}`);
    } finally {
      rmSync(folder, { recursive: true });
    }
  });
});
