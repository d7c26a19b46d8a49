import type { Figures } from '../../types.ts';

/** A sheet to test a section by. */
export const testSheet = {
  titleNone: 'Test sheets',
  none: 'There is no section to test.',
  title: ({ section }: { section: string }) => `Test sheet, section ${section}`,
  warning:
    'Before touching wires or switch gear: energiser off, and the fence proven dead. Switch it on again only to read, with everybody clear of the fence.',
  on: ({ switches }: { switches: readonly string[] }) => `On (closed) on the way to it: ${switches.join(', ')}.`,
  live: ({ sections }: { sections: readonly string[] }) => `Live while it is tested: section ${sections.join(', ')}.`,
  deadAlone: ({ switches }: { switches: readonly string[] }) =>
    `To make this section dead alone, switch off (open) ${switches.join(', ')}.`,
  off: 'Off (open)',
  noSwitch: 'No switch.',
  switchAt: ({ name, place }: { name: string; place: string }) => `${name}: ${place}`,
  steps: 'Steps',
  readAt: 'Read at',
  noPlace: 'No place is named.',
  readings: 'Readings',
  usualNotKnown: 'not known: stock’s minimum',
  lowUnder: 'Low under',
  reading: 'Reading, kV',
  meter: 'Meter',
  weather: 'Weather',
  readBy: 'Read by',
  testedBy: 'Tested by, date',
  takenOverBy: 'Taken over by, date',
};

/** What was tested. */
export const testResults = {
  title: 'Test results',
  passed: 'passed',
  failed: 'failed',
  leftOut: 'left out',
  noRun: 'No run through the test sheets was recorded. The sheets that follow have room to write on.',
  /** `limits`: how they come about. */
  intro: ({ least, limits }: { least: string; limits: string }) =>
    `A section passes where every reading is as usual at its place and holds the stock: ${least} and over. Beside each reading stands what it was judged by when it was taken; where nothing stands, what holds the stock. ${limits}`,
  otherReadings: 'Other readings',
  readings: 'Readings',
  finished: 'finished',
  notFinished: 'not finished',
  /** The particulars of a run. */
  particulars: ({ parts }: { parts: readonly string[] }) => `${parts.join(', ')}.`,
  result: 'Result',
  noSection: 'No section was tested.',
  voltage: 'Voltage',
  current: 'Current',
  switchesOff: 'Switches off (open)',
  goneSwitch: 'one that is gone',
  handedOverBy: 'Handed over by, date',
  takenOverBy: 'Taken over by, date',
};

/** Energiser, earth and the voltage that is estimated. */
export const power = {
  title: 'Energiser and earth',
  energisers: 'Energisers',
  noEnergiser: 'No energiser is drawn.',
  earthStakes: 'Earth stakes',
  noEarthStakes: 'No earth stakes are drawn.',
  earthTests: 'Earth tests',
  noEarthTest: 'No earth test was recorded.',
  limits: '200 V and under is good; over 300 V, add rods and test again (common practice, no source).',
  estimates:
    'Voltages are estimates of the peak with the switches as they normally stand. What a tester reads goes before them.',
  withNoLoad: 'Output with no load',
  into500Ohm: 'Output into 500 ohm',
  stored: 'Stored',
  output: 'Output',
  rods: 'Rods',
  length: 'Length',
  thickness: 'Thickness',
  apart: 'Apart',
  together: 'Together, estimate',
  verdicts: {
    good: 'good',
    borderline: 'borderline: test again at the driest',
    moreRods: 'add rods and test again',
  },
  atLastRod: 'At the last rod',
  fenceLoaded: 'Fence, loaded',
  verdict: 'Verdict',
  loadedBy: 'Loaded by',
  notRead: 'not read',
};

/** What changed. */
export const changes = {
  title: 'Changes',
  otherwise: 'Built otherwise than planned',
  asPlanned: 'Everything that was marked built stands as it was planned.',
  built: 'Built',
  moved: 'Moved',
  plannedNow: 'Planned, now',
  since: ({ number, date }: { number: number; date: string }) => `Since handover ${number} of ${date}`,
  change: 'Change',
  nothing: 'Nothing has changed.',
};

export const materials = {
  title: 'Materials as built',
  for: 'For',
  howMuch: 'How much',
  none: 'Nothing is marked built, so there are no materials to list.',
  intro:
    'Counted from what is marked built. Lengths of wire, pipe and cable are worked out from the drawing and are estimates.',
};

/** What is in the ground and drawn no longer. */
export const left = {
  title: 'In the ground, no longer drawn',
  intro:
    'These cables and stakes are drawn no longer. What may be live is taken for live; what is dead still lies there for the next digger.',
  drawnUntil: 'Drawn until',
  where: 'Where',
  depth: 'Depth',
  /** `basis` as it is said. */
  seeSheet: ({ basis }: { basis: string }) => `${basis}: see its own sheet`,
  within: ({ within, basis }: { within: string; basis: string }) => `within ${within}, ${basis}; its own sheet follows`,
  photos: ({ count }: { count: number }, f: Figures) =>
    `${f.number(count)} ${f.plural(count, { one: 'photo', other: 'photos' })} in the file`,
  asDrawn: ({ within }: { within: string }) => `within ${within} of where it was drawn, not measured`,
};
