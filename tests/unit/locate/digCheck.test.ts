import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Xy } from '../../../core/geometry/types.ts';
import { assumedM } from '../../../core/locate/certainty.ts';
import { type Dig, digCheck } from '../../../core/locate/digCheck.ts';
import { put } from '../../../core/model/project.ts';
import { newBuriedPoint } from '../../../core/model/recordDefaults.ts';
import type { Service, ServiceKind } from '../../../core/model/things.ts';
import { surveyOf } from '../../../core/registers/survey.ts';
import { at, bridgedGateway, drawing, energiser, leadOut, line } from '../../support/drawings.ts';

function service(id: string, what: ServiceKind, points: readonly Xy[], buried = true): Service {
  return { kind: 'service', id, name: id, what, path: points.map(at), voltageV: null, buried, open: null, note: '' };
}

const things = [
  line('F1', [
    [0, 0],
    [100, 0],
  ]),
  bridgedGateway('G1', 'F1', 50),
  energiser('E1', [0, -50]),
  leadOut('L1', 'E1', [
    [0, -50],
    [0, 0],
  ]),
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
    expect(findings.map(({ thing }) => thing.name)).toEqual(['crossing under G1']);
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
    expect(overhead.map(({ thing }) => thing.name)).toEqual(['power line Lines']);
    expect(digCheck(project, survey, dig('point', [[500, 500]]))).toEqual({ findings: [], overhead: [] });
    expect(digCheck(project, survey, dig('line', []))).toEqual({ findings: [], overhead: [] });
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
});
