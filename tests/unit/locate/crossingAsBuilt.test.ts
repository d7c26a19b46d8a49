import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { featuresOf } from '../../../core/exchange/outgoing/featuresOf.ts';
import type { Xy } from '../../../core/geometry/types.ts';
import { xyDistanceM } from '../../../core/geometry/vector.ts';
import { crossingAt } from '../../../core/locate/crossingAsBuilt.ts';
import { depthAt, depthOf } from '../../../core/locate/depth.ts';
import { depthInWords, depthLabel, leftOutInWords } from '../../../core/locate/depthWords.ts';
import { fixedPosts, tieFromKey } from '../../../core/locate/tieFrom.ts';
import { doNotMeetInWords, tiesInWords } from '../../../core/locate/tieWords.ts';
import { type Project, put } from '../../../core/model/project.ts';
import { newBuriedPoint, newCrossingRecord } from '../../../core/model/recordDefaults.ts';
import type { BuriedPoint, TapeTie } from '../../../core/model/recordThings.ts';
import { crossingTable } from '../../../core/sheets/crossingSchedulePages.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import { figures } from '../../../core/words/figures.ts';
import { at, bridgedGateway, drawing, line, strainer } from '../../support/drawings.ts';
import { inEnglish } from '../../support/english.ts';

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
  return { from: post.from, postName: inEnglish(post.name), postAt: post.at, distanceM, seM };
}

const tapes = (target: Xy, keys: readonly string[]) =>
  keys.map((key) => tie(key, xyDistanceM(posts.get(key)!.xy, target)));

function bend(changes: Partial<BuriedPoint>): BuriedPoint {
  return { ...newBuriedPoint('bend', 'X-G1', 'bend'), ...changes };
}

const asBuilt = (project: Project) => crossingAt(project, survey, 'G1')!;
const solve = (point: BuriedPoint) => asBuilt(put(plain, point)).points[0]!;
/** Where a point is that can be in one place only. */
function only(point: BuriedPoint): Xy {
  const { places } = solve(point);
  expect(places).toHaveLength(1);
  return places[0]!.xy;
}

