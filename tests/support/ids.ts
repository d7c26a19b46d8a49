import type { NewId } from '../../core/model/edits/support/edit.ts';

/** Ids that count up: `gateway-1`, `gateway-2`. Each counter starts afresh, after a number of its own if asked. */
export function countingIds(after = 0): NewId {
  const counts = new Map<string, number>();
  return (kind) => {
    const count = (counts.get(kind) ?? after) + 1;
    counts.set(kind, count);
    return `${kind}-${count}`;
  };
}
