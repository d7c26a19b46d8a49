import { largestOf } from '../model/extremes.ts';
import type { Status } from '../model/things.ts';
import { type Message, message } from '../words/message.ts';
import type { Basis, Certainty } from './certainty.ts';
import type { CrossingAsBuilt } from './crossingAsBuilt.ts';
import { placeNames } from './tieWords.ts';

/** How sure a place is, in a word or two, for lists and tags. */
export function basisInShort(basis: Basis): Message {
  return message(`locate.basis.${basis}`);
}

/** A thing's state; of what was recorded and is marked planned both are told. */
export function stateInWords(status: Status, inGround: boolean): Message {
  return message(inGround && status === 'planned' ? 'locate.state.plannedButRecorded' : `locate.state.${status}`);
}

/** How sure a crossing's place is, in a word or two; of one that is only planned, that. */
export function standingInShort({ inGround, certainty }: Pick<CrossingAsBuilt, 'inGround' | 'certainty'>): Message {
  return inGround ? basisInShort(certainty.basis) : message('locate.basis.planned');
}

function assumed(basis: Basis): 'partly' | 'wholly' | null {
  if (basis === 'partly') return 'partly';
  return basis === 'drawn' || basis === 'contradictory' ? 'wholly' : null;
}

/** Whether the reach of a place is an assumption, in a word or two; null where it was measured. */
export function assumedInShort(basis: Basis): Message | null {
  const how = assumed(basis);
  return how && message(`locate.certainty.assumed.${how}`);
}

/** "0.36 m", "2.00 m assumed": how near to the line that is shown, in a list. */
export function withinInShort({ basis, withinM }: Certainty): Message {
  return message('locate.certainty.within', { withinM, assumed: assumed(basis) });
}

/** How sure the trench as a whole is, and what that rests on; and whether its gate was moved away from it. */
export function certaintyInWords(crossing: CrossingAsBuilt): Message {
  const { movedM, inGround } = crossing;
  const sure = sureInWords(crossing);
  if (movedM === 0 || !inGround) return sure;
  return message('locate.together', { all: [sure, message('locate.certainty.gateMoved', { movedM })] });
}

function sureInWords({ certainty, courses, inGround, points }: CrossingAsBuilt): Message {
  if (!inGround) return message('locate.certainty.planned');
  const { basis, withinM } = certainty;
  // Of several lines that are shown, each has its own error.
  const lines = { withinM: largestOf(courses.map((course) => course.withinM)), lines: courses.length };
  switch (basis) {
    case 'measured':
    case 'partly':
    case 'drawn':
      return message(`locate.certainty.${basis}`, { withinM });
    case 'ambiguous': {
      const open = points
        .filter((point) => point.basis === 'ambiguous')
        .map(({ label, places }) => ({ point: label, places: placeNames(places) }));
      return message('locate.certainty.ambiguous', { open, ...lines });
    }
    case 'contradictory': {
      const lost = points.filter((point) => point.basis === 'contradictory').map(({ label }) => label);
      return message('locate.certainty.contradictory', { lost, ...lines });
    }
  }
}
