import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Box } from '../../../core/geometry/box.ts';
import { nearestOnPolyline } from '../../../core/geometry/polyline.ts';
import { createSpatialIndex } from '../../../core/geometry/spatialIndex.ts';
import type { Xy } from '../../../core/geometry/types.ts';

const line = (y: number): Xy[] => [
  [0, y],
  [10, y],
  [20, y],
];
const refs = (found: { key: string; segment: number }[]) => found.map(({ key, segment }) => `${key} ${segment}`).sort();

describe('createSpatialIndex', () => {
  it('finds segments by box', () => {
    const index = createSpatialIndex([
      ['a', line(0)],
      ['b', line(50)],
    ]);
    expect(refs(index.search([-1, -1, 5, 1]))).toEqual(['a 0']);
    expect(refs(index.search([0, 0, 20, 50]))).toEqual(['a 0', 'a 1', 'b 0', 'b 1']);
    expect(index.search([30, 0, 40, 50])).toEqual([]);
  });

  it('finds what is near a point, the nearest first', () => {
    const index = createSpatialIndex([
      ['a', line(0)],
      ['b', line(3)],
      ['post', [[4, 2]]],
    ]);
    expect(index.near([4, 1.8], 2).map(({ key }) => key)).toEqual(['post', 'b', 'a']);
    expect(index.nearest([4, 1.8], 2, (key) => key !== 'post')).toMatchObject({ key: 'b', segment: 0, point: [4, 3] });
    expect(index.nearest([4, 1.8], 0.1)).toBeNull();
  });

  it('begins empty, and takes changes', () => {
    const index = createSpatialIndex<string>();
    expect(index.search([0, 0, 9, 9])).toEqual([]);
    index.set('a', line(0));
    index.set('a', line(5));
    expect(refs(index.search([0, 0, 9, 1]))).toEqual([]);
    expect(refs(index.search([0, 4, 9, 6]))).toEqual(['a 0']);
    index.delete('a');
    index.delete('a');
    index.delete('never there');
    expect(index.search([0, 0, 99, 99])).toEqual([]);
  });

  it('answers like a plain search through any run of edits', () => {
    const coordinate = fc.integer({ min: 0, max: 100 });
    const path = fc.array(fc.tuple(coordinate, coordinate), { minLength: 0, maxLength: 300 });
    const edit = fc.record({ key: fc.integer({ min: 0, max: 9 }), path: fc.option(path) });
    fc.assert(
      fc.property(fc.array(fc.tuple(coordinate, path)), fc.array(edit, { maxLength: 20 }), (start, edits) => {
        const paths = new Map<number, Xy[]>(start);
        const index = createSpatialIndex(paths);
        for (const { key, path } of edits) {
          if (path) index.set(key, path);
          else index.delete(key);
          if (path) paths.set(key, path);
          else paths.delete(key);
          const at: Xy = [key * 10, 50];
          const expected = [...paths].flatMap(([, line]) => nearestOnPolyline(at, line)?.distanceM ?? []);
          const found = index.nearest(at, 200)?.distanceM;
          if (expected.length === 0) expect(found).toBeUndefined();
          else expect(found).toBeCloseTo(Math.min(...expected), 9);
          const box: Box = [20, 20, 60, 60];
          const plain = [...paths].reduce((sum, [, line]) => sum + countIn(line, box), 0);
          expect(index.search(box)).toHaveLength(plain);
        }
      }),
      { seed: 61, numRuns: 50 },
    );
  });
});

function countIn(path: readonly Xy[], [minX, minY, maxX, maxY]: Box): number {
  const ends =
    path.length === 1 ? [[path[0]!, path[0]!] as const] : path.slice(1).map((b, i) => [path[i]!, b] as const);
  return ends.filter(
    ([a, b]) =>
      Math.max(a[0], b[0]) >= minX &&
      Math.min(a[0], b[0]) <= maxX &&
      Math.max(a[1], b[1]) >= minY &&
      Math.min(a[1], b[1]) <= maxY,
  ).length;
}
