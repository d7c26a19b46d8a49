import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { marksAlong, pathLength } from '../../../core/drawing/strokes/marksAlong.ts';

describe('marks along a line', () => {
  it('stand evenly, half a step from either end', () => {
    expect(
      marksAlong(
        [
          [0, 0],
          [100, 0],
        ],
        25,
      ).map(({ at }) => at[0]),
    ).toEqual([12.5, 37.5, 62.5, 87.5]);
  });

  it('go round corners and take their direction from the segment', () => {
    const marks = marksAlong(
      [
        [0, 0],
        [30, 0],
        [30, 30],
      ],
      30,
    );
    expect(marks).toEqual([
      { at: [15, 0], along: [1, 0] },
      { at: [30, 15], along: [0, 1] },
    ]);
  });

  it('are left out on a line too short for one, and survive doubled vertices', () => {
    expect(
      marksAlong(
        [
          [0, 0],
          [10, 0],
        ],
        30,
      ),
    ).toEqual([]);
    expect(
      marksAlong(
        [
          [0, 0],
          [0, 0],
          [30, 0],
          [30, 0],
        ],
        30,
      ),
    ).toEqual([{ at: [15, 0], along: [1, 0] }]);
    expect(marksAlong([], 30)).toEqual([]);
  });

  it('are as many as the length asks for, on any path', () => {
    const coordinate = fc.double({ min: -500, max: 500, noNaN: true });
    fc.assert(
      fc.property(fc.array(fc.tuple(coordinate, coordinate), { minLength: 2, maxLength: 12 }), (path) => {
        expect(marksAlong(path, 40)).toHaveLength(Math.round(pathLength(path) / 40));
      }),
      { seed: 5 },
    );
  });
});
