import { describe, expect, it, test } from 'vitest';
import { projectionOf } from '../../../core/coordinates/projection.ts';
import { systemOfEpsg } from '../../../core/coordinates/systems.ts';
import { distanceM } from '../../../core/geometry/geodesic.ts';
import type { LonLat, Xy } from '../../../core/geometry/types.ts';
import { inEnglish } from '../../support/english.ts';

/** Worked out by PROJ 9.1.1 from the degrees of each system's own datum; the two with a shift from WGS 84. */
const cases: readonly (readonly [code: number, lonLat: LonLat, grid: Xy])[] = [
  [26901, [-178.2, 40.1], [397716.648, 4439546.318]],
  [26915, [-92.1, 41.7], [574885.287, 4616859.712]],
  [26923, [-44.5, 45], [539407.649, 4983071.987]],
  [2956, [-110.4, 52.3], [540914.226, 5794575.424]],
  [2962, [-56, 47.5], [575313.102, 5261214.318]],
  [3157, [-122.8, 50.1], [514303.657, 5549768.408]],
  [3160, [-86.2, 50.2], [557095.129, 5561174.249]],
  [3761, [-52.1, 47.3], [416841.519, 5239089.59]],
  [3726, [-68.4, 44.9], [547371.368, 4972016.85]],
  [3745, [-92.2, 34], [573879.173, 3762444.406]],
  [6329, [178.4, 52], [596108.457, 5761963.565]],
  [6344, [-93.6, 41.7], [450076.609, 4616642.335]],
  [28348, [105.7, -10.4], [576622.967, 8850277.065]],
  [28355, [146.5, -33.2], [453397.51, 6326429.337]],
  [31976, [-50.2, 3], [588901.679, 331625.663]],
  [31983, [-46.1, -19.8], [384784.132, 7810275.771]],
  [2135, [178.1, -38], [596578.511, 5793614.169]],
  [6371, [-87.9, 20.6], [406214.219, 2278138.754]],
  [5070, [-97.5, 41], [-125160.735, 1999978.712]],
  [6350, [-97.5, 41], [-125160.735, 1999978.712]],
  [3979, [-106, 52], [-743771.404, 396370.64]],
  [3577, [146.5, -33.2], [1339876.465, -3697587.403]],
  [3112, [146.5, -33.2], [1155924.608, -3798443.64]],
  [3035, [12.5, 48.2], [4506889.24, 2790531.297]],
  [2154, [2.3, 46.2], [646022.535, 6566923.272]],
  [3942, [2.3, 42.3], [1642282.459, 1233556.092]],
  [3950, [3.3, 50.2], [1721417.606, 9222287.296]],
  [27700, [-2.5, 52.3], [366000.71, 266993.003]],
  [29902, [-7.5, 53], [233618.999, 194446.15]],
];

describe('systems by their EPSG code', () => {
  test.each(cases)('EPSG:%i', (code, lonLat, grid) => {
    const { name, definition } = systemOfEpsg(code)!;
    const { toGrid, toLonLat } = projectionOf(definition).projection!;
    const [east, north] = toGrid(lonLat);
    expect(Math.hypot(east - grid[0], north - grid[1])).toBeLessThan(0.01);
    expect(distanceM(toLonLat(grid), lonLat)).toBeLessThan(0.01);
    expect(inEnglish(name)).toMatch(/within about \d m of WGS 84/);
  });

  it('degrees of datums that are nearly WGS 84', () => {
    for (const code of [4269, 4283, 4617, 4674, 4171, 4148, 4152, 4759, 6318, 4979]) {
      expect(projectionOf(systemOfEpsg(code)!.definition).projection!.isDegrees).toBe(true);
    }
    expect(inEnglish(systemOfEpsg(4269)!.name)).toBe('NAD83 (within about 2 m of WGS 84)');
  });

  it('knows nothing of others', () => {
    // A datum of 1927, the Lo grids that count south, and codes beside the families.
    for (const code of [4267, 26715, 2053, 26924, 28359, 3941, 3951, 32661, 0, -1, Number.NaN]) {
      expect(systemOfEpsg(code)).toBeNull();
    }
  });
});
