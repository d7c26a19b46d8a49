import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Xy } from '../../../core/geometry/types.ts';
import { crossingAt } from '../../../core/locate/crossingAsBuilt.ts';
import { type StakePlace, type StakePoint, stakeOut } from '../../../core/locate/stakeOut.ts';
import { fixedPosts } from '../../../core/locate/tieFrom.ts';
import { type Project, put } from '../../../core/model/project.ts';
import { newBuriedPoint } from '../../../core/model/recordDefaults.ts';
import type { TapeTie } from '../../../core/model/recordThings.ts';
import { tapesInWords } from '../../../core/sheets/find/stakeWords.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import type { Survey } from '../../../core/survey/types.ts';
import { figures } from '../../../core/words/figures.ts';
import { at, bridgedGateway, drawing, line, strainer } from '../../support/drawings.ts';
import { inEnglish } from '../../support/english.ts';

const gateM = 4;

/** A gateway whose posts stand at (48, 0) and (52, 0), and a strainer off the line. */
function property() {
  const base = drawing(
    line('F1', [
      [0, 0],
      [100, 0],
    ]),
    bridgedGateway('G1', 'F1', 50, { widthM: gateM }),
    strainer('P1', [55, 6]),
  );
  return { base, survey: surveyOf(base) };
}

/** What a person with two tapes and a compass word finds: circles about the posts by hand, the side by the word. */
function foundOnTheGround({ tapes, places: [place] }: StakePoint): Xy {
  const side = place?.side;
  const [a, b] = tapes.map(({ post, distanceM }) => ({ post, r: Math.round(distanceM * 100) / 100 }));
  if (!b) return a!.post;
  const [dx, dy] = [b.post[0] - a!.post[0], b.post[1] - a!.post[1]];
  const d = Math.hypot(dx, dy);
  const x = (a!.r ** 2 - b.r ** 2 + d ** 2) / (2 * d);
  const h = Math.sqrt(Math.max(0, a!.r ** 2 - x ** 2));
  const places = [1, -1].map((s): Xy => {
    return [a!.post[0] + (x * dx - s * h * dy) / d, a!.post[1] + (x * dy + s * h * dx) / d];
  });
  const wanted = { north: [0, 1], south: [0, -1], east: [1, 0], west: [-1, 0] };
  const word = side ?? 'north';
  const direction: Xy = [0, 0].map((_, i) =>
    Object.entries(wanted).reduce((sum, [name, unit]) => sum + (word.includes(name) ? unit[i]! : 0), 0),
  ) as unknown as Xy;
  return places.toSorted(
    (p, q) => q[0] * direction[0] + q[1] * direction[1] - (p[0] * direction[0] + p[1] * direction[1]),
  )[0]!;
}

const stakeAt = (project: Project, survey: Survey) =>
  stakeOut(crossingAt(project, survey, 'G1')!, fixedPosts(project, survey));

const apart = (a: Xy, b: Xy) => Math.hypot(a[0] - b[0], a[1] - b[1]);
const toCm = (lengthM: number) => Math.round(lengthM * 100) / 100;

function tie(from: TapeTie['from'], post: Xy, point: Xy): TapeTie {
  return { from, postName: '', postAt: at(post), distanceM: toCm(apart(post, point)), seM: 0.01 };
}

