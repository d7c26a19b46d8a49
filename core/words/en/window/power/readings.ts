import type { Figures } from '../../../types.ts';
import { bareSpot, type Spot, theSpot } from '../../survey/spots.ts';

/** What was measured, and what it says about the growth. */
export const readings = {
  new: 'A new reading',
  needsPlace: 'A reading needs a place: an energiser, a switch, a gateway or a post.',
  needsFigure: 'Type what the tester read, in kV.',
  caution: 'A live fence is read with a tester made for it, by its earth lead. Nothing is taken apart while it is on.',
  place: 'Place',
  placeHint: 'Select it here, or on the map before you come here.',
  places: { energisers: 'Energisers', switches: 'Switches', gateways: 'Gateways', posts: 'Posts' },
  day: 'Day',
  reading: 'Reading',
  note: 'Note',
  write: 'Write the reading down',
  writeStep: ({ place }: { place: string }) => `Write down a reading at ${place}`,
  step: {
    day: 'Change the day of a reading',
    volts: 'Correct a reading',
    switches: 'Change the switches of a reading',
    note: 'Change the note of a reading',
  },
  switchesOff: ({ names }: { names: readonly string[] }, f: Figures) => `Switches that were off: ${f.list(names)}`,
  noneOff: 'Switches that were off: none',
  caption: 'Readings, the newest first, beside the estimate with the switches as they then stood',
  empty: 'No readings yet. Two or three on each section tell where the growth is.',
  placeAndDay: 'Place, day',
  read: 'Read',
  estimate: 'Estimate',
  difference: 'Read less estimate',
  nothing: 'nothing',
  amperes: ({ current }: { current: number }, f: Figures) => `${f.number(current)} A`,
  /** Where no place was written down: "the end of F12", "on F12, 340 m from its start". */
  where: ({ spot }: { spot: Spot }, f: Figures) => (spot.on === 'along' ? `on ${bareSpot(spot, f)}` : theSpot(spot, f)),
  fit: {
    label: 'Leakage by the readings',
    title: 'What the readings say about the growth',
    what: 'what the readings say',
    round: 'Readings of',
    all: 'All of them together',
    hint: 'Growth changes with the season: readings of one round belong together.',
    ofDay: ({ day, count }: { day: string; count: number }, f: Figures) => `${f.date(day)}: ${readingsOf(count, f)}`,
    ofDays: ({ firstDay, lastDay, count }: { firstDay: string; lastDay: string; count: number }, f: Figures) =>
      `${f.date(firstDay)} to ${f.date(lastDay)}: ${readingsOf(count, f)}`,
    most: ({ section, current }: { section: string; current: number }, f: Figures) =>
      `Section ${section} leaks most, about ${f.number(current, 1)} A.`,
    mostAsFar: ({ section, current }: { section: string; current: number }, f: Figures) =>
      `Section ${section} leaks most, about ${f.number(current, 1)} A, as far as these readings tell.`,
    caption: ({ used }: { used: number }, f: Figures) =>
      `Fitted to ${readingsOf(used, f)} by least squares; ranges are one standard error`,
    empty: 'No section leaks.',
    section: 'Section',
    times: 'Leaks, beside its growth class',
    current: 'Current',
    amperes: ({ current }: { current: number }, f: Figures) => `${f.number(current, 2)} A`,
    noLeak: 'no leak to speak of',
    tooMuch: 'more than growth can explain: look for a fault',
    leaning: ({ times }: { times: number }, f: Figures) =>
      `${timesOf(times, f)} times; too few readings, so mostly its class`,
    told: ({ times, from, to }: { times: number; from: number; to: number }, f: Figures) =>
      `${timesOf(times, f)} times (${timesOf(from, f)} to ${timesOf(to, f)})`,
    tooLittle: ({ section }: { section: string }) =>
      `These readings say too little about section ${section}: its growth class decides.`,
    notApart: ({ sections }: { sections: readonly string[] }, f: Figures) =>
      `These readings can't tell sections ${f.list(sections)} apart: a reading at the far end of each would.`,
    misfit: ({ times }: { times: number }, f: Figures) =>
      `The estimate can't be made to agree with these readings (off by ${f.number(times, 1)} times what a tester is good to). Look for a bad joint, a fault to earth, a switch that stood otherwise, or a slip of the pen.`,
    unsettled: 'The search stopped before it settled: take these figures with care.',
    take: ({ fences }: { fences: number }, f: Figures) =>
      `Take this growth for ${f.number(fences, 0)} ${f.plural(fences, { one: 'fence', other: 'fences' })}`,
    takeStep: 'Take the growth from the readings',
  },
};

function readingsOf(count: number, f: Figures): string {
  return `${f.number(count, 0)} ${f.plural(count, { one: 'reading', other: 'readings' })}`;
}

function timesOf(times: number, f: Figures): string {
  return f.number(times, times < 10 ? 1 : 0);
}
