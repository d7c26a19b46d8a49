import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Xy } from '../../../core/geometry/types.ts';
import { overlapMm, sheetsCovering, sheetsToCover } from '../../../core/sheets/sheetPlan.ts';

const choice = fc.record({
  paper: fc.constantFrom('A4' as const, 'A3' as const),
  orientation: fc.constantFrom('portrait' as const, 'landscape' as const),
  scaleDenominator: fc.constantFrom(500, 1000, 2500, 10_000),
});
const path = fc.array(fc.tuple(fc.integer({ min: -3000, max: 3000 }), fc.integer({ min: -3000, max: 3000 })), {
  minLength: 1,
  maxLength: 12,
}) as fc.Arbitrary<Xy[]>;

function boxOf(points: readonly Xy[]): [number, number, number, number] {
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
}

describe('sheetsCovering', () => {
  it('shows every vertex on some sheet, and every point between two of them', () => {
    fc.assert(
      fc.property(
        fc.array(path, { minLength: 1, maxLength: 5 }),
        choice,
        fc.double({ min: 0, max: 1, noNaN: true }),
        (paths, sheet, share) => {
          const extent = boxOf(paths.flat());
          const [columns, rows] = sheetsToCover(extent, sheet);
          fc.pre(columns * rows <= 400);
          const tiles = sheetsCovering(extent, paths, sheet);
          const between = paths.flatMap((points) =>
            points
              .slice(1)
              .map(
                ([x, y], i): Xy => [
                  points[i]![0] + (x - points[i]![0]) * share,
                  points[i]![1] + (y - points[i]![1]) * share,
                ],
              ),
          );
          for (const [x, y] of [...paths.flat(), ...between]) {
            const seen = tiles.some(
              ({ ground: [w, s, e, n] }) => x >= w - 1e-6 && x <= e + 1e-6 && y >= s - 1e-6 && y <= n + 1e-6,
            );
            expect(seen).toBe(true);
          }
        },
      ),
      { seed: 7, numRuns: 200 },
    );
  });

  it('lets neighbours overlap by at least the stated strip of paper, and names each to the other', () => {
    const sheet = { paper: 'A4', orientation: 'landscape', scaleDenominator: 1000 } as const;
    const corners: Xy[] = [
      [-700, -500],
      [700, -500],
      [700, 500],
      [-700, 500],
      [-700, -500],
      [700, 500],
    ];
    const tiles = sheetsCovering([-700, -500, 700, 500], [corners], sheet);
    expect(tiles.length).toBeGreaterThan(4);
    const opposite = { north: 'south', south: 'north', east: 'west', west: 'east' } as const;
    for (const tile of tiles) {
      for (const side of ['north', 'east', 'south', 'west'] as const) {
        const number = tile.next[side];
        if (number === undefined) continue;
        const other = tiles.find((candidate) => candidate.number === number)!;
        expect(other.next[opposite[side]]).toBe(tile.number);
        const [w, s, e, n] = tile.ground;
        const overlapM = {
          north: n - other.ground[1],
          south: other.ground[3] - s,
          east: e - other.ground[0],
          west: other.ground[2] - w,
        };
        expect(overlapM[side]).toBeGreaterThanOrEqual(overlapMm - 1e-9);
      }
    }
  });

  it('leaves out sheets that nothing reaches', () => {
    const sheet = { paper: 'A4', orientation: 'landscape', scaleDenominator: 500 } as const;
    const diagonal: Xy[][] = [[[0, 0]], [[1000, 1000]]];
    expect(sheetsCovering([0, 0, 1000, 1000], diagonal, sheet)).toHaveLength(2);
  });
});
