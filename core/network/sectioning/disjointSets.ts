/** Sets that can only grow together (union by size, paths halved). */
export class DisjointSets {
  readonly #parent: Int32Array;
  readonly #size: Int32Array;

  constructor(count: number) {
    this.#parent = new Int32Array(count);
    for (let i = 0; i < count; i++) this.#parent[i] = i;
    this.#size = new Int32Array(count).fill(1);
  }

  find(item: number): number {
    let root = item;
    while (this.#parent[root] !== root) {
      this.#parent[root] = this.#parent[this.#parent[root]!]!;
      root = this.#parent[root]!;
    }
    return root;
  }

  /** @returns false when the two were together already. */
  join(a: number, b: number): boolean {
    let big = this.find(a);
    let small = this.find(b);
    if (big === small) return false;
    if (this.#size[big]! < this.#size[small]!) [big, small] = [small, big];
    this.#parent[small] = big;
    this.#size[big]! += this.#size[small]!;
    return true;
  }

  /** Numbers the sets 0, 1, … in the order of their first items. */
  number(): { setOf: Int32Array; count: number } {
    const setOf = new Int32Array(this.#parent.length).fill(-1);
    const numberOfRoot = new Int32Array(this.#parent.length).fill(-1);
    let count = 0;
    for (let i = 0; i < setOf.length; i++) {
      const root = this.find(i);
      if (numberOfRoot[root] === -1) numberOfRoot[root] = count++;
      setOf[i] = numberOfRoot[root]!;
    }
    return { setOf, count };
  }
}
