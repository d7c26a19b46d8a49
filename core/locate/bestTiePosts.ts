import { type PositionError, positionError } from '../geometry/positionError.ts';
import type { Xy } from '../geometry/types.ts';
import { subtract, unit, xyDistanceM } from '../geometry/vector.ts';

export interface TiePost {
  readonly id: string;
  readonly at: Xy;
}

export interface TieChoice {
  readonly posts: readonly TiePost[];
  /** What the tapes will measure, metres, post by post. */
  readonly distancesM: readonly number[];
  /** How surely the point will be known. */
  readonly error: PositionError;
  /** How far off the mirror point lies, metres; null where a third tie rules it out. */
  readonly mirrorM: number | null;
}

export interface TieChoiceOptions {
  /** How many ties: a pair leaves a mirror point, a triple checks itself. */
  readonly count: 2 | 3;
  /** Standard error of one tape distance; 1 cm is common practice, no source. */
  readonly tapeSeM?: number;
  /** Length of the tape; 30 m is an ordinary one (common practice, no source). */
  readonly tapeLengthM?: number;
  readonly most?: number;
}

/** Only the posts nearest to the target are paired. */
const nearestPosts = 16;

/**
 * Which posts to tape a point from: the pairs or triples within reach of the tape, the one with the smallest
 * predicted standard error of position first. Posts in one line with the point fix it badly and fall to the end or out.
 */
export function bestTiePosts(posts: readonly TiePost[], target: Xy, options: TieChoiceOptions): TieChoice[] {
  const { count, tapeSeM = 0.01, tapeLengthM = 30, most = 5 } = options;
  const reachable = posts
    .map((post) => ({ post, distanceM: xyDistanceM(post.at, target) }))
    .filter(({ distanceM }) => distanceM > 0 && distanceM <= tapeLengthM)
    .sort((p, q) => p.distanceM - q.distanceM)
    .slice(0, nearestPosts);
  return choose(reachable, count)
    .flatMap((chosen): TieChoice[] => {
      const error = positionError(
        chosen.map(({ post }) => ({ direction: unit(subtract(target, post.at)), seM: tapeSeM })),
      );
      if (!error) return [];
      const at = chosen.map(({ post }) => post);
      return [
        { posts: at, distancesM: chosen.map(({ distanceM }) => distanceM), error, mirrorM: mirrorOf(at, target) },
      ];
    })
    .sort((p, q) => p.error.sePositionM - q.error.sePositionM)
    .slice(0, most);
}

/** Twice the distance from the target to the line of the posts; null where more than two posts are not in one line. */
function mirrorOf(posts: readonly TiePost[], target: Xy): number | null {
  const [a, b, c] = posts as readonly [TiePost, TiePost, TiePost?];
  // A third post this far off the line of the two others (a share of their spacing) tells the point from its mirror.
  if (c && Math.abs(offLineM(c.at, a.at, b.at)) > 0.05 * xyDistanceM(a.at, b.at)) return null;
  return 2 * Math.abs(offLineM(target, a.at, b.at));
}

function offLineM(point: Xy, a: Xy, b: Xy): number {
  const [dx, dy] = unit(subtract(b, a));
  const [px, py] = subtract(point, a);
  return dx * py - dy * px;
}

/** All ways to choose `count` of some things, order kept. */
function choose<T>(things: readonly T[], count: number): T[][] {
  if (count === 0) return [[]];
  return things.flatMap((thing, i) => choose(things.slice(i + 1), count - 1).map((rest) => [thing, ...rest]));
}
