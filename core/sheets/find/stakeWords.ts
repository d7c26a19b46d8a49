import type { StakeOut, StakePoint, StakeStep, StakeTape } from '../../locate/stakeOut.ts';
import { apartM, impossibleInWords, placeNames, postThen } from '../../locate/tieWords.ts';
import { largestOf } from '../../model/extremes.ts';
import type { Figures } from '../../words/types.ts';

/** "From the hinge post (west) 2.40 m, from post P3 3.10 m, on the north side: here." */
export function tapesInWords(point: StakePoint, f: Figures): string {
  const { tapesNow } = point;
  const held = heldInWords(point, f);
  if (tapesNow.length === 0) return held;
  const tapes = tapesNow.map(({ postName, distanceM }) => ({ post: f.say(postName), distanceM }));
  return f.words.things.sentences({ all: [held, f.words.sheets.stake.tapes.now({ tapes })] });
}

function heldInWords(point: StakePoint, f: Figures): string {
  const { places, by } = point;
  const said = f.words.sheets.stake.tapes;
  const [first, ...more] = point.tapes;
  const [place, ...others] = places;
  if (!first) return place ? said.offTheLine({ offM: Math.abs(place.offset.leftM) }) : '';
  if (place && more.length === 0 && first.distanceM < 0.02) return said.atFoot({ post: named(first, f) });
  const tapes = point.tapes.map((tape) => ({ post: named(tape, f), distanceM: tape.distanceM }));
  if (!place) return said.doNotMeet({ tapes });
  if (others.length > 0) return said.several({ tapes, places: placeNames(places).map(f.say) });
  const where = { tapes, side: place.side };
  if (by === 'planned') return said.planned(where);
  return by === 'drawn' ? said.assumed(where) : said.here(where);
}

/** A post with what has become of it since the tape was held to it. */
function named({ postName, gone, movedM }: StakeTape, f: Figures): string {
  return f.say(postThen({ name: postName, gone, movedM }));
}

/** How sure a point is, and what that rests on. */
export function pointSureInWords(point: StakePoint, f: Figures): string {
  const { by, places, solved, weak } = point;
  const { sure } = f.words.sheets.stake;
  const wrong = solved?.trilateration && !solved.trilateration.possible ? [impossibleOf(solved, f)] : [];
  const all =
    places.length === 0
      ? [sure.notKnown, ...wrong]
      : [
          placeSure(point, f),
          ...(by === 'drawn' || by === 'planned'
            ? []
            : solved?.basis === 'contradictory'
              ? [sure.doNotMeet, ...wrong]
              : wrong),
          ...(weak ? [sure.flat] : []),
        ];
  return f.words.things.sentences({ all });
}

function placeSure({ by, places }: StakePoint, f: Figures): string {
  const { sure } = f.words.sheets.stake;
  const withinM = Math.max(0, largestOf(places.map((place) => place.withinM)));
  if (by === 'planned') return sure.planned;
  if (by === 'drawn') return sure.drawn({ withinM });
  return places.length > 1
    ? sure.several({ by, withinM, apartM: apartM(places), count: places.length })
    : sure.one({ by, withinM });
}

function impossibleOf({ trilateration, ties }: NonNullable<StakePoint['solved']>, f: Figures): string {
  return trilateration && !trilateration.possible ? f.say(impossibleInWords(trilateration, ties)) : '';
}

/** "0.85 m north"; "0.85 m north or 0.85 m south"; of more than two the outermost: "between 0.90 m north and 0.85 m south". */
export function stepOffset(
  { leftMs }: StakeStep,
  { leftIs, rightIs }: Pick<StakeOut, 'leftIs' | 'rightIs'>,
  f: Figures,
): string {
  const { one, either, between } = f.words.sheets.stake.step;
  const leastM = leftMs[0] ?? 0;
  const mostM = leftMs.at(-1) ?? leastM;
  if (leftMs.length < 2) return one({ leftM: leastM, leftIs, rightIs });
  return (leftMs.length === 2 ? either : between)({ leastM, mostM, leftIs, rightIs });
}

/** What the offsets of the steps are. */
export function stepsHeading({ stepsAssumed }: Pick<StakeOut, 'stepsAssumed'>, f: Figures): string {
  const { heading, headingAssumed } = f.words.sheets.stake.step;
  return stepsAssumed ? headingAssumed : heading;
}