describe('ties', () => {
  test('posts go by what they are called on the ground', () => {
    expect([...posts.values()].map(({ name }) => inEnglish(name))).toEqual([
      'hinge post of G1',
      'latch post of G1',
      'post P1',
      'post P2',
    ]);
    expect([...posts.values()].every(({ key, from }) => key === tieFromKey(from))).toBe(true);
  });

  test('two ties from the gate posts: the side that was said decides', () => {
    const ties = tapes([50, 1.2], [hinge!, latch!]);
    expect(only(bend({ ties, side: 'left' }))[1]).toBeCloseTo(1.2, 6);
    const right = solve(bend({ ties, side: 'right' }));
    expect(right).toMatchObject({ basis: 'measured', places: [{ side: 'south' }] });
    expect(right.places[0]!.xy[1]).toBeCloseTo(-1.2, 6);
  });

  test('without a side it can be at either, the one nearer to where it was drawn first; and that is said', () => {
    const solved = solve(bend({ ties: tapes([50, 1.2], [hinge!, latch!]) }));
    expect(solved.basis).toBe('ambiguous');
    expect(solved.places.map(({ side }) => side)).toEqual(['north', 'south']);
    expect(solved.places.map(({ xy }) => xy[1])).toEqual([expect.closeTo(1.2, 6), expect.closeTo(-1.2, 6)]);
    expect(solved.firstLikelier).toBe(true);
    expect(inEnglish(tiesInWords(solved))).toMatch(
      /^These tapes fit two places, 2\.40 m apart: one on the north side, one on the south side of the line of the posts\. Nobody said which\./,
    );
  });

  test('three posts in one line tell no more than two', () => {
    const inLine = put(plain, strainer('P3', [60, 0]));
    const [fence] = fixedPosts(inLine, surveyOf(inLine)).filter(({ key }) => key === 'post:P3');
    const third = { from: fence!.from, postName: 'P3', postAt: fence!.at, distanceM: Math.hypot(10, 1.2), seM: 0.01 };
    const point = bend({ ties: [...tapes([50, 1.2], [hinge!, latch!]), third] });
    const solved = crossingAt(put(inLine, point), surveyOf(inLine), 'G1')!.points[0]!;
    expect(solved).toMatchObject({ basis: 'ambiguous', places: [{ side: 'north' }, { side: 'south' }] });
  });

  test('a riser foot in the line of the posts is no surer than its tapes cross it', () => {
    // 2 cm more than the posts are apart: it may stand up to 30 cm off their line.
    const foot = { ...newBuriedPoint('foot', 'X-G1', 'startFoot'), ties: [tie(hinge!, 2.01), tie(latch!, 2.01)] };
    const { basis, places } = asBuilt(put(plain, foot)).points[0]!;
    expect(basis).toBe('ambiguous');
    expect(Math.max(...places.map(({ withinM }) => withinM))).toBeLessThan(0.5);
    const missed = { ...foot, ties: [tie(hinge!, 1.99), tie(latch!, 1.99)] };
    const [place] = asBuilt(put(plain, missed)).points[0]!.places;
    expect(place!.withinM).toBeGreaterThan(0.1);
    expect(place!.withinM).toBeLessThan(0.4);
  });

  test('three ties that can not be: names the tape that is wrong', () => {
    const ties = tapes([50, 1.2], [hinge!, latch!, p1!, p2!]).map((each, i) =>
      i === 2 ? { ...each, distanceM: each.distanceM + 1 } : each,
    );
    const solved = solve(bend({ ties }));
    expect(solved).toMatchObject({ basis: 'contradictory', places: [] });
    // Where two of its tapes meet, the true place among them.
    expect(solved.pairs.some((xy) => xyDistanceM(xy, [50, 1.2]) < 1e-6)).toBe(true);
    expect(inEnglish(doNotMeetInWords(solved))).toMatch(/^These tapes do not meet: 2\.33 m from hinge post of G1, /);
    expect(inEnglish(tiesInWords(solved))).toMatch(/from post P1 can't be right; it is off by (0\.9\d|1\.\d\d) m/);
  });

  test('two tapes too short for the posts, and one too long', () => {
    expect(inEnglish(tiesInWords(solve(bend({ ties: [tie(hinge!, 1), tie(latch!, 1)] }))))).toContain(
      'shorter than the posts are apart by 2.00 m',
    );
    expect(inEnglish(tiesInWords(solve(bend({ ties: [tie(hinge!, 9), tie(latch!, 1)] }))))).toContain(
      'the 9.00 m from hinge post of G1 is too long by 4.00 m',
    );
    // A riser foot beside the posts: 0.40 m and 4.40 m at an opening of 4 m, to the millimetre.
    const beside = inEnglish(tiesInWords(solve(bend({ ties: [tie(hinge!, 4.401), tie(latch!, 0.4)] }))));
    expect(beside).toMatch(/^The tapes only just meet, on the line of the posts\. Within 0\.\d\d m/);
  });

  test('an impossible set falls back to the offset, and says which it used', () => {
    const solved = solve(bend({ ties: [tie(hinge!, 1), tie(latch!, 1)], offset: { alongM: 2, leftM: 0.9 } }));
    expect(solved).toMatchObject({ by: 'offset', basis: 'contradictory' });
    expect(solved.places[0]!.xy[0]).toBeCloseTo(50, 4);
    expect(solved.places[0]!.xy[1]).toBeCloseTo(0.9, 4);
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
    expect(Math.min(...found.places.map(({ xy }) => xyDistanceM(xy, [50, 1.2])))).toBeLessThan(1e-4);
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
        expect(xyDistanceM(only(bend({ ties })), target)).toBeLessThan(0.02);
      }),
      { numRuns: 3000, seed: 5 },
    );
  });

  test('GPS does not count while the property has no place on earth', () => {
    const gps = { lonLat: at([50, 1]), seM: 3 };
    expect(solve(bend({ gps })).by).toBe('gps');
    const unplaced = put(plain, { ...plain.property.get('property')!, placed: false }, bend({ gps }));
    expect(asBuilt(unplaced).points[0]).toMatchObject({ basis: 'none', places: [] });
  });
});

