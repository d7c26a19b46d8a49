import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createLocalPlane } from '../../../core/geometry/localPlane.ts';
import { cumulativeLengthsM } from '../../../core/geometry/polyline.ts';
import type { Xy } from '../../../core/geometry/types.ts';
import { newFenceLine } from '../../../core/model/defaults.ts';
import type { GroundHeights, HeightGrid } from '../../../core/model/groundThings.ts';
import { orderDefaults } from '../../../core/model/orderDefaults.ts';
import { put } from '../../../core/model/project.ts';
import type { LonLat, Thing } from '../../../core/model/things.ts';
import { takeOff } from '../../../core/quantities/takeOff.ts';
import { gridHeightM } from '../../../core/survey/heights/gridHeight.ts';
import { levelledWay } from '../../../core/survey/heights/levelledWay.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import { at, emptyProject, testOrigin } from '../../support/randomProjects.ts';

const plane = createLocalPlane(testOrigin);

function surveyed(paths: readonly (readonly Xy[])[], ...things: readonly Thing[]) {
  const lines = paths.map((path, i) =>
    newFenceLine({ id: `f${i}`, name: `F${i}`, typeId: 'ft-2', path: path.map(([x, y]) => at(x, y)) }),
  );
  const project = put(emptyProject(), ...lines, ...things);
  return { project, survey: surveyOf(project) };
}

function ground(heights: GroundHeights['heights']): GroundHeights {
  return { kind: 'ground', id: 'g', name: 'Heights', fileName: 'made up', heights, note: '' };
}

/** A grid of 20 m or so about the origin, its heights by a rule in metres of the plane. */
function gridOf(heightM: (xy: Xy) => number | null): HeightGrid {
  const [stepLonDeg, stepLatDeg, columns, rows] = [0.00025, 0.0002, 100, 100];
  const northWest: LonLat = [testOrigin[0] - 0.0125, testOrigin[1] + 0.01];
  const heightsDm = Array.from({ length: columns * rows }, (_, i) => {
    const lonLat: LonLat = [
      northWest[0] + stepLonDeg * (i % columns),
      northWest[1] - stepLatDeg * Math.floor(i / columns),
    ];
    const height = heightM(plane.toXy(lonLat));
    return height === null ? null : Math.round(10 * height);
  });
  return { as: 'grid', northWest, stepLonDeg, stepLatDeg, columns, rows, heightsDm };
}

/** Earth-centred coordinates on WGS 84: B. Hofmann-Wellenhof and others, "GNSS", 2008, 8.2. */
function earthCentred([lon, lat]: LonLat, heightM: number): readonly [number, number, number] {
  const [a, f] = [6378137, 1 / 298.257223563];
  const [phi, lambda] = [(lat * Math.PI) / 180, (lon * Math.PI) / 180];
  const e2 = f * (2 - f);
  const n = a / Math.sqrt(1 - e2 * Math.sin(phi) ** 2);
  return [
    (n + heightM) * Math.cos(phi) * Math.cos(lambda),
    (n + heightM) * Math.cos(phi) * Math.sin(lambda),
    (n * (1 - e2) + heightM) * Math.sin(phi),
  ];
}

