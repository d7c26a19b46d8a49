import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { barText, longestBar } from '../../../core/drawing/signs/scaleBar.ts';
import { gridLines, gridSpacing } from '../../../core/drawing/strokes/gridSpacing.ts';
import { gridFigure } from '../../../renderer/map/interaction/gridLabels.ts';

describe('the grid', () => {
  it('stands at 1, 2 or 5 times a power of ten, no nearer together than asked', () => {
    fc.assert(
      // From 100 km across a screen to 10 m.
      fc.property(fc.double({ min: -2.3, max: 2.3, noNaN: true }), (log) => {
        const pxPerM = 10 ** log;
        const { stepM } = gridSpacing(pxPerM, 'metric', 56);
        expect(stepM * pxPerM).toBeGreaterThanOrEqual(56 * (1 - 1e-9));
        expect(stepM * pxPerM).toBeLessThanOrEqual(56 * 2.5 * (1 + 1e-9));
        const mantissa = stepM / 10 ** Math.floor(Math.log10(stepM) + 1e-9);
        expect([1, 2, 5].some((round) => Math.abs(mantissa - round) < 1e-6)).toBe(true);
      }),
      { seed: 3 },
    );
  });

  it('is in feet and miles on an imperial screen', () => {
    expect(gridSpacing(1, 'imperial', 56).stepM).toBeCloseTo(200 * 0.3048, 9);
    expect(gridSpacing(0.01, 'imperial', 56).stepM).toBeCloseTo(5 * 1609.344, 6);
  });

  it('has its lines at whole multiples, the ends among them', () => {
    expect(gridLines(-100, 100, 50)).toEqual([-2, -1, 0, 1, 2]);
    expect(gridLines(1, 49, 50)).toEqual([]);
  });

  it('writes figures without needless zeros', () => {
    expect(gridFigure(200, 100, 'metric', 'east', 'west')).toBe('200 m E');
    expect(gridFigure(-1500, 500, 'metric', 'north', 'south')).toBe('1.5 km S');
    expect(gridFigure(0.5, 0.5, 'metric', 'north', 'south')).toBe('0.5 m N');
    expect(gridFigure(0, 50, 'metric', 'east', 'west')).toBe('0');
    expect(gridFigure(61 * 0.3048, 0.3048, 'imperial', 'east', 'west')).toBe('61 ft E');
    expect(gridFigure(6000 * 0.3048, 2000 * 0.3048, 'imperial', 'east', 'west')).toBe('6,000 ft E');
    expect(gridFigure(3 * 1609.344, 1609.344, 'imperial', 'east', 'west')).toBe('3 mi E');
  });
});

describe('the scale bar', () => {
  it('is the longest round length that fits', () => {
    const shown = (perM: number, most: number) => {
      const bar = longestBar(perM, 'metric', most);
      return { lengthPx: bar.length, text: barText(bar) };
    };
    expect(shown(1, 130)).toEqual({ lengthPx: 100, text: '100 m' });
    expect(shown(0.05, 130)).toEqual({ lengthPx: 100, text: '2 km' });
    expect(shown(200, 130)).toEqual({ lengthPx: 100, text: '0.5 m' });
    expect(shown(0.1, 100).text).toBe('1 km');
    // Of 1, 2, 4 and 5, as on the sheets.
    expect(shown(1, 480).text).toBe('400 m');
  });
});
