import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Xy } from '../../../core/geometry/types.ts';
import { xyDistanceM } from '../../../core/geometry/vector.ts';
import { assumedM } from '../../../core/locate/certainty.ts';
import { crossingAt } from '../../../core/locate/crossingAsBuilt.ts';
import { type Dig, digCheck } from '../../../core/locate/digCheck.ts';
import { type Project, put } from '../../../core/model/project.ts';
import { newBuriedPoint, newCrossingRecord } from '../../../core/model/recordDefaults.ts';
import type { TapeTie } from '../../../core/model/recordThings.ts';
import type { Service, ServiceKind } from '../../../core/model/things.ts';
import { recordCrossing } from '../../../core/record/edits/recordCrossing.ts';
import { depthOfThing, digSentence, errorInWords, verdictInWords } from '../../../core/sheets/find/digWords.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import { figures } from '../../../core/words/figures.ts';
import { message } from '../../../core/words/message.ts';
import { at, bridgedGateway, drawing, energiser, leadOut, line } from '../../support/drawings.ts';
import { inEnglish } from '../../support/english.ts';

function service(id: string, what: ServiceKind, points: readonly Xy[], buried = true): Service {
  return { kind: 'service', id, name: id, what, path: points.map(at), voltageV: null, buried, open: null, note: '' };
}

const things = [
  line('F1', [
    [0, 0],
    [100, 0],
  ]),
  bridgedGateway('G1', 'F1', 50, { status: 'built' }),
  energiser('E1', [0, -50]),
  leadOut(
    'L1',
    'E1',
    [
      [0, -50],
      [0, 0],
    ],
    { status: 'built' },
  ),
  service('Main', 'waterPipe', [
    [0, 40],
    [100, 40],
  ]),
  service(
    'Lines',
    'powerLine',
    [
      [0, 20],
      [100, 20],
    ],
    false,
  ),
];
const project = drawing(...things);
const survey = surveyOf(project);

function dig(shape: Dig['shape'], points: readonly Xy[], more: Partial<Dig> = {}): Dig {
  return { shape, path: points.map(at), errorM: 1, withinM: 10, ...more };
}

