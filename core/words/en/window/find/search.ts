import type { Figures, Phrase } from '../../../types.ts';

type At = { readonly at: string };

/** A search for a fault. */
export const search = {
  name: ({ day }: { day: string }, f: Figures) => `Search of ${f.date(day)}`,
  theEnergiser: 'the energiser',
  atEnergiser: 'at the energiser',
  switchCaution:
    'Turn the energiser off before you open or close a switch, unless its maker allows it live. Off, and proven dead, before you touch a wire. Keep people and stock clear while it is on to read.',
  showWhere: 'Show where',
  begin: {
    nothing: 'No energiser feeds a fence yet, so there is nothing to search. Draw one first.',
    heading: 'Begin a search',
    one: 'There is one section only: no switch can part it further. Longer sections are taken to be likelier.',
    parts: ({ parts, most, expected }: { parts: number; most: number; expected: number }, f: Figures) =>
      `${f.number(parts)} parts with switches between them: at most ${f.number(most)} ${f.plural(most, { one: 'test', other: 'tests' })}, ${f.number(expected, 1)} as a rule, then two readings to make sure. Longer sections are taken to be likelier.`,
    rings: ({ switches }: { switches: Phrase }, f: Figures) =>
      `Rings are opened first, at ${f.say(switches)}, so that each section is fed one way.`,
    energiser: 'Energiser',
    aim: 'Aim',
    aims: { tests: 'Fewest tests', walking: 'Least walking, there and back from the energiser' },
    judgeBy: 'Judge a reading by',
    yardsticks: { usual: 'What its place usually reads', limits: 'Limits of my own' },
    lowBelow: 'Low: below',
    goodFrom: 'Good: from',
    by: 'Searched by',
    button: 'Begin the search',
  },
  walk: {
    heading: 'Fault search',
    feedsNothing: 'Its energiser feeds no fence any more. Fix the drawing, or give the search up.',
    takeBack: 'Take the last reading back',
    giveUp: 'Give the search up',
    noFault: 'The fence reads good at the energiser: there is no fault to find now.',
    usualNotKnown:
      'What the fence usually reads there is not known. A fault that leaves more than what holds the stock does not show.',
    comesAndGoes: 'If it comes and goes, give the search up and begin again while it is low.',
    openFirst: ({ switches }: { switches: Phrase }, f: Figures) => `Open ${f.say(switches)} first.`,
    whyOpen: 'They close rings. With them open each section is fed one way, and no section goes dead.',
    areOpen: 'They are open',
    noPlaceLeft: 'The readings do not fit together: they leave no place for a fault.',
    oneOfThese: 'If one alone is wrong, it is one of these, the likeliest first:',
    noSingleOne: 'No single wrong reading explains it: two are wrong, or the fault comes and goes.',
    repeat: ({ step }: { step: Phrase }, f: Figures) => `Repeat this one: ${f.say(step)}`,
    startAgain: 'Set all readings aside and start again',
    readSoFar: 'Read so far',
    setAside: ({ reading }: { reading: Phrase }, f: Figures) => `${f.say(reading)} (set aside)`,
    asRead: ({ reading }: { reading: Phrase }, f: Figures) => `${f.say(reading)}.`,
  },
  found: {
    faultIn: ({ piece }: { piece: Phrase }, f: Figures) => `The fault is in ${f.say(piece)}.`,
    section: ({ place, lengthM }: { place: Phrase; lengthM: number }, f: Figures) =>
      `${f.say(place)}; ${f.length(lengthM)} of fence.`,
    confirmed: ({ tested }: { tested: number }, f: Figures) =>
      `${tested === 1 ? 'One test led here' : `${f.number(tested)} tests led here`}, and the readings made sure of it.`,
    notConfirmed: 'Not made sure of yet: if an answer before was wrong, nothing has shown it so far.',
    mayBeSource: 'It may as well be the energiser, its earth or the lead-out.',
    atSource:
      'With the energiser off, take the lead-out off its terminal; turn it on and read at the terminal. Good there: the lead-out or the fence. Low there: the energiser or its earth.',
    makeSure: ({ step }: { step: Phrase }, f: Figures) => `To make sure: ${f.say(step)}`,
    shouldRead: { low: 'It should read low.', good: 'It should read good.' },
    cause: 'What it was',
    end: 'End the search',
    endNotSure: 'End the search without making sure',
    afterwards:
      'Afterwards, energiser off: put every switch back as it was, the ring switches too, and read once more. If it is low again with one of them closed, there is a second fault behind it.',
    lookFirst: 'Look here first',
    firstOnly: 'Show the first six only',
    showAll: ({ count }: { count: number }, f: Figures) => `Show all ${f.number(count)}`,
  },
  reading: {
    label: 'Reading',
    enter: 'Enter',
    orSay: ({ problem }: { problem: string }) => `${problem} Or say only whether it is good or low.`,
    mayBeOff: 'An estimate may be off: if you know better what it reads here, say so.',
    good: 'It reads good',
    low: 'It reads low',
    doubtful: ({ volts }: { volts: number }, f: Figures) => `${f.volts(volts)} is doubtful.`,
    whatToDo:
      'Press the meter well to the wire and read some pulses more. If it stays so, count it as what is nearer to what you expect; it will be the first to be repeated.',
    countAsGood: 'Count it as good',
    countAsLow: 'Count it as low',
  },
  earlier: {
    heading: 'Earlier searches',
    summary: ({ day, outcome }: { day: string; outcome: string }, f: Figures) => `${f.date(day)}: ${outcome}`,
    by: ({ by }: { by: string }) => `Searched by ${by}.`,
    delete: 'Delete',
    givenUp: 'given up',
    found: ({ section, place, confirmed }: { section: string | null; place: string; confirmed: boolean }) => {
      const where = section === null ? place : place === '' ? `section ${section}` : `section ${section} (${place})`;
      return confirmed ? where : `${where}, not made sure of`;
    },
  },
  /** Steps of the history. */
  steps: {
    begin: 'Begin a fault search',
    takeBack: 'Take the last reading back',
    giveUp: 'Give the search up',
    openRings: 'Open the rings',
    read: ({ at }: At) => `Read at ${at}`,
    readAgain: ({ at }: At) => `Read again at ${at}`,
    makeSure: ({ at }: At) => `Make sure at ${at}`,
    setAside: 'Set the readings aside',
    end: ({ piece }: { piece: Phrase }, f: Figures) => `End the search in ${f.say(piece)}`,
    delete: ({ name }: { name: string }) => `Delete ${name}`,
  },
};
