import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  clipPolylineToBox,
  cumulativeLengthsM,
  nearestOnPolyline,
  nearestOnSegment,
  offsetPolyline,
  pointAtStation,
  polylineGap,
  slicePolyline,
} from '../../../core/geometry/polyline.ts';
import type { Xy } from '../../../core/geometry/types.ts';
import { xyDistanceM } from '../../../core/geometry/vector.ts';

const coordinate = fc.integer({ min: -1000, max: 1000 }).map((n) => n / 10);
const vertex: fc.Arbitrary<Xy> = fc.tuple(coordinate, coordinate);
const path = fc.array(vertex, { minLength: 2, maxLength: 12 });
const lengthOf = (line: readonly Xy[]) => cumulativeLengthsM(line).at(-1)!;

const bend: Xy[] = [
  [0, 0],
  [3, 0],
  [3, 4],
];

describe('nearest points', () => {
  it('on a segment: its foot, or an end', () => {
    expect(nearestOnSegment([1, 5], [0, 0], [4, 0])).toEqual({ point: [1, 0], fraction: 0.25, distanceM: 5 });
    expect(nearestOnSegment([-3, 4], [0, 0], [4, 0])).toEqual({ point: [0, 0], fraction: 0, distanceM: 5 });
    expect(nearestOnSegment([7, 4], [0, 0], [4, 0])).toEqual({ point: [4, 0], fraction: 1, distanceM: 5 });
    expect(nearestOnSegment([3, 4], [0, 0], [0, 0])).toEqual({ point: [0, 0], fraction: 0, distanceM: 5 });
  });

  it('on a path, with station and side', () => {
    expect(nearestOnPolyline([2, 1], bend)).toMatchObject({ segment: 0, stationM: 2, distanceM: 1, side: 'left' });
    expect(nearestOnPolyline([5, 2], bend)).toMatchObject({ segment: 1, stationM: 5, distanceM: 2, side: 'right' });
    expect(nearestOnPolyline([2, 0], bend)).toMatchObject({ stationM: 2, distanceM: 0, side: null });
    expect(nearestOnPolyline([2, 0], [[2, 3]])).toMatchObject({ distanceM: 3, stationM: 0 });
    expect(nearestOnPolyline([2, 0], [])).toBeNull();
  });

  it('on a path is never beaten by any of its points', () => {
    fc.assert(
      fc.property(path, vertex, fc.double({ min: 0, max: 1, noNaN: true }), (line, target, share) => {
        const near = nearestOnPolyline(target, line)!;
        const other = pointAtStation(line, share * lengthOf(line)).point;
        expect(near.distanceM).toBeLessThanOrEqual(xyDistanceM(target, other) + 1e-9);
        expect(xyDistanceM(pointAtStation(line, near.stationM).point, near.point)).toBeLessThan(1e-6);
      }),
      { seed: 41 },
    );
  });
});

describe('stations', () => {
  it('count metres from the start', () => {
    expect(cumulativeLengthsM(bend)).toEqual([0, 3, 7]);
    expect(cumulativeLengthsM([])).toEqual([]);
    expect(pointAtStation(bend, 5)).toEqual({ point: [3, 2], segment: 1, fraction: 0.5, bearingDeg: 0 });
    expect(pointAtStation(bend, 3)).toMatchObject({ point: [3, 0], segment: 0, fraction: 1 });
  });

  it('stop at the ends, and pass over doubled vertices', () => {
    const doubled: Xy[] = [bend[0]!, ...bend, bend[2]!];
    expect(pointAtStation(doubled, -1)).toMatchObject({ point: [0, 0], segment: 1 });
    expect(pointAtStation(doubled, 99)).toMatchObject({ point: [3, 4], segment: 2, fraction: 1, bearingDeg: 0 });
    expect(
      pointAtStation(
        [
          [1, 1],
          [1, 1],
        ],
        2,
      ).point,
    ).toEqual([1, 1]);
  });

  it('refuse a path without segments and a place that is no number', () => {
    expect(() => pointAtStation([[0, 0]], 0)).toThrow('two vertices');
    expect(() => pointAtStation(bend, Number.NaN)).toThrow('not a number');
  });
});

describe('slicePolyline', () => {
  it('cuts out a piece, forwards or backwards', () => {
    expect(slicePolyline(bend, 1, 5)).toEqual([
      [1, 0],
      [3, 0],
      [3, 2],
    ]);
    expect(slicePolyline(bend, 5, 1)).toEqual([
      [3, 2],
      [3, 0],
      [1, 0],
    ]);
    expect(slicePolyline(bend, 3, 7)).toEqual([
      [3, 0],
      [3, 4],
    ]);
    expect(slicePolyline(bend, 2, 2)).toEqual([
      [2, 0],
      [2, 0],
    ]);
    expect(slicePolyline(bend, -5, 50)).toEqual(bend);
  });

  it('pieces put together are as long as the whole', () => {
    fc.assert(
      fc.property(path, fc.double({ min: 0, max: 1, noNaN: true }), (line, share) => {
        const at = share * lengthOf(line);
        const parts = [slicePolyline(line, 0, at), slicePolyline(line, at, lengthOf(line))];
        expect(lengthOf(parts[0]!) + lengthOf(parts[1]!)).toBeCloseTo(lengthOf(line), 6);
        expect(lengthOf(parts[0]!)).toBeCloseTo(at, 6);
      }),
      { seed: 42 },
    );
  });
});