describe('digCheck', () => {
  it('names what is near, nearest first, and what may be hit', () => {
    const { findings } = digCheck(project, survey, dig('point', [[50, 5]]));
    // The bow of 1 m goes to the north of the gateway at y = 0.
    expect(findings.map(({ thing }) => inEnglish(thing.name))).toEqual(['crossing under G1']);
    expect(findings[0]!.distanceM).toBeCloseTo(4, 2);
    expect(findings[0]!).toMatchObject({ overlap: false, bearingDeg: expect.closeTo(180, 0) });
    expect(findings[0]!.errorM).toBeCloseTo(1 + assumedM.drawnTrench + 1, 6);
    const nearer = digCheck(project, survey, dig('point', [[50, 3.5]])).findings;
    expect(nearer[0]).toMatchObject({ overlap: true });
  });

  it('knows points, lines and areas', () => {
    const across = digCheck(
      project,
      survey,
      dig('line', [
        [-5, -20],
        [5, -20],
      ]),
    ).findings;
    expect(across[0]).toMatchObject({ distanceM: 0, overlap: true, thing: { id: 'L1', kind: 'leadOut' } });
    const inside = digCheck(
      project,
      survey,
      dig(
        'area',
        [
          [40, -5],
          [60, -5],
          [60, 5],
          [40, 5],
        ],
        { withinM: 0 },
      ),
    ).findings;
    expect(inside.map(({ thing, distanceM }) => [thing.id, distanceM])).toEqual([['G1', 0]]);
    const open = digCheck(
      project,
      survey,
      dig(
        'line',
        [
          [40, -5],
          [60, -5],
          [60, 5],
          [40, 5],
        ],
        { withinM: 0, errorM: 0 },
      ),
    ).findings;
    expect(open).toEqual([]);
  });

  it('is surer of what was measured', () => {
    const measured = put(
      project,
      { ...newBuriedPoint('a', 'X-G1', 'startFoot'), offset: { alongM: 0, leftM: 0 } },
      { ...newBuriedPoint('b', 'X-G1', 'bend'), offset: { alongM: 2, leftM: 1 } },
      { ...newBuriedPoint('c', 'X-G1', 'endFoot'), offset: { alongM: 4, leftM: 0 } },
    );
    const place = dig('point', [[50, 2.5]], { errorM: 0.1 });
    expect(digCheck(project, survey, place).findings[0]).toMatchObject({ overlap: true });
    expect(digCheck(measured, survey, place).findings[0]).toMatchObject({
      overlap: false,
      thing: { basis: 'measured' },
    });
  });

  it('tells power lines overhead apart, and says nothing where nothing is', () => {
    const { findings, overhead } = digCheck(project, survey, dig('point', [[20, 21]]));
    expect(findings).toEqual([]);
    expect(overhead.map(({ thing }) => inEnglish(thing.name))).toEqual(['power line Lines']);
    expect(digCheck(project, survey, dig('point', [[500, 500]]))).toEqual({ findings: [], planned: [], overhead: [] });
    expect(digCheck(project, survey, dig('line', []))).toEqual({ findings: [], planned: [], overhead: [] });
  });

  it('never leaves out what may lie within the distance', () => {
    const numbers = fc.double({ min: -80, max: 180, noNaN: true });
    fc.assert(
      fc.property(
        fc.array(fc.tuple(numbers, numbers), { minLength: 1, maxLength: 5 }),
        fc.double({ min: 0, max: 30, noNaN: true }),
        (path, withinM) => {
          const found = digCheck(project, survey, dig('line', path as Xy[], { withinM })).findings;
          // Brute force: points every 0.5 m along the dig against points every 0.5 m along the pipe.
          const steps = path.flatMap(([x, y], i) => {
            const [nx, ny] = path[i + 1] ?? [x, y];
            const count = Math.max(1, Math.ceil(Math.hypot(nx - x, ny - y) / 0.5));
            return Array.from(
              { length: count + 1 },
              (_, k) => [x + ((nx - x) * k) / count, y + ((ny - y) * k) / count] as Xy,
            );
          });
          const leastM = Math.min(...steps.map(([x, y]) => Math.hypot(x - Math.min(100, Math.max(0, x)), y - 40)));
          const pipe = found.find(({ thing }) => thing.id === 'Main');
          if (leastM <= withinM) expect(pipe).toBeDefined();
          if (pipe) expect(Math.abs(pipe.distanceM - leastM)).toBeLessThan(0.3);
        },
      ),
      { numRuns: 400, seed: 3 },
    );
  });

  it('finds a crossing however far from its gateway it was measured', () => {
    const far = put(
      project,
      { ...newBuriedPoint('far', 'X-G1', 'point'), offset: { alongM: 5, leftM: 90 } },
      { ...newCrossingRecord('X-G1'), route: 'points' },
    );
    const { findings } = digCheck(far, surveyOf(far), dig('point', [[53, 90]], { withinM: 1 }));
    expect(findings).toMatchObject([
      { thing: { name: message('locate.buried.crossing', { gateway: 'G1' }) }, overlap: true },
    ]);
  });

  it('finds a crossing as far off as its record may be, not only where it says', () => {
    const record = newCrossingRecord('X-G1');
    const gps = { lonLat: at([50, 4]), seM: 40 };
    const foot = { ...newBuriedPoint('a foot', 'X-G1', 'startFoot'), gps };
    const unsure = put(project, record, foot, { ...project.property.get('property')!, placed: true });
    const wide = put(
      project,
      { ...project.gateway.get('G1')!, widthM: 80 },
      { ...project.crossing.get('X-G1')!, bowM: null },
    );
    const bowed = put(wide, {
      ...wide.property.get('property')!,
      crossings: { ...wide.property.get('property')!.crossings, bowShare: 1 },
    });
    const farFrom = (drawn: Project, xy: Xy) => digCheck(drawn, surveyOf(drawn), dig('point', [xy], { withinM: 20 }));
    expect(farFrom(unsure, [50, 95]).findings.map(({ thing }) => inEnglish(thing.name))).toContain('crossing under G1');
    expect(farFrom(bowed, [50, 115]).findings.map(({ thing }) => inEnglish(thing.name))).toContain('crossing under G1');
  });

  it('names what is planned as planned, and never as lying there', () => {
    const planned = put(
      project,
      { ...project.crossing.get('X-G1')!, status: 'planned' },
      { ...project.leadOut.get('L1')!, status: 'planned' },
    );
    const surveyed = surveyOf(planned);
    const answer = digCheck(planned, surveyed, dig('point', [[50, 1]]));
    expect(answer.findings).toEqual([]);
    expect(answer.planned).toMatchObject([{ overlap: false, thing: { id: 'G1', inGround: false } }]);
    expect(verdictInWords(answer.planned[0]!, figures('metric'))).toBe(
      'Planned here, not in the ground as far as this file knows',
    );
    expect(digSentence(answer, dig('point', []), figures('metric'))).toBe(
      'Nothing in this file is buried within 10.0 m of the dig. Planned, not in the ground as far as this file knows: crossing under G1.',
    );
    expect(digCheck(planned, surveyed, dig('point', [[0, -25]])).planned).toMatchObject([{ thing: { id: 'L1' } }]);
    // Once something of it was recorded somebody dug there.
    const recorded = put(planned, { ...newCrossingRecord('X-G1'), soil: 'clay' });
    expect(digCheck(recorded, surveyed, dig('point', [[50, 1]])).findings).toMatchObject([{ overlap: true }]);
  });

  it('warns at every foot and bend of a file that holds one twice', () => {
    const place = (id: string, role: 'startFoot' | 'bend', leftM: number) => {
      return { ...newBuriedPoint(id, 'X-G1', role), offset: { alongM: 2, leftM } };
    };
    const twice = put(
      project,
      place('a', 'bend', 1),
      place('b', 'bend', -5),
      place('c', 'startFoot', 0),
      place('d', 'startFoot', -8),
    );
    for (const route of ['arc', 'points'] as const) {
      const recorded = put(twice, { ...newCrossingRecord('X-G1'), route });
      for (const y of [-5, -8]) {
        const { findings } = digCheck(
          recorded,
          surveyOf(recorded),
          dig('point', [[50, y]], { errorM: 0.1, withinM: 1 }),
        );
        expect(findings).toMatchObject([
          { thing: { name: message('locate.buried.crossing', { gateway: 'G1' }) }, overlap: true },
        ]);
      }
    }
  });

  it('takes a record that was emptied again for none', () => {
    const planned = put(project, { ...project.crossing.get('X-G1')!, status: 'planned' });
    const spot = dig('point', [[50, 1]]);
    const names = (of: Project) => digCheck(of, surveyOf(of), spot).findings.map(({ thing }) => inEnglish(thing.name));
    const noted = recordCrossing('X-G1', { soil: 'clay' })(planned);
    expect(names(noted)).toContain('crossing under G1');
    const emptied = put(recordCrossing('X-G1', { soil: '' })(noted), newBuriedPoint('b', 'X-G1', 'bend'));
    expect(names(emptied)).not.toContain('crossing under G1');
  });

  it('tells the shallowest depth first, measured or planned', () => {
    const depthsOf = (checked: Project) =>
      depthOfThing(digCheck(checked, survey, dig('point', [[50, 1]])).findings[0]!, figures('metric'));
    expect(depthsOf(project)).toBe('trench 0.30 m deep as planned, not measured');
    const depths = [
      { alongM: 0, depthM: 0.42 },
      { alongM: 2, depthM: 0.1 },
    ];
    expect(depthsOf(put(project, { ...newCrossingRecord('X-G1'), depths }))).toBe(
      '0.10 to 0.42 m deep to the top of the pipe, measured',
    );
  });

  it('warns at every place where two tapes put a point whose side nobody said', () => {
    const { startPost, endPost } = survey.gateways.get('G1')!;
    const metres = (min: number, max: number) => fc.integer({ min: 100 * min, max: 100 * max }).map((cm) => cm / 100);
    const place = fc.tuple(metres(-1, 5), metres(-3, 3));
    const tie = (post: 'start' | 'end', place: Xy): TapeTie => {
      const stood = post === 'start' ? startPost : endPost;
      const distanceM = Math.round(xyDistanceM(stood, place) * 100) / 100;
      const from = { on: 'gatePost', gatewayId: 'G1', post } as const;
      return { from, postName: '', postAt: at(stood), distanceM, seM: 0.02 };
    };
    let [mirrored, met] = [0, 0];
    fc.assert(
      fc.property(
        fc.record({ startFoot: place, bend: place, endFoot: place }),
        fc.constantFrom('arc' as const, 'points' as const),
        fc.subarray(['startFoot', 'bend', 'endFoot'] as const, { minLength: 1 }),
        (places, route, taped) => {
          const points = taped.map((role) => {
            const [along, off] = places[role];
            const xy: Xy = [startPost[0] + along, startPost[1] + off];
            const ties = [tie('start', xy), tie('end', xy)];
            return { xy, mirror: [xy[0], -xy[1]] as Xy, point: { ...newBuriedPoint(role, 'X-G1', role), ties } };
          });
          const recorded = put(project, { ...newCrossingRecord('X-G1'), route }, ...points.map(({ point }) => point));
          const crossing = crossingAt(recorded, survey, 'G1')!;
          for (const { xy, mirror, point } of points) {
            const solved = crossing.points.find((each) => each.point.id === point.id)!;
            if (solved.basis !== 'ambiguous') continue;
            mirrored++;
            expect(crossing.certainty.basis).not.toBe('measured');
            for (const there of [xy, mirror]) {
              const answer = digCheck(recorded, survey, dig('point', [there], { errorM: 0.02, withinM: 1 }));
              expect(answer.findings[0]).toMatchObject({ overlap: true, thing: { id: 'G1' } });
              expect(digSentence(answer, dig('point', [there]), figures('metric'))).toMatch(
                /^Do not dig yet: crossing under G1/,
              );
              met++;
            }
          }
        },
      ),
      { numRuns: 600, seed: 7 },
    );
    expect(mirrored).toBeGreaterThan(600);
    expect(met).toBe(2 * mirrored);
  });

  it('takes tapes that do not meet for no more than a drawing, and warns where any two of them meet', () => {
    const { startPost, endPost } = survey.gateways.get('G1')!;
    const post = { kind: 'post', id: 'P1', name: 'P1', at: at([50, 12]), role: 'other', note: '' } as const;
    // The bend lies 1.5 m to the south, against the drawing; the third tape is a metre out.
    const truth: Xy = [50, -1.5];
    const tie = (from: TapeTie['from'], stood: Xy, outM = 0): TapeTie => {
      return { from, postName: '', postAt: at(stood), distanceM: xyDistanceM(stood, truth) + outM, seM: 0.02 };
    };
    const bend = {
      ...newBuriedPoint('b', 'X-G1', 'bend'),
      ties: [
        tie({ on: 'gatePost', gatewayId: 'G1', post: 'start' }, startPost),
        tie({ on: 'gatePost', gatewayId: 'G1', post: 'end' }, endPost),
        tie({ on: 'post', postId: 'P1' }, [50, 12], 1),
      ],
    };
    const recorded = put(project, post, bend);
    const { findings } = digCheck(recorded, survey, dig('point', [truth], { errorM: 0 }));
    expect(findings[0]).toMatchObject({ overlap: true, thing: { basis: 'contradictory' } });
    expect(errorInWords(findings[0]!, figures('metric'))).toContain('tapes do not meet, so assumed');
    // The same of a crossing that an old file no longer draws.
    const orphaned = put(recorded, { ...recorded.crossing.get('X-G1')!, method: 'overhead' });
    const still = digCheck(orphaned, surveyOf(orphaned), dig('point', [truth], { errorM: 0 })).findings;
    expect(still[0]).toMatchObject({ overlap: true, thing: { kind: 'lostPoint', basis: 'contradictory' } });
  });
});
