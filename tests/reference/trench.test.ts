import { describe, expect, it } from 'vitest';
import { arcFigures, arcOffsetM, arcPath, pointOnArc } from '../../core/geometry/arc.ts';
import { pipeLengthM } from '../../core/geometry/conduit.ts';
import type { Impossible } from '../../core/geometry/tie.ts';
import { trilaterate } from '../../core/geometry/trilaterate.ts';
import type { Xy } from '../../core/geometry/types.ts';
import { referenceData } from './data.ts';

interface ArcCase {
  id: string;
  type: 'arc';
  gate_width_m: number;
  bow_m: number;
  depth_m: number;
  riser_m: number;
  expected: {
    radius_m: number;
    central_angle_deg: number;
    arc_length_m: number;
    max_offset_m: number;
    extra_over_straight_m: number;
    conduit_length_m: number;
    offset_at?: { along_chord_m: number; offset_m: number }[];
  };
}

interface TieCase {
  id: string;
  type: 'trilateration';
  post_A: Xy;
  post_B: Xy;
  dist_A_m: number;
  dist_B_m: number;
  se_dist_A_m: number;
  se_dist_B_m: number;
  expected: {
    possible: boolean;
    reason?: string;
    misclosure_m?: number;
    degenerate?: string;
    solutions: {
      side_of_A_to_B: string;
      x: number;
      y: number;
      covariance_m2?: [[number, number], [number, number]];
      se_x_m?: number;
      se_y_m?: number;
      se_position_m?: number;
      ellipse_semi_axes_m?: [number, number];
    }[];
  };
}

/** Source: plane geometry worked at 50 digits with mpmath, as the file says. */
const { cases } = referenceData<{ cases: (ArcCase | TieCase)[] }>('trench.json');
const millimetre = 1e-3;
/** The file prints 12 digits; nothing in it is computed less exactly. */
const printed = 1e-10;

const reasons: readonly (readonly [RegExp, Impossible['reason']])[] = [
  [/too far apart/, 'tooShort'],
  [/inside/, 'tooLong'],
  [/coincide/, 'onePost'],
];

describe('trench and ties against plane geometry at 50 digits', () => {
  it('has cases', () => expect(cases.length).toBeGreaterThan(0));
  for (const example of cases) {
    it(example.id, () => (example.type === 'arc' ? checkArc(example) : checkTies(example)));
  }
});

function checkArc({
  gate_width_m: chordM,
  bow_m: bowM,
  depth_m: depthM,
  riser_m: riserHeightM,
  expected,
}: ArcCase): void {
  const { radiusM, centralAngleDeg, lengthM } = arcFigures(chordM, bowM);
  expectNear(radiusM, expected.radius_m, printed * expected.radius_m);
  expectNear(centralAngleDeg, expected.central_angle_deg, printed * expected.central_angle_deg);
  expectNear(lengthM, expected.arc_length_m, printed * expected.arc_length_m);
  expectNear(lengthM - chordM, expected.extra_over_straight_m, millimetre);
  const pipeM = pipeLengthM({ trenchM: lengthM, depthM, riserHeightM, allowanceM: 0 });
  expectNear(pipeM, expected.conduit_length_m, printed * expected.conduit_length_m);
  expectNear(arcOffsetM(chordM, bowM, chordM / 2), expected.max_offset_m, printed);
  for (const { along_chord_m: alongM, offset_m: offsetM } of expected.offset_at ?? []) {
    expectNear(arcOffsetM(chordM, bowM, alongM), offsetM, printed);
  }
  const path = arcPath([0, 0], [chordM, 0], bowM, 1e-7);
  const pathM = path.slice(1).reduce((sum, [x, y], i) => sum + Math.hypot(x - path[i]![0], y - path[i]![1]), 0);
  expectNear(pathM, expected.arc_length_m, millimetre);
  expectNear(pointOnArc([0, 0], [chordM, 0], bowM, 0.5)[1], expected.max_offset_m, printed);
}

function checkTies(example: TieCase): void {
  const { expected } = example;
  const result = trilaterate([
    { post: example.post_A, distanceM: example.dist_A_m, seM: example.se_dist_A_m },
    { post: example.post_B, distanceM: example.dist_B_m, seM: example.se_dist_B_m },
  ]);
  expect(result.possible).toBe(expected.possible);
  if (!result.possible) {
    expect(result.reason).toBe(reasons.find(([pattern]) => pattern.test(expected.reason ?? ''))?.[1]);
    if (expected.misclosure_m === undefined) expect(result.misclosureM).toBeNull();
    else expectNear(result.misclosureM!, expected.misclosure_m, 1e-9);
    return;
  }
  expect(result.solutions).toHaveLength(expected.solutions.length);
  for (const [i, solution] of expected.solutions.entries()) {
    const { point, side, error } = result.solutions[i]!;
    expect(side).toBe(solution.side_of_A_to_B === 'on the line' ? 'onLine' : solution.side_of_A_to_B);
    expectNear(point[0], solution.x, millimetre / 1000);
    expectNear(point[1], solution.y, millimetre / 1000);
    if (!solution.covariance_m2) {
      expect(error).toBeNull();
      continue;
    }
    const { covarianceM2, seXM, seYM, sePositionM, ellipse } = error!;
    const scaleM2 = solution.se_position_m! ** 2;
    expectNear(covarianceM2.xx, solution.covariance_m2[0][0], 1e-6 * scaleM2);
    expectNear(covarianceM2.xy, solution.covariance_m2[0][1], 1e-6 * scaleM2);
    expectNear(covarianceM2.yy, solution.covariance_m2[1][1], 1e-6 * scaleM2);
    expectNear(seXM, solution.se_x_m!, 1e-6 * solution.se_x_m!);
    expectNear(seYM, solution.se_y_m!, 1e-6 * solution.se_y_m!);
    expectNear(sePositionM, solution.se_position_m!, 1e-6 * solution.se_position_m!);
    expectNear(ellipse.semiMajorM, solution.ellipse_semi_axes_m![0], 1e-6 * solution.ellipse_semi_axes_m![0]);
    expectNear(ellipse.semiMinorM, solution.ellipse_semi_axes_m![1], 1e-6 * solution.ellipse_semi_axes_m![1]);
  }
}

function expectNear(value: number, expected: number, tolerance: number): void {
  expect(Math.abs(value - expected), `${value} against ${expected}`).toBeLessThanOrEqual(tolerance);
}
