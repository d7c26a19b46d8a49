import { createLocalPlane } from '../../geometry/localPlane.ts';
import { countCrossings } from '../../geometry/segments.ts';
import { keptVertices } from '../../geometry/simplify.ts';
import type { LonLat, Xy } from '../../geometry/types.ts';
import { keptWhile } from '../../model/memo.ts';

/** The last paths that were laid out in a plane, as a tolerance that is being tried asks for the same ones again. */
const xyOf = keptWhile((path: readonly LonLat[], origin: LonLat): readonly Xy[] =>
  path.map(createLocalPlane(origin).toXy),
);

/** A path without the vertices that lie within `toleranceM` of what is left; the ends stay. 0: the path itself. */
export function simplifiedPath(path: readonly LonLat[], toleranceM: number, origin: LonLat): readonly LonLat[] {
  if (!(toleranceM > 0) || path.length < 3) return path;
  return keptVertices(xyOf(path, origin), toleranceM).map((index) => path[index]!);
}

/**
 * A line that crosses itself more often than this is no fence but the track of a receiver that lay still: each crossing
 * would be looked at again on every opening.
 */
export const mostOwnCrossings = 2000;

/** Radii within which the points of a receiver that lay still are drawn together, metres, until the line is free. */
const standingM = [0, 2, 4, 8, 16, 32] as const;
/** Fewer points within such a radius are a way, not a place: common practice, no source. */
const fewestStanding = 20;

export interface Untangled {
  readonly path: readonly LonLat[];
  /** The radius within which points were drawn together, metres; 0: none were. */
  readonly togetherM: number;
}

/**
 * A path simplified to within `toleranceM`; where that leaves a tangle, the points of stretches on which it stays in one
 * place are drawn together first, which the rest does not feel. Null: it stays a tangle all the same.
 */
export function untangledPath(path: readonly LonLat[], toleranceM: number, origin: LonLat): Untangled | null {
  for (const togetherM of standingM) {
    const walked = togetherM === 0 ? path : withoutStanding(path, togetherM);
    const simple = simplifiedPath(walked, toleranceM, origin);
    if (simple.length ** 2 / 2 <= mostOwnCrossings) return { path: simple, togetherM };
    if (countCrossings([roughXy(simple)], mostOwnCrossings) <= mostOwnCrossings) return { path: simple, togetherM };
  }
  return null;
}

const metresPerDegree = 111_320;

/** A path in metres, to 1 % or so and in no time: enough to see whether it crosses itself, or stays in one place. */
export function roughXy(path: readonly LonLat[], [originLon, originLat]: LonLat = path[0]!): Xy[] {
  const squeeze = Math.cos((originLat / 180) * Math.PI);
  return path.map(([lon, lat]) => {
    const eastward = ((((lon - originLon + 180) % 360) + 360) % 360) - 180;
    return [eastward * squeeze * metresPerDegree, (lat - originLat) * metresPerDegree];
  });
}

/** A path with the first and last vertex alone of each stretch on which it stays within a radius of where that begins. */
function withoutStanding(path: readonly LonLat[], radiusM: number): readonly LonLat[] {
  const xy = roughXy(path);
  const kept: LonLat[] = [];
  for (let first = 0; first < path.length; ) {
    const [x, y] = xy[first]!;
    let end = first + 1;
    while (end < path.length && Math.hypot(xy[end]![0] - x, xy[end]![1] - y) <= radiusM) end++;
    if (end - first >= fewestStanding) {
      kept.push(path[first]!, path[end - 1]!);
      first = end;
    } else kept.push(path[first++]!);
  }
  return kept;
}
