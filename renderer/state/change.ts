import { changeThing } from '../../core/model/edits/changeThing.ts';
import type { Kind, ThingOf } from '../../core/model/things.ts';
import { type CommitOptions, commit } from './session.ts';

/** Changes some fields of one thing, as one step of undo. */
export function change<K extends Kind>(
  label: string,
  kind: K,
  id: string,
  patch: Partial<Omit<ThingOf<K>, 'kind' | 'id'>>,
  options: CommitOptions = {},
): void {
  void commit(label, changeThing({ kind, id, to: patch }), options);
}
