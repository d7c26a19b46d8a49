import { capital } from '../../text.ts';
import type { Figures, Phrase } from '../../types.ts';

type Counted = { readonly count: number };

/** The page for the phone. */
export const phone = {
  title: ({ name }: { name: string }) => `${name}: what is buried`,
  asOf: ({ date, invented }: { date: string; invented: boolean }, f: Figures) =>
    `What is buried, as of ${f.date(date)}.${invented ? ' An invented example.' : ''} This page needs no network.`,
  before: 'Before digging or touching a wire:',
  caution:
    'turn the energiser off and prove the fence dead. Have all other buried services located: only what was recorded is shown here.',
  search: 'Search crossings and switches',
  noneFound: 'Nothing has all these words.',
  onThisPage: 'On this page',
  toCrossings: 'Crossings',
  toPlanned: 'Planned',
  toLeft: 'No longer drawn',
  toSwitches: 'Switches',
  map: 'Map',
  inTheGround: ({ count }: Counted, f: Figures) => `Crossings in the ground (${f.number(count)})`,
  left: ({ count }: Counted, f: Figures) => `In the ground, no longer drawn (${f.number(count)})`,
  planned: ({ count }: Counted, f: Figures) => `Planned crossings, not in the ground (${f.number(count)})`,
  nothingLies: 'Nothing lies there as far as this file knows.',
  switches: ({ count }: Counted, f: Figures) => `Cut-out switches (${f.number(count)})`,
  smaller: 'Smaller map',
  larger: 'Larger map',
  mapOf: 'Map of the property',
  mapNorthUp: 'Map of the property, north up',
  nothingDrawn: 'Nothing is drawn yet.',
  cautions: 'Cautions',
  notMeasured: ({ withinM, places }: { withinM: number; places: string }, f: Figures) =>
    `Not measured (from the plan). It is assumed to lie within ${f.tape(withinM)} of where it was drawn${places === '' ? '' : `: ${places}`}.`,
  onLine: ({ line, sure }: { line: string; sure: Phrase }, f: Figures) => `On ${line}. ${f.say(sure)}`,
  depth: ({ depth, leftOut }: { depth: Phrase; leftOut: Phrase | null }, f: Figures) =>
    `${capital(f.say(depth))}.${leftOut ? ` ${f.say(leftOut)}` : ''}`,
  findIt: 'Find it',
  planOf: ({ name }: { name: string }) => `Plan of the crossing at ${name}, north up`,
  point: ({ tapes, depth, sure, places }: { tapes: string; depth: string; sure: string; places: string }) =>
    `${tapes} ${capital(depth)}. ${sure}${places === '' ? '' : ` ${places}.`}`,
  alongFrom: ({ from, to }: { from: Phrase; to: Phrase }, f: Figures) =>
    `Along the straight line from the ${f.say(from)} to the ${f.say(to)}:`,
  along: 'Along',
  photoAt: ({ name }: { name: string }) => `Photo at ${name}`,
  shouldRead: 'What the fence should read:',
  normallyOff: 'Normally off (open).',
  normallyOn: 'Normally on (closed).',
};
