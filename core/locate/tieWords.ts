import type { Impossible } from '../geometry/tie.ts';
import { xyDistanceM } from '../geometry/vector.ts';
import { largestOf } from '../model/extremes.ts';
import { formatTape, type Units } from '../words/numbers/write.ts';
import type { StoodPost } from './tieFrom.ts';
import type { PossiblePlace, SolvedPoint, UsedTie } from './ties.ts';

/** What the tapes of a point come to, in a few sentences. */
export function tiesInWords(solved: SolvedPoint, units: Units): string {
  const { ties, trilateration, places, by, basis } = solved;
  if (ties.length === 0) return 'No tie yet. Measure from two or more posts that do not move.';
  if (!trilateration) return 'One tie only: the point lies somewhere on a circle. Measure from another post.';
  const sure = by === 'ties' && places[0] ? ` ${withinInWords(places[0].withinM, units)}` : '';
  if (!trilateration.possible) return `${impossibleInWords(trilateration, ties, units)}${sure}`;
  if (basis === 'ambiguous') return ambiguousInWords(solved, units);
  if (places[0]?.fix?.side === 'onLine') return `The point stands on the line of the posts.${sure}`;
  return `${ties.length > 2 ? `The ${ties.length} ties agree.` : ''}${sure}`.trim();
}

/** "Within 0.09 m, 19 times in 20." */
export function withinInWords(withinM: number, units: Units): string {
  return `Within ${formatTape(withinM, units)}, 19 times in 20.`;
}

/**
 * "These tapes fit two places, 0.70 m apart: one on the north side, one on the south side of the line of the posts.
 * Nobody said which."
 */
export function ambiguousInWords({ places, firstLikelier }: SolvedPoint, units: Units): string {
  const names = placeNames(places);
  const apart = formatTape(apartM(places), units);
  const where = namesSides(places)
    ? `${names.map((name) => `one on the ${name}`).join(', ')} of the line of the posts`
    : names.join(', ');
  const count = places.length === 2 ? 'two places' : `${places.length} places`;
  const likelier = firstLikelier ? ` The one on the ${names[0]!} is nearer to where it was drawn; both stay open.` : '';
  const within = withinInWords(largestOf(places.map(({ withinM }) => withinM)), units).toLowerCase();
  return `These tapes fit ${count}, ${apart} apart: ${where}. Nobody said which. Whichever it is, it lies ${within}${likelier}`;
}

/** The places of a point told apart: "north side", "south side"; "first place" and so on where no side tells them apart. */
export function placeNames(places: readonly Pick<PossiblePlace, 'side'>[]): readonly string[] {
  if (namesSides(places)) return places.map(({ side }) => `${side} side`);
  const counted = ['first place', 'second place', 'third place', 'fourth place'];
  return places.map((_, i) => counted[i] ?? `place ${i + 1}`);
}

function namesSides(places: readonly Pick<PossiblePlace, 'side'>[]): boolean {
  const sides = new Set(places.map(({ side }) => side));
  return sides.size === places.length && !sides.has(null);
}

/** How far the places of a point are from each other, at most. */
export function apartM(places: readonly Pick<PossiblePlace, 'xy'>[]): number {
  return Math.max(0, largestOf(places.flatMap((a, i) => places.slice(i + 1).map((b) => xyDistanceM(a.xy, b.xy)))));
}

/** "These tapes do not meet: 2.33 m from the hinge post of G12, 16.00 m from post P21." And why, as far as it can be known. */
export function doNotMeetInWords({ ties, trilateration }: SolvedPoint, units: Units): string {
  const tapes = ties.map(({ name, gone, movedM, distanceM }) => {
    return `${formatTape(distanceM, units)} from ${name}${whereNow({ gone, movedM }, units)}`;
  });
  const why = trilateration && !trilateration.possible ? ` ${impossibleInWords(trilateration, ties, units)}` : '';
  return `These tapes do not meet: ${tapes.join(', ')}.${why}`;
}

/** Less than this would read as 0.00 m. */
const leastShownM = 0.005;

/** What has become of a post since a tape was held to it, to stand behind its name; empty where it stands there still. */
export function whereNow({ gone, movedM }: Pick<StoodPost, 'gone' | 'movedM'>, units: Units): string {
  if (gone) return ' (no longer drawn)';
  return movedM > 0 ? ` (stood ${formatTape(movedM, units)} from where it is drawn now)` : '';
}

/** Why some ties can't all be right, and which one to measure again. */
export function impossibleInWords(
  { reason, misclosureM, suspect, withinTapeError }: Impossible,
  ties: readonly UsedTie[],
  units: Units,
): string {
  const by = misclosureM === null ? '' : ` by ${formatTape(Math.abs(misclosureM), units)}`;
  const named = (i: number) => `the ${formatTape(ties[i]!.distanceM, units)} from ${ties[i]!.name}`;
  if (reason === 'tooFewTies') return 'Two ties or more are needed.';
  if (reason === 'onePost') return 'All ties are from one post. Measure from another one too.';
  if (reason === 'disagree') {
    return suspect === null
      ? `The ties do not meet: the worst is off${by}. Measure all of them again.`
      : `The ties do not meet: ${named(suspect)} can't be right; it is off${by} from what the others say. Measure it again.`;
  }
  if (withinTapeError && misclosureM !== null && Math.abs(misclosureM) < leastShownM) {
    return 'The tapes only just meet, on the line of the posts.';
  }
  const close = withinTapeError ? ' That is within what a tape can be off, so the place between is taken.' : '';
  if (reason === 'tooShort') {
    return `Both tapes together are shorter than the posts are apart${by}.${close || ' One of them is too short, or names the wrong post.'}`;
  }
  const longer = ties[0]!.distanceM > ties[1]!.distanceM ? 0 : 1;
  return `The tapes do not meet: ${named(longer)} is too long${by} for the other one and the distance between the posts.${close || ' Measure both again.'}`;
}
