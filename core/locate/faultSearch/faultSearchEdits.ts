import type { FaultSearch, FaultSearchEnd, FaultSearchReading } from '../../model/faultSearchThings.ts';
import type { Limits, Yardstick } from '../../model/yardstick.ts';
import type { FaultSearchState, FaultSearchStep } from './faultSearchWalk.ts';

/** What was read: a voltage, or only whether it was good, and whether that is sure. */
export interface Answer {
  readonly voltageV: number | null;
  readonly result: 'low' | 'good';
  readonly doubtful: boolean;
  /** What it was judged by; without it, the limits of the search. */
  readonly yardstick?: Yardstick;
}

/** What a voltage means by its limits; null: between the two, so that somebody must say. */
export function meaningOf({ lowBelowV, goodFromV }: Limits, voltageV: number): 'low' | 'good' | null {
  if (voltageV < lowBelowV) return 'low';
  return voltageV >= goodFromV ? 'good' : null;
}

export function withRingsOpened(search: FaultSearch, switchIds: readonly string[]): FaultSearch {
  return { ...search, openedFirst: [...new Set([...search.openedFirst, ...switchIds])] };
}

/** The search with the reading of a step. `at`: ISO 8601 local date and time. */
export function withReading(
  search: FaultSearch,
  step: FaultSearchStep,
  switchName: string,
  answer: Answer,
  at: string,
): FaultSearch {
  const { check, switchId, openIds } = step;
  const reading: FaultSearchReading = { check, switchId, switchName, openIds, ...answer, at, setAside: false };
  return { ...search, readings: [...search.readings, reading] };
}

/**
 * The search with a reading that was taken again because some could not all be right. Where it now says the other thing,
 * the old one is set aside. Where it says the same, the last reading, which it contradicted, is set aside and is taken anew.
 */
export function withRepeat(
  search: FaultSearch,
  { repeat, suspects }: Extract<FaultSearchState, { kind: 'contradiction' }>,
  switchName: string,
  answer: Answer,
  at: string,
): FaultSearch {
  if (!repeat) return search;
  const old = suspects.find(({ reading }) => sameStep(reading, repeat));
  const wrong = !old || old.reading.result === answer.result ? search.readings.length - 1 : old.index;
  return withReading(setAside(search, wrong), repeat, switchName, answer, at);
}

function sameStep(reading: FaultSearchReading, { check, switchId, openIds }: FaultSearchStep): boolean {
  return reading.check === check && reading.switchId === switchId && reading.openIds.join() === openIds.join();
}

/** A reading found wrong: it is kept, and no longer counts. */
export function setAside(search: FaultSearch, index: number): FaultSearch {
  return { ...search, readings: search.readings.map((each, i) => (i === index ? { ...each, setAside: true } : each)) };
}

/** The search as it was before its last reading. */
export function withoutLast(search: FaultSearch): FaultSearch {
  return { ...search, readings: search.readings.slice(0, -1) };
}

export function ended(search: FaultSearch, end: FaultSearchEnd): FaultSearch {
  return { ...search, end };
}
