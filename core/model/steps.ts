/**
 * Work that can be done a step at a time: it gives control back wherever it could rest, and ends with its result. What
 * it finds never depends on when it is gone on with.
 */
export type Steps<T> = Generator<void, T, void>;

/** Does it all at once. */
export function allAtOnce<T>(steps: Steps<T>): T {
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
  }
}
