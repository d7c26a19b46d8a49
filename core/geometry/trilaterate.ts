import { fitTies } from './fitTies.ts';
import { meetOfTwoTies } from './meetOfTwoTies.ts';
import { type Impossible, samePostM, type Tie, type Trilateration } from './tie.ts';
import { xyDistanceM } from './vector.ts';

/**
 * The buried point that ties lead to: tape distances measured level from posts that do not move. Two ties leave a
 * point and its mirror across the line of the posts; three or more are fitted by least squares. Posts count as exact,
 * tapes as independent.
 * @throws RangeError for a distance or a standard error that cannot be one.
 */
export function trilaterate(ties: readonly Tie[]): Trilateration {
  ties.forEach(checkTie);
  const [a, b] = ties;
  if (!a || !b) return impossible('tooFewTies');
  if (ties.every(({ post }) => xyDistanceM(post, a.post) <= samePostM)) return impossible('onePost');
  return ties.length === 2 ? meetOfTwoTies(a, b) : fitTies(ties);
}

function impossible(reason: Impossible['reason']): Impossible {
  return { possible: false, reason, misclosureM: null, suspect: null, closest: null, withinTapeError: false };
}

function checkTie({ distanceM, seM }: Tie, index: number): void {
  if (!(distanceM >= 0 && Number.isFinite(distanceM))) {
    throw new RangeError(`Tie ${index + 1}: the distance must be 0 m or more; it is ${distanceM}.`);
  }
  if (!(seM > 0 && Number.isFinite(seM))) {
    throw new RangeError(`Tie ${index + 1}: the standard error must be above 0 m; it is ${seM}.`);
  }
}
