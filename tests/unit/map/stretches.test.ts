import { describe, expect, it } from 'vitest';
import { stretchesBetween } from '../../../renderer/map/scene/buildScene.ts';

describe('a line with openings', () => {
  it('leaves the stretches between openings', () => {
    expect(stretchesBetween([], 10)).toEqual([[0, 10]]);
    expect(
      stretchesBetween(
        [
          { fromM: 6, toM: 8 },
          { fromM: 0, toM: 2 },
        ],
        10,
      ),
    ).toEqual([
      [2, 6],
      [8, 10],
    ]);
    expect(
      stretchesBetween(
        [
          { fromM: 1, toM: 5 },
          { fromM: 4, toM: 10 },
        ],
        10,
      ),
    ).toEqual([[0, 1]]);
  });
});
