import { largestOf } from '../model/extremes.ts';
import type { Status } from '../model/things.ts';
import { formatTape, type Units } from '../words/numbers/write.ts';
import type { Basis, Certainty } from './certainty.ts';
import type { CrossingAsBuilt } from './crossingAsBuilt.ts';
import { placeNames } from './tieWords.ts';

/** How sure a place is, in a word or two, for lists and tags. */
export const basisWords: Readonly<Record<Basis, string>> = {
  measured: 'measured',
  partly: 'partly measured',
  ambiguous: 'side not said',
  contradictory: 'tapes do not meet',
  drawn: 'not measured',
};

/** Of what is only planned. */
export const plannedWords = 'planned, not in the ground as far as this file knows';

/** A thing's state; of what was recorded and is marked planned both are told. */
export function stateInWords(status: Status, inGround: boolean): string {
  return inGround && status === 'planned' ? 'planned, but recorded' : status;
}

/** How sure a crossing's place is, in a word or two; of one that is only planned, that. */
export function standingInShort({ inGround, certainty }: Pick<CrossingAsBuilt, 'inGround' | 'certainty'>): string {
  return inGround ? basisWords[certainty.basis] : 'planned';
}

/** Whether the reach of a place is an assumption, in a word or two; empty where it was measured. */
export function assumedInShort(basis: Basis): string {
  if (basis === 'partly') return 'partly assumed';
  return basis === 'drawn' || basis === 'contradictory' ? 'assumed' : '';
}

/** "0.36 m", "2.00 m assumed": how near to the line that is shown, in a list. */
export function withinInShort({ basis, withinM }: Certainty, units: Units): string {
  return `${formatTape(withinM, units)} ${assumedInShort(basis)}`.trimEnd();
}

/** How sure the trench as a whole is, and what that rests on; and whether its gate was moved away from it. */
export function certaintyInWords(crossing: CrossingAsBuilt, units: Units): string {
  const { movedM, inGround } = crossing;
  if (movedM === 0 || !inGround) return sureInWords(crossing, units);
  const moved = `The gate’s posts are drawn up to ${formatTape(movedM, units)} from where they stood when it was dug: it lies where they stood.`;
  return `${sureInWords(crossing, units)} ${moved}`;
}

function sureInWords(crossing: CrossingAsBuilt, units: Units): string {
  const { certainty, courses, inGround, points } = crossing;
  const within = formatTape(certainty.withinM, units);
  // Of several lines that are shown, each has its own error.
  const each = formatTape(largestOf(courses.map(({ withinM }) => withinM)), units);
  const lines = courses.length === 1 ? 'this line' : 'one of these lines';
  if (!inGround) return `Planned, not in the ground as far as this file knows. All of it is as drawn.`;
  switch (certainty.basis) {
    case 'measured':
      return `Measured: it lies within ${within} of this line, 19 times in 20.`;
    case 'partly':
      return `Partly measured: it lies within about ${within} of this line; what was not measured is assumed.`;
    case 'ambiguous': {
      const open = points
        .filter(({ basis }) => basis === 'ambiguous')
        .map(({ label, places }) => `${label}: ${placeNames(places).join(' or ')}`);
      return `Side not said (${open.join('; ')}), so it can lie in several places. It lies within ${each} of ${lines}, 19 times in 20: keep clear of all that is shaded.`;
    }
    case 'contradictory': {
      const lost = points.filter(({ basis }) => basis === 'contradictory').map(({ label }) => label);
      return `Tapes do not meet (${lost.join('; ')}), so it is not known where it lies. It is assumed to lie within ${each} of ${lines}. Dig by hand and look for the risers first.`;
    }
    case 'drawn':
      return `Not measured (from the plan). It is assumed to lie within ${within} of this line. Dig by hand and look for the risers first.`;
  }
}
