import type { FaultHunt, HuntEnd, HuntReading } from '../../model/huntThings.ts';
import type { Limits, Yardstick } from '../../model/yardstick.ts';
import type { HuntState, HuntStep } from './huntWalk.ts';

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

export function withRingsOpened(hunt: FaultHunt, switchIds: readonly string[]): FaultHunt {
  return { ...hunt, openedFirst: [...new Set([...hunt.openedFirst, ...switchIds])] };
}

/** The hunt with the reading of a step. `at`: ISO 8601 local date and time. */
export function withReading(
  hunt: FaultHunt,
  step: HuntStep,
  switchName: string,
  answer: Answer,
  at: string,
): FaultHunt {
  const { check, switchId, openIds } = step;
  const reading: HuntReading = { check, switchId, switchName, openIds, ...answer, at, setAside: false };
  return { ...hunt, readings: [...hunt.readings, reading] };
}

/**
 * The hunt with a reading that was taken again because some could not all be right. Where it now says the other thing,
 * the old one is set aside. Where it says the same, the last reading, which it contradicted, is set aside and is taken anew.
 */
export function withRepeat(
  hunt: FaultHunt,
  { repeat, suspects }: Extract<HuntState, { kind: 'contradiction' }>,
  switchName: string,
  answer: Answer,
  at: string,
): FaultHunt {
  if (!repeat) return hunt;
  const old = suspects.find(({ reading }) => sameStep(reading, repeat));
  const wrong = !old || old.reading.result === answer.result ? hunt.readings.length - 1 : old.index;
  return withReading(setAside(hunt, wrong), repeat, switchName, answer, at);
}

function sameStep(reading: HuntReading, { check, switchId, openIds }: HuntStep): boolean {
  return reading.check === check && reading.switchId === switchId && reading.openIds.join() === openIds.join();
}

/** A reading found wrong: it is kept, and no longer counts. */
export function setAside(hunt: FaultHunt, index: number): FaultHunt {
  return { ...hunt, readings: hunt.readings.map((each, i) => (i === index ? { ...each, setAside: true } : each)) };
}

/** The hunt as it was before its last reading. */
export function withoutLast(hunt: FaultHunt): FaultHunt {
  return { ...hunt, readings: hunt.readings.slice(0, -1) };
}

export function ended(hunt: FaultHunt, end: HuntEnd): FaultHunt {
  return { ...hunt, end };
}
