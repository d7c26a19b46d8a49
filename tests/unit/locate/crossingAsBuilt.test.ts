import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { xyDistanceM } from '../../../core/geometry/plane/xyDistance.ts';
import type { Xy } from '../../../core/geometry/types.ts';
import { crossingAt, depthAtM } from '../../../core/locate/crossingAsBuilt.ts';
import { fixedPosts, tieFromKey } from '../../../core/locate/tieFrom.ts';
import { tiesInWords } from '../../../core/locate/tieWords.ts';
import { type Project, put } from '../../../core/model/project.ts';
import { newBuriedPoint, newCrossingRecord } from '../../../core/model/recordDefaults.ts';
import type { BuriedPoint, TapeTie } from '../../../core/model/recordThings.ts';
import { surveyOf } from '../../../core/registers/survey.ts';
import { at, bridgedGateway, drawing, line, strainer } from '../../support/drawings.ts';

/** A gateway from x = 48 to x = 52 on a fence along the x axis, with marked posts around. */
const plain = drawing(
  line('F1', [
    [0, 0],
    [100, 0],
  ]),
  bridgedGateway('G1', 'F1', 50),
  strainer('P1', [45, 6]),
  strainer('P2', [57, -5]),
);
const survey = surveyOf(plain);
const posts = new Map(fixedPosts(plain, survey).map((post) => [post.key, post]));
const [hinge, latch] = ['gatePost:G1:start', 'gatePost:G1:end'];
const [p1, p2] = ['post:P1', 'post:P2'];

function tie(key: string, distanceM: number, seM = 0.01): TapeTie {
  const post = posts.get(key)!;
  return { from: post.from, postName: post.name, postAt: post.at, distanceM, seM };
}

const tapes = (target: Xy, keys: readonly string[]) =>
  keys.map((key) => tie(key, xyDistanceM(posts.get(key)!.xy, target)));

function bend(changes: Partial<BuriedPoint>): BuriedPoint {
  return { ...newBuriedPoint('bend', 'X-G1', 'bend'), ...changes };
}

const asBuilt = (project: Project) => crossingAt(project, survey, 'G1')!;
const solve = (point: BuriedPoint) => asBuilt(put(plain, point)).points[0]!;

