/** Fields and groups of fields that several kinds have. */

import { message } from '../words/message.ts';
import type { ValueOf, ValuesOf } from './describe.ts';
import {
  choice,
  date,
  either,
  lengthM,
  list,
  looseReference,
  most,
  name,
  neverNothing,
  number,
  optional,
  orNone,
  record,
  text,
} from './fields.ts';

/** The user's own name for a thing. */
export const ownName = name({ column: true });

export const note = text({ long: true, column: true, default: '' });

/** Planned, or really there. */
export const status = choice(['planned', 'built'], { column: true, default: 'planned' });
export type Status = ValueOf<typeof status>;

/** One of a line's two ends: where it was begun, and where it was finished. */
export const lineEnd = choice(['start', 'end']);
export type LineEnd = ValueOf<typeof lineEnd>;

export const hand = choice(['left', 'right']);

/** A place along a fence line: geodesic metres from its first vertex. */
export const alongLineM = lengthM({ max: 1e7, ownEdit: true, column: true });

export const leakage = {
  /** Resistance to earth of one kilometre of one live wire: n live wires leak n times as much. */
  leakageOhmKm: number('ohm km', { min: 10, max: 1e9, file: neverNothing }),
};

/** How much grows against the wires; each class's leakage is in `core/electrical`. */
export const growth = either([choice(['clean', 'light', 'heavy']), record(leakage)], {
  mustBe: message('kinds.mustBe.growth'),
  default: 'light',
});
export type Growth = ValueOf<typeof growth>;

/** An order among things of a kind. */
export const rank = number('', { min: -1e9, max: 1e9, file: { min: -1e9 } });

/** What a fence or an earth can be read at; more than any energiser gives is a slip of the comma. */
export const readVoltageV = number('V', { max: 50_000, decimals: 0 });

/** Ids of cut-out switches, which may be gone since. */
export const switchIds = list(looseReference('switch'), {
  most: most.ids,
  mustBe: message('kinds.mustBe.ids'),
  default: [],
});

/** A person, or several. */
export const person = text({ default: '' });

const limits = {
  /** A reading under `lowBelowV` is low, one of at least `goodFromV` good; between them it is doubtful. */
  lowBelowV: readVoltageV,
  goodFromV: readVoltageV,
};

/** What a reading was judged by: kept with it, so that the record says why it counted as good or low. */
export const yardstickFields = {
  /** What the place usually reads with the switches as they then stood; null: not known. */
  usualV: orNone(readVoltageV),
  /**
   * `reading`: an earlier reading there; `estimate`: the estimate there; `stock`: neither was to be had, so only what holds
   * the stock; `own`: limits that somebody set.
   */
  by: choice(['reading', 'estimate', 'stock', 'own']),
  /** ISO 8601 date of the earlier reading. */
  readOn: optional(date()),
  ...limits,
};
export type Yardstick = ValuesOf<typeof yardstickFields>;
export const yardstick = record(yardstickFields, { mustBe: message('kinds.mustBe.yardstick') });

/** Tax and waste on top of a price or an amount. */
export const percent = number('%', { max: 100, file: { max: 1000 } });
