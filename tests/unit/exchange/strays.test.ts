import { describe, expect, it } from 'vitest';
import {
  type ImportChoices,
  importFeatures,
  usualChoices,
  whyNotImport,
} from '../../../core/exchange/intake/importFeatures.ts';
import { whereaboutsOf } from '../../../core/exchange/intake/whereabouts.ts';
import type { Preview } from '../../../core/exchange/preview/types.ts';
import { destination, distanceM } from '../../../core/geometry/geodesic.ts';
import { newProperty, startingFenceTypes } from '../../../core/model/defaults.ts';
import { placePost } from '../../../core/model/edits/placePost.ts';
import { type Project, projectOf, propertyOf } from '../../../core/model/project.ts';
import type { LonLat } from '../../../core/model/things.ts';
import { inEnglish } from '../../support/english.ts';
import { countingIds } from '../../support/ids.ts';
import { bytesOf, previewOfBytes } from './mapFiles.ts';

const home: LonLat = [149.1, -35.3];
const away = (km: number, bearing = 40) => destination(home, bearing, 1000 * km);
const around = (middle: LonLat, count: number) =>
  Array.from({ length: count }, (_, i) => destination(middle, 37 * i, 100 + 20 * i));

type Piece =
  | { readonly name: string; readonly at: LonLat }
  | { readonly name: string; readonly path: readonly LonLat[] };

const points = (name: string, places: readonly LonLat[]): Piece[] =>
  places.map((at, i) => ({ name: `${name} ${i + 1}`, at }));
const lineAt = (name: string, middle: LonLat): Piece => ({ name, path: [middle, destination(middle, 80, 900)] });

function file(...pieces: readonly Piece[]): Preview {
  const features = pieces.map((piece) => ({
    type: 'Feature',
    properties: { name: piece.name },
    geometry:
      'at' in piece ? { type: 'Point', coordinates: piece.at } : { type: 'LineString', coordinates: piece.path },
  }));
  return previewOfBytes('a.geojson', bytesOf(JSON.stringify({ type: 'FeatureCollection', features })));
}

const fresh = (): Project => projectOf([newProperty('Fresh'), ...startingFenceTypes()]);

/** A property with one post, at home. */
function drawn(): Project {
  const placed = projectOf([{ ...newProperty('Drawn'), origin: home, placed: true }, ...startingFenceTypes()]);
  return placePost({ at: home }, countingIds())(placed);
}

const taken = (preview: Preview, into: Project, choices: Partial<ImportChoices> = {}) =>
  importFeatures(preview, { ...usualChoices, typeId: 'ft-2', ...choices }, into, countingIds(100));

const straysOf = (preview: Preview, into: Project, place: number | null = null) =>
  [...whereaboutsOf(preview, into, place)!.strays.values()].map(({ feature }) => feature.name);

const keyOf = (preview: Preview, name: string) => preview.features.find((feature) => feature.name === name)!.key;
const kmFromHome = (project: Project) => distanceM(propertyOf(project).origin, home) / 1000;

describe('a stray point', () => {
  it('at 0, 0 or left over from a trip leaves a new property where the rest is', () => {
    for (const at of [[0, 0], [0.0000000001, 0], away(7000), away(150)] as LonLat[]) {
      const preview = file(...points('P', around(home, 50)), { name: 'Stray', at });
      const { project, added, problems } = taken(preview, fresh());
      expect(added).toBe(50);
      expect(problems.map(({ name }) => name)).toEqual(['Stray']);
      expect(kmFromHome(project)).toBeLessThan(2);
    }
  });

  it('is told of with its distance, or with what 0, 0 means', () => {
    const far = taken(file(...points('P', around(home, 20)), { name: 'Stray', at: away(300) }), fresh());
    expect(inEnglish(far.problems[0]!.why)).toMatch(/^it lies (299|300|301)(\.\d)? km from the rest$/);
    const noFix = taken(file(...points('P', around(home, 20)), { name: 'Stray', at: [0, 0] }), fresh());
    expect(inEnglish(noFix.problems[0]!.why)).toContain('receiver without a fix');
    const beside = taken(file(...points('P', around(home, 20)), { name: 'Stray', at: away(300) }), drawn());
    expect(inEnglish(beside.problems[0]!.why)).toContain('from the middle of the property');
  });

  it('does not keep the rest out of a property that is drawn', () => {
    for (const at of [[0, 0], away(7000), away(60)] as LonLat[]) {
      const preview = file(...points('P', around(away(2), 20)), { name: 'Stray', at });
      expect(whyNotImport(preview, drawn())).toBeNull();
      const { project, added } = taken(preview, drawn());
      expect([added, project.post.size]).toEqual([20, 21]);
      expect(propertyOf(project).origin).toEqual(home);
    }
  });

  it('that is left out by choice is left out, and one that is taken in by choice is', () => {
    const preview = file(...points('P', around(home, 20)), { name: 'Stray', at: away(150) });
    const out = taken(preview, fresh(), { as: new Map([[keyOf(preview, 'Stray'), 'leaveOut']]) });
    expect([out.added, out.problems]).toEqual([20, []]);
    const into = taken(preview, fresh(), { as: new Map([[keyOf(preview, 'Stray'), 'post']]) });
    expect([into.added, into.problems]).toEqual([21, []]);
    expect(kmFromHome(into.project)).toBeLessThan(2);
    const tooFar = file(...points('P', around(home, 20)), { name: 'Stray', at: away(900) });
    const refused = taken(tooFar, fresh(), { as: new Map([[keyOf(tooFar, 'Stray'), 'post']]) });
    expect([refused.added, inEnglish(refused.problems[0]?.why)]).toEqual([
      20,
      expect.stringContaining('from the middle'),
    ]);
  });

  it('does not decide where the property is when everything else is left out', () => {
    const preview = file(...points('P', around(home, 5)), { name: 'Real', at: away(400) });
    const choices = new Map(
      preview.features.map(({ key, name }) => [key, name === 'Real' ? 'post' : 'leaveOut'] as const),
    );
    const { project, added } = taken(preview, fresh(), { as: choices });
    expect(added).toBe(1);
    expect(distanceM(propertyOf(project).origin, away(400))).toBeLessThan(10);
  });

  it('at 0, 0 within a line is left out of it, and said', () => {
    const path: LonLat[] = [home, away(0.2), [0, 0], away(0.5), away(0.8)];
    const preview = file({ name: 'Track', path });
    expect(preview.features[0]!.path).toEqual([home, away(0.2), away(0.5), away(0.8)]);
    expect(preview.notes.map((note) => inEnglish(note)).join()).toContain(
      'One position of lines at latitude 0, longitude 0',
    );
    expect(taken(preview, fresh()).problems).toEqual([]);
    // There it may be meant.
    const there = file({
      name: 'Line',
      path: [
        [0, 0],
        [0.01, 0.01],
        [0.02, 0],
      ],
    });
    expect(there.features[0]!.path).toHaveLength(3);
    expect(file({ name: 'P', at: [0, 0] }).features).toHaveLength(1);
    expect(taken(file({ name: 'P', at: [0, 0] }), fresh()).added).toBe(1);
  });
});

