import fc from 'fast-check';
import { expect, test } from 'vitest';
import { tieReachM } from '../../../core/geometry/tieReach.ts';
import type { Xy } from '../../../core/geometry/types.ts';
import { xyDistanceM } from '../../../core/geometry/vector.ts';

const tie = (x: number, distanceM: number, seM = 0.03) => ({ post: [x, 0] as Xy, distanceM, seM });

test('reaches as far off the line as tapes that only just touch let a point stand', () => {
  // Two tapes of 5 m between posts 10 m apart, each up to 0.06 m longer: sqrt(5.06² - 5²) = 0.777 m to either side.
  expect(tieReachM(tie(0, 5), tie(10, 5), [5, 0], 2)).toBeCloseTo(Math.sqrt(5.06 ** 2 - 25), 9);
});

test('reaches over one side only where the side is known', () => {
  const [a, b] = [tie(0, 5), tie(8, 5)];
  expect(tieReachM(a, b, [4, 3], 2)).toBeGreaterThan(6);
  expect(tieReachM(a, b, [4, 3], 2, 'left')).toBeLessThan(0.2);
});

test('holds every point that fits both tapes, about any place that they meet at', () => {
  const cm = (min: number, max: number) => fc.integer({ min, max }).map((value) => value / 100);
  fc.assert(
    fc.property(cm(-300, 900), cm(1, 600), cm(-5, 5), cm(-5, 5), (x, y, offA, offB) => {
      const truth: Xy = [x, y];
      const read = (post: Xy, off: number) => Math.max(0.01, xyDistanceM(post, truth) + off);
      const [a, b] = [tie(0, read([0, 0], offA)), tie(6, read([6, 0], offB))];
      const from: Xy = [x + 1, y + 1];
      // 0.05 m is less than twice the standard error of 0.03 m. The arcs between the corners bulge a little.
      expect(xyDistanceM(truth, from)).toBeLessThanOrEqual(tieReachM(a, b, from, 2) + 0.03);
    }),
    { numRuns: 2000, seed: 3 },
  );
});