describe('the path as built', () => {
  test('runs through a bend that was taped, as an arc from foot to foot', () => {
    const built = asBuilt(put(plain, bend({ ties: tapes([50, 1.5], [hinge!, latch!]), side: 'left' })));
    expect(Math.max(...built.path.map(([, y]) => y))).toBeCloseTo(1.5, 6);
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
    expect([-1, 0, 1, 4, 9].map((alongM) => depthAt(built, alongM).depthM)).toEqual([0.3, 0.3, 0.35, 0.5, 0.5]);
    expect([0, 1, 4, 9].map((alongM) => depthAt(built, alongM).basis)).toEqual([
      'measured',
      'nearby',
      'measured',
      'nearby',
    ]);
    expect(depthAt(asBuilt(plain), 1)).toEqual({ depthM: 0.3, basis: 'planned' });
  });

  test('depth is told as what it is: measured to the top of the pipe, or planned of the trench', () => {
    const depths = [
      { alongM: 0, depthM: 0.42 },
      { alongM: 2, depthM: 0.1 },
      { alongM: 4, depthM: 0.3 },
    ];
    const built = asBuilt(put(plain, { ...newCrossingRecord('X-G1'), depths }));
    expect(inEnglish(depthInWords(depthOf(built)))).toBe('0.10 to 0.42 m deep to the top of the pipe, measured');
    expect(inEnglish(depthInWords(depthOf(built)), 'imperial')).toBe(
      '0.33 to 1.38 ft deep to the top of the pipe, measured',
    );
    // One place says little of the rest, in every output.
    const once = put(plain, { ...newCrossingRecord('X-G1'), depths: [{ alongM: 1, depthM: 0.6 }] });
    const surveyed = surveyOf(once);
    const deep = depthOf(crossingAt(once, surveyed, 'G1')!);
    expect(inEnglish(depthInWords(deep))).toBe('0.60 m deep to the top of the pipe, measured at one place');
    expect(depthLabel({ ...deep, inGround: true }).map((said) => inEnglish(said))).toEqual([
      '0.60 m to the pipe',
      'measured at one place',
    ]);
    expect(crossingTable(once, surveyed, figures('metric'), false).rows[0]).toContain(
      '0.60 to pipe, measured at one place',
    );
    const feature = [...featuresOf(once, surveyed)].find(({ id }) => id === 'crossing:X-G1')!;
    expect(feature.properties).toMatchObject({ depthIs: 'measured to the top of the pipe, at one place' });
    expect(inEnglish(depthInWords(depthOf(asBuilt(plain))))).toBe('trench 0.30 m deep as planned, not measured');
  });

  test('a depth beyond the trench counts for nothing, and is told of', () => {
    const depths = [
      { alongM: 0, depthM: 0.3 },
      { alongM: 4, depthM: 0.4 },
      { alongM: 9, depthM: 0.02 },
    ];
    const built = asBuilt(put(plain, { ...newCrossingRecord('X-G1'), depths }));
    expect(depthAt(built, built.lengthM).depthM).toBe(0.4);
    const depth = depthOf(built);
    expect(depth).toMatchObject({ leastM: 0.3, mostM: 0.4, leftOut: [{ alongM: 9, depthM: 0.02 }] });
    expect(inEnglish(leftOutInWords(depth, built.lengthM))).toBe(
      'Left out: a depth of 0.02 m at 9.00 m, beyond the end of the trench (4.63 m long).',
    );
  });

  test('of two depths at one place the shallower counts', () => {
    const depths = [
      { alongM: 1, depthM: 0.35 },
      { alongM: 1, depthM: 0.05 },
    ];
    expect(depthAt(asBuilt(put(plain, { ...newCrossingRecord('X-G1'), depths })), 1).depthM).toBe(0.05);
  });

  test('the whole is as sure as its least sure point', () => {
    const basis = (...points: BuriedPoint[]) => asBuilt(put(plain, ...points)).certainty.basis;
    const foot = (role: 'startFoot' | 'endFoot', alongM: number): BuriedPoint => {
      return { ...newBuriedPoint(role, 'X-G1', role), offset: { alongM, leftM: 0 } };
    };
    const feet = [foot('startFoot', 0.3), foot('endFoot', 3.7)];
    const taped = bend({ ties: tapes([50, 1.2], [hinge!, latch!]), side: 'left' });
    expect(basis()).toBe('drawn');
    expect(basis(taped)).toBe('partly');
    expect(basis(...feet)).toBe('partly');
    expect(basis(...feet, taped)).toBe('measured');
    expect(basis(...feet, { ...taped, side: null })).toBe('ambiguous');
    const lost = { ...newBuriedPoint('endFoot', 'X-G1', 'endFoot'), ties: [tie(hinge!, 1), tie(latch!, 1)] };
    expect(basis(feet[0]!, lost, { ...taped, side: null })).toBe('contradictory');
    expect(asBuilt(put(plain, feet[0]!, lost, taped)).certainty.withinM).toBeGreaterThan(1);
  });

  test('two feet and a bend that can be in two places each are eight courses; a long route does not explode', () => {
    const open = (role: 'startFoot' | 'endFoot' | 'bend', xy: Xy): BuriedPoint => {
      return { ...newBuriedPoint(role, 'X-G1', role), ties: tapes(xy, [hinge!, latch!]) };
    };
    const built = asBuilt(
      put(plain, open('startFoot', [48.1, 0.4]), open('bend', [50, 1.2]), open('endFoot', [51.9, -0.3])),
    );
    expect(built.courses).toHaveLength(8);
    for (const { path } of built.courses) expect(path.length).toBeGreaterThan(2);

    const count = 60;
    const route = Array.from({ length: count }, (_, i): BuriedPoint => {
      const xy: Xy = [48.2 + (3.6 * i) / count, 0.5 + 0.2 * Math.sin(i)];
      return { ...newBuriedPoint(`p${i}`, 'X-G1', 'point', i + 1), ties: tapes(xy, [hinge!, latch!]) };
    });
    const long = asBuilt(put(plain, ...route, { ...newCrossingRecord('X-G1'), route: 'points' }));
    expect(long.courses).toHaveLength(2 + 4 * (count - 1) + 2);
    expect(long.certainty.basis).toBe('ambiguous');
  });

  test('without a record it is the drawn path, and says that nothing was measured', () => {
    const built = asBuilt(plain);
    expect(built.path).toEqual(built.figures.path);
    expect(built.certainty).toMatchObject({ basis: 'drawn' });
  });
});
