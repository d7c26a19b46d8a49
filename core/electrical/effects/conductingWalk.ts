import type { Branches } from '../solver/branches.ts';

/**
 * A depth-first walk over the branches that conduct, from the energiser's node first, then from whatever it has not
 * found. Nodes are numbered in the order found, so what was found from a node on has consecutive numbers.
 */
export interface ConductingWalk {
  /** By node. */
  readonly numberOf: Int32Array;
  /** By node: one past the highest number of what was found from it on. */
  readonly endOf: Int32Array;
  /** By node: the branch over which it was found, -1 for the first of a part. */
  readonly foundBy: Int32Array;
  /** By node: 1 where that branch is the only way between it and what was found before. */
  readonly onlyWay: Uint8Array;
  /** By node: its connected part; 0 is the energiser's. */
  readonly partOf: Int32Array;
  /** By part: the number of its first node; one more entry at the end. */
  readonly partStart: readonly number[];
}

/** Bridges by lowest reachable numbers: J. Hopcroft, R. Tarjan, Communications of the ACM 16, 1973. No recursion. */
export function conductingWalk(
  nodeCount: number,
  { from, to }: Pick<Branches, 'from' | 'to'>,
  sourceNode: number,
  conducts: (branch: number) => boolean,
): ConductingWalk {
  const start = new Int32Array(nodeCount + 1);
  const taken: number[] = [];
  for (let b = 0; b < from.length; b++) {
    if (from[b] === to[b] || !conducts(b)) continue;
    taken.push(b);
    start[from[b]! + 1]!++;
    start[to[b]! + 1]!++;
  }
  for (let v = 0; v < nodeCount; v++) start[v + 1]! += start[v]!;
  const fill = start.slice(0, nodeCount);
  const branchAt = new Int32Array(start[nodeCount]!);
  for (const b of taken) {
    branchAt[fill[from[b]!]!++] = b;
    branchAt[fill[to[b]!]!++] = b;
  }
  const numberOf = new Int32Array(nodeCount).fill(-1);
  const endOf = new Int32Array(nodeCount);
  const foundBy = new Int32Array(nodeCount).fill(-1);
  const onlyWay = new Uint8Array(nodeCount);
  const partOf = new Int32Array(nodeCount);
  const partStart: number[] = [];
  const next = start.slice(0, nodeCount);
  const lowest = new Int32Array(nodeCount);
  let count = 0;
  walk(sourceNode);
  for (let v = 0; v < nodeCount; v++) if (numberOf[v]! < 0) walk(v);
  partStart.push(count);
  return { numberOf, endOf, foundBy, onlyWay, partOf, partStart };

  function walk(first: number): void {
    const part = partStart.push(count) - 1;
    const path = [first];
    enter(first, -1, part);
    while (path.length > 0) {
      const v = path.at(-1)!;
      if (next[v]! < start[v + 1]!) {
        const b = branchAt[next[v]!++]!;
        if (b === foundBy[v]) continue;
        const w = from[b] === v ? to[b]! : from[b]!;
        if (numberOf[w]! >= 0) lowest[v] = Math.min(lowest[v]!, numberOf[w]!);
        else {
          enter(w, b, part);
          path.push(w);
        }
        continue;
      }
      path.pop();
      endOf[v] = count;
      onlyWay[v] = lowest[v] === numberOf[v] ? 1 : 0;
      const up = path.at(-1);
      if (up !== undefined) lowest[up] = Math.min(lowest[up]!, lowest[v]!);
    }
  }

  function enter(v: number, by: number, part: number): void {
    foundBy[v] = by;
    partOf[v] = part;
    lowest[v] = count;
    numberOf[v] = count++;
  }
}
