/** Puts all of some lists at the end of `list`: `list.push(...items)` puts each on the stack, and overflows it at about 100,000. */
export function pushAll<T>(list: T[], ...more: readonly Iterable<T>[]): void {
  for (const items of more) for (const item of items) list.push(item);
}
