import type { FaultHunt } from '../model/huntThings.ts';
import type { CrossingRow } from './crossingSearch.ts';

/** "23 crossings are buried: 9 measured, 3 partly, 11 only drawn. A fault is being looked for." */
export function findSentence(rows: readonly CrossingRow[], hunts: Iterable<FaultHunt>): string {
  const looking = [...hunts].some(({ end }) => end === null) ? ' A fault is being looked for.' : '';
  if (rows.length === 0) return `No crossing is buried in this file.${looking}`;
  const count = (basis: CrossingRow['certainty']['basis']) =>
    rows.filter((row) => row.certainty.basis === basis).length;
  const parts = [
    [count('measured'), 'measured'],
    [count('partly'), 'partly'],
    [count('drawn'), 'only drawn'],
  ] as const;
  const said = parts.filter(([number]) => number > 0).map(([number, words]) => `${number} ${words}`);
  const buried = rows.length === 1 ? 'One crossing is buried' : `${rows.length} crossings are buried`;
  return `${buried}: ${said.join(', ')}.${looking}`;
}
