import { describe, expect, it } from 'vitest';
import { placeAlongPath, sliceAlongPath } from '../../../core/geometry/alongPath.ts';
import { distanceM, pathLengthM } from '../../../core/geometry/geodesic.ts';
import type { LonLat } from '../../../core/geometry/types.ts';

const path: LonLat[] = [
  [179.99, -43.9],
  [179.998, -43.9],
  [179.998, -43.9],
  [-179.995, -43.89],
];
const wholeM = pathLengthM(path);
const firstM = distanceM(path[0]!, path[1]!);

describe('placeAlongPath', () => {
  it('measures along the geodesics, across the 180 meridian and over doubled vertices', () => {
    const place = placeAlongPath(path, firstM + 200);
    expect(place.segment).toBe(2);
    expect(distanceM(path[2]!, place.at)).toBeCloseTo(200, 6);
    expect(distanceM(place.at, path[3]!)).toBeCloseTo(wholeM - firstM - 200, 6);
  });

  it('gives the vertices themselves', () => {
    expect(placeAlongPath(path, 0).at).toBe(path[0]);
    expect(placeAlongPath(path, firstM)).toMatchObject({ at: path[1], segment: 0, fraction: 1 });
    expect(placeAlongPath(path, -5).at).toBe(path[0]);
    expect(placeAlongPath(path, wholeM + 5).at).toBe(path[3]);
  });

  it('tells the direction there', () => {
    expect(placeAlongPath(path, 10).bearingDeg).toBeCloseTo(90, 1);
    expect(placeAlongPath(path, firstM).bearingDeg).toBeCloseTo(90, 1);
  });

  it('refuses what has no length', () => {
    expect(() => placeAlongPath([[0, 0]], 0)).toThrow('two vertices');
    expect(() => placeAlongPath(path, Number.NaN)).toThrow('not a number');
    expect(
      placeAlongPath(
        [
          [5, 5],
          [5, 5],
        ],
        3,
      ).at,
    ).toEqual([5, 5]);
  });
});

describe('sliceAlongPath', () => {
  it('cuts pieces that add up', () => {
    const [start, end] = [sliceAlongPath(path, 0, 700), sliceAlongPath(path, 700, wholeM)];
    expect(pathLengthM(start)).toBeCloseTo(700, 6);
    expect(pathLengthM(start) + pathLengthM(end)).toBeCloseTo(wholeM, 6);
    expect(start.at(-1)).toEqual(end[0]);
  });

  it('runs backwards on demand, and drops no vertex between', () => {
    expect(sliceAlongPath(path, wholeM, 0)).toEqual(path.toReversed());
    expect(sliceAlongPath(path, firstM, wholeM)).toEqual([path[1], path[3]]);
  });
});
