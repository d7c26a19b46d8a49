import type { NewId } from '../../../core/model/edits/support/edit.ts';
import type { Kind } from '../../../core/model/things.ts';

/** Ids that stay the same however often an edit is applied: one for each kind. Enough for edits that make one thing of a kind. */
export function stableIds(newId: NewId): NewId {
  const ids = new Map<Kind, string>();
  return (kind) => {
    const known = ids.get(kind) ?? newId(kind);
    ids.set(kind, known);
    return known;
  };
}