describe('where a property is', () => {
  it('may be in two parts 20 km from each other, or 60 km where both are worth it', () => {
    const near = file(...points('A', around(home, 30)), ...points('B', around(away(20), 2)));
    expect(straysOf(near, fresh())).toEqual([]);
    const two = file(lineAt('A', home), ...points('A', around(home, 20)), lineAt('B', away(60)));
    expect(straysOf(two, fresh())).toEqual([]);
    expect(taken(two, fresh()).added).toBe(22);
    expect(kmFromHome(taken(two, fresh()).project)).toBeGreaterThan(20);
    // A waypoint or two that far off are left over from somewhere.
    const leftOver = file(...points('A', around(home, 30)), ...points('B', around(away(60), 2)));
    expect(straysOf(leftOver, fresh())).toEqual(['B 1', 'B 2']);
  });

  it('is where its one line is, not where points are strewn about the country', () => {
    const strewn = Array.from({ length: 25 }, (_, i) => away(150 + 60 * i, 50 * i));
    const preview = file(lineAt('Boundary', home), ...points('P', strewn));
    expect(straysOf(preview, fresh())).toHaveLength(25);
    const { project, added } = taken(preview, fresh());
    expect(added).toBe(1);
    expect(kmFromHome(project)).toBeLessThan(2);
  });

  it('is asked for where two places are about as likely', () => {
    const preview = file(...points('A', around(home, 20)), ...points('B', around(away(500), 20)));
    expect(whyNotImport(preview, fresh())).toMatchObject({ code: 'whichPlace' });
    expect(() => taken(preview, fresh())).toThrow(/places that lie far from one another/);
    const { places } = whereaboutsOf(preview, fresh(), null)!;
    expect(places.map(({ pieces }) => pieces)).toEqual([20, 20]);
    for (const { group, middle } of places) {
      expect(whyNotImport(preview, fresh(), group)).toBeNull();
      const { project, added } = taken(preview, fresh(), { place: group });
      expect(added).toBe(20);
      expect(distanceM(propertyOf(project).origin, middle)).toBeLessThan(100);
    }
    // A property that lies at one of them does not need to be asked.
    expect(whyNotImport(preview, drawn())).toBeNull();
    expect(taken(preview, drawn()).added).toBe(20);
    const placed = projectOf([{ ...newProperty('Placed'), origin: away(500), placed: true }, ...startingFenceTypes()]);
    expect(straysOf(preview, placed).every((name) => name.startsWith('A'))).toBe(true);
  });

  it('across the 180 meridian and at the poles is one place', () => {
    for (const middle of [
      [180, -17],
      [20, 89.99],
    ] as LonLat[]) {
      const preview = file(...points('P', around(middle, 30)), { name: 'Stray', at: [30, 10] });
      expect(straysOf(preview, fresh())).toEqual(['Stray']);
      expect(taken(preview, fresh()).added).toBe(30);
    }
  });

  it('of a long track is where most of it is, though the way there came in too', () => {
    const drive = Array.from({ length: 400 }, (_, i) => away(i, 90));
    const preview = file(
      { name: 'Drive', path: drive },
      ...Array.from({ length: 12 }, (_, i) => lineAt(`F${i}`, away(i / 10))),
    );
    const { added, problems } = taken(preview, fresh());
    expect(added).toBe(12);
    expect(problems.map(({ name }) => name)).toEqual(['Drive']);
  });

  it('is too far off where nothing of the file is within reach', () => {
    const preview = file(...points('P', around(away(900), 20)));
    const refusal = whyNotImport(preview, drawn());
    expect(refusal?.code).toBe('tooFar');
    expect(inEnglish(refusal?.message)).toMatch(/ (89\d|90\d)\.\d km from /);
  });

  it('is found in a file of many pieces in no time worth mentioning', () => {
    const many = Array.from({ length: 30_000 }, (_, i) => destination(home, i * 7, (i % 500) * 30));
    const preview = file(...points('P', many), { name: 'Stray', at: away(3000) });
    expect(straysOf(preview, fresh())).toEqual(['Stray']);
  });
});
