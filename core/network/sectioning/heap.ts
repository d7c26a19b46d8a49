/** A binary heap: the entry that comes before all others is taken first. */
export class Heap<T> {
  readonly #entries: T[] = [];
  readonly #before: (x: T, y: T) => boolean;

  constructor(before: (x: T, y: T) => boolean) {
    this.#before = before;
  }

  add(entry: T): void {
    const heap = this.#entries;
    let i = heap.push(entry) - 1;
    while (i > 0 && this.#before(entry, heap[(i - 1) >> 1]!)) {
      heap[i] = heap[(i - 1) >> 1]!;
      i = (i - 1) >> 1;
    }
    heap[i] = entry;
  }

  take(): T | undefined {
    const heap = this.#entries;
    const top = heap[0];
    const last = heap.pop();
    if (last === undefined || heap.length === 0) return top;
    let i = 0;
    for (let child = 1; child < heap.length; child = 2 * i + 1) {
      if (child + 1 < heap.length && this.#before(heap[child + 1]!, heap[child]!)) child++;
      if (!this.#before(heap[child]!, last)) break;
      heap[i] = heap[child]!;
      i = child;
    }
    heap[i] = last;
    return top;
  }
}
