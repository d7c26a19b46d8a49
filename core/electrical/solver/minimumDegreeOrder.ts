import type { FoldingOrder } from './foldingOrder.ts';

/**
 * Minimum-degree elimination of the nodes not yet `gone` (all but `root`), on a quotient graph: an eliminated node
 * stands for the clique of the neighbours it had, so no fill is ever written out, and the storage never outgrows the
 * branches. Degrees are the approximate ones of P. R. Amestoy, T. A. Davis, I. S. Duff, "An approximate minimum
 * degree ordering algorithm", SIAM J. Matrix Anal. Appl. 17 (1996), exact for nodes in at most two cliques.
 */
export function minimumDegreeOrder(
  nodeCount: number,
  from: Int32Array,
  to: Int32Array,
  gone: Uint8Array,
  root: number,
): FoldingOrder {
  const { nodeOf, slot, slotStart, rootLocal } = gatherCore(nodeCount, from, to, gone, root);
  const size = nodeOf.length;

  // A node's slot holds the cliques it is in (cliqueCount of them), then the nodes it is still directly joined to.
  const cliqueCount = new Int32Array(size);
  const slotLength = new Int32Array(size);
  const tag = new Int32Array(size).fill(-1);
  for (let i = 0; i < size; i++) slotLength[i] = dropDuplicates(slot, slotStart[i]!, slotStart[i + 1]!, tag, i);
  tag.fill(-1);

  const cliqueStart = new Int32Array(size);
  const cliqueSize = new Int32Array(size);
  const absorbed = new Uint8Array(size);
  const outside = new Int32Array(size);
  let outsideTag = 1;

  const queue = degreeQueue(size);
  for (let i = 0; i < size; i++) if (i !== rootLocal) queue.add(i, slotLength[i]!);

  const order = new Int32Array(size - 1);
  const start = new Int32Array(size);
  let members = new Int32Array(Math.max(16, 4 * size));
  let used = 0;

  for (let k = 0; k < size - 1; k++) {
    const pivot = queue.takeLowest();
    order[k] = pivot;
    start[k] = used;

    // The pivot's neighbours now: the members of its cliques and its direct neighbours.
    const pivotStart = slotStart[pivot]!;
    const pivotCliques = pivotStart + cliqueCount[pivot]!;
    const pivotEnd = pivotStart + slotLength[pivot]!;
    let most = pivotEnd - pivotCliques;
    for (let q = pivotStart; q < pivotCliques; q++) most += cliqueSize[slot[q]!]!;
    if (used + most > members.length) {
      const grown = new Int32Array(Math.max(2 * members.length, used + most));
      grown.set(members);
      members = grown;
    }
    tag[pivot] = k;
    for (let q = pivotStart; q < pivotCliques; q++) {
      const clique = slot[q]!;
      const end = cliqueStart[clique]! + cliqueSize[clique]!;
      for (let m = cliqueStart[clique]!; m < end; m++) {
        const i = members[m]!;
        if (tag[i] !== k) {
          tag[i] = k;
          members[used++] = i;
        }
      }
      absorbed[clique] = 1;
    }
    for (let q = pivotCliques; q < pivotEnd; q++) {
      const i = slot[q]!;
      if (tag[i] !== k) {
        tag[i] = k;
        members[used++] = i;
      }
    }
    const first = start[k]!;
    const last = used;
    cliqueStart[pivot] = first;
    cliqueSize[pivot] = last - first;

    // How much of every other clique lies outside the new one.
    for (let m = first; m < last; m++) {
      const i = members[m]!;
      const begin = slotStart[i]!;
      for (let q = begin; q < begin + cliqueCount[i]!; q++) {
        const clique = slot[q]!;
        if (absorbed[clique] === 1) continue;
        if (outside[clique]! < outsideTag) outside[clique] = outsideTag + cliqueSize[clique]!;
        outside[clique]!--;
      }
    }

    // Each neighbour forgets what the new clique says as well, joins it, and gets its new degree.
    for (let m = first; m < last; m++) {
      const i = members[m]!;
      const begin = slotStart[i]!;
      const cliquesEnd = begin + cliqueCount[i]!;
      const end = begin + slotLength[i]!;
      let write = begin;
      let degree = last - first - 1;
      for (let q = begin; q < cliquesEnd; q++) {
        const clique = slot[q]!;
        if (absorbed[clique] === 1) continue;
        const beyond = outside[clique]! - outsideTag;
        if (beyond === 0) {
          absorbed[clique] = 1;
          continue;
        }
        degree += beyond;
        slot[write++] = clique;
      }
      const cliques = write - begin;
      for (let q = cliquesEnd; q < end; q++) {
        const v = slot[q]!;
        if (tag[v] !== k) {
          slot[write++] = v;
          degree++;
        }
      }
      // At least the pivot or one absorbed clique has left the slot, so there is room.
      slot[write] = slot[begin + cliques]!;
      slot[begin + cliques] = pivot;
      cliqueCount[i] = cliques + 1;
      slotLength[i] = write + 1 - begin;
      if (i !== rootLocal) queue.move(i, Math.min(degree, size - k - 2));
    }
    outsideTag += size + 1;
    if (outsideTag > 0x3fffffff) {
      outside.fill(0);
      outsideTag = 1;
    }
  }
  start[size - 1] = used;

  for (let k = 0; k < size - 1; k++) order[k] = nodeOf[order[k]!]!;
  const neighbours = members.subarray(0, used);
  for (let m = 0; m < used; m++) neighbours[m] = nodeOf[neighbours[m]!]!;
  return { order, start, neighbours };
}

