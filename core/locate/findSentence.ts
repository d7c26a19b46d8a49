import type { FaultSearch } from '../model/faultSearchThings.ts';
import type { InGround } from '../model/inGroundThings.ts';
import { type Message, message } from '../words/message.ts';
import { bases } from './certainty.ts';
import type { CrossingRow } from './crossingSearch.ts';

/**
 * "23 crossings in the ground (10 measured, 2 side not said, 11 not measured), 5 planned; 2 things in the ground that are no
 * longer drawn. A fault is being looked for."
 */
export function findSentence(
  rows: readonly CrossingRow[],
  searches: Iterable<FaultSearch>,
  left: Iterable<InGround> = [],
): Message {
  const lying = rows.filter(({ crossing }) => crossing.inGround);
  const byBasis = bases
    .map((basis) => ({ basis, count: lying.filter(({ crossing }) => crossing.certainty.basis === basis).length }))
    .filter(({ count }) => count > 0);
  return message('locate.buried.count', {
    crossings: lying.length,
    byBasis,
    planned: rows.length - lying.length,
    left: [...left].filter(({ fate }) => fate !== 'takenOut').length,
    searching: [...searches].some(({ end }) => end === null),
  });
}