describe('length over the ground', () => {
  it('is what Pythagoras says on an even slope', () => {
    const { survey } = surveyed(
      [
        [
          [-400, 0],
          [400, 0],
        ],
      ],
      ground(gridOf(([x]) => 100 + 0.2 * x)),
    );
    const planM = survey.lines.get('f0')!.lengthM;
    const overM = survey.heights.slopeLengthM('f0', 0, planM)!;
    expect(overM / (planM * Math.hypot(1, 0.2))).toBeCloseTo(1, 4);
    // A piece of it is the same share.
    expect(survey.heights.slopeLengthM('f0', 100, 300)! / (200 * Math.hypot(1, 0.2))).toBeCloseTo(1, 3);
  });

  it('agrees with straight lines between places in space, far above the sea too', () => {
    const ends: [Xy, Xy] = [
      [-300, -200],
      [250, 330],
    ];
    const heightAt = ([x, y]: Xy) => 2000 + 0.1 * x - 0.25 * y;
    const { survey } = surveyed([ends], ground(gridOf(heightAt)));
    const [a, b] = ends.map((xy) => earthCentred(at(...xy), heightAt(xy)));
    const straightM = Math.hypot(...a!.map((value, i) => value - b![i]!));
    const overM = survey.heights.slopeLengthM('f0', 0, survey.lines.get('f0')!.lengthM)!;
    expect(Math.abs(overM / straightM - 1)).toBeLessThan(2e-5);
  });

  it('is never less than the plan length, and its pieces add up', () => {
    const hill = ground(gridOf(([x, y]) => 50 + 30 * Math.sin(x / 60) * Math.cos(y / 80)));
    const station = fc.double({ min: 0, max: 700, noNaN: true });
    const { survey } = surveyed(
      [
        [
          [-350, 20],
          [0, -100],
          [340, 50],
        ],
      ],
      hill,
    );
    fc.assert(
      fc.property(station, station, station, (...stations) => {
        const [a, b, c] = stations.sort((p, q) => p - q) as [number, number, number];
        const over = (from: number, to: number) => survey.heights.slopeLengthM('f0', from, to)!;
        expect(over(a, c)).toBeGreaterThanOrEqual((c - a) * (1 - 1e-9));
        expect(over(a, b) + over(b, c)).toBeCloseTo(over(a, c), 6);
      }),
      { seed: 71 },
    );
  });

  it('is not known where heights are missing, and known beside it', () => {
    const { survey } = surveyed(
      [
        [
          [-400, 0],
          [400, 0],
        ],
      ],
      ground(gridOf(([x]) => (x > 100 ? null : 10))),
    );
    expect(survey.heights.slopeLengthM('f0', 0, 450)).toBeCloseTo(450, 2);
    expect(survey.heights.slopeLengthM('f0', 0, 600)).toBeNull();
    expect(survey.heights.slopeLengthM('nobody', 0, 1)).toBeNull();
  });

  it('comes from a way beside the fence too, and not from one far off', () => {
    const way = [at(-100, 5), at(0, 5), at(100, 5)];
    const along = ground({ as: 'along', byReceiver: false, ways: [{ path: way, heightsM: [10, 40, 10] }] });
    const { survey } = surveyed(
      [
        [
          [-100, 0],
          [100, 0],
        ],
        [
          [-100, 60],
          [100, 60],
        ],
      ],
      along,
    );
    // The height is asked for every 10 m, so the very top is cut off a little.
    expect(survey.heights.slopeLengthM('f0', 0, 200)! / (2 * Math.hypot(100, 30))).toBeCloseTo(1, 2);
    expect(survey.heights.slopeLengthM('f1', 0, 200)).toBeNull();
  });

  it('goes with a fence that is moved, as it belongs to the ground', () => {
    const steep = ground(gridOf(([, y]) => 0.3 * y + 200));
    const flat = surveyed(
      [
        [
          [-100, 0],
          [100, 0],
        ],
      ],
      steep,
    ).survey.heights.slopeLengthM('f0', 0, 200)!;
    const climbing = surveyed(
      [
        [
          [0, -100],
          [0, 100],
        ],
      ],
      steep,
    ).survey.heights.slopeLengthM('f0', 0, 200)!;
    expect(flat).toBeCloseTo(200, 1);
    expect(climbing).toBeCloseTo(200 * Math.hypot(1, 0.3), 1);
  });

  it('is what wire is ordered by', () => {
    const wireM = (...things: Thing[]) => {
      const { project, survey } = surveyed(
        [
          [
            [-300, 0],
            [300, 0],
          ],
        ],
        ...things,
      );
      const { quantities } = takeOff({ project, survey, settings: { ...orderDefaults, tieOffM: 0 } });
      return quantities.find(({ key }) => key.startsWith('wire'))!.amount;
    };
    const slope = ground(gridOf(([x]) => 100 + 0.5 * x));
    expect(wireM(slope) / wireM()).toBeCloseTo(Math.hypot(1, 0.5), 3);
  });
});

describe('a grid', () => {
  const grid: HeightGrid = {
    as: 'grid',
    northWest: [179.999, -20],
    stepLonDeg: 0.001,
    stepLatDeg: 0.001,
    columns: 3,
    rows: 2,
    heightsDm: [100, 200, 300, 300, 400, null],
  };

  it('is linear both ways between its places, across the 180 meridian too', () => {
    expect(gridHeightM(grid, [179.999, -20])).toBeCloseTo(10, 9);
    expect(gridHeightM(grid, [179.9995, -20.0005])).toBeCloseTo(25, 6);
    expect(gridHeightM(grid, [-179.9995, -20])).toBeCloseTo(25, 6);
  });

  it('knows nothing outside it, or beside a gap', () => {
    expect(gridHeightM(grid, [179.998, -20])).toBeNull();
    expect(gridHeightM(grid, [179.9995, -19.999])).toBeNull();
    expect(gridHeightM(grid, [-179.9995, -20.0005])).toBeNull();
  });
});

const inPlane = (xy: Xy[]) => ({ xy, stationsM: cumulativeLengthsM(xy) });

describe('what a receiver measured', () => {
  it('is levelled: an even slope stays, wandering goes', () => {
    const xy = Array.from({ length: 101 }, (_, i): Xy => [5 * i, 0]);
    const slope = xy.map(([x]) => 20 + 0.1 * x);
    const kept = levelledWay(inPlane(xy), slope, true).heightsM;
    for (const [i, height] of kept.entries()) expect(height).toBeCloseTo(slope[i]!, 6);
    const wandering = slope.map((height, i) => height + (i % 2 === 0 ? 3 : -3));
    const levelled = levelledWay(inPlane(xy), wandering, true).heightsM;
    for (let i = 10; i < 90; i++) expect(Math.abs(levelled[i]! - slope[i]!)).toBeLessThan(0.7);
    expect(levelledWay(inPlane(xy), wandering, false).heightsM).toBe(wandering);
  });

  it('the same from one end as from the other, with positions that double', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 0, max: 40 }), fc.integer({ min: 0, max: 90 })), {
          minLength: 2,
          maxLength: 30,
        }),
        (legs) => {
          let x = 0;
          const xy = legs.map(([leg]): Xy => {
            x += leg;
            return [x, 0];
          });
          const heights = legs.map(([, height]) => height);
          const there = levelledWay(inPlane(xy), heights, true).heightsM;
          const back = levelledWay(inPlane(xy.toReversed()), heights.toReversed(), true).heightsM.toReversed();
          for (const [i, height] of there.entries()) {
            expect(height).toBeCloseTo(back[i]!, 6);
            expect(height).toBeGreaterThanOrEqual(Math.min(...heights) - 1e-9);
            expect(height).toBeLessThanOrEqual(Math.max(...heights) + 1e-9);
          }
        },
      ),
      { seed: 72 },
    );
  });
});
