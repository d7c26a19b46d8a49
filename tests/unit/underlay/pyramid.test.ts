import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  levelFor,
  parentOf,
  pyramidOf,
  tileCount,
  tileExtent,
  tilePx,
  tileSize,
  whyNotSize,
} from '../../../core/exchange/image/pyramid.ts';
import { inEnglish } from '../../support/english.ts';

const size = fc.record({ widthPx: fc.integer({ min: 1, max: 30_000 }), heightPx: fc.integer({ min: 1, max: 30_000 }) });

describe('tile pyramid', () => {
  test('20,000 by 15,000', () => {
    const { levels } = pyramidOf(20_000, 15_000);
    expect(levels.map(({ columns, rows }) => [columns, rows])).toEqual([
      [40, 30],
      [20, 15],
      [10, 8],
      [5, 4],
      [3, 2],
      [2, 1],
      [1, 1],
    ]);
    expect(tileCount(pyramidOf(20_000, 15_000))).toBe(1200 + 300 + 80 + 20 + 6 + 2 + 1);
  });

  test('one tile is a pyramid', () => {
    expect(pyramidOf(tilePx, 3).levels).toHaveLength(1);
    expect(pyramidOf(tilePx + 1, 3).levels).toHaveLength(2);
  });

  test('each level is covered by its tiles exactly, and each tile by its parent', () => {
    fc.assert(
      fc.property(size, ({ widthPx, heightPx }) => {
        const pyramid = pyramidOf(widthPx, heightPx);
        for (const { level, columns, rows } of pyramid.levels.slice(-4)) {
          let area = 0;
          for (let row = 0; row < rows; row++) {
            for (let column = 0; column < columns; column++) {
              const key = { level, column, row };
              const [x, y, width, height] = tileExtent(pyramid, key);
              const [tileWidth, tileHeight] = tileSize(pyramid, key);
              area += width * height;
              expect(tileWidth).toBe(Math.ceil(width / 2 ** level));
              expect(tileHeight).toBe(Math.ceil(height / 2 ** level));
              if (level + 1 === pyramid.levels.length) continue;
              const [px, py, pWidth, pHeight] = tileExtent(pyramid, parentOf(key));
              expect(px <= x && py <= y && x + width <= px + pWidth && y + height <= py + pHeight).toBe(true);
            }
          }
          expect(area).toBe(widthPx * heightPx);
        }
      }),
      { seed: 4, numRuns: 200 },
    );
  });

  test('the level that is sharp and not finer than it need be', () => {
    const pyramid = pyramidOf(20_000, 15_000);
    expect(levelFor(pyramid, 3)).toBe(0);
    expect(levelFor(pyramid, 1)).toBe(0);
    expect(levelFor(pyramid, 0.5)).toBe(1);
    expect(levelFor(pyramid, 0.3)).toBe(1);
    expect(levelFor(pyramid, 1e-9)).toBe(6);
  });

  test('what is too large is refused with its size', () => {
    expect(whyNotSize(20_000, 15_000)).toBeNull();
    expect(inEnglish(whyNotSize(0, 5))).toMatch(/no size/);
    expect(inEnglish(whyNotSize(90_000, 90_000))).toMatch(/90,000 × 90,000 pixels/);
    expect(inEnglish(whyNotSize(200_000, 10))).toMatch(/200,000/);
  });
});
