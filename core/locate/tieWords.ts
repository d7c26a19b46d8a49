import type { Impossible } from '../geometry/tie.ts';
import { formatTape, type Units } from '../model/formatUnits.ts';
import type { SolvedPoint, UsedTie } from './ties.ts';

/** What the tapes of a point come to, in one or two sentences. */
export function tiesInWords(solved: SolvedPoint, units: Units): string {
  const { ties, trilateration, fix, mirror, sideAssumed, seM } = solved;
  if (ties.length === 0) return 'No tie yet. Measure from two or more posts that do not move.';
  if (!trilateration) return 'One tie only: the point lies somewhere on a circle. Measure from another post.';
  if (!trilateration.possible) return impossibleInWords(trilateration, ties, units);
  if (!fix) return 'The ties do not fix a point.';
  const sure =
    seM === null
      ? 'The ties meet in one line with the posts, so across it nothing is fixed.'
      : `Known to ${formatTape(seM, units)} (one standard error).`;
  if (fix.side === 'on the line') return `The point stands on the line of the posts. ${sure}`;
  if (!mirror) return `${ties.length > 2 ? `The ${ties.length} ties agree. ` : ''}${sure}`;
  return sideAssumed
    ? `${sure} It is taken to be the one nearer to where it was drawn: say on which side it lies.`
    : sure;
}

/** Why some ties can't all be right, and which one to measure again. */
export function impossibleInWords(
  { reason, misclosureM, suspect, withinTapeError }: Impossible,
  ties: readonly UsedTie[],
  units: Units,
): string {
  const by = misclosureM === null ? '' : ` by ${formatTape(Math.abs(misclosureM), units)}`;
  const named = (i: number) => `the ${formatTape(ties[i]!.distanceM, units)} from ${ties[i]!.name}`;
  if (reason === 'too few ties') return 'Two ties or more are needed.';
  if (reason === 'posts coincide') return 'All ties are from one post. Measure from another one too.';
  if (reason === 'disagree') {
    return suspect === null
      ? `The ties do not meet: the worst is off${by}. Measure all of them again.`
      : `The ties do not meet: ${named(suspect)} can't be right; it is off${by} from what the others say. Measure it again.`;
  }
  const close = withinTapeError ? ' That is within what a tape can be off, so the place between is taken.' : '';
  if (reason === 'too short') {
    return `Both tapes together are shorter than the posts are apart${by}.${close || ' One of them is too short, or names the wrong post.'}`;
  }
  const longer = ties[0]!.distanceM > ties[1]!.distanceM ? 0 : 1;
  return `The tapes do not meet: ${named(longer)} is too long${by} for the other one and the distance between the posts.${close || ' Measure both again.'}`;
}
