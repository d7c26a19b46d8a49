import type { Figures } from '../../../types.ts';

type Named = { readonly name: string };
type Counted = { readonly count: number };

const things = { one: 'thing', other: 'things' };

/** What is built, and how it differs from what was planned. */
export const built = {
  of: ({ name }: Named) => `Built: ${name}`,
  mark: ({ name }: Named) => `Mark ${name} built`,
  markPlanned: ({ name }: Named) => `Mark ${name} planned`,
  changeNote: ({ name }: Named) => `Note on ${name}`,
  planned:
    'Planned. When it is marked built, the plan is kept beside it; from then on its own figures are the real ones.',
  markToday: 'Mark it built today',
  builtOn: 'Built on',
  moved: ({ movedM }: { movedM: number }, f: Figures) => `Stands ${f.length(movedM)} from where it was planned.`,
  asPlanned: 'Built as planned.',
  noPlan: 'Drawn as built: there is no plan to compare it with.',
  onlyPlanned: 'It is only planned',
  /** All of it, as a table. */
  title: 'Planned and built',
  empty: 'Nothing is drawn that could be built.',
  what: 'What',
  name: 'Name',
  state: 'State',
  states: { planned: 'planned', built: 'built' },
  kinds: {
    fenceLine: 'fence',
    gateway: 'gateway',
    crossing: 'crossing',
    switch: 'switch',
    leadOut: 'lead-out',
    energiser: 'energiser',
    earthField: 'earth stakes',
  },
  markBuilt: 'Mark built',
  markMany: ({ count }: Counted, f: Figures) => `Mark ${f.number(count, 0)} ${f.plural(count, things)} built`,
  markSelected: ({ count }: Counted) => `Mark what is selected built (${count})`,
  markAll: ({ count }: Counted) => `Mark all ${count} planned built`,
  markHint: 'The plan is kept beside each: what is changed afterwards shows as a difference from it.',
  /** What was built otherwise than planned. */
  otherwise: 'Built otherwise than planned',
  differences: 'Differences from the plan',
  noDifferences: 'Everything that was marked built stands as it was planned.',
  howFar: 'Moved',
  plannedNow: 'Planned, now',
};

/** Handing the property over, and what has changed since. */
export const handover = {
  pack: 'Handover pack',
  packHint:
    'One PDF for the folder: maps, registers, a card for each crossing, tests, gate tags. Made to be kept for decades.',
  sinceTitle: 'Since a handover',
  handover: 'Handover',
  numbered: ({ number }: { number: number }) => `Handover ${number}`,
  ofDay: ({ number, day }: { number: number; day: string }, f: Figures) => `${number}, ${f.date(day)}`,
  none: 'Nothing was handed over yet.',
  which: ({ number, day }: { number: number; day: string }, f: Figures) => `Handover ${number} of ${f.date(day)}`,
  /** Whose it was, and what was noted. */
  particulars: ({ by, to, note }: { by: string; to: string; note: string }) =>
    [by && `by ${by}`, to && `to ${to}`, note].filter((part) => part !== '').join(', '),
  nothingChanged: 'Nothing has changed since.',
  lock: ({ number }: { number: number }) => `Lock handover ${number}`,
  lockThis: 'Lock this handover',
  lockHint: 'The property is kept in the file as it is now; later changes are listed against it.',
  handedOverBy: 'Handed over by',
  takenOverBy: 'Taken over by',
  /** The pack. */
  parts: {
    map: 'Map sheets at true scale',
    switches: 'Sections, paddocks and switch register',
    crossings: 'Crossing schedule, and a card for each crossing',
    tests: 'Test results, and a test sheet for each section',
    power: 'Energiser and earth',
    materials: 'Materials as built',
    changes: 'Changes from the plan and since the last handover',
    tags: 'Gate tags to cut out',
    geoJson: 'The whole property as GeoJSON, attached',
  },
  whatGoesIn: 'What goes in, after the cover with its cautions',
  notPlaced: 'The property has no place on earth yet.',
  paper: 'Paper of the maps',
  scale: 'True scale',
  suitingScale: 'What suits six sheets',
  coverNote: 'Note on the cover',
  notLocked: 'No handover is locked yet: the pack shows the property as it stands now.',
};
