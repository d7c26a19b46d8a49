import type { Figures } from '../../../types.ts';

type OfRun = { readonly run: string };
type OfSection = { readonly section: string };
type AtPlace = { readonly place: string };

const outcomes = { passed: 'passed', failed: 'failed', leftOut: 'left out' };
type Tested = { readonly section: string; readonly outcome: keyof typeof outcomes };

const tested = ({ section, outcome }: Tested) => `${section} ${outcomes[outcome]}`;

/** The walk through the test sheets. */
export const testRun = {
  none: 'No test run yet. Begin one and walk from section to section.',
  show: 'Show the run',
  ofDay: ({ run, day }: OfRun & { day: string }, f: Figures) => `${run}, ${f.date(day)}`,
  /** The name that a new run has until it is given another. */
  usualName: 'Commissioning',
  begin: ({ run }: OfRun) => `Begin the test run ${run}`,
  newRun: 'A new test run',
  beginOne: 'Begin a test run',
  beginIt: 'Begin',
  name: 'Name',
  run: ({ run }: OfRun) => `Test run ${run}`,
  howFar: (
    { run, day, done, all, finished }: OfRun & { day: string; done: number; all: number; finished: boolean },
    f: Figures,
  ) => `${run}, ${f.date(day)}: ${done} of ${all} sections${finished ? ', finished' : ''}`,
  sections: 'Sections of the run',
  section: ({ section }: OfSection) => `Section ${section}`,
  sectionState: ({ section, outcome }: OfSection & { outcome: keyof typeof outcomes | null }) =>
    `${section}: ${outcome === null ? 'to do' : outcomes[outcome]}`,
  everyDone: 'Every section is done.',
  former: ({ results }: { results: readonly Tested[] }) =>
    `Tested when the sections were drawn otherwise: ${results.map(tested).join(', ')}.`,
  note: 'Note on the run',
  finish: 'Finish the run',
  goOn: 'Go on with this run',
  delete: 'Delete the run',
  caution:
    'Turn the energiser off and prove the fence dead before you touch a wire or a switch. Keep people and stock away while testing.',
  off: 'Off',
  on: 'On',
  noSwitch: 'none',
  sectionNote: ({ section }: OfSection) => `Note on section ${section}`,
  passed: 'Passed, next section',
  failed: 'Failed, next section',
  leaveOut: 'Leave out',
  read: ({ place }: AtPlace) => `Read ${place}`,
  /** What the readings of a section say. */
  says: {
    none: ({ leastV }: { leastV: number }, f: Figures) =>
      `No reading yet. Under ${f.volts(leastV)} stock is not held, whatever is usual.`,
    passed: ({ leastV }: { leastV: number }, f: Figures) =>
      `Every reading is as good as it should be there, and at least ${f.volts(leastV)}: it holds the stock.`,
    doubtful:
      'A reading is less than it should be there, though stock is held: read again, and look for what takes it, before you call it passed.',
    failed: 'A reading is low for its place, or does not hold the stock: look for the fault before you hand it over.',
  },
  /** What Undo calls these edits. */
  edits: {
    tested: ({ run, ...result }: OfRun & Tested) => `Section ${tested(result)}: ${run}`,
    by: ({ run }: OfRun) => `Name who tested: ${run}`,
    meter: ({ run }: OfRun) => `Name the meter: ${run}`,
    weather: ({ run }: OfRun) => `Note the weather: ${run}`,
    note: ({ run }: OfRun) => `Note on the run: ${run}`,
    finish: ({ run }: OfRun) => `Finish the run: ${run}`,
    goOn: ({ run }: OfRun) => `Go on with the run: ${run}`,
    delete: ({ run }: OfRun) => `Delete the run ${run}`,
    read: ({ place }: AtPlace) => `Reading ${place}`,
    deleteReading: ({ place }: AtPlace) => `Delete: Reading ${place}`,
  },
};

/** What was read on the fence. */
export const readings = {
  title: 'Readings, the newest first',
  none: 'No readings yet.',
  read: 'Read',
  off: 'Off',
  noSwitch: 'none',
  switchGone: 'one that is gone',
  nothing: 'nothing',
  noPlace: 'A reading needs a place: an energiser, a switch, a gateway or a post.',
  nothingTyped: 'Type what the tester read.',
  write: ({ place }: AtPlace) => `Write down a reading at ${place}`,
  newReading: 'A new reading',
  caution:
    'A live fence is read with a tester made for it. Nothing is taken apart, and no switch is touched, while it is on.',
  place: 'Place',
  voltage: 'Voltage',
  current: 'Current',
  readBy: 'Read by',
  writeDown: 'Write the reading down',
  how: 'How it was read',
  /** What Undo calls these edits. */
  edits: {
    place: 'Change place of a reading',
    current: 'Change the current of a reading',
    by: 'Change read by of a reading',
    meter: 'Change meter of a reading',
    weather: 'Change weather of a reading',
  },
};

type Test = {
  readonly fenceV: number | null;
  readonly load: string;
  readonly meter: string;
  readonly weather: string;
  readonly by: string;
  readonly note: string;
};

/** Tests of the earth stakes. */
export const earthTests = {
  verdicts: {
    good: 'Good.',
    borderline: 'Borderline: test again when the ground is at its driest.',
    moreRods: 'Add rods and test again.',
  },
  none: 'No earth test is recorded yet.',
  stakesGone: 'stakes that are gone',
  result: ({ day, of, earthV }: { day: string; of: string; earthV: number }, f: Figures) =>
    `${f.date(day)}, ${of}: ${f.volts(earthV)}.`,
  particulars: ({ fenceV, load, meter, weather, by, note }: Test, f: Figures) =>
    [fenceV === null ? '' : `fence loaded to ${f.volts(fenceV)}`, load, meter, weather, by && `by ${by}`, note]
      .filter((part) => part !== '')
      .join('; '),
  delete: 'Delete an earth test',
  deleteIt: 'Delete',
  noStakes: 'No earth stakes are drawn. Add them in Power.',
  nothingTyped: 'Type what was read at the last rod, in V.',
  write: 'Write down an earth test',
  newTest: 'A new earth test',
  title: 'Test the earth',
  caution:
    'The fence is live while you read. Keep people and stock away. Put shorts on, and take them off, only with the energiser off and the fence proven dead. Locate buried services before you drive rods or pins.',
  stakesOf: 'Earth stakes of',
  lastRod: 'At the last rod',
  byTheShort: 'Fence by the short',
  loadedBy: 'Loaded by',
  howDry: 'Weather, how dry the ground was',
  writeDown: 'Write it down',
  limits: '200 V and under is good, over 300 V asks for more rods: common practice, no source.',
};
