import { expect, it } from 'vitest';
import { projectionOf } from '../../../core/coordinates/projection.ts';
import { readGridPlace, readPlace } from '../../../core/coordinates/readPlace.ts';
import { decimalDegrees, knownSystems, systemOfEpsg } from '../../../core/coordinates/systems.ts';
import { fitAffine } from '../../../core/geometry/fitAffine.ts';
import { fitSimilarity } from '../../../core/geometry/fitSimilarity.ts';
import type { LonLat, Xy } from '../../../core/geometry/types.ts';
import type { Message } from '../../../core/words/message.ts';
import { expectFromCatalogue } from '../../support/pseudo.ts';

const home: LonLat = [174.77639, -41.28312];
const nztm = knownSystems.find(({ id }) => id === 'EPSG:2193')!;
const utm = knownSystems.find(({ kind }) => kind === 'utm')!;

function expectProblem(problem: Message | null, typed: string): void {
  expect(problem, typed).not.toBeNull();
  expectFromCatalogue(problem!, new Set([typed.trim(), typed.trim().toUpperCase()]));
}

it.each([
  ['', decimalDegrees],
  ['here', decimalDegrees],
  ['41.28 S, 174.77 S', decimalDegrees],
  ['41.28 E, 174.77 E', decimalDegrees],
  ['-41.28 S, 174.77 E', decimalDegrees],
  ['S 41.28 S, 174.77 E', decimalDegrees],
  ["41° 75' S, 174° 10' E", decimalDegrees],
  [`41° 5' 75" S, 174° 10' E`, decimalDegrees],
  ['95 N, 20 E', decimalDegrees],
  ['-20, 30', decimalDegrees],
  ['174.77639, -41.28312', decimalDegrees],
  ['12', nztm],
  ['12 E, 13 E', nztm],
  ['1,200 1,000 3,000', nztm],
  ['12 400', nztm],
  ['412345 E 7654321 N', utm],
] as const)('what is wrong with "%s" comes from the catalogue whole', (text, system) => {
  expectProblem(readPlace(text, system, system === utm ? null : home).problem, text);
});

it.each(['-35.404678, 147.665947', 'nowhere', '1,200 1,000 3,000', '500 km E, 20 m N'])(
  'on the blank grid, what is wrong with "%s" comes from the catalogue whole',
  (text) => {
    const read = readGridPlace(text, 'metric');
    expectProblem('problem' in read ? read.problem : null, text);
  },
);

it('why a definition is of no use comes from the catalogue whole', () => {
  for (const definition of [
    'hello',
    '+proj=nosuch +x_0=1',
    '+proj=geocent +ellps=GRS80',
    '+proj=longlat +nadgrids=a.gsb',
    `+proj=utm +zone=${'1'.repeat(3000)}`,
  ]) {
    expectProblem(projectionOf(definition).problem, definition);
  }
});

it('names of systems are of the catalogue, or the same in every language', () => {
  const datums = new Set(['SIRGAS 2000', 'Mexico ITRF2008', 'WGS 84', 'RGF93, Lambert-93', 'RGF93, CC42']);
  for (const { name } of knownSystems) expectFromCatalogue(name, datums);
  for (const code of [26910, 28355, 31980, 6369, 2193, 32637, 25832, 3857, 4979, 5070, 3979, 3577, 3112, 3035, 27700]) {
    expectFromCatalogue(systemOfEpsg(code)!.name, datums);
  }
  for (const code of [29902, 29903, 2154, 3942, 4326, 4674]) expectFromCatalogue(systemOfEpsg(code)!.name, datums);
});

it('why control points give no place comes from the catalogue whole', () => {
  const point = (pixel: Xy, map: Xy) => ({ pixel, map });
  const none = [
    fitSimilarity([]),
    fitSimilarity([point([0, 0], [Number.NaN, 0])]),
    fitSimilarity([point([5, 5], [0, 0]), point([5, 5], [9, 9])]),
    fitSimilarity([point([0, 0], [9, 9]), point([5, 5], [9, 9])]),
    fitAffine([]),
    fitAffine([point([0, 0], [0, 0]), point([1, 0], [1, 0]), point([2, 0], [0, 2])]),
    fitAffine([point([0, 0], [0, 0]), point([1, 0], [1, 1]), point([0, 1], [2, 2])]),
    fitAffine([point([3, 3], [0, 0]), point([3, 3], [1, 0]), point([3, 3], [0, 1])]),
    fitAffine([point([0, 0], [3, 3]), point([1, 0], [3, 3]), point([0, 1], [3, 3])]),
  ];
  for (const fit of none) {
    expect(fit.refused).toBe(true);
    if (fit.refused) expectFromCatalogue(fit.message, new Set());
  }
});
