import { add, scale, subtract, turnLeft, unit } from '../geometry/plane/vector.ts';
import { xyDistanceM } from '../geometry/plane/xyDistance.ts';
import type { PositionError } from '../geometry/positionError.ts';
import type { Tie, TieFix, Trilateration } from '../geometry/tie.ts';
import { trilaterate } from '../geometry/trilaterate.ts';
import type { Xy } from '../geometry/types.ts';
import type { BuriedPoint, BuriedRole } from '../model/recordThings.ts';
import type { GatewayShape } from '../registers/types.ts';
import type { CrossingSource } from './crossingSource.ts';
import type { StoodPost } from './tieFrom.ts';

/** Standard error of a place measured along and square off the opening with one tape; common practice, no source. */
export const offsetSeM = 0.05;

/** A post that a tie of a point was taped from, and the tape. */
export interface UsedTie extends StoodPost {
  readonly distanceM: number;
  readonly seM: number;
}

/** Where a buried point is, by what was measured. */
export interface SolvedPoint {
  readonly point: BuriedPoint;
  readonly label: string;
  /** Null where nothing that was measured fixes it. */
  readonly xy: Xy | null;
  readonly by: 'ties' | 'offset' | 'gps' | null;
  readonly ties: readonly UsedTie[];
  /** What the ties come to; null with fewer than two. */
  readonly trilateration: Trilateration | null;
  /** The solution that holds, and the mirror point that the ties alone can't tell from it. */
  readonly fix: TieFix | null;
  readonly mirror: TieFix | null;
  /** Nobody said which of the two it is: the one nearer to where it was drawn is taken. */
  readonly sideAssumed: boolean;
  readonly error: PositionError | null;
  /** Standard error of the position, metres; null where it is not known. */
  readonly seM: number | null;
}

const roleWords: Record<BuriedRole, string> = {
  startFoot: 'riser foot, start post',
  endFoot: 'riser foot, end post',
  bend: 'bend',
  point: 'point',
};

/** "bend", "riser foot, start post", or the name it was given. */
export function labelOf({ name, role }: Pick<BuriedPoint, 'name' | 'role'>): string {
  return name.trim() || roleWords[role];
}

/** Works one buried point of a crossing out: from its ties, else its offset, else GPS. */
export function solvePoint(point: BuriedPoint, source: CrossingSource): SolvedPoint {
  const { shape, plane, placed, postOf } = source;
  const ties = point.ties.map((tie): UsedTie => ({ ...postOf(tie), distanceM: tie.distanceM, seM: tie.seM }));
  const trilateration = ties.length < 2 ? null : trilaterate(ties.map(asTie));
  const found = trilateration && chosenFix(trilateration, point.side, expectedPlace(point.role, source));
  const none = { fix: null, mirror: null, sideAssumed: false, error: null, seM: null };
  const base = { point, label: labelOf(point), ties, trilateration, ...none };
  if (found) {
    return { ...base, ...found, xy: found.fix.point, by: 'ties', error: found.fix.error, seM: seOf(found.fix) };
  }
  if (trilateration && !trilateration.possible && trilateration.withinTapeError && trilateration.closest) {
    return { ...base, xy: trilateration.closest, by: 'ties' };
  }
  if (point.offset) return { ...base, xy: placeByOffset(point.offset, shape), by: 'offset', seM: offsetSeM };
  if (point.gps && placed) {
    return { ...base, xy: plane.toXy(point.gps.lonLat), by: 'gps', seM: point.gps.seM };
  }
  return { ...base, xy: null, by: null };
}

function asTie({ xy, distanceM, seM }: UsedTie): Tie {
  return { post: xy, distanceM, seM };
}

/** With three or more tapes that agree worse than they claim, the error grows with their misfit. */
function seOf({ error, sigma0 }: TieFix): number | null {
  return error && error.sePositionM * Math.max(1, sigma0 ?? 1);
}

function chosenFix(
  trilateration: Trilateration,
  side: BuriedPoint['side'],
  expected: Xy,
): (Pick<SolvedPoint, 'mirror' | 'sideAssumed'> & { readonly fix: TieFix }) | null {
  if (!trilateration.possible) return null;
  const [first, second] = trilateration.solutions;
  if (!first) return null;
  if (!second) return { fix: first, mirror: null, sideAssumed: false };
  const said = side && trilateration.solutions.find((solution) => solution.side === side);
  const nearer = xyDistanceM(first.point, expected) <= xyDistanceM(second.point, expected) ? first : second;
  const fix = said || nearer;
  return { fix, mirror: fix === first ? second : first, sideAssumed: !said };
}

/** Where a point of this role was drawn. */
export function expectedPlace(role: BuriedRole, { figures, shape }: Pick<CrossingSource, 'figures' | 'shape'>): Xy {
  if (role === 'startFoot') return shape.startPost;
  if (role === 'endFoot') return shape.endPost;
  return figures.path[figures.path.length >> 1] ?? shape.centre;
}

function placeByOffset(
  { alongM, leftM }: NonNullable<BuriedPoint['offset']>,
  { startPost, endPost, bearingDeg }: GatewayShape,
): Xy {
  const angle = (bearingDeg * Math.PI) / 180;
  const apart = xyDistanceM(startPost, endPost) > 0;
  const along: Xy = apart ? unit(subtract(endPost, startPost)) : [Math.sin(angle), Math.cos(angle)];
  return add(startPost, add(scale(along, alongM), scale(turnLeft(along), leftM)));
}

/** How far a place lies along the opening from the start post, and to its left; the inverse of an offset entry. */
export function offsetOf(xy: Xy, { startPost, endPost }: GatewayShape): { alongM: number; leftM: number } {
  const [ux, uy] = unit(subtract(endPost, startPost));
  const [dx, dy] = subtract(xy, startPost);
  return { alongM: dx * ux + dy * uy, leftM: dy * ux - dx * uy };
}
