import { kinds } from '../kinds/allKinds.ts';
import type { Kind, Property, Thing, ThingOf } from './things.ts';

/** One table for each kind of thing, by id. */
export type Tables = { readonly [K in Kind]: ReadonlyMap<string, ThingOf<K>> };

/** A property as drawn: values that never change; an edit makes a new one that shares all it did not touch. */
export type Project = Tables;

export { kinds };

const kindSet: ReadonlySet<string> = new Set(kinds);

/** Whether this version knows a kind of that name. */
export function isKind(kind: string): kind is Kind {
  return kindSet.has(kind);
}

/** A project of these things. Of a kind that a newer version made, which a handover or kept plan may hold, nothing is seen. */
export function projectOf(things: Iterable<Thing>): Project {
  const tables = Object.fromEntries(kinds.map((kind) => [kind, new Map<string, Thing>()]));
  for (const thing of things) tables[thing.kind]?.set(thing.id, thing);
  return tables as unknown as Project;
}

/** Every thing of a project, in the order of `kinds`. */
export function* allThings(project: Project): Generator<Thing> {
  for (const kind of kinds) yield* project[kind].values();
}

/** The one property of a project. Throws where there is none: the store never hands out such a project. */
export function propertyOf(project: Project): Property {
  const property = project.property.get('property');
  if (!property) throw new Error('The project has no property record.');
  return property;
}

/** The project with these things put in (added, or in place of those with the same id). */
export function put(project: Project, ...things: readonly Thing[]): Project {
  return putAll(project, things);
}

/** `put` for any number of things; so many arguments as a file may hold things would overflow the stack. */
export function putAll(project: Project, things: Iterable<Thing>): Project {
  const changed = new Map<Kind, Map<string, Thing>>();
  for (const thing of things) tableToChange(changed, project, thing.kind).set(thing.id, thing);
  return withTables(project, changed);
}

/** The project without these things. */
export function remove(project: Project, ...things: readonly Thing[]): Project {
  return removeAll(project, things);
}

/** `remove` for any number of things. */
export function removeAll(project: Project, things: Iterable<Thing>): Project {
  const changed = new Map<Kind, Map<string, Thing>>();
  for (const thing of things) tableToChange(changed, project, thing.kind).delete(thing.id);
  return withTables(project, changed);
}

function tableToChange(changed: Map<Kind, Map<string, Thing>>, project: Project, kind: Kind): Map<string, Thing> {
  let table = changed.get(kind);
  if (!table) {
    table = new Map<string, Thing>(project[kind]);
    changed.set(kind, table);
  }
  return table;
}

function withTables(project: Project, changed: Map<Kind, Map<string, Thing>>): Project {
  return changed.size === 0 ? project : ({ ...project, ...Object.fromEntries(changed) } as Project);
}
