import type { CrossingRecord } from '../model/recordThings.ts';

/** A note of a record is cut off here where it stands beside other words. */
const mostLetters = 120;

/** What else lies in the trench of a crossing, as its record says it: "Also in the trench: mains cable to the pump."; empty where it says nothing. */
export function alsoInTrench(record: Pick<CrossingRecord, 'alsoInTrench'> | null): string {
  const said = (record?.alsoInTrench ?? '').replaceAll(/\s+/g, ' ').trim();
  if (said === '') return '';
  const short = said.length > mostLetters ? `${said.slice(0, mostLetters - 1)}…` : said;
  return `Also in the trench: ${short}${/[.!?…]$/.test(short) ? '' : '.'}`;
}
