import { describe, expect, test } from 'vitest';
import { distanceM, pathLengthM } from '../../../core/geometry/geodesic.ts';
import { createLocalPlane } from '../../../core/geometry/localPlane.ts';
import { pictureMap } from '../../../core/geometry/picture/pictureMap.ts';
import { isLikelyScale } from '../../../core/geometry/picture/pictureScale.ts';
import type { Xy } from '../../../core/geometry/types.ts';
import { newFenceLine, newProperty } from '../../../core/model/defaults.ts';
import { changeThing, whyNotChangeThing } from '../../../core/model/edits/changeThing.ts';
import { layUnderlay, whyNotLayUnderlay } from '../../../core/model/edits/layUnderlay.ts';
import { placeByPicture, whyNotPlaceByPicture } from '../../../core/model/edits/placeByPicture.ts';
import { placeOnEarth } from '../../../core/model/edits/placeOnEarth.ts';
import { allThings, type Project, projectOf, propertyOf } from '../../../core/model/project.ts';
import type { LonLat, Thing } from '../../../core/model/things.ts';
import type { Placement, Underlay } from '../../../core/model/underlayThings.ts';
import { inEnglish } from '../../support/english.ts';

const size = { widthPx: 800, heightPx: 600 };
const source = { from: 'picture', imageId: 'i', fileName: 'a.jpg', ...size } as const;
const grid = createLocalPlane([0, 0]);

function wanted(placement: Placement | null, id = 'u1') {
  return { id, name: 'Photo', source, placement, opacity: 1, shown: true, note: '' };
}

const tiles = {
  ...wanted(null),
  source: {
    from: 'tileFile',
    path: '/m.mbtiles',
    fileName: 'm',
    minZoom: 1,
    maxZoom: 9,
    bounds: [170, -40, 172, -38],
  } as const,
};

const eye: Placement = { by: 'eye', at: grid.toLonLat([50, 60]), metresPerPixel: 0.5, upDeg: 20 };
const coordinates: Placement = {
  by: 'coordinates',
  system: 'WGS 84',
  columns: 2,
  rows: 2,
  at: [
    [170, -40],
    [170.01, -40],
    [170, -40.01],
    [170.01, -40.01],
  ],
};

const drawn = newFenceLine({ id: 'f1', name: 'F1', typeId: 't', path: [[0, 0], grid.toLonLat([900, 1200])] });
const projectWith = (...things: Thing[]) => projectOf([newProperty('Test'), ...things]);

describe('laying a map under the drawing', () => {
  test('the newest lies uppermost', () => {
    const one = layUnderlay(wanted(eye))(projectWith());
    const two = layUnderlay(wanted(eye, 'u2'))(one);
    expect(two.underlay.get('u2')!.rank).toBeGreaterThan(two.underlay.get('u1')!.rank);
    expect(propertyOf(two).placed).toBe(false);
  });

  test('one that has its place gives it to an empty property', () => {
    const laid = propertyOf(layUnderlay(wanted(coordinates))(projectWith()));
    expect(laid.placed).toBe(true);
    expect(distanceM(laid.origin, [170.005, -40.005])).toBeLessThan(1);
    expect(propertyOf(layUnderlay(tiles)(projectWith())).origin).toEqual([171, -39]);
  });

  test('but not to one that is drawn and has none; nor does it move one that has its own', () => {
    expect(whyNotLayUnderlay(tiles)(projectWith(drawn))).toMatchObject({ code: 'notPlaced' });
    expect(whyNotLayUnderlay(wanted(coordinates))(projectWith(drawn))).toMatchObject({ code: 'notPlaced' });
    expect(whyNotLayUnderlay(wanted(eye))(projectWith(drawn))).toBeNull();
  });

  test('a picture whose coordinates lie far from the property is told of and not laid there', () => {
    const near = projectOf([{ ...newProperty('Test', [170.5, -41]), placed: true }]);
    expect(whyNotLayUnderlay(wanted(coordinates))(near)).toBeNull();
    const far = projectOf([{ ...newProperty('Test', [146, -35]), placed: true }]);
    const refusal = whyNotLayUnderlay(wanted(coordinates))(far)!;
    expect(refusal.code).toBe('tooFar');
    expect(inEnglish(refusal.message)).toMatch(/^By its coordinates Photo lies 2,\d{3}\.\d km from this property\. /);
    // A map of a whole country may have its middle anywhere.
    expect(whyNotLayUnderlay(tiles)(far)).toBeNull();
    const placed = projectOf([newProperty('Test', [10, 50]), drawn]);
    expect(propertyOf(layUnderlay(tiles)(placed)).origin).toEqual([10, 50]);
  });

  test('values out of their bounds are refused', () => {
    const laid = layUnderlay(wanted(eye))(projectWith());
    const change = (to: Partial<Omit<Underlay, 'kind' | 'id'>>) => ({ kind: 'underlay', id: 'u1', to }) as const;
    expect(whyNotChangeThing(change({ opacity: 1.5 }))(laid)).toMatchObject({ code: 'notValid' });
    expect(changeThing(change({ opacity: 0.5 }))(laid).underlay.get('u1')!.opacity).toBe(0.5);
  });
});

