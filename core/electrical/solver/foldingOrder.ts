import { minimumDegreeOrder } from './minimumDegreeOrder.ts';

/**
 * In which order to eliminate the nodes, and which nodes each is still joined to when its turn comes.
 * `order` holds every node but the root, first to go first; the neighbours of `order[k]` are
 * `neighbours[start[k]] .. neighbours[start[k + 1] - 1]`, as node numbers in no particular order.
 */
export interface FoldingOrder {
  readonly order: Int32Array;
  readonly start: Int32Array;
  readonly neighbours: Int32Array;
}

/**
 * A fence is nearly a tree. Leaves fold into their neighbour until only rings and what joins them are left; then chains
 * fold into one branch between their ends; then the few true junctions go by minimum degree. Only the last can fill in.
 * Linear on trees and single rings.
 *
 * A leaf's only neighbour, and a chain node's other one, are found without lists: each node keeps the exclusive or of
 * its neighbours' numbers (of a parallel branch, twice), and whoever folds away strikes himself out of it.
 */
export function foldingOrder(nodeCount: number, from: Int32Array, to: Int32Array, root: number): FoldingOrder {
  const branchCount = from.length;
  const degree = new Int32Array(nodeCount);
  const neighbourXor = new Int32Array(nodeCount);
  for (let b = 0; b < branchCount; b++) {
    const u = from[b]!;
    const v = to[b]!;
    if (u === v) continue;
    degree[u]!++;
    degree[v]!++;
    neighbourXor[u]! ^= v;
    neighbourXor[v]! ^= u;
  }

  const order = new Int32Array(nodeCount - 1);
  const start = new Int32Array(nodeCount);
  const folded = new Int32Array(2 * nodeCount);
  const gone = new Uint8Array(nodeCount);
  let count = 0;
  let size = 0;

  const foldLeaves = (first: number): void => {
    let leaf = first;
    while (leaf !== root && degree[leaf]! <= 1 && gone[leaf] === 0) {
      gone[leaf] = 1;
      start[count] = size;
      order[count++] = leaf;
      if (degree[leaf] === 0) return;
      const next = neighbourXor[leaf]!;
      folded[size++] = next;
      degree[next]!--;
      neighbourXor[next]! ^= leaf;
      leaf = next;
    }
  };
  for (let v = 0; v < nodeCount; v++) foldLeaves(v);

  // Folds chain nodes from `first` on, away from its neighbour `anchor`; returns where the chain ends.
  const foldChain = (first: number, anchor: number): number => {
    let node = first;
    while (node !== root && node !== anchor && degree[node] === 2) {
      const next = neighbourXor[node]! ^ anchor;
      gone[node] = 1;
      start[count] = size;
      order[count++] = node;
      folded[size++] = anchor;
      if (next === anchor) {
        // A ring that hangs on one node: its last piece is a leaf.
        degree[anchor]! -= 2;
        return anchor;
      }
      folded[size++] = next;
      neighbourXor[anchor]! ^= node ^ next;
      neighbourXor[next]! ^= node ^ anchor;
      node = next;
    }
    return node;
  };
  const joinedFrom: number[] = [];
  const joinedTo: number[] = [];
  for (let b = 0; b < branchCount && count < nodeCount - 1; b++) {
    const u = from[b]!;
    const v = to[b]!;
    if (u === v || gone[u] === 1 || gone[v] === 1) continue;
    if (degree[u] !== 2 && degree[v] !== 2) continue;
    const oneEnd = foldChain(u, v);
    const otherEnd = oneEnd === v ? v : foldChain(v, oneEnd);
    if (oneEnd === otherEnd) foldLeaves(oneEnd);
    else if (gone[u] === 1 || gone[v] === 1) {
      joinedFrom.push(oneEnd);
      joinedTo.push(otherEnd);
    }
  }
  start[count] = size;
  if (count === nodeCount - 1) return { order, start, neighbours: folded.subarray(0, size) };

  const core = minimumDegreeOrder(nodeCount, concat(from, joinedFrom), concat(to, joinedTo), gone, root);
  const neighbours = new Int32Array(size + core.neighbours.length);
  neighbours.set(folded.subarray(0, size));
  neighbours.set(core.neighbours, size);
  order.set(core.order, count);
  for (let k = 0; k < core.order.length; k++) start[count + k + 1] = size + core.start[k + 1]!;
  return { order, start, neighbours };
}

function concat(head: Int32Array, tail: readonly number[]): Int32Array {
  const all = new Int32Array(head.length + tail.length);
  all.set(head);
  all.set(tail, head.length);
  return all;
}
