import { describe, expect, it } from 'vitest';
import { editLimits, whyNotOneEdit } from '../../../core/api/editLimits.ts';
import { changesSchema } from '../../../core/api/messageSchemas.ts';
import { type ImportChoices, importFeatures, usualChoices } from '../../../core/exchange/intake/importFeatures.ts';
import { newProperty, startingFenceTypes } from '../../../core/model/defaults.ts';
import { applyChanges, type Change, difference, inverse } from '../../../core/model/difference.ts';
import { deleteThings } from '../../../core/model/edits/deleteThings.ts';
import { placeOnEarth } from '../../../core/model/edits/placeOnEarth.ts';
import type { HeightsAlong } from '../../../core/model/groundThings.ts';
import { type Project, projectOf, propertyOf, put } from '../../../core/model/project.ts';
import type { FenceLine, LonLat } from '../../../core/model/things.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import { mostBodyBytes } from '../../../electron/loopback/readBody.ts';
import { allInEnglish, inEnglish } from '../../support/english.ts';
import { countingIds } from '../../support/ids.ts';
import { randomNumbers } from '../../support/random.ts';
import { at, emptyProject } from '../../support/randomProjects.ts';
import { bytesOf, previewOfBytes } from './mapFiles.ts';

const fresh = (): Project => projectOf([newProperty('Fresh'), ...startingFenceTypes()]);

function taken(geometries: readonly unknown[], choices: Partial<ImportChoices> = {}, into = fresh()) {
  const features = geometries.map((geometry) => ({ type: 'Feature', properties: {}, geometry }));
  const preview = previewOfBytes('a.geojson', bytesOf(JSON.stringify({ type: 'FeatureCollection', features })));
  return importFeatures(preview, { ...usualChoices, typeId: 'ft-2', ...choices }, into, countingIds(10));
}

const points = (count: number) =>
  Array.from({ length: count }, (_, i) => ({ type: 'Point', coordinates: at((i % 400) * 5, Math.floor(i / 400) * 5) }));
const line = (path: readonly (readonly number[])[]) => ({ type: 'LineString', coordinates: path });
const fences = (project: Project): FenceLine[] => [...project.fenceLine.values()];

describe('150,000 points', () => {
  it('come in, pass the host’s own check, and are undone, put on the earth and deleted again', () => {
    const { project, added, problems } = taken(points(150_000));
    expect([added, problems.length]).toEqual([150_000, 0]);
    const changes = difference(fresh(), project);
    expect(changesSchema.safeParse(changes).success).toBe(true);
    expect(applyChanges(fresh(), changes).post.size).toBe(150_000);
    expect(applyChanges(project, inverse(changes)).post.size).toBe(0);
    const refs = [...project.post.keys()].map((id) => ({ kind: 'post', id }) as const);
    expect(deleteThings(refs)(project).post.size).toBe(0);
    const grid = put(project, { ...propertyOf(project), origin: [0, 0], placed: false });
    const placed = placeOnEarth({ point: { grid: [0, 0], earth: [10, 10] }, gridNorthDeg: 0 })(grid);
    expect(propertyOf(placed).placed).toBe(true);
  });
});

describe('what is too much for one step', () => {
  it('is refused before it is sent, in words', () => {
    const nodes = points(1);
    const many = Array.from({ length: editLimits.changes + 1 }, () => nodes[0]);
    expect(() => taken(many)).toThrow(/200,002 changes, and one step can make 200,000 at most\. Split it/);
  });

  it('is counted in bytes as the host counts them', () => {
    expect(editLimits.bytes).toBeLessThanOrEqual(mostBodyBytes);
    const noted = (note: string): Change[] => [
      {
        kind: 'post',
        id: 'p',
        before: null,
        after: { kind: 'post', id: 'p', name: '', at: [0, 0], role: 'strainer', note },
      },
    ];
    // Two bytes, three and four to a letter.
    for (const letter of ['x', 'ä', '草', '🐑']) {
      const changes = noted(letter.repeat(Math.floor(editLimits.bytes / Buffer.byteLength(letter))));
      expect(inEnglish(whyNotOneEdit(changes))).toMatch(/^6\d MB of changes/);
      const less = noted(letter.repeat(Math.floor((editLimits.bytes - 8192) / Buffer.byteLength(letter))));
      expect(whyNotOneEdit(less)).toBeNull();
    }
  });
});

