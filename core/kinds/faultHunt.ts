import { message } from '../words/message.ts';
import { note, ownName, person, readVoltageV, switchIds, yardstick } from './common.ts';
import { kind, type ValueOf, type ValuesOf } from './describe.ts';
import { choice, date, flag, list, looseReference, optional, orNone, record, shortText, text } from './fields.ts';

const check = choice([
  /** At the energiser, before anything is opened but the ring switches. */
  'start',
  /** On the energiser's side of a switch that was opened for it. */
  'test',
  /** At the end, with the found section fed and everything beyond it cut off: low, if the search is right. */
  'with',
  /** At the end, with the switch that feeds the found section open: good, if the search is right. */
  'without',
]);
/** What one reading of a search was for. */
export type FaultSearchCheck = ValueOf<typeof check>;

const readingFields = {
  check,
  /** The switch it was taken at; null: at the energiser. */
  switchId: orNone(looseReference('switch')),
  switchName: shortText(),
  /** Switches that stood open for it, besides those that always do. */
  openIds: switchIds,
  /** Null: told without a figure. */
  voltageV: orNone(readVoltageV),
  result: choice(['low', 'good']),
  /** What it was judged by, where that was not the limits of the search. */
  yardstick: optional(yardstick),
  /** Taken for low or good though it was between the two, or not sure. */
  doubtful: flag(),
  /** ISO 8601 local date and time. */
  at: date(),
  /** Found wrong, or taken back, later on: kept, and not counted. */
  setAside: flag(),
};
export type FaultSearchReading = ValuesOf<typeof readingFields>;

const endFields = {
  /** ISO 8601 local date and time. */
  at: date(),
  outcome: choice(['found', 'givenUp']),
  /** Letter of the section at that time; null: none, or between the energiser and the first section. */
  section: orNone(shortText()),
  /** What it is made of, in words: "F3, F7 with G4". */
  place: text(),
  /** Both readings at the end agreed with it. */
  confirmed: flag(),
  /** What was wrong and where, as found. */
  cause: text(),
};
export type FaultSearchEnd = ValuesOf<typeof endFields>;

/**
 * One search for a fault, from the first low reading to what was found. Kept while it is under way, so that it goes on
 * after a restart, and afterwards as a record. It stays when what it names is deleted: names and letters are its own.
 */
export const faultHunt = kind('faultHunt', {
  lists: ['plain'],
  fields: {
    name: ownName,
    /** ISO 8601 local date and time. */
    startedAt: date(),
    by: person,
    energiserId: looseReference('energiser'),
    /** What the order of the tests saves: tests, or walking there and back from the energiser. */
    saves: choice(['tests', 'walking']),
    /** `usual`: each reading by what is usual at its place; without it, all of them by the two limits that follow. */
    judgedBy: optional(choice(['usual'])),
    /** A reading under `lowBelowV` is low, one of at least `goodFromV` good; between them it is doubtful. */
    lowBelowV: readVoltageV,
    goodFromV: readVoltageV,
    /** Ring switches that were opened before the first test, and stay open until the end. */
    openedFirst: switchIds,
    /** In the order they were taken. */
    readings: list(record(readingFields), { most: 1000, mustBe: message('kinds.mustBe.readings') }),
    /** Null while it is under way. */
    end: orNone(record(endFields, { mustBe: message('kinds.mustBe.ending') })),
    note,
  },
});
