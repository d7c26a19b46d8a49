import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Tie, TieFix } from '../../../core/geometry/tie.ts';
import { trilaterate } from '../../../core/geometry/trilaterate.ts';
import type { Xy } from '../../../core/geometry/types.ts';
import { xyDistanceM } from '../../../core/geometry/vector.ts';

const at = (post: Xy, distanceM: number, seM = 0.01): Tie => ({ post, distanceM, seM });
const tapes = (target: Xy, ...posts: Xy[]) => posts.map((post) => at(post, xyDistanceM(post, target)));

function solutions(ties: readonly Tie[]): readonly TieFix[] {
  const result = trilaterate(ties);
  if (!result.possible) throw new Error(result.reason);
  return result.solutions;
}

function failure(ties: readonly Tie[]) {
  const result = trilaterate(ties);
  if (result.possible) throw new Error('The ties meet.');
  return result;
}

/** Whole centimetres. */
const coordinate = fc.integer({ min: -3000, max: 3000 }).map((cm) => cm / 100);
const place: fc.Arbitrary<Xy> = fc.tuple(coordinate, coordinate);

describe('two ties', () => {
  it('give the point and its mirror, the left one first', () => {
    fc.assert(
      fc.property(place, place, place, (a, b, target) => {
        fc.pre(xyDistanceM(a, b) > 1 && xyDistanceM(a, target) > 0.1 && xyDistanceM(b, target) > 0.1);
        const offM = ((b[0] - a[0]) * (target[1] - a[1]) - (b[1] - a[1]) * (target[0] - a[0])) / xyDistanceM(a, b);
        fc.pre(Math.abs(offM) > 0.01);
        const [left, right] = solutions(tapes(target, a, b));
        const here = offM > 0 ? left! : right!;
        expect(left!.side).toBe('left');
        expect(right!.side).toBe('right');
        expect(xyDistanceM(here.point, target)).toBeLessThan(1e-6);
        for (const post of [a, b]) {
          expect(xyDistanceM(post, left!.point)).toBeCloseTo(xyDistanceM(post, right!.point), 8);
        }
      }),
      { seed: 21 },
    );
  });

  it('that miss by less than their tapes are good for say where the point is likeliest', () => {
    const result = failure([at([0, 0], 3.99, 0.02), at([10, 0], 5.98, 0.01)]);
    expect(result).toMatchObject({ reason: 'tooShort', withinTapeError: true });
    expect(result.misclosureM).toBeCloseTo(-0.03, 9);
    // 0.03 m shared out 4 to 1 by the variances of the tapes.
    expect(result.closest![0]).toBeCloseTo(3.99 + 0.024, 9);
  });

  it.each([
    ['beyond the second post', at([0, 0], 11), at([4, 0], 3), 9],
    ['beyond the first post', at([0, 0], 3), at([4, 0], 11), -5],
  ])('of which one is too long: the point %s', (_, a, b, x) => {
    const result = failure([a, b]);
    expect(result).toMatchObject({ reason: 'tooLong', withinTapeError: false });
    expect(result.misclosureM).toBeCloseTo(-4, 9);
    expect(result.closest![0]).toBeCloseTo(x, 9);
  });

  it.each([0, 1_570_000.3])(
    'touching: 4.9 + 5.1 m between posts 10 m apart, %d m from the origin, whatever rounding does',
    (x) => {
      const [only, none] = solutions([at([x + 0.1, 0.2], 4.9), at([x + 6.1, 8.2], 5.1)]);
      expect(none).toBeUndefined();
      expect(only).toMatchObject({ side: 'onLine', error: null });
      expect(only!.point[0]).toBeCloseTo(x + 0.1 + 4.9 * 0.6, 6);
    },
  );
});

