import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nearestOnPolyline, nearestOnSegment } from '../../../core/geometry/polyline.ts';
import { keptVertices, simplify } from '../../../core/geometry/simplify.ts';
import type { Xy } from '../../../core/geometry/types.ts';

describe('simplify', () => {
  it('drops what lies within the tolerance', () => {
    const track: Xy[] = [
      [0, 0],
      [1, 0.1],
      [2, -0.1],
      [3, 5],
      [4, 6],
      [5, 7],
      [6, 8.1],
      [7, 9],
    ];
    expect(simplify(track, 0.5)).toEqual([
      [0, 0],
      [2, -0.1],
      [3, 5],
      [7, 9],
    ]);
    expect(keptVertices(track, 0.5)).toEqual([0, 2, 3, 7]);
    expect(simplify(track, 100)).toEqual([
      [0, 0],
      [7, 9],
    ]);
  });

  it('keeps a closed line open', () => {
    expect(
      simplify(
        [
          [0, 0],
          [9, 0],
          [9, 9],
          [0, 0],
        ],
        1,
      ),
    ).toEqual([
      [0, 0],
      [9, 0],
      [9, 9],
      [0, 0],
    ]);
  });

  it('leaves short paths alone', () => {
    expect(simplify([], 1)).toEqual([]);
    expect(simplify([[1, 1]], 1)).toEqual([[1, 1]]);
    expect(
      simplify(
        [
          [1, 1],
          [1, 1],
        ],
        1,
      ),
    ).toEqual([
      [1, 1],
      [1, 1],
    ]);
  });

  it('never strays further than the tolerance', () => {
    const vertex: fc.Arbitrary<Xy> = fc.tuple(
      fc.double({ min: 0, max: 99, noNaN: true }),
      fc.double({ min: 0, max: 9, noNaN: true }),
    );
    fc.assert(
      fc.property(
        fc.array(vertex, { minLength: 2, maxLength: 60 }),
        fc.double({ min: 0, max: 5, noNaN: true }),
        (path, toleranceM) => {
          const simple = simplify(path, toleranceM);
          expect(simple[0]).toBe(path[0]);
          expect(simple.at(-1)).toBe(path.at(-1));
          for (const at of path)
            expect(nearestOnPolyline(at, simple)!.distanceM).toBeLessThanOrEqual(toleranceM + 1e-9);
        },
      ),
      { seed: 71 },
    );
  });

  it('manages a track of 100,000 points that turns at every one', () => {
    const track = Array.from({ length: 100_000 }, (_, i): Xy => [i, (i % 2) * 0.1]);
    expect(simplify(track, 0.2)).toHaveLength(2);
  });

  it.each([
    ['growing to and fro', (i: number): Xy => [i / 100, (i % 2 === 0 ? 1 : -1) * (20 + i / 200_000)]],
    ['round and round outwards', (i: number): Xy => [Math.cos(i / 8) * (1 + i / 100), Math.sin(i / 8) * (1 + i / 100)]],
  ])('manages 200,000 points %s, which by the square of them would take minutes', (_, at) => {
    const track = Array.from({ length: 200_000 }, (_, i) => at(i));
    const toleranceM = 2;
    const kept = keptVertices(track, toleranceM);
    expect(kept.length).toBeLessThan(track.length);
    for (let i = 1; i < kept.length; i++) {
      const [from, to] = [kept[i - 1]!, kept[i]!];
      for (let dropped = from + 1; dropped < to; dropped++) {
        const { distanceM } = nearestOnSegment(track[dropped]!, track[from]!, track[to]!);
        if (distanceM > toleranceM + 1e-9) throw new Error(`Vertex ${dropped} is ${distanceM} m off.`);
      }
    }
  });

  it('refuses a tolerance below 0', () => {
    expect(() => simplify([], -1)).toThrow('0 m or more');
  });
});
