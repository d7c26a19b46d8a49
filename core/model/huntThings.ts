/** A search for a fault, as it is walked and as it is kept: see `things.ts`. */
import type { Yardstick } from './yardstick.ts';

/**
 * One search for a fault, from the first low reading to what was found. Kept while it is under way, so that it goes on
 * after a restart, and afterwards as a record. It stays when what it names is deleted: names and letters are its own.
 */
export interface FaultHunt {
  readonly kind: 'faultHunt';
  readonly id: string;
  readonly name: string;
  /** ISO 8601 local date and time. */
  readonly startedAt: string;
  readonly by: string;
  readonly energiserId: string;
  /** What the order of the tests saves: tests, or walking there and back from the energiser. */
  readonly saves: 'tests' | 'walking';
  /** `usual`: each reading by what is usual at its place; without it, all of them by the two limits that follow. */
  readonly judgedBy?: 'usual';
  /** A reading under `lowBelowV` is low, one of at least `goodFromV` good; between them it is doubtful. */
  readonly lowBelowV: number;
  readonly goodFromV: number;
  /** Ring switches that were opened before the first test, and stay open until the end. */
  readonly openedFirst: readonly string[];
  /** In the order they were taken. */
  readonly readings: readonly HuntReading[];
  /** Null while it is under way. */
  readonly end: HuntEnd | null;
  readonly note: string;
}

/** What one reading of a hunt was for. */
export type HuntCheck =
  /** At the energiser, before anything is opened but the ring switches. */
  | 'start'
  /** On the energiser's side of a switch that was opened for it. */
  | 'test'
  /** At the end, with the found section fed and everything beyond it cut off: low, if the hunt is right. */
  | 'with'
  /** At the end, with the switch that feeds the found section open: good, if the hunt is right. */
  | 'without';

export interface HuntReading {
  readonly check: HuntCheck;
  /** The switch it was taken at; null: at the energiser. */
  readonly switchId: string | null;
  readonly switchName: string;
  /** Switches that stood open for it, besides those that always do. */
  readonly openIds: readonly string[];
  /** Null: told without a figure. */
  readonly voltageV: number | null;
  readonly result: 'low' | 'good';
  /** What it was judged by, where that was not the limits of the search. */
  readonly yardstick?: Yardstick;
  /** Taken for low or good though it was between the two, or not sure. */
  readonly doubtful: boolean;
  /** ISO 8601 local date and time. */
  readonly at: string;
  /** Found wrong, or taken back, later on: kept, and not counted. */
  readonly setAside: boolean;
}

export interface HuntEnd {
  /** ISO 8601 local date and time. */
  readonly at: string;
  readonly outcome: 'found' | 'givenUp';
  /** Letter of the section at that time; null: none, or between the energiser and the first section. */
  readonly section: string | null;
  /** What it is made of, in words: "F3, F7 with G4". */
  readonly place: string;
  /** Both readings at the end agreed with it. */
  readonly confirmed: boolean;
  /** What was wrong and where, as found. */
  readonly cause: string;
}