describe('three ties and more', () => {
  const posts: Xy[] = [
    [0, 0],
    [6, 0],
    [2, 7],
  ];

  it('find the point of exact tapes, with residuals of 0', () => {
    fc.assert(
      fc.property(place, fc.uniqueArray(place, { minLength: 3, maxLength: 6, selector: String }), (target, stood) => {
        const [fix] = solutions(tapes(target, ...stood));
        expect(Math.max(...fix!.residualsM.map(Math.abs))).toBeLessThan(1e-6);
      }),
      { seed: 22 },
    );
  });

  it('rule out the mirror where the posts are not in one line', () => {
    const found = solutions(tapes([3, 2.5], ...posts));
    expect(found).toHaveLength(1);
    expect(xyDistanceM(found[0]!.point, [3, 2.5])).toBeLessThan(1e-8);
    expect(found[0]!.sigma0).toBeLessThan(1e-6);
  });

  it('leave the mirror where the posts stand in one line', () => {
    const found = solutions(tapes([3, 2.5], [0, 0], [6, 0], [10, 0]));
    expect(found.map(({ side }) => side).sort()).toEqual(['left', 'right']);
    expect(found[0]!.point[1]).toBeCloseTo(-found[1]!.point[1], 6);
  });

  it('adjust small errors: the worked residuals satisfy the normal equations', () => {
    const ties = [at([0, 0], 3.91, 0.01), at([6, 0], 3.9, 0.02), at([2, 7], 4.62, 0.01)];
    const [fix] = solutions(ties);
    for (const axis of [0, 1] as const) {
      const gradient = ties.reduce((sum, tie, i) => {
        const lengthM = xyDistanceM(tie.post, fix!.point);
        return sum + (fix!.residualsM[i]! * (fix!.point[axis] - tie.post[axis])) / lengthM / tie.seM ** 2;
      }, 0);
      expect(Math.abs(gradient)).toBeLessThan(1e-4);
    }
  });

  it('have an error as large as the scatter of points refitted from tapes with errors (Monte Carlo, seeded)', () => {
    const target: Xy = [3, 2.5];
    const { error } = solutions(tapes(target, ...posts))[0]!;
    const random = normals(5);
    let [sumXX, sumXY, sumYY] = [0, 0, 0];
    const rounds = 4000;
    for (let round = 0; round < rounds; round++) {
      const ties = tapes(target, ...posts).map((tie) => ({ ...tie, distanceM: tie.distanceM + 0.01 * random() }));
      const result = trilaterate(ties);
      const [x, y] = result.possible ? result.solutions[0]!.point : result.closest!;
      sumXX += (x - target[0]) ** 2;
      sumXY += (x - target[0]) * (y - target[1]);
      sumYY += (y - target[1]) ** 2;
    }
    expect(sumXX / rounds / error!.covarianceM2.xx).toBeCloseTo(1, 1);
    expect(sumYY / rounds / error!.covarianceM2.yy).toBeCloseTo(1, 1);
    expect(Math.abs(sumXY / rounds - error!.covarianceM2.xy)).toBeLessThan(0.1 * error!.covarianceM2.xx);
  });

  it('name the one tape of four that cannot be right, and by how much', () => {
    const ties = tapes([3, 2.5], ...posts, [9, 8]);
    for (const [wrong, byM] of [
      [0, 0.5],
      [1, -0.4],
      [2, 1],
      [3, -1],
    ] as const) {
      const result = failure(ties.map((tie, i) => (i === wrong ? { ...tie, distanceM: tie.distanceM + byM } : tie)));
      expect(result).toMatchObject({ reason: 'disagree', suspect: wrong });
      expect(result.misclosureM).toBeCloseTo(byM, 6);
    }
  });

  it('name the one of three that meets no other', () => {
    const result = failure([at([0, 0], 3.9), at([6, 0], 3.9), at([2, 7], 40)]);
    expect(result).toMatchObject({ reason: 'disagree', suspect: 2 });
    expect(result.misclosureM).toBeGreaterThan(30);
  });

  it('blame nobody where any of three could be wrong', () => {
    const result = failure(
      tapes([3, 2.5], ...posts).map((tie, i) => (i === 1 ? { ...tie, distanceM: tie.distanceM + 0.5 } : tie)),
    );
    expect(result).toMatchObject({ reason: 'disagree', suspect: null });
    expect(result.closest).not.toBeNull();
  });

  it('manage with one post taped twice', () => {
    const found = solutions([at([0, 0], 5.01), at([0, 0], 4.99), at([6, 0], 5)]);
    expect(found).toHaveLength(2);
    expect(found[0]!.point[0]).toBeCloseTo(3, 3);
    expect(Math.abs(found[0]!.point[1])).toBeCloseTo(4, 3);
  });

  it('need not begin with different posts', () => {
    const twelve = Array.from({ length: 12 }, () => at([0, 0], 5));
    expect(solutions([...twelve, at([6, 0], 5)])).toHaveLength(2);
  });

  it('survive any tapes at all', () => {
    const tie = fc.record({
      post: place,
      distanceM: fc.double({ min: 0, max: 100, noNaN: true }),
      seM: fc.double({ min: 1e-3, max: 1, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(tie, { maxLength: 7 }), (ties) => {
        const result = trilaterate(ties);
        const points = result.possible
          ? result.solutions.map(({ point }) => point)
          : [result.closest ?? ([0, 0] as const)];
        expect(points.flat().every(Number.isFinite)).toBe(true);
      }),
      { seed: 23, numRuns: 300 },
    );
  });
});

describe('ties that lead nowhere', () => {
  it('too few', () => {
    expect(failure([]).reason).toBe('tooFewTies');
    expect(failure([at([0, 0], 1)]).reason).toBe('tooFewTies');
  });

  it('all from one post', () => {
    expect(failure([at([1, 1], 2), at([1, 1], 2), at([1, 1], 3)]).reason).toBe('onePost');
  });

  it('figures that are none', () => {
    expect(() => trilaterate([at([0, 0], -1), at([1, 0], 1)])).toThrow('Tie 1: the distance');
    expect(() => trilaterate([at([0, 0], 1), at([1, 0], 1, 0)])).toThrow('Tie 2: the standard error');
  });
});

/** Standard normal deviates from a small seeded generator (G. E. P. Box and M. E. Muller, 1958). */
function normals(seed: number): () => number {
  let state = seed;
  const uniform = () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return (state + 0.5) / 2 ** 32;
  };
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}