describe('polylineGap', () => {
  it('is the shortest way between two paths', () => {
    expect(
      polylineGap(bend, [
        [5, 1],
        [9, 9],
      ]),
    ).toEqual({ distanceM: 2, onFirst: [3, 1], onSecond: [5, 1] });
    expect(
      polylineGap(bend, [
        [2, -1],
        [2, 1],
      ]),
    ).toEqual({ distanceM: 0, onFirst: [2, 0], onSecond: [2, 0] });
    expect(polylineGap([[0, 0]], [[3, 4]])).toMatchObject({ distanceM: 5 });
    expect(polylineGap([], bend)).toBeNull();
  });

  it('is the same both ways round', () => {
    fc.assert(
      fc.property(path, path, (a, b) => {
        const [there, back] = [polylineGap(a, b)!, polylineGap(b, a)!];
        expect(there.distanceM).toBeCloseTo(back.distanceM, 9);
        expect(xyDistanceM(there.onFirst, there.onSecond)).toBeCloseTo(there.distanceM, 9);
      }),
      { seed: 43 },
    );
  });
});

describe('offsetPolyline', () => {
  it('runs beside the path with mitred corners', () => {
    expect(offsetPolyline(bend, 1)).toEqual([
      [0, 1],
      [2, 1],
      [2, 4],
    ]);
    expect(offsetPolyline(bend, -1)).toEqual([
      [0, -1],
      [4, -1],
      [4, 4],
    ]);
  });

  it('passes over doubled vertices', () => {
    expect(
      offsetPolyline(
        [
          [0, 0],
          [0, 0],
          [2, 0],
        ],
        1,
      ),
    ).toEqual([
      [0, 1],
      [2, 1],
    ]);
    expect(offsetPolyline([[1, 1]], 1)).toEqual([]);
  });

  it('cuts a needle-sharp corner square, a little beyond the vertex', () => {
    const needle: Xy[] = [
      [0, 0],
      [10, 0],
      [0, 0.1],
    ];
    for (const [x] of offsetPolyline(needle, -1)) expect(x).toBeLessThan(11.1);
  });

  it('keeps its distance along straight paths', () => {
    fc.assert(
      fc.property(vertex, vertex, fc.double({ min: -5, max: 5, noNaN: true }), (a, b, offsetM) => {
        fc.pre(xyDistanceM(a, b) > 0.1);
        const near = nearestOnPolyline(offsetPolyline([a, b], offsetM)[1]!, [a, b])!;
        expect(near.distanceM).toBeCloseTo(Math.abs(offsetM), 9);
        if (Math.abs(offsetM) > 1e-6) expect(near.side).toBe(offsetM > 0 ? 'left' : 'right');
      }),
      { seed: 44 },
    );
  });
});

describe('clipPolylineToBox', () => {
  it('keeps the pieces inside', () => {
    const zigzag: Xy[] = [
      [-1, 1],
      [1, 1],
      [1, 5],
      [2, 5],
      [2, 1],
      [3, 1],
    ];
    expect(clipPolylineToBox(zigzag, [0, 0, 4, 4])).toEqual([
      [
        [0, 1],
        [1, 1],
        [1, 4],
      ],
      [
        [2, 4],
        [2, 1],
        [3, 1],
      ],
    ]);
    expect(clipPolylineToBox(zigzag, [10, 10, 20, 20])).toEqual([]);
    expect(clipPolylineToBox([], [0, 0, 4, 4])).toEqual([]);
    expect(clipPolylineToBox([[1, 1]], [0, 0, 4, 4])).toEqual([]);
    expect(
      clipPolylineToBox(
        [
          [1, 1],
          [2, 2],
        ],
        [0, 0, 4, 4],
      ),
    ).toEqual([
      [
        [1, 1],
        [2, 2],
      ],
    ]);
  });

  it('never leaves the box, and loses nothing inside it', () => {
    fc.assert(
      fc.property(path, fc.double({ min: 0, max: 1, noNaN: true }), (line, share) => {
        const box = [-40, -30, 50, 60] as const;
        const pieces = clipPolylineToBox(line, box);
        for (const [x, y] of pieces.flat()) {
          expect(x >= -40.000001 && x <= 50.000001 && y >= -30.000001 && y <= 60.000001).toBe(true);
        }
        const [x, y] = pointAtStation(line, share * lengthOf(line)).point;
        if (x < -39.9 || x > 49.9 || y < -29.9 || y > 59.9 || lengthOf(line) === 0) return;
        const gaps = pieces.map((piece) => nearestOnPolyline([x, y], piece)!.distanceM);
        expect(Math.min(...gaps)).toBeLessThan(1e-6);
      }),
      { seed: 45, numRuns: 300 },
    );
  });
});