/** The nodes left, renumbered `0 .. size - 1`, and who is joined to whom (a neighbour twice where branches are parallel). */
function gatherCore(nodeCount: number, from: Int32Array, to: Int32Array, gone: Uint8Array, root: number) {
  const local = new Int32Array(nodeCount);
  let size = 0;
  for (let v = 0; v < nodeCount; v++) if (gone[v] === 0) local[v] = size++;
  const nodeOf = new Int32Array(size);
  for (let v = 0; v < nodeCount; v++) if (gone[v] === 0) nodeOf[local[v]!] = v;

  const slotStart = new Int32Array(size + 1);
  for (let b = 0; b < from.length; b++) {
    const u = from[b]!;
    const v = to[b]!;
    if (u === v || gone[u] === 1 || gone[v] === 1) continue;
    slotStart[local[u]! + 1]!++;
    slotStart[local[v]! + 1]!++;
  }
  for (let i = 0; i < size; i++) slotStart[i + 1]! += slotStart[i]!;
  const fill = slotStart.slice(0, size);
  const slot = new Int32Array(slotStart[size]!);
  for (let b = 0; b < from.length; b++) {
    const u = from[b]!;
    const v = to[b]!;
    if (u === v || gone[u] === 1 || gone[v] === 1) continue;
    slot[fill[local[u]!]!++] = local[v]!;
    slot[fill[local[v]!]!++] = local[u]!;
  }
  return { nodeOf, slot, slotStart, rootLocal: local[root]! };
}

/** Keeps each value of `list[start .. end - 1]` once, at the front; returns how many are left. */
function dropDuplicates(list: Int32Array, start: number, end: number, tag: Int32Array, mark: number): number {
  let write = start;
  for (let q = start; q < end; q++) {
    const v = list[q]!;
    if (tag[v] === mark) continue;
    tag[v] = mark;
    list[write++] = v;
  }
  return write - start;
}

/** Nodes in one doubly linked list per degree; the lowest non-empty list is remembered. */
function degreeQueue(size: number) {
  const head = new Int32Array(size + 1).fill(-1);
  const next = new Int32Array(size);
  const previous = new Int32Array(size);
  const degreeOf = new Int32Array(size);
  let lowest = 0;
  const add = (i: number, degree: number): void => {
    const old = head[degree]!;
    next[i] = old;
    previous[i] = -1;
    if (old >= 0) previous[old] = i;
    head[degree] = i;
    degreeOf[i] = degree;
    if (degree < lowest) lowest = degree;
  };
  const remove = (i: number): void => {
    const before = previous[i]!;
    const after = next[i]!;
    if (before >= 0) next[before] = after;
    else head[degreeOf[i]!] = after;
    if (after >= 0) previous[after] = before;
  };
  return {
    add,
    move: (i: number, degree: number): void => {
      if (degreeOf[i] === degree) return;
      remove(i);
      add(i, degree);
    },
    takeLowest: (): number => {
      while (head[lowest]! < 0) lowest++;
      const i = head[lowest]!;
      remove(i);
      return i;
    },
  };
}
