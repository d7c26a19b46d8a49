import { describe, expect, it } from 'vitest';
import { newFenceLine } from '../../../core/model/defaults.ts';
import type { LineShape } from '../../../core/shapes/types.ts';
import { segmentAt, sliceOfLine, stationOf, xyAtStation } from '../../../renderer/map/plane/stations.ts';
import { stretchesBetween } from '../../../renderer/map/scene/buildScene.ts';

/** An L, 100 m east and 50 m north; its stations run a little longer than the plane, as they do far from its centre. */
const shape: LineShape = {
  line: newFenceLine({ id: 'f', name: 'F1', typeId: 't', path: [] }),
  type: null,
  xy: [
    [0, 0],
    [100, 0],
    [100, 50],
  ],
  stationsM: [0, 101, 151.5],
  lengthM: 151.5,
  closed: false,
};

describe('stations along a line', () => {
  it('give the point at the same share of the segment', () => {
    expect(xyAtStation(shape, 50.5)).toEqual([50, 0]);
    expect(xyAtStation(shape, 126.25)).toEqual([100, 25]);
    expect(xyAtStation(shape, -5)).toEqual([0, 0]);
    expect(xyAtStation(shape, 999)).toEqual([100, 50]);
  });

  it('come back from a segment and a share', () => {
    expect(stationOf(shape, 0, 0.5)).toBe(50.5);
    expect(stationOf(shape, 1, 0.5)).toBe(126.25);
  });

  it('find the segment', () => {
    expect([-1, 0, 100.9, 101, 151.5, 500].map((atM) => segmentAt(shape.stationsM, atM))).toEqual([0, 0, 0, 1, 1, 1]);
  });

  it('cut out a piece with the corners in it', () => {
    expect(sliceOfLine(shape, 50.5, 126.25)).toEqual([
      [50, 0],
      [100, 0],
      [100, 25],
    ]);
    expect(sliceOfLine(shape, 10.1, 20.2)).toEqual([
      [10, 0],
      [20, 0],
    ]);
    expect(sliceOfLine(shape, 0, 101)).toEqual([
      [0, 0],
      [100, 0],
    ]);
    expect(sliceOfLine(shape, 0, 151.5)).toBe(shape.xy);
  });

  it('leave the stretches between openings', () => {
    expect(stretchesBetween([], 10)).toEqual([[0, 10]]);
    expect(
      stretchesBetween(
        [
          { fromM: 6, toM: 8 },
          { fromM: 0, toM: 2 },
        ],
        10,
      ),
    ).toEqual([
      [2, 6],
      [8, 10],
    ]);
    expect(
      stretchesBetween(
        [
          { fromM: 1, toM: 5 },
          { fromM: 4, toM: 10 },
        ],
        10,
      ),
    ).toEqual([[0, 1]]);
  });
});
