import type { Impossible } from '../geometry/tie.ts';
import { xyDistanceM } from '../geometry/vector.ts';
import { largestOf } from '../model/extremes.ts';
import { type Message, message } from '../words/message.ts';
import type { CompassWord } from './compass.ts';
import type { StoodPost } from './tieFrom.ts';
import type { PossiblePlace, SolvedPoint, UsedTie } from './ties.ts';

type Sided = Pick<PossiblePlace, 'side'>;

/** What the tapes of a point come to, in a few sentences. */
export function tiesInWords(solved: SolvedPoint): Message {
  const { ties, trilateration, places, by, basis } = solved;
  if (ties.length === 0) return message('locate.ties.none');
  if (!trilateration) return message('locate.ties.one');
  if (trilateration.possible && basis === 'ambiguous') return ambiguousInWords(solved);
  const all = [
    ...(trilateration.possible ? agreeInWords(solved) : [impossibleInWords(trilateration, ties)]),
    ...(by === 'ties' && places[0] ? [withinInWords(places[0].withinM)] : []),
  ];
  return message('locate.together', { all });
}

function agreeInWords({ ties, places }: SolvedPoint): Message[] {
  if (places[0]?.fix?.side === 'onLine') return [message('locate.ties.onTheLine')];
  return ties.length > 2 ? [message('locate.ties.agree', { count: ties.length })] : [];
}

/** "Within 0.09 m, 19 times in 20." */
export function withinInWords(withinM: number): Message {
  return message('locate.ties.within', { withinM });
}

/**
 * "These tapes fit two places, 0.70 m apart: one on the north side, one on the south side of the line of the posts.
 * Nobody said which."
 */
export function ambiguousInWords({ places, firstLikelier }: SolvedPoint): Message {
  return message('locate.ties.fitSeveral', {
    places: placeNames(places),
    sides: sidesOf(places) !== null,
    apartM: apartM(places),
    withinM: largestOf(places.map(({ withinM }) => withinM)),
    likelier: firstLikelier,
  });
}

/** The places of a point told apart: "north side", "south side"; "first place" and so on where no side tells them apart. */
export function placeNames(places: readonly Sided[]): readonly Message[] {
  const sides = sidesOf(places);
  return places.map((_, index) =>
    sides ? message('locate.points.side', { side: sides[index]! }) : message('locate.points.nth', { index }),
  );
}

/** The same in short, for a picture: "north"; "first place". */
export function placeMarks(places: readonly Sided[]): readonly Message[] {
  const sides = sidesOf(places);
  return places.map((_, index) =>
    sides ? message(`things.compass.${sides[index]!}`) : message('locate.points.nth', { index }),
  );
}

/** "Which side: north or south?" */
export function whichInWords(places: readonly Sided[]): Message {
  const sides = sidesOf(places);
  return sides
    ? message('locate.points.whichSide', { sides })
    : message('locate.points.whichPlace', { count: places.length });
}

/** The sides of places that their sides tell apart; null where these do not. */
function sidesOf(places: readonly Sided[]): readonly CompassWord[] | null {
  const sides = places.flatMap(({ side }) => side ?? []);
  return sides.length === places.length && new Set(sides).size === places.length ? sides : null;
}

/** How far the places of a point are from each other, at most. */
export function apartM(places: readonly Pick<PossiblePlace, 'xy'>[]): number {
  return Math.max(0, largestOf(places.flatMap((a, i) => places.slice(i + 1).map((b) => xyDistanceM(a.xy, b.xy)))));
}

/** "These tapes do not meet: 2.33 m from the hinge post of G12, 16.00 m from post P21." And why, as far as it can be known. */
export function doNotMeetInWords({ ties, trilateration }: SolvedPoint): Message {
  const tapes = ties.map((tie) => ({ distanceM: tie.distanceM, post: postThen(tie) }));
  const said = message('locate.ties.doNotMeet', { tapes });
  if (!trilateration || trilateration.possible) return said;
  return message('locate.together', { all: [said, impossibleInWords(trilateration, ties)] });
}

/** Less than this would read as 0.00 m. */
const leastShownM = 0.005;

/** A post, and what has become of it since a tape was held to it: "post P4 (no longer drawn)". */
export function postThen({ name: post, gone, movedM }: Pick<StoodPost, 'name' | 'gone' | 'movedM'>): Message {
  return message('locate.posts.stood', { post, gone, movedM });
}

/** Why some ties can't all be right, and which one to measure again. */
export function impossibleInWords(
  { reason, misclosureM, suspect, withinTapeError: isClose }: Impossible,
  ties: readonly UsedTie[],
): Message {
  const offM = misclosureM === null ? null : Math.abs(misclosureM);
  const tape = (i: number) => ({ distanceM: ties[i]!.distanceM, post: ties[i]!.name });
  if (reason === 'tooFewTies') return message('locate.ties.tooFew');
  if (reason === 'onePost') return message('locate.ties.onePost');
  if (reason === 'disagree') {
    return suspect === null
      ? message('locate.ties.disagree', { offM })
      : message('locate.ties.wrong', { tape: tape(suspect), offM });
  }
  if (isClose && offM !== null && offM < leastShownM) return message('locate.ties.justMeet');
  if (reason === 'tooShort') return message('locate.ties.tooShort', { offM, isClose });
  const longer = ties[0]!.distanceM > ties[1]!.distanceM ? 0 : 1;
  return message('locate.ties.tooLong', { tape: tape(longer), offM, isClose });
}
