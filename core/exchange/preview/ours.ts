import { type KindIn, kindsIn } from '../../kinds/allKinds.ts';
import { own, type RawObject } from './raw.ts';
import type { OurThing } from './types.ts';

/** Kinds that a map exchanges, what a thing stands on before it. Prices, kept plans and handovers are no part of a map, and
 * photos do not fit into one. */
export const exchangedKinds = kindsIn('exchange');

export type ExchangedKind = KindIn<'exchange'>;

/** The properties that mark a feature as written by this program. */
export const kindProperty = 'undergate:kind';
export const idProperty = 'undergate:id';

/** Of another place where a thing may lie: the feature id of that thing. */
export const placeOfProperty = 'undergate:placeOf';

/** Says that an area's ring ran clockwise before it was wound by the right-hand rule. */
export const clockwiseProperty = 'undergate:drawnClockwise';

/** Kinds of features that only show what is computed; they are passed over when a file comes back. */
export const computedKinds = ['run', 'paddockOutline', 'otherPlace'] as const;

/** The kind that our mark on a feature gives, `computed`, or null where it bears no mark of ours. */
export function kindOfOurs(properties: RawObject): ExchangedKind | 'computed' | null {
  const kind = own(properties, kindProperty);
  if (computedKinds.includes(kind as (typeof computedKinds)[number])) return 'computed';
  return exchangedKinds.includes(kind as ExchangedKind) ? (kind as ExchangedKind) : null;
}

/** The thing that a marked feature holds, still to be checked; null without an id. */
export function ourThing(kind: ExchangedKind, properties: RawObject): OurThing | null {
  const id = own(properties, idProperty);
  if (typeof id !== 'string' || id === '' || id.length > 200) return null;
  return { kind, id, fields: properties };
}
