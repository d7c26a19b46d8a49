import { describe, expect, it } from 'vitest';
import type { Xy } from '../../../core/geometry/types.ts';
import { bestTiePosts } from '../../../core/locate/bestTiePosts.ts';

const post = (id: string, x: number, y: number) => ({ id, at: [x, y] as Xy });
const ids = (choice: { posts: readonly { id: string }[] } | undefined) => choice?.posts.map(({ id }) => id).sort();

describe('bestTiePosts', () => {
  const target: Xy = [0, 0];

  it('takes the pair seen at a right angle: standard error of position sqrt(2) tapes', () => {
    const posts = [post('east', 5, 0), post('north', 0, 6), post('north-east', 2, 2), post('far east', 9, 0.5)];
    const [best] = bestTiePosts(posts, target, { count: 2 });
    expect(ids(best)).toEqual(['east', 'north']);
    expect(best!.error.sePositionM).toBeCloseTo(Math.SQRT2 * 0.01, 9);
    expect(best!.distancesM).toEqual([5, 6]);
    expect(best!.mirrorM).toBeCloseTo((2 * 30) / Math.hypot(5, 6), 9);
  });

  it('never offers posts in one line with the point', () => {
    expect(bestTiePosts([post('a', 1, 0), post('b', 4, 0)], target, { count: 2 })).toEqual([]);
  });

  it('keeps within the tape', () => {
    const posts = [post('near', 3, 1), post('mid', 1, 8), post('far', 0, 40)];
    expect(bestTiePosts(posts, target, { count: 2, tapeLengthM: 30 }).map(ids)).toEqual([['mid', 'near']]);
    expect(bestTiePosts(posts, target, { count: 3, tapeLengthM: 30 })).toEqual([]);
  });

  it('takes three posts all round: sqrt(4/3) tapes, and no mirror', () => {
    const around = [0, 120, 240].map((degrees) => {
      const angle = (degrees * Math.PI) / 180;
      return post(String(degrees), 5 * Math.cos(angle), 5 * Math.sin(angle));
    });
    const [best] = bestTiePosts([...around, post('beside', 5.5, 0.3)], target, { count: 3 });
    expect(ids(best)).toEqual(['0', '120', '240']);
    expect(best!.error.sePositionM).toBeCloseTo(Math.sqrt(4 / 3) * 0.01, 9);
    expect(best!.mirrorM).toBeNull();
  });

  it('warns of the mirror where three posts stand along one fence', () => {
    const [best] = bestTiePosts([post('a', -4, 3), post('b', 0, 3), post('c', 4, 3)], target, { count: 3 });
    expect(best!.mirrorM).toBeCloseTo(6, 9);
  });

  it('takes larger errors from a coarser tape in proportion', () => {
    const posts = [post('a', 3, 1), post('b', 1, 4)];
    const fine = bestTiePosts(posts, target, { count: 2, tapeSeM: 0.01 })[0]!;
    const coarse = bestTiePosts(posts, target, { count: 2, tapeSeM: 0.05 })[0]!;
    expect(coarse.error.sePositionM / fine.error.sePositionM).toBeCloseTo(5, 9);
  });
});
