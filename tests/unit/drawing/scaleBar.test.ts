import { describe, expect, it } from 'vitest';
import type { PathItem, TextItem } from '../../../core/drawing/displayList.ts';
import { drawScaleBar, scaleBarFor } from '../../../core/drawing/signs/scaleBar.ts';
import { roundScales } from '../../../core/sheets/scales.ts';

/** The international foot and mile (1959 agreement): 0.3048 m and 5,280 ft. */
const unitsM: Record<string, number> = { m: 1, km: 1000, ft: 0.3048, mi: 1609.344 };

describe.each(['metric', 'imperial'] as const)('a %s scale bar', (units) => {
  it.each(roundScales)('at 1:%i has ink exactly as long as its figure says', (scaleDenominator) => {
    const items = drawScaleBar(scaleBarFor(scaleDenominator, units, 42), [30, 50]);
    const figures = items.filter((item): item is TextItem => item.kind === 'text').map(({ text }) => text);
    const [value, unit] = figures.at(-1)!.split(' ');
    const groundM = Number(value!.replaceAll(',', '')) * unitsM[unit!]!;
    const expectedMm = (groundM * 1000) / scaleDenominator;
    expect(inkWidthMm(items.filter((item): item is PathItem => item.kind === 'path'))).toBeCloseTo(expectedMm, 9);
    expect(expectedMm).toBeLessThanOrEqual(42);
    expect(expectedMm).toBeGreaterThan(10);
    expect(Number(figures[1]!.replaceAll(',', ''))).toBeCloseTo(Number(value!.replaceAll(',', '')) / 2, 9);
  });
});

/** From the leftmost to the rightmost ink, half the width of strokes included. */
function inkWidthMm(paths: readonly PathItem[]): number {
  const reach = paths.flatMap(({ paths: rings, stroke }) => {
    const half = (stroke?.width ?? 0) / 2;
    return rings.flat().flatMap(([x]) => [x - half, x + half]);
  });
  return Math.max(...reach) - Math.min(...reach);
}
