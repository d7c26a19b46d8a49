import { kinds, type Project, putAll, removeAll } from './project.ts';
import type { Kind, Thing } from './things.ts';

/** What became of one thing: made (`before` null), changed, or taken away (`after` null). */
export interface Change {
  readonly kind: Kind;
  readonly id: string;
  readonly before: Thing | null;
  readonly after: Thing | null;
}

/** How `after` differs from `before`, found by identity: an untouched thing must be the same object in both. */
export function difference(before: Project, after: Project): Change[] {
  const changes: Change[] = [];
  for (const kind of kinds) {
    const from = before[kind] as ReadonlyMap<string, Thing>;
    const to = after[kind] as ReadonlyMap<string, Thing>;
    if (from === to) continue;
    for (const [id, thing] of to) {
      const old = from.get(id) ?? null;
      if (old !== thing) changes.push({ kind, id, before: old, after: thing });
    }
    for (const [id, thing] of from) if (!to.has(id)) changes.push({ kind, id, before: thing, after: null });
  }
  return changes;
}

/** The changes that take back `changes`, in reverse order. */
export function inverse<C extends { readonly before: unknown; readonly after: unknown }>(changes: readonly C[]): C[] {
  return changes.map((change) => ({ ...change, before: change.after, after: change.before })).reverse();
}

/** The project after these changes. */
export function applyChanges(project: Project, changes: readonly Change[]): Project {
  const gone = changes.flatMap((change) => (change.after === null && change.before !== null ? [change.before] : []));
  const kept = changes.flatMap((change) => (change.after === null ? [] : [change.after]));
  return putAll(removeAll(project, gone), kept);
}
