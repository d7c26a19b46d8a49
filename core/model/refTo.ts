import type { ServiceRef } from '../words/en/things.ts';
import type { ThingRef } from '../words/types.ts';
import type { Kind, Service } from './things.ts';

/** A thing as a message names it. */
export function refTo({ kind, name }: { readonly kind: Kind; readonly name?: string }): ThingRef {
  return { kind, name: name ?? '' };
}

/** A service as a message names it: by what it is, too. */
export function refToService({ what, name }: Service): ServiceRef {
  return { what, name };
}
