import type { StakeOut, StakePlace, StakePoint, StakeStep } from '../../locate/stakeOut.ts';
import { apartM, impossibleInWords, placeNames, postThen } from '../../locate/tieWords.ts';
import { largestOf } from '../../model/extremes.ts';
import { figures } from '../../words/figures.ts';
import { formatTape, type Units } from '../../words/numbers/write.ts';
import { capital } from '../../words/text.ts';

/** "From the hinge post (west) 2.40 m, from post P3 3.10 m, on the north side: here." */
export function tapesInWords(point: StakePoint, units: Units): string {
  const { tapesNow } = point;
  const f = figures(units);
  const held = heldInWords(point, units);
  if (tapesNow.length === 0) return held;
  const now = tapesNow.map(({ postName, distanceM }) => `the ${f.say(postName)} ${formatTape(distanceM, units)}`);
  return `${held} From posts as they are drawn now, worked out: ${now.join(', ')}.`;
}

function heldInWords({ tapes, places, by }: StakePoint, units: Units): string {
  const f = figures(units);
  const [first, ...more] = tapes;
  const [place, ...others] = places;
  if (!first)
    return place ? `${formatTape(Math.abs(place.offset.leftM), units)} off the line between the gate posts.` : '';
  if (place && more.length === 0 && first.distanceM < 0.02) {
    return `At the foot of the ${f.say(postThen({ ...first, name: first.postName }))}.`;
  }
  const taped = tapes
    .map(({ postName, distanceM, gone, movedM }) => {
      return `from the ${f.say(postThen({ name: postName, gone, movedM }))} ${formatTape(distanceM, units)}`;
    })
    .join(', ');
  if (!place) return `${capital(taped)}: these tapes do not meet.`;
  if (others.length > 0)
    return `${capital(taped)}, on the ${placeNames(places).map(f.say).join(' or on the ')}: nobody said which.`;
  const where = place.side ? `, on the ${f.words.locate.points.side({ side: place.side })}` : '';
  if (by === 'planned') return `Planned: ${taped}${where}.`;
  return by === 'drawn' ? `Assumed: ${taped}${where}.` : `${capital(taped)}${where}: here.`;
}

/** How sure a point is, and what that rests on. */
export function pointSureInWords({ by, places, solved, weak }: StakePoint, units: Units): string {
  const within = formatTape(Math.max(0, largestOf(places.map(({ withinM }) => withinM))), units);
  const how = {
    ties: 'Taped when it was recorded',
    offset: 'Measured off the line of the gate posts',
    gps: 'From a receiver',
    drawn: `Not measured (from the plan); may be ${within} off.`,
    planned: 'As planned; nothing lies here as far as this file knows.',
  }[by];
  const flat = weak ? ' The tapes meet at a flat angle: a small slip moves the place far.' : '';
  const wrong = solved?.trilateration && !solved.trilateration.possible ? impossibleOf(solved, units) : '';
  if (places.length === 0) return `Not known where it lies. ${wrong}`;
  if (by === 'drawn' || by === 'planned') return `${how}${flat}`;
  const said =
    places.length > 1
      ? `${how}, the side not said: ${placesInWords(places, units)}, each within ${within}. Keep clear of both, and look at both.`
      : `${how}: within ${within}, 19 times in 20.`;
  return [said, solved?.basis === 'contradictory' ? `Its tapes do not meet. ${wrong}` : wrong].join(' ').trim() + flat;
}

function impossibleOf({ trilateration, ties }: NonNullable<StakePoint['solved']>, units: Units): string {
  return trilateration && !trilateration.possible ? figures(units).say(impossibleInWords(trilateration, ties)) : '';
}

function placesInWords(places: readonly StakePlace[], units: Units): string {
  const count = places.length === 2 ? 'two places' : `${places.length} places`;
  return `${count}, ${formatTape(apartM(places), units)} apart`;
}

/** "0.85 m north"; "0.85 m north or 0.85 m south"; of more than two the outermost: "between 0.90 m north and 0.85 m south". */
export function stepOffset(
  { leftMs }: StakeStep,
  { leftIs, rightIs }: Pick<StakeOut, 'leftIs' | 'rightIs'>,
  units: Units,
): string {
  const words = (leftM: number) => {
    if (Math.abs(leftM) < 0.005) return 'on the line';
    return `${formatTape(Math.abs(leftM), units)} ${figures(units).words.things.compass[leftM > 0 ? leftIs : rightIs]}`;
  };
  const [first = 0, second] = leftMs;
  const last = leftMs.at(-1) ?? first;
  if (second === undefined) return words(first);
  return leftMs.length === 2 ? `${words(last)} or ${words(first)}` : `between ${words(last)} and ${words(first)}`;
}

/** What the offsets of the steps are. */
export function stepsHeading({ stepsAssumed }: Pick<StakeOut, 'stepsAssumed'>): string {
  return stepsAssumed ? 'Off the line, assumed' : 'Off the line';
}