describe('ties', () => {
  test('posts go by what they are called on the ground', () => {
    expect([...posts.values()].map(({ name }) => name)).toEqual([
      'hinge post of G1',
      'latch post of G1',
      'post P1',
      'post P2',
    ]);
    expect([...posts.values()].every(({ key, from }) => key === tieFromKey(from))).toBe(true);
  });

  test('two ties from the gate posts: the side that was said decides', () => {
    const ties = tapes([50, 1.2], [hinge!, latch!]);
    expect(solve(bend({ ties, side: 'left' })).xy![1]).toBeCloseTo(1.2, 6);
    const right = solve(bend({ ties, side: 'right' }));
    expect(right.xy![1]).toBeCloseTo(-1.2, 6);
    expect(right.mirror!.point[1]).toBeCloseTo(1.2, 6);
    expect(right.sideAssumed).toBe(false);
  });

  test('without a side it is the one nearer to where it was drawn, and that is said', () => {
    const solved = solve(bend({ ties: tapes([50, 1.2], [hinge!, latch!]) }));
    expect(solved.xy![1]).toBeCloseTo(1.2, 6);
    expect(solved.sideAssumed).toBe(true);
    expect(tiesInWords(solved, 'metric')).toContain('say on which side');
  });

  test('three ties that can not be: names the tape that is wrong', () => {
    const ties = tapes([50, 1.2], [hinge!, latch!, p1!, p2!]).map((each, i) =>
      i === 2 ? { ...each, distanceM: each.distanceM + 1 } : each,
    );
    const solved = solve(bend({ ties }));
    expect(solved.xy).toBeNull();
    expect(tiesInWords(solved, 'metric')).toMatch(/from post P1 can't be right; it is off by (0\.9\d|1\.\d\d) m/);
  });

  test('two tapes too short for the posts, and one too long', () => {
    expect(tiesInWords(solve(bend({ ties: [tie(hinge!, 1), tie(latch!, 1)] })), 'metric')).toContain(
      'shorter than the posts are apart by 2.00 m',
    );
    expect(tiesInWords(solve(bend({ ties: [tie(hinge!, 9), tie(latch!, 1)] })), 'metric')).toContain(
      'the 9.00 m from hinge post of G1 is too long by 4.00 m',
    );
  });

  test('an impossible set falls back to the offset, and says which it used', () => {
    const solved = solve(bend({ ties: [tie(hinge!, 1), tie(latch!, 1)], offset: { alongM: 2, leftM: 0.9 } }));
    expect(solved.by).toBe('offset');
    expect(solved.xy![0]).toBeCloseTo(50, 4);
    expect(solved.xy![1]).toBeCloseTo(0.9, 4);
  });

  test('a post that is gone counts where it stood', () => {
    const ties = tapes([50, 1.2], [p1!, p2!]);
    const without = drawing(
      line('F1', [
        [0, 0],
        [100, 0],
      ]),
      bridgedGateway('G1', 'F1', 50),
    );
    const found = crossingAt(put(without, bend({ ties })), surveyOf(without), 'G1')!.points[0]!;
    expect(found.ties.map(({ gone }) => gone)).toEqual([true, true]);
    expect(xyDistanceM(found.xy!, [50, 1.2])).toBeLessThan(1e-4);
  });

  test('a point comes back from ties of 1 cm precision within 2 cm, over thousands of places', () => {
    const near = fc.double({ min: -3, max: 3, noNaN: true });
    fc.assert(
      fc.property(near, near, (dx, dy) => {
        const target: Xy = [50 + dx, dy];
        const ties = tapes(target, [hinge!, latch!, p1!, p2!]).map((each) => ({
          ...each,
          distanceM: Math.round(each.distanceM * 100) / 100,
        }));
        expect(xyDistanceM(solve(bend({ ties })).xy!, target)).toBeLessThan(0.02);
      }),
      { numRuns: 3000, seed: 5 },
    );
  });

  test('GPS does not count while the property has no place on earth', () => {
    const gps = { lonLat: at([50, 1]), seM: 3 };
    expect(solve(bend({ gps })).by).toBe('gps');
    const unplaced = put(plain, { ...plain.property.get('property')!, placed: false }, bend({ gps }));
    expect(asBuilt(unplaced).points[0]!.xy).toBeNull();
  });
});

describe('the path as built', () => {
  test('runs through a bend that was taped, as an arc from foot to foot', () => {
    const built = asBuilt(put(plain, bend({ ties: tapes([50, 1.5], [hinge!, latch!]), side: 'left' })));
    expect(Math.max(...built.path.map(([, y]) => y))).toBeCloseTo(1.5, 6);
    expect(built.measured).toBe(true);
    // Arc of chord 4 and bow 1.5: radius 2.0833, angle 4 atan(0.75) = 2.5740, length 5.3625 (plane geometry).
    expect(built.lengthM).toBeCloseTo(5.3625, 2);
  });

  test('runs straight from point to point in their order', () => {
    const record = { ...newCrossingRecord('X-G1'), route: 'points' as const };
    const first = { ...newBuriedPoint('a', 'X-G1', 'point', 1), offset: { alongM: 1, leftM: 1 } };
    const second = { ...newBuriedPoint('b', 'X-G1', 'point', 2), offset: { alongM: 3, leftM: 1 } };
    const built = asBuilt(put(plain, record, second, first));
    expect(built.path.map((xy) => xy.map((value) => Math.round(value * 100) / 100 + 0))).toEqual([
      [48, 0],
      [49, 1],
      [51, 1],
      [52, 0],
    ]);
    expect(built.lengthM).toBeCloseTo(2 + 2 * Math.SQRT2, 3);
  });

  test('depth lies between those measured', () => {
    const depths = [
      { alongM: 4, depthM: 0.5 },
      { alongM: 0, depthM: 0.3 },
    ];
    const built = asBuilt(put(plain, { ...newCrossingRecord('X-G1'), depths }));
    expect([-1, 0, 1, 4, 9].map((alongM) => depthAtM(built, alongM))).toEqual([0.3, 0.3, 0.35, 0.5, 0.5]);
    expect(depthAtM(asBuilt(plain), 1)).toBe(0.3);
  });

  test('without a record it is the drawn path, and says that nothing was measured', () => {
    const built = asBuilt(plain);
    expect(built.path).toEqual(built.figures.path);
    expect(built.measured).toBe(false);
    expect(built.seM).toBeNull();
  });
});