describe('putting a property that was drawn on the blank grid on the earth', () => {
  const points: Placement = {
    by: 'points',
    fit: 'similarity',
    points: [
      { pixel: [0, 0], at: grid.toLonLat([10, 20]) },
      { pixel: [800, 0], at: grid.toLonLat([400, 100]) },
    ],
    before: eye,
  };
  const distance: Placement = {
    by: 'distance',
    from: [1, 2],
    to: [300, 500],
    distanceM: 200,
    at: grid.toLonLat([5, 5]),
    bearingDeg: 40,
  };
  const project: Project = [eye, points, distance].reduce<Project>(
    (before, placement, i) => layUnderlay(wanted(placement, `u${i}`))(before),
    projectWith(drawn, { kind: 'post', id: 'p', name: 'P1', at: grid.toLonLat([900, 1200]), role: 'other', note: '' }),
  );
  const home: LonLat = [175.3, -37.9];

  test('one point and a bearing: nothing drawn changes its length by 1 in 10,000, and the pictures come along', () => {
    const laid = placeOnEarth({ point: { grid: [100, 100], earth: home }, gridNorthDeg: 30 })(project);
    expect(propertyOf(laid).placed).toBe(true);
    const before = pathLengthM(drawn.path);
    const after = pathLengthM(laid.fenceLine.get('f1')!.path);
    expect(Math.abs(after / before - 1)).toBeLessThan(1e-4);

    const plane = createLocalPlane(propertyOf(laid).origin);
    const turned = ([x, y]: Xy): Xy => {
      const [cos, sin] = [Math.cos(Math.PI / 6), Math.sin(Math.PI / 6)];
      return [x * cos + y * sin, y * cos - x * sin];
    };
    const at = plane.toXy(home);
    const shift: Xy = [at[0] - turned([100, 100])[0], at[1] - turned([100, 100])[1]];
    for (const underlay of laid.underlay.values()) {
      const old = pictureMap(project.underlay.get(underlay.id)!.placement!, size, grid);
      const now = pictureMap(underlay.placement!, size, plane);
      for (const pixel of [
        [0, 0],
        [800, 600],
        [250, 33],
      ] as const) {
        const [x, y] = turned(old.toXy(pixel));
        const [nowX, nowY] = now.toXy(pixel);
        expect(Math.hypot(nowX - x - shift[0], nowY - y - shift[1])).toBeLessThan(0.02);
      }
    }
  });

  test('two points: both are where they were said to be, and lengths stay', () => {
    const plane = createLocalPlane(home);
    const second = plane.toLonLat([1050 * Math.sin(1), 1050 * Math.cos(1)]);
    const known = { grid: [0, 0] as Xy, earth: home };
    const laid = placeOnEarth({ point: known, second: { grid: [0, 1050], earth: second } })(project);
    const lines = [...allThings(laid)].filter(({ kind }) => kind === 'fenceLine');
    expect(lines).toHaveLength(1);
    expect(Math.abs(pathLengthM(laid.fenceLine.get('f1')!.path) / pathLengthM(drawn.path) - 1)).toBeLessThan(1e-4);
    expect(distanceM(laid.fenceLine.get('f1')!.path[0]!, home)).toBeLessThan(0.01);
  });
});

describe('placing an empty property by the first point of a picture', () => {
  const laid = layUnderlay(wanted(eye))(projectWith());
  const home: LonLat = [147.665947, -35.404678];
  const first = { underlayId: 'u1', pixel: [200, 100], earth: home } as const;

  test('the property has its place, the picture keeps the point, scale and direction', () => {
    const placed = placeByPicture(first)(laid);
    const property = propertyOf(placed);
    expect(property.placed).toBe(true);
    const { placement } = placed.underlay.get('u1')!;
    expect(placement).toMatchObject({ by: 'points', points: [{ pixel: [200, 100], at: home }] });
    const plane = createLocalPlane(property.origin);
    const [before, now] = [pictureMap(eye, size, grid), pictureMap(placement!, size, plane)];
    expect(distanceM(plane.toLonLat(now.toXy([200, 100])), home)).toBeLessThan(0.01);
    expect(now.metresPerPixel).toBeCloseTo(before.metresPerPixel, 6);
  });

  test.each([
    ['something is drawn', layUnderlay(wanted(eye))(projectWith(drawn)), 'drawn'],
    [
      'another picture is measured',
      layUnderlay(wanted({ ...eye, by: 'distance', from: [0, 0], to: [9, 9], distanceM: 5, bearingDeg: 0 }, 'u2'))(
        laid,
      ),
      'drawn',
    ],
    ['it has its place', placeByPicture(first)(laid), 'notFound'],
    ['the picture is gone', projectWith(), 'notFound'],
  ])('is refused where %s', (_, project, code) => {
    expect(whyNotPlaceByPicture(first)(project)).toMatchObject({ code });
  });

  test('figures that are no place on earth are refused', () => {
    expect(whyNotPlaceByPicture({ ...first, earth: [200, 3] })(laid)).toMatchObject({ code: 'outOfRange' });
  });
});

test('a scale under a millimetre or over 100 m a pixel is none of a property', () => {
  expect([0.000_01, 0.0009, 0.001, 0.5, 100, 101, Number.NaN].map(isLikelyScale)).toEqual([
    false,
    false,
    true,
    true,
    true,
    false,
    false,
  ]);
});
