import type { FaultHunt } from '../model/huntThings.ts';
import type { InGround } from '../model/inGroundThings.ts';
import { counted } from '../words/text.ts';
import { bases } from './certainty.ts';
import { basisWords } from './certaintyWords.ts';
import type { CrossingRow } from './crossingSearch.ts';

/**
 * "23 crossings in the ground (10 measured, 2 side not said, 11 not measured), 5 planned; 2 things in the ground that are no
 * longer drawn. A fault is being looked for."
 */
export function findSentence(
  rows: readonly CrossingRow[],
  hunts: Iterable<FaultHunt>,
  left: Iterable<InGround> = [],
): string {
  const looking = [...hunts].some(({ end }) => end === null) ? ' A fault is being looked for.' : '';
  const still = [...left].filter(({ fate }) => fate !== 'takenOut').length;
  const gone =
    still === 0
      ? ''
      : `; ${counted(still, 'thing in the ground that is', 'things in the ground that are')} no longer drawn`;
  if (rows.length === 0) return `No buried crossing is in this file${gone}.${looking}`;
  const buried = rows.filter(({ crossing }) => crossing.inGround);
  const parts = bases
    .map((basis) => [buried.filter(({ crossing }) => crossing.certainty.basis === basis).length, basis] as const)
    .filter(([count]) => count > 0)
    .map(([count, basis]) => `${count} ${basisWords[basis]}`);
  const inGround =
    buried.length === 0
      ? 'No crossing in the ground'
      : `${counted(buried.length, 'crossing')} in the ground (${parts.join(', ')})`;
  const planned = rows.length - buried.length;
  return `${inGround}${planned > 0 ? `, ${planned} planned` : ''}${gone}.${looking}`;
}
