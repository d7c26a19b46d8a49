import type { CrossingRecord } from '../model/recordThings.ts';
import { type Message, message } from '../words/message.ts';

/** A note of a record is cut off here where it stands beside other words. */
const mostLetters = 120;

/** What else lies in the trench of a crossing, as its record says it: "Also in the trench: mains cable to the pump."; null where it says nothing. */
export function alsoInTrench(record: Pick<CrossingRecord, 'alsoInTrench'> | null): Message | null {
  const said = (record?.alsoInTrench ?? '').replaceAll(/\s+/g, ' ').trim();
  if (said === '') return null;
  const what = said.length > mostLetters ? `${said.slice(0, mostLetters - 1)}…` : said;
  return message('locate.buried.alsoInTrench', { what });
}