describe('stakeOut', () => {
  it('gives a point recorded by two ties to the centimetre back within 2 cm; where it can’t, it says so', () => {
    const { base, survey } = property();
    const { startPost, endPost } = survey.gateways.get('G1')!;
    let strong = 0;
    fc.assert(
      fc.property(
        fc.double({ min: -3, max: 7, noNaN: true }),
        fc.double({ min: 0.05, max: 6, noNaN: true }),
        fc.boolean(),
        (along, off, left) => {
          const truth: Xy = [startPost[0] + along, startPost[1] + (left ? off : -off)];
          const point = {
            ...newBuriedPoint('b1', 'X-G1', 'bend'),
            side: left ? ('left' as const) : ('right' as const),
            ties: [
              tie({ on: 'gatePost', gatewayId: 'G1', post: 'start' }, startPost, truth),
              tie({ on: 'gatePost', gatewayId: 'G1', post: 'end' }, endPost, truth),
            ],
          };
          const project = put(base, point);
          const found = stakeAt(project, survey).points.find(({ key }) => key === 'b1');
          // Tapes rounded to the centimetre may fail to meet where the point is next to the line of the posts.
          if (!found || found.places.length === 0) return off < 0.3;
          const [{ offset, withinM }] = found.places as [StakePlace];
          const missM = apart(foundOnTheGround(found), truth);
          const inFrame: Xy = [startPost[0] + offset.alongM, startPost[1] + offset.leftM];
          expect(missM).toBeLessThanOrEqual(withinM + 0.02);
          if (found.weak) return true;
          strong++;
          expect(missM).toBeLessThanOrEqual(0.02);
          expect(apart(inFrame, truth)).toBeLessThanOrEqual(0.02);
          return true;
        },
      ),
      { numRuns: 5000, seed: 11 },
    );
    expect(strong).toBeGreaterThan(3000);
  });

  it('works tapes out for a point that was measured otherwise', () => {
    const { base, survey } = property();
    const { startPost } = survey.gateways.get('G1')!;
    fc.assert(
      fc.property(
        fc.double({ min: 0.3, max: 3.7, noNaN: true }),
        fc.double({ min: 0.6, max: 3, noNaN: true }),
        fc.boolean(),
        (alongM, off, left) => {
          const leftM = left ? off : -off;
          const point = { ...newBuriedPoint('b1', 'X-G1', 'bend'), offset: { alongM, leftM } };
          const found = stakeAt(put(base, point), survey).points.find(({ key }) => key === 'b1')!;
          expect(found.by).toBe('offset');
          expect(found.tapes.every(({ taped }) => !taped)).toBe(true);
          expect(apart(foundOnTheGround(found), [startPost[0] + alongM, startPost[1] + leftM])).toBeLessThanOrEqual(
            0.02,
          );
        },
      ),
      { numRuns: 1000, seed: 12 },
    );
  });

  it('steps along the line between the posts follow the arc', () => {
    const { base, survey } = property();
    const { steps, stepsAssumed, crossing, leftIs, rightIs } = stakeAt(base, survey);
    expect(steps.map(({ alongM }) => alongM)).toEqual([0.5, 1, 1.5, 2, 2.5, 3, 3.5]);
    // A chord of 4 m with a bow of 1 m: radius (16/4 + 1) / 2 = 2.5 m, so 1 m from the foot sqrt(6.25 - 1) - 1.5.
    expect(steps.every(({ leftMs }) => leftMs.length === 1)).toBe(true);
    expect(steps[3]!.leftMs[0]).toBeCloseTo(1, 2);
    expect(steps[1]!.leftMs[0]).toBeCloseTo(Math.sqrt(5.25) - 1.5, 2);
    expect(steps[0]!.leftMs[0]).toBeCloseTo(steps[6]!.leftMs[0]!, 6);
    expect(crossing.certainty).toMatchObject({ basis: 'drawn' });
    // Nobody measured the bow: it must not look like a measure.
    expect(stepsAssumed).toBe(true);
    expect([leftIs, rightIs]).toEqual(['north', 'south']);
  });

  it('names the posts as they are found on the ground, and no crossing where there is none', () => {
    const { base, survey } = property();
    const { start, end } = stakeAt(base, survey).postNames;
    expect([inEnglish(start), inEnglish(end)]).toEqual(['hinge post (west)', 'latch post (east)']);
    const double = put(base, { ...base.gateway.get('G1')!, leaves: 2 });
    const both = stakeAt(double, surveyOf(double)).postNames;
    expect([inEnglish(both.start), inEnglish(both.end)]).toEqual(['west post', 'east post']);
    expect(crossingAt(base, survey, 'G9')).toBeNull();
  });

  it('leads to both places of a point whose side nobody said, and steps along both courses', () => {
    const { base, survey } = property();
    const { startPost, endPost } = survey.gateways.get('G1')!;
    const truth: Xy = [startPost[0] + 2, -1.2];
    const point = {
      ...newBuriedPoint('b1', 'X-G1', 'bend'),
      ties: [
        tie({ on: 'gatePost', gatewayId: 'G1', post: 'start' }, startPost, truth),
        tie({ on: 'gatePost', gatewayId: 'G1', post: 'end' }, endPost, truth),
      ],
    };
    const { points, steps, stepsAssumed } = stakeAt(put(base, point), survey);
    const found = points.find(({ key }) => key === 'b1')!;
    expect(found.places.map(({ side }) => side)).toEqual(['north', 'south']);
    expect(Math.min(...found.places.map(({ xy }) => apart(xy, truth)))).toBeLessThan(0.02);
    expect(steps[3]!.leftMs).toEqual([expect.closeTo(-1.2, 1), expect.closeTo(1.2, 1)]);
    expect(stepsAssumed).toBe(false);
  });

  it('keeps the tapes in view that do not meet', () => {
    const { base, survey } = property();
    const { startPost, endPost } = survey.gateways.get('G1')!;
    const short = { ...tie({ on: 'gatePost', gatewayId: 'G1', post: 'start' }, startPost, endPost), distanceM: 1 };
    const point = {
      ...newBuriedPoint('b1', 'X-G1', 'bend'),
      ties: [short, { ...short, from: { on: 'gatePost', gatewayId: 'G1', post: 'end' } as const, postAt: at(endPost) }],
    };
    const { points, stepsAssumed } = stakeAt(put(base, point), survey);
    const found = points.find(({ key }) => key === 'b1')!;
    expect(found.places).toEqual([]);
    expect(found.tapes.map(({ postName, distanceM }) => [inEnglish(postName), distanceM])).toEqual([
      ['hinge post (west)', 1],
      ['latch post (east)', 1],
    ]);
    expect(tapesInWords(found, figures('metric'))).toBe(
      'From the hinge post (west) 1.00 m, from the latch post (east) 1.00 m: these tapes do not meet.',
    );
    expect(stepsAssumed).toBe(true);
  });
});
