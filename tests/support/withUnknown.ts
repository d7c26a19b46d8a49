import type { Thing } from '../../core/model/things.ts';

/** What a newer version may have put into a thing, in its own words. */
export const newer = { shade: 'grün', since: [2041, { by: null }] };

/** A thing with fields that this version does not know: its own, and one in each object within it. */
export function withUnknown<T extends Thing>(thing: T): T {
  return grown(thing) as T;
}

function grown(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(grown);
  if (typeof value !== 'object' || value === null) return value;
  return { ...Object.fromEntries(Object.entries(value).map(([field, each]) => [field, grown(each)])), newer };
}

/** How many objects a thing is made of: it is one itself. */
export function objectsIn(value: unknown): number {
  if (typeof value !== 'object' || value === null) return 0;
  return Object.values(value).reduce<number>((sum, each) => sum + objectsIn(each), Array.isArray(value) ? 0 : 1);
}
