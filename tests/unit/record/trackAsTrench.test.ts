import { expect, test } from 'vitest';
import type { Xy } from '../../../core/geometry/types.ts';
import { crossingAt } from '../../../core/locate/crossingAsBuilt.ts';
import { type Project, propertyOf, put } from '../../../core/model/project.ts';
import { newBuriedPoint } from '../../../core/model/recordDefaults.ts';
import { trackAsTrench } from '../../../core/record/edits/trackAsTrench.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import { at, bridgedGateway, drawing, line } from '../../support/drawings.ts';

const plain = drawing(
  line('F1', [
    [0, 0],
    [100, 0],
  ]),
  bridgedGateway('G1', 'F1', 50),
);
const survey = surveyOf(plain);
let count = 0;
const newId = (kind: string) => `${kind}-${++count}`;
const walked: readonly Xy[] = [
  [52, -0.1],
  [51.5, 0.9],
  [50, 1.5],
  [48.5, 0.9],
  [48, -0.1],
];
const take = (path: readonly Xy[], project: Project = plain) =>
  trackAsTrench({ crossingId: 'X-G1', path: path.map(at), seM: 0.02 }, survey, newId)(project);
const pathOf = (project: Project) =>
  crossingAt(project, survey, 'G1')!.path.map((xy) => xy.map((value) => Math.round(value * 100) / 100 + 0));

test('a track walked either way becomes the trench, from the start post on', () => {
  expect(pathOf(take(walked))).toEqual(walked.toReversed());
  expect(pathOf(take(walked.toReversed()))).toEqual(walked.toReversed());
});

test('a second track takes the place of the first', () => {
  const once = take(walked);
  const twice = take([walked[0]!, [50, 1.2], walked.at(-1)!], once);
  expect(pathOf(twice)).toEqual([
    [48, -0.1],
    [50, 1.2],
    [52, -0.1],
  ]);
  expect(twice.buriedPoint.size).toBe(3);
});

test('a foot that was taped keeps its tape before the track', () => {
  const taped = put(plain, { ...newBuriedPoint('foot', 'X-G1', 'startFoot'), offset: { alongM: -0.3, leftM: 0.1 } });
  const [first] = pathOf(take(walked, taped));
  expect(first).toEqual([47.7, 0.1]);
});

test('a track elsewhere, one of a single point, and a property without its place are refused', () => {
  expect(() =>
    take([
      [300, 0],
      [305, 0],
    ]),
  ).toThrow('no nearer than 250 m to G1');
  expect(() => take([[50, 0]])).toThrow('fewer than two points');
  expect(() => take(walked, put(plain, { ...propertyOf(plain), placed: false }))).toThrow('no place on earth');
});
