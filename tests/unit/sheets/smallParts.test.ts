import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { PaperPoint } from '../../../core/drawing/displayList.ts';
import { drawFence, sectionMarks } from '../../../core/drawing/strokes/fence.ts';
import { hatchPolygon } from '../../../core/drawing/strokes/hatch.ts';
import { pointInRing } from '../../../core/geometry/ring.ts';
import { sheetFileName } from '../../../core/sheets/fileName.ts';
import { gridDistanceM, roundGridM } from '../../../core/sheets/map/drawGrid.ts';
import { placeText } from '../../../core/sheets/placeText.ts';
import { roundScales } from '../../../core/sheets/scales.ts';
import { dateText } from '../../../core/words/dates.ts';

describe('sheetFileName', () => {
  it('says property, scale and date', () => {
    expect(sheetFileName('Kōwhai Flat', 5000, '2026-05-12')).toBe('Kōwhai Flat map sheet 1-5000 2026-05-12.pdf');
  });

  it.each([
    ['a/b\\c:d*e?f"g<h>i|j', 'a-b-c-d-e-f-g-h-i-j'],
    ['..', 'Property'],
    ['', 'Property'],
    ['line\nbreak\u0000', 'line-break'],
  ])('%j becomes %s', (name, expected) => {
    expect(sheetFileName(name, 500, '2026-05-12')).toBe(`${expected} map sheet 1-500 2026-05-12.pdf`);
  });

  it('stays short', () => {
    expect(sheetFileName('🐑'.repeat(400), 500, '2026-05-12').length).toBeLessThan(220);
  });
});

describe('dateText', () => {
  it.each([
    ['2026-05-12', '12 May 2026'],
    ['2026-12-01T08:00:00Z', '1 December 2026'],
    ['some day', 'some day'],
    ['2026-13-01', '2026-13-01'],
  ])('%s is %s', (iso, expected) => {
    expect(dateText(iso)).toBe(expected);
  });
});

describe('placeText', () => {
  it('names hemispheres and never breaks between figure and letter', () => {
    expect(placeText([172.4012, -43.51234])).toBe('43.512340°\u00a0S, 172.401200°\u00a0E');
  });
});

describe('the grid', () => {
  it.each(roundScales)('at 1:%i is a round distance, 30 to 75 mm apart', (scale) => {
    const gridM = roundGridM(scale, 'metric');
    expect((gridM * 1000) / scale).toBeGreaterThanOrEqual(30 - 1e-9);
    expect((gridM * 1000) / scale).toBeLessThanOrEqual(75);
    expect(['1', '2', '5']).toContain(gridM.toExponential(0)[0]);
    expect(Number(gridM.toExponential(0))).toBeCloseTo(gridM, 9);
  });

  it.each(roundScales)('at 1:%i is round in feet where the property is in feet', (scale) => {
    const gridM = roundGridM(scale, 'imperial');
    expect((gridM * 1000) / scale).toBeGreaterThanOrEqual(30 - 1e-9);
    expect((gridM * 1000) / scale).toBeLessThanOrEqual(75);
    expect((gridM / 0.3048).toExponential(6)).toMatch(/^[125]\.000000e/);
  });

  it('takes the distance asked for unless it would blacken the sheet', () => {
    expect(gridDistanceM(250, 5000, 'metric')).toBe(250);
    expect(gridDistanceM(1, 5000, 'metric')).toBe(roundGridM(5000, 'metric'));
    expect(gridDistanceM(-1, 5000, 'metric')).toBe(roundGridM(5000, 'metric'));
  });
});

describe('section marks', () => {
  const path: PaperPoint[] = [
    [0, 0],
    [40, 0],
  ];

  it('are eight, each drawn in its own way, and begin again', () => {
    const drawn = Array.from({ length: 8 }, (_, i) => JSON.stringify(drawFence(path, 'built', 0.3, sectionMarks(i))));
    expect(new Set(drawn).size).toBe(8);
    expect(sectionMarks(8)).toBe(sectionMarks(0));
  });

  it('use no dashes, which mean buried', () => {
    for (let i = 0; i < 8; i++)
      expect(JSON.stringify(drawFence(path, 'built', 0.3, sectionMarks(i)))).not.toContain('dash');
  });
});

describe('hatchPolygon', () => {
  it('stays inside the ring', () => {
    const corner = fc.tuple(
      fc.integer({ min: 0, max: 60 }),
      fc.integer({ min: 0, max: 60 }),
    ) as fc.Arbitrary<PaperPoint>;
    fc.assert(
      fc.property(fc.array(corner, { minLength: 3, maxLength: 9 }), (ring) => {
        for (const [[ax, ay], [bx, by]] of hatchPolygon(ring, 2.3, [0, 0, 60, 60]) as [PaperPoint, PaperPoint][]) {
          if (Math.hypot(bx - ax, by - ay) < 1e-6) continue;
          for (const share of [0.01, 0.5, 0.99]) {
            expect(pointInRing([ax + (bx - ax) * share, ay + (by - ay) * share], ring)).toBe(true);
          }
        }
      }),
      { seed: 2, numRuns: 200 },
    );
  });

  it('draws no stroke that cannot meet the frame, however large the ring', () => {
    const vast: PaperPoint[] = [
      [-1e9, -1e9],
      [1e9, -1e9],
      [1e9, 1e9],
      [-1e9, 1e9],
    ];
    expect(hatchPolygon(vast, 2.5, [0, 0, 200, 200]).length).toBeLessThan(130);
  });
});