describe('heights along a way', () => {
  it('of more than 50,000 positions are kept all, in several ways that the host takes', () => {
    const path = Array.from({ length: 120_000 }, (_, i) => [...at(i * 0.1, 0), 100 + (i % 50)]);
    const { project } = taken([line(path)], { simplifyM: 1 });
    const [ground] = [...project.ground.values()];
    const { ways } = ground!.heights as HeightsAlong;
    expect(ways.map((way) => way.path.length)).toEqual([50_000, 50_000, 20_002]);
    expect(ways[1]!.path[0]).toEqual(ways[0]!.path.at(-1));
    expect(changesSchema.safeParse(difference(fresh(), project)).success).toBe(true);
  });
});

describe('a line that tangles', () => {
  const random = randomNumbers(5);
  /** Where a receiver that lies still says that it is. */
  const lyingStill = (count: number, x: number, radiusM: number): LonLat[] =>
    Array.from({ length: count }, () => {
      const [turn, far] = [2 * Math.PI * random(), radiusM * Math.sqrt(random())];
      return at(x + far * Math.cos(turn), far * Math.sin(turn));
    });
  const walk = (from: number, to: number): LonLat[] =>
    Array.from({ length: (to - from) / 5 }, (_, i) => at(from + 5 * i, i % 2));

  it('is drawn together where it stays in one place, with a word, and nowhere else', () => {
    const [before, after] = [walk(-1000, -10), walk(10, 1000)];
    const { project, notes } = taken([line([...before, ...lyingStill(5000, 0, 3), ...after])]);
    expect(notes.map((note) => inEnglish(note)).join()).toMatch(
      /one line stays in one place.* drawn together, within \d\.00 m/,
    );
    const [{ path }] = fences(project) as [FenceLine];
    expect(path.length).toBeLessThan(before.length + after.length + 500);
    for (const vertex of [...before, ...after]) expect(path).toContainEqual(vertex);
    expect(surveyOf(project).network.edges.length).toBeLessThan(5000);
  });

  it('all over is told of and left out, and others come in', () => {
    // A point after each of the strewn ones, so that it stays nowhere.
    const wild = lyingStill(4000, 0, 2000);
    const { added, problems } = taken([line(wild), line(walk(0, 500))]);
    expect(added).toBe(1);
    expect(allInEnglish(problems[0])).toMatchObject({
      why: expect.stringContaining('more than 2,000 times') as unknown,
    });
  });

  it('with others, over the same ground again and again, is refused in words', () => {
    const lap = (turn: number) => Array.from({ length: 200 }, (_, i) => at(10 * i, 20 * Math.sin(i * 0.7 + turn)));
    const laps = Array.from({ length: 80 }, (_, i) => line(lap(i)));
    expect(() => taken(laps)).toThrow(/cross themselves and one another more than 20,000 times/);
    expect(taken(laps.slice(0, 5)).added).toBe(5);
  });

  it('beside what is drawn is none: a grid of fences is no tangle', () => {
    const across = (i: number) => line([at(-1000, 20 * i), at(1000, 20 * i)]);
    const up = (i: number) => line([at(20 * i, -1000), at(20 * i, 1000)]);
    const grid = Array.from({ length: 40 }, (_, i) => [across(i - 20), up(i - 20)]).flat();
    const { added, notes, problems } = taken(grid, {}, emptyProject());
    expect([added, notes, problems]).toEqual([80, [], []]);
  });
});
